/**
 * When a view is well lit, asked one T-0 at a time with the plan's own models. The tight loop of `judgeView` gives the
 * same answers for the many; here is the rule it is held to, and what refines the ends of intervals.
 */

import { type HorizonAxes, horizonAxes } from "../../base/earthFixed.ts";
import type { PlumeLuminance } from "../../light/plume.ts";
import type { Camera, Settings, Site, Thing } from "../../site/types.ts";
import type { SiteAscent } from "../../view/siteAscent.ts";
import { type CameraSun, seenBy } from "../../view/sunInFrame.ts";
import { type CameraView, makeCameraView } from "../cameraView.ts";
import { canBeSet, choicesFor } from "../choices.ts";
import { type CameraHides, cameraHidesOf } from "../hiddenSun.ts";
import type { Instant } from "../instants.ts";
import { imageMotion } from "../motion.ts";
import type { Obstacles } from "../obstacles.ts";
import { type FlareRule, flareMeasure, flareRule } from "../sunRisk.ts";
import { isTracking } from "../sweep/tracker.ts";
import { correctionStops, spanOf, type Things, thingsAt } from "../things.ts";
import { type Kit, makeKit, reaches } from "./kit.ts";
import { type RankSweep, rankSweepOf } from "./rankSweep.ts";

/**
 * What keeps a view from being well lit, in the order in which it is asked: the sun's centre down; too little of the
 * body sunlit; the sun in or near the frame; no setting of the kit with the spare that is wanted.
 */
const LOSSES = ["dark", "unlit", "sun", "setting"] as const;
export type Loss = (typeof LOSSES)[number];

/** A camera made ready once for all windows. */
export interface RankView {
  readonly camera: Camera;
  readonly view: CameraView;
  readonly axes: HorizonAxes;
  readonly flareRule: FlareRule;
  /** Below zero while the sun is in or near the frame and not hidden. */
  readonly flare: (sun: CameraSun) => number;
  /** A tracker meets the sun along its sweep; null for a fixed camera, and without an ascent. */
  readonly sweep: RankSweep | null;
  readonly hides: CameraHides;
  /** Null where the site file lacks what a setting needs: then light and sun alone are judged. */
  readonly kit: Kit | null;
}

export function rankViewOf(
  site: Site,
  camera: Camera,
  obstacles: Obstacles,
  ascent: SiteAscent | null,
): RankView {
  const view = makeCameraView(site, camera);
  const rule = flareRule(view, site.settings);
  const hides = cameraHidesOf(site, obstacles, view);
  const sweep =
    ascent !== null && isTracking(camera) ? rankSweepOf(site, ascent, camera, view, rule, hides) : null;
  const choices = choicesFor(camera, sweep === null ? imageMotion(ascent, site, view) : null);
  return {
    camera,
    view,
    axes: horizonAxes(view.place),
    flareRule: rule,
    flare: openFlare(flareMeasure(view.frame, rule), hides),
    sweep,
    hides,
    kit: canBeSet(site, camera, choices)
      ? makeKit(choices.choices, camera.medium!, site.settings.litSpareStops)
      : null,
  };
}

/** A hidden sun makes no flare; only the sign counts. */
const openFlare =
  (measure: RankView["flare"], { hidden }: CameraHides): RankView["flare"] =>
  (sun) => {
    const flare = measure(sun);
    return flare < 0 && hidden !== null && hidden(sun) < 0 ? 1 : flare;
  };

/** Why a view is not well lit at a T-0 under one of its skies; null when it is. */
export function lossAt(
  site: Site,
  rankView: RankView,
  instant: Instant,
  skyIndex: number,
  plume: PlumeLuminance | null,
): Loss | null {
  const { camera, view, kit } = rankView;
  const sky = instant.skies[skyIndex]!;
  const things = thingsAt(site, view, instant, sky, plume, correctionStops(site, camera.id, sky.sky));
  if (things.light === "dusk" || things.light === "night") return "dark";
  if (!isLit(things, site.settings)) return "unlit";
  if (meetsSun(rankView, instant)) return "sun";
  return kit === null || reachesAll(kit, things, camera.keep) ? null : "setting";
}

/** In or near the frame at the T-0, or for a tracker at any T+ of its sweep. */
const meetsSun = ({ sweep, flare, axes, view }: RankView, { ms, sample }: Instant): boolean =>
  sweep === null ? flare(seenBy(axes, sample, view.air)) < 0 : sweep.meetsSunAt(ms);

/** Under a sky without a beam no part is sunlit and none is dark: the setting alone decides. */
const isLit = ({ light, body }: Things, { litShare }: Settings): boolean =>
  light === "flat" || body.litShare >= litShare;

function reachesAll(kit: Kit, things: Things, keep: readonly Thing[]): boolean {
  let darkest = Number.POSITIVE_INFINITY;
  let brightest = 0;
  for (const thing of keep) {
    const { darkCdM2, brightCdM2 } = spanOf(things, thing);
    darkest = Math.min(darkest, darkCdM2);
    brightest = Math.max(brightest, brightCdM2);
  }
  return reaches(kit, darkest, brightest);
}
