/** How near the sun comes to a tracker's frame while any of its disc is up. */

import { type Knots, lastWithin } from "../../base/alongKnots.ts";
import { type Interval, overlapping } from "../../base/crossings.ts";
import { lowestBetween, lowestOfSeveral, type Minimum } from "../../base/lowest.ts";
import { MS_PER_MINUTE, MS_PER_SECOND } from "../../base/units.ts";
import { aboveHorizonMeasure, cameraSunOf, sunIntervals } from "../../view/sunInFrame.ts";
import type { SweepSearch } from "../../view/sweepSearch.ts";
import { approach } from "./approach.ts";
import type { ClosestApproach } from "./sweepTypes.ts";
import type { SweepRoom, Tracker } from "./tracker.ts";

/** When any of the disc is up, from the window's opening to the end of the last sweep. */
export function sunUpSpans({ window, track, toS }: SweepRoom, { view }: Tracker): Interval[] {
  const endMs = window.closes.getTime() + toS * MS_PER_SECOND;
  const sunOf = cameraSunOf(track, view.place, view.air);
  return sunIntervals(sunOf, aboveHorizonMeasure, window.opens.getTime(), endMs);
}

/** Null with the sun down throughout. */
export function closestUp(room: SweepRoom, tracker: Tracker): ClosestApproach | null {
  const { opens, closes } = room.window;
  const [fromMs, toMs] = [opens.getTime(), closes.getTime()];
  const endMs = toMs + room.toS * MS_PER_SECOND;
  const up = sunUpSpans(room, tracker);
  if (up.length === 0) return null;
  const isUpThroughout = up.length === 1 && up[0]!.fromMs <= fromMs && up[0]!.toMs >= endMs;
  const { t0Ms, atMs } = isUpThroughout
    ? tracker.edge.lowestBetween(fromMs, toMs)
    : lowestWhileUp(tracker, up, fromMs, toMs);
  return approach(tracker, t0Ms, atMs);
}

/** T-0s tried; the best is refined between its neighbours. */
const T0_STEP_MS = 5 * MS_PER_MINUTE;
/** In which the sun moves by 0.0001 degree: where it sets the nearest may lie at an edge of what is allowed. */
const T0_PRECISION_MS = 20;
/** Farther than any direction is from a frame. */
export const NOWHERE_DEG = 360;

/** Where the sun rises or sets the measure has a step, which no bound on its change allows for: T-0s are tried, then refined. */
function lowestWhileUp(
  tracker: Tracker,
  up: readonly Interval[],
  fromMs: number,
  toMs: number,
): Minimum & { t0Ms: number } {
  const lowestAt = lowestUpAt(tracker.edge, tracker.frames, up);
  const steps = Math.max(1, Math.ceil((toMs - fromMs) / T0_STEP_MS));
  const stepMs = (toMs - fromMs) / steps;
  let best = { ...lowestAt(fromMs), t0Ms: fromMs };
  for (let k = 1; k <= steps; k++) {
    const t0Ms = fromMs + k * stepMs;
    const here = lowestAt(t0Ms);
    if (here.value < best.value) best = { ...here, t0Ms };
  }
  const { atMs: t0Ms, value } = lowestOfSeveral(
    (ms) => lowestAt(ms).value,
    Math.max(fromMs, best.t0Ms - stepMs),
    Math.min(toMs, best.t0Ms + stepMs),
    T0_PRECISION_MS,
  );
  return value < best.value ? { ...lowestAt(t0Ms), t0Ms } : best;
}

/**
 * The lowest of one T-0 while any of the disc is up: at the knots, then about the lowest of them; NOWHERE_DEG with the
 * sun down all along.
 */
export function lowestUpAt(
  search: Pick<SweepSearch, "valueAt" | "valueAtKnot">,
  { atMs, way }: Knots,
  up: readonly Interval[],
): (t0Ms: number) => Minimum {
  const isUp = (ms: number): boolean => overlapping(up, { fromMs: ms - 1, toMs: ms + 1 }).length > 0;
  return (t0Ms) => {
    let best = -1;
    let value = NOWHERE_DEG;
    for (let i = 0; i < atMs.length; ) {
      const here = isUp(t0Ms + atMs[i]!) ? search.valueAtKnot(t0Ms, i) : null;
      if (here !== null && here < value) {
        value = here;
        best = i;
      }
      // While it is up no knot is asked that it cannot have come down to the best by.
      i = Math.max(i + 1, here === null ? 0 : lastWithin(way, i, here - value));
    }
    if (best === -1) return { atMs: atMs[0]!, value: NOWHERE_DEG };
    const refined = lowestBetween(
      (tPlusMs) => (isUp(t0Ms + tPlusMs) ? search.valueAt(t0Ms, tPlusMs) : NOWHERE_DEG),
      atMs[Math.max(0, best - 1)]!,
      atMs[Math.min(atMs.length - 1, best + 1)]!,
    );
    return refined.value < value ? refined : { atMs: atMs[best]!, value };
  };
}
