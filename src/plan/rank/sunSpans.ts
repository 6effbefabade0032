/** The sun in and near one view's frame over a window, exact, at the price of a dot product for every sixteen T-0s for most views. */

import { EARTH_TURN_DEG_PER_DAY } from "../../base/constants.ts";
import {
  type Interval,
  intervalsBetween,
  joined,
  RESOLUTION_MS,
  rootBetween,
  spansWithout,
} from "../../base/crossings.ts";
import { MS_PER_DAY, MS_PER_MINUTE } from "../../base/units.ts";
import { liftedScratch, liftInto } from "../../sky/sun.ts";
import { SUN_MAX_RATE_DEG_PER_MS, type SunTrack, sunScratch } from "../../sky/sunTrack.ts";
import { cameraSunOf } from "../../view/sunInFrame.ts";
import { hiddenWithin } from "../hiddenSun.ts";
import { measureSun, type SunMeasures } from "../sunRisk.ts";
import { type FlareCone, runsInCone, type TurnedSun, turnSun } from "./flareCone.ts";
import type { Run, SunColumns } from "./sunColumns.ts";
import type { RankView } from "./wellLit.ts";

export interface SunSpans {
  /** Sun in or near the frame. */
  readonly flare: readonly Interval[];
  readonly inFrame: readonly Interval[];
  readonly nearFrame: readonly Interval[];
}

/** In a minute the sun goes a quarter of a degree, all but straight: it enters or leaves a frame, and does not do both. */
const SINGLE_WITHIN_MS = MS_PER_MINUTE;

const NONE: SunSpans = { flare: [], inFrame: [], nearFrame: [] };

/** Sun in and near the frame from the first T-0 to the last. */
export function sunSpans(rankView: RankView, cone: FlareCone, sun: SunColumns, track: SunTrack): SunSpans {
  const runs = runsInCone(cone, sun);
  if (runs.length === 0) return NONE;
  const search = edgeSearch(rankView, cone, sun, track);
  const flareRuns: Interval[] = [];
  const frameRuns: Interval[] = [];
  for (const run of runs) searchRun(search, run, sun, flareRuns, frameRuns);
  if (flareRuns.length === 0) return NONE;
  const { view, hides } = rankView;
  const reached = joined(flareRuns);
  const hidden =
    hides.hidden === null ? [] : hiddenWithin(hides, cameraSunOf(track, view.place, view.air), reached);
  const flare = spansWithout(reached, hidden);
  const inFrame = spansWithout(joined(frameRuns), hidden);
  const nearFrame = spansWithout(flare, inFrame);
  // Both edges are sought apart: where they fall together nothing but rounding lies between them.
  return { flare, inFrame, nearFrame: nearFrame.filter(({ fromMs, toMs }) => toMs - fromMs > RESOLUTION_MS) };
}

/**
 * Where the sun that a camera sees enters and leaves its frame and the zone of flare. The T-0s' own suns, turned from
 * the pad's horizon, narrow each edge down to two neighbouring T-0s; between these the exact sun is searched, and
 * nowhere else. A stretch is put aside only when the sun cannot have got to an edge and back in its time.
 */
interface EdgeSearch {
  readonly exactFlare: (ms: number) => number;
  readonly exactInFrame: (ms: number) => number;
  /** At a T-0, good to `slackDeg`; the same object every time. */
  readonly roughAt: (index: number) => SunMeasures;
  readonly slackDeg: number;
  readonly tiltDeg: number;
  readonly sun: SunColumns;
  readonly flareEdges: number[];
  readonly frameEdges: number[];
}

function edgeSearch(
  { axes, view, flareRule }: RankView,
  cone: FlareCone,
  sun: SunColumns,
  track: SunTrack,
): EdgeSearch {
  const measures: SunMeasures = { flare: 0, inFrame: 0 };
  const sample = sunScratch();
  const turned: TurnedSun = { ...liftedScratch(), semidiameterDeg: 0 };
  const exactAt = (ms: number): SunMeasures => {
    track.into(ms, sample);
    liftInto(axes, sample.fixed, view.air, turned);
    turned.semidiameterDeg = sample.semidiameterDeg;
    measureSun(view.frame, flareRule, turned, measures);
    return measures;
  };
  return {
    exactFlare: (ms) => exactAt(ms).flare,
    exactInFrame: (ms) => exactAt(ms).inFrame,
    roughAt: (index) => {
      turnSun(cone, sun, index, turned);
      measureSun(view.frame, flareRule, turned, measures);
      return measures;
    },
    slackDeg: cone.slackDeg,
    tiltDeg: cone.tiltDeg,
    sun,
    flareEdges: [],
    frameEdges: [],
  };
}

function searchRun(
  search: EdgeSearch,
  { from: first, to }: Run,
  { count, timesMs }: SunColumns,
  flare: Interval[],
  inFrame: Interval[],
): void {
  const { roughAt, exactFlare, exactInFrame, slackDeg, flareEdges, frameEdges } = search;
  // Up to the first T-0 behind the run: what begins after its last one begins before that.
  const last = Math.min(count - 1, to);
  const [fromMs, toMs] = [timesMs[first]!, timesMs[last]!];
  const { flare: firstFlare, inFrame: firstInFrame } = roughAt(first);
  const { flare: lastFlare, inFrame: lastInFrame } = roughAt(last);
  flareEdges.length = 0;
  frameEdges.length = 0;
  if (last > first) narrow(search, first, firstFlare, firstInFrame, last, lastFlare, lastInFrame);
  const starts = (rough: number, exact: (ms: number) => number): boolean =>
    (Math.abs(rough) > slackDeg ? rough : exact(fromMs)) < 0;
  flare.push(...intervalsBetween(flareEdges, starts(firstFlare, exactFlare), fromMs, toMs));
  inFrame.push(...intervalsBetween(frameEdges, starts(firstInFrame, exactInFrame), fromMs, toMs));
}

