/** What all cameras of a window share: the T-0s, the sun over the pad, the light of each sky. Computed once per T-0. */

import type { Air } from "../base/place.ts";
import { PadstopError, problem, refuse, requireDate, requireNumber } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_SECOND } from "../base/units.ts";
import type { Site, Window } from "../site/types.ts";
import { MAX_WINDOW_DAYS } from "../site/zoneTime.ts";
import { requireSky, type Sky } from "../sky/daylight.ts";
import { type MoonTrack, makeMoonTrack } from "../sky/moonTrack.ts";
import { makeSunTrack, type SunTrack } from "../sky/sunTrack.ts";
import { type SiteAscent, siteAscentOf } from "../view/siteAscent.ts";
import { type Instant, instantMaker, readySkies } from "./instants.ts";
import { type Obstacles, obstaclesOf } from "./obstacles.ts";

export interface PlanOptions {
  /** Sky state or states to plan for; the first is the one the light columns show. Default: clear. */
  readonly sky?: Sky | readonly Sky[];
  /** Spacing of the T-0s in seconds, 1..3600. Default 60. */
  readonly stepS?: number;
  /** One more T-0 inside the window. */
  readonly alsoAt?: Date;
}

export const DEFAULT_SKY: readonly Sky[] = ["clear"];
export const DEFAULT_STEP_S = 60;
/** More T-0s than this are refused: the step is too fine for the window. */
const MOST_INSTANTS = 100_000;

export interface Scene {
  readonly site: Site;
  readonly window: Window;
  readonly skies: readonly Sky[];
  readonly stepS: number;
  readonly air: Air;
  readonly track: SunTrack;
  readonly moonTrack: MoonTrack;
  readonly obstacles: Obstacles;
  /** Null when the site file gives none. */
  readonly ascent: SiteAscent | null;
  readonly instants: readonly Instant[];
  /** Any other instant of the window. */
  readonly instantAt: (ms: number) => Instant;
  /** Index of the T-0 nearest the middle of the window. */
  readonly middleIndex: number;
}

/** Throws PadstopError for an unknown sky or a step that does not fit. */
export function makeScene(site: Site, window: Window, options: PlanOptions = {}): Scene {
  requireWindow(window, options.alsoAt ?? null);
  const skies = asList(options.sky ?? DEFAULT_SKY).map(requireSky);
  if (skies.length === 0)
    throw new PadstopError([problem("E_EMPTY", "sky", { accepted: "at least one sky state" })]);
  const stepS = requireNumber("step", options.stepS ?? DEFAULT_STEP_S, 1, 3600, "s");
  const air = site.air ?? standardAir(site.place.heightM);
  const track = makeSunTrack(site.place, window.opens, window.closes);
  const moonTrack = makeMoonTrack(site.place, window.opens, window.closes);
  const times = instantsOf(window, stepS, options.alsoAt ?? null);
  const middleMs = (window.opens.getTime() + window.closes.getTime()) / 2;
  const obstacles = obstaclesOf(site);
  const instantAt = instantMaker(site, readySkies(skies), air, track, obstacles);
  const instants = times.map(instantAt);
  const middleIndex = times.findIndex((ms) => ms >= middleMs);
  const ascent = siteAscentOf(site);
  return {
    site,
    window,
    skies,
    stepS,
    air,
    track,
    moonTrack,
    obstacles,
    ascent,
    instants,
    instantAt,
    middleIndex,
  };
}

export const asList = (sky: Sky | readonly Sky[]): readonly Sky[] =>
  Array.isArray(sky) ? (sky as readonly Sky[]) : [sky as Sky];

/** A window from one instant to a later one, and an extra T-0 inside it. */
export function requireWindow({ opens, closes }: Window, alsoAt: Date | null): void {
  requireDate("opens", opens);
  requireDate("closes", closes);
  const lengthMs = closes.getTime() - opens.getTime();
  if (lengthMs <= 0) refuse("E_ORDER", "closes", closes.toISOString(), `a time after ${opens.toISOString()}`);
  if (lengthMs > MAX_WINDOW_DAYS * MS_PER_DAY) {
    refuse("E_RANGE", "window", `${Math.ceil(lengthMs / MS_PER_DAY)} days`, `up to ${MAX_WINDOW_DAYS} days`);
  }
  if (alsoAt !== null && !(alsoAt >= opens && alsoAt <= closes)) {
    refuse("E_RANGE", "alsoAt", String(alsoAt), "a T-0 in the window");
  }
}

/** The window's T-0s: every step from its opening, and its middle and close whatever the step. */
export function instantsOf(window: Window, stepS: number, alsoAt: Date | null): number[] {
  requireInstants(window, stepS);
  const opensMs = window.opens.getTime();
  const closesMs = window.closes.getTime();
  const stepMs = stepS * MS_PER_SECOND;
  const times: number[] = [];
  for (let ms = opensMs; ms <= closesMs; ms += stepMs) times.push(ms);
  const more = [
    Math.round((opensMs + closesMs) / 2),
    closesMs,
    ...(alsoAt === null ? [] : [alsoAt.getTime()]),
  ];
  for (const ms of more) {
    const after = times.findIndex((time) => time >= ms);
    if (after === -1) times.push(ms);
    else if (times[after] !== ms) times.splice(after, 0, ms);
  }
  return times;
}

/** No more T-0s than this; refuses a step too fine for the window. */
export function requireInstants({ opens, closes }: Window, stepS: number): number {
  const lengthMs = closes.getTime() - opens.getTime();
  const steps = lengthMs / (stepS * MS_PER_SECOND);
  if (steps <= MOST_INSTANTS) return Math.ceil(steps) + 4;
  throw new PadstopError([
    problem("E_RANGE", "--step", {
      found: `${stepS} s in a window of ${Math.round(lengthMs / MS_PER_HOUR)} h`,
      accepted: `at most ${MOST_INSTANTS} T-0s`,
      next: "use a longer step",
    }),
  ]);
}
