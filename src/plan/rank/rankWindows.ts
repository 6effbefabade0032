/** Which window, which T-0: windows by their share of well-lit views. */

import { PadstopError, problem, refuse, requireNumber } from "../../base/problem.ts";
import type { Site, Window } from "../../site/types.ts";
import { requireSky, type Sky, skyName } from "../../sky/daylight.ts";
import { asList, DEFAULT_SKY, DEFAULT_STEP_S, requireInstants, requireWindow } from "../scene.ts";
import { rankCautions, rankNotes } from "./rankNotes.ts";
import { inOrder, whyFirst } from "./rankOrder.ts";
import { makeRankRoom } from "./rankRoom.ts";
import type { Ranking, RankOptions } from "./rankTypes.ts";
import { scoreWindow, type WindowScore } from "./scoreWindow.ts";

/** A bit per sky, in a byte. */
export const MOST_SKIES = 8;

/**
 * Ranks `windows` (at least one, each as `planWindow` takes it) by the weighted share of well-lit views, mean over
 * their T-0s. Windows are worked through one at a time: memory grows with the longest of them, not with their number.
 * Throws PadstopError for options out of range, no window, or no camera that counts.
 */
export function rankWindows(site: Site, windows: readonly Window[], options: RankOptions = {}): Ranking {
  const skies = asList(options.sky ?? DEFAULT_SKY).map(requireSky);
  const skyWeights = shareOut(options.skyWeights ?? skies.map(() => 1), skies);
  const stepS = requireNumber("step", options.stepS ?? DEFAULT_STEP_S, 1, 3600, "s");
  requireViews(site);
  if (windows.length === 0) throw empty("windows", "at least one window");
  const most = windows.reduce((sofar, window) => Math.max(sofar, mostInstants(window, stepS)), 0);
  const room = makeRankRoom(site, skies, skyWeights, most);
  const scores: WindowScore[] = [];
  for (const window of windows) {
    scores.push(scoreWindow(room, window, stepS));
    options.onWindow?.(scores.length, windows.length);
  }
  const ranked = inOrder(scores);
  ranked.forEach((score, i) => {
    score.rank = i + 1;
  });
  const [first, second] = ranked;
  const { settings } = site;
  return {
    site: { name: site.name, zone: site.zone, ...site.place },
    sky: skies.map((sky, i) => ({ sky: skyName(sky), weight: skyWeights[i]! })),
    stepS,
    rule: {
      litShare: settings.litShare,
      spareStops: settings.litSpareStops,
      nearBestShare: settings.nearBestShare,
      flareMarginDeg: settings.flareMarginDeg,
      frontBelowDeg: settings.frontBelowDeg,
    },
    viewCount: site.cameras.length,
    windows: ranked,
    why: second === undefined ? null : whyFirst(first!, second),
    notes: rankNotes(room, ranked),
    cautions: rankCautions(ranked),
  };
}

/** Room for the T-0s of a window; refuses one that no plan would take. */
function mostInstants(window: Window, stepS: number): number {
  requireWindow(window, null);
  return requireInstants(window, stepS);
}

const empty = (key: string, accepted: string, found = "none"): PadstopError =>
  new PadstopError([problem("E_EMPTY", key, { found, accepted })]);

function requireViews({ cameras }: Site): void {
  if (cameras.length === 0) throw empty("cameras", "at least one camera with an axis");
  if (cameras.every(({ weight }) => weight === 0)) {
    throw empty("cameras", "at least one camera with a weight above 0", "every weight is 0");
  }
}

/** The weights scaled to a sum of 1. */
function shareOut(weights: readonly number[], skies: readonly Sky[]): number[] {
  if (skies.length === 0) throw empty("sky", "at least one sky state");
  if (skies.length > MOST_SKIES) refuse("E_RANGE", "sky", `${skies.length} skies`, `up to ${MOST_SKIES}`);
  if (weights.length !== skies.length) {
    refuse("E_CONFLICT", "skyWeights", `${weights.length} weights`, `${skies.length}, one for each sky`);
  }
  for (const weight of weights) requireNumber("skyWeights", weight, Number.MIN_VALUE, 1e6, "");
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}