/** Halves a stretch of T-0s until nothing can happen in it or two neighbours are left. */
function narrow(
  search: EdgeSearch,
  a: number,
  flareA: number,
  frameA: number,
  b: number,
  flareB: number,
  frameB: number,
): void {
  const { sun, slackDeg, exactFlare, exactInFrame, flareEdges, frameEdges } = search;
  const fromMs = sun.timesMs[a]!;
  const toMs = sun.timesMs[b]!;
  const rate = fastestBetween(sun, search.tiltDeg, a, b);
  const mostChange = rate * (toMs - fromMs) + 2 * slackDeg;
  const canFlare = canReachZero(flareA, flareB, mostChange);
  const canFrame = canReachZero(frameA, frameB, mostChange);
  if (!canFlare && !canFrame) return;
  if (b - a === 1) {
    if (canFlare)
      edgesBetween(exactFlare, rate, fromMs, flareA, slackDeg, toMs, flareB, slackDeg, flareEdges);
    if (canFrame)
      edgesBetween(exactInFrame, rate, fromMs, frameA, slackDeg, toMs, frameB, slackDeg, frameEdges);
    return;
  }
  const middle = (a + b) >> 1;
  const { flare, inFrame } = search.roughAt(middle);
  narrow(search, a, flareA, frameA, middle, flare, inFrame);
  narrow(search, middle, flare, inFrame, b, flareB, frameB);
}

/** Whether something that changes by no more than `mostChange` in between can be zero somewhere. */
const canReachZero = (a: number, b: number, mostChange: number): boolean =>
  a < 0 !== b < 0 || Math.abs(a) + Math.abs(b) <= mostChange;

/** While it is up no sun moves faster than the sky turns: refraction only slows it. */
const SUN_UP_RATE_DEG_PER_MS = (1.001 * EARTH_TURN_DEG_PER_DAY) / MS_PER_DAY;

/** Bound on the sun's movement between two T-0s, degrees per millisecond: the lower one where it cannot have been down for the camera. */
function fastestBetween(
  { timesMs, airlessElevationDeg }: SunColumns,
  tiltDeg: number,
  a: number,
  b: number,
): number {
  const lowestDeg = Math.min(airlessElevationDeg[a]!, airlessElevationDeg[b]!) - tiltDeg;
  const wayDeg = SUN_UP_RATE_DEG_PER_MS * (timesMs[b]! - timesMs[a]!);
  return lowestDeg - wayDeg > 0 ? SUN_UP_RATE_DEG_PER_MS : SUN_MAX_RATE_DEG_PER_MS;
}

/**
 * Adds the sign changes of `exact` between two instants whose values are known to a slack each: halves the time until
 * nothing can happen in it or one change is left.
 */
function edgesBetween(
  exact: (ms: number) => number,
  rate: number,
  fromMs: number,
  fFrom: number,
  slackFrom: number,
  toMs: number,
  fTo: number,
  slackTo: number,
  edges: number[],
): void {
  if (Math.abs(fFrom) < slackFrom) {
    edgesBetween(exact, rate, fromMs, exact(fromMs), 0, toMs, fTo, slackTo, edges);
  } else if (Math.abs(fTo) < slackTo) {
    edgesBetween(exact, rate, fromMs, fFrom, slackFrom, toMs, exact(toMs), 0, edges);
  } else if (fFrom < 0 !== fTo < 0 && toMs - fromMs <= SINGLE_WITHIN_MS) {
    edges.push(rootBetween(exact, fromMs, fFrom, toMs, fTo));
  } else if (
    canReachZero(fFrom, fTo, rate * (toMs - fromMs) + slackFrom + slackTo) &&
    toMs - fromMs > RESOLUTION_MS
  ) {
    const middleMs = (fromMs + toMs) / 2;
    const fMiddle = exact(middleMs);
    edgesBetween(exact, rate, fromMs, fFrom, slackFrom, middleMs, fMiddle, 0, edges);
    edgesBetween(exact, rate, middleMs, fMiddle, 0, toMs, fTo, slackTo, edges);
  }
}

const NO_RUNS: readonly Run[] = [];

/** The T-0s inside each span, in the order of time; a span between two T-0s has none. */
export function indexRuns(spans: readonly Interval[], { count, timesMs }: SunColumns): readonly Run[] {
  if (spans.length === 0) return NO_RUNS;
  const runs: Run[] = [];
  for (const { fromMs, toMs } of spans) {
    const from = firstFrom(timesMs, count, fromMs);
    let to = firstFrom(timesMs, count, toMs);
    // The end itself counts.
    if (to < count && timesMs[to] === toMs) to++;
    if (to > from) runs.push({ from, to });
  }
  return runs;
}

/** Index of the first of ascending times at or after `ms`; `count` when there is none. */
export function firstFrom(timesMs: Float64Array, count: number, ms: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timesMs[middle]! < ms) low = middle + 1;
    else high = middle;
  }
  return low;
}
