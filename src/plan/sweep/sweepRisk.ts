/** The sun in and near a tracker's frame for every T-0 of a window: which T-0s, at which T+, how close. */

import { type Interval, joined, RESOLUTION_MS, spansWithout } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import { cameraSunOf } from "../../view/sunInFrame.ts";
import type { SweepSearch } from "../../view/sweepSearch.ts";
import { hiddenBy } from "../hiddenSun.ts";
import { type SunRiskWord, toTimeSpan } from "../sunRisk.ts";
import { approach, toTPlusSpan } from "./approach.ts";
import { closestMet } from "./closestMet.ts";
import { closestUp } from "./closestUp.ts";
import type { ClosestApproach, SweepCrossing, SweepSun } from "./sweepTypes.ts";
import type { SweepRoom, Tracker } from "./tracker.ts";

/** T-0s, ms, with the sun in and near the frame somewhere along the sweep; not hidden. */
export interface SweepSpans {
  readonly flare: readonly Interval[];
  readonly inFrame: readonly Interval[];
  readonly nearFrame: readonly Interval[];
}

export function sweepSpans(
  tracker: Pick<Tracker, "flare" | "inFrame">,
  fromMs: number,
  toMs: number,
): SweepSpans {
  const flare = tracker.flare.t0sBetween(fromMs, toMs);
  // The frame lies within its flare zone: sought in there, and a little beyond, as ends are good to a millisecond.
  const inFrame = joined(
    flare.flatMap((span) =>
      tracker.inFrame.t0sBetween(Math.max(fromMs, span.fromMs - 1), Math.min(toMs, span.toMs + 1)),
    ),
  );
  // Both edges are sought apart: where they fall together nothing but rounding lies between them.
  const nearFrame = spansWithout(flare, inFrame).filter((span) => span.toMs - span.fromMs > RESOLUTION_MS);
  return { flare, inFrame, nearFrame };
}

export function sweepSun(room: SweepRoom, tracker: Tracker): SweepSun {
  const [fromMs, toMs] = [room.window.opens.getTime(), room.window.closes.getTime()];
  const spans = sweepSpans(tracker, fromMs, toMs);
  const hidden =
    tracker.hides.hidden === null
      ? []
      : spansWithout(tracker.flareOrHidden.t0sBetween(fromMs, toMs), spans.flare).filter(
          (span) => span.toMs - span.fromMs > RESOLUTION_MS,
        );
  const inFrame = spans.inFrame.map((span) => crossing(tracker, tracker.inFrame, tracker.offAxis, span));
  const nearFrame = spans.nearFrame.map((span) => crossing(tracker, tracker.flare, tracker.edge, span));
  const closest = nearest(closestUp(room, tracker), [...inFrame, ...nearFrame]);
  return {
    risk: riskWord(spans, hidden, closest),
    inFrame,
    nearFrame,
    hidden: hidden.map((span) => ({ ...toTimeSpan(span), by: hidersAlong(room, tracker, span) })),
    closest,
  };
}

/** Nearer by less than this is as near. */
const SAME_DEG = 0.001;

/** The nearest to the edge, crossings among them. */
const nearest = (
  closest: ClosestApproach | null,
  crossings: readonly SweepCrossing[],
): ClosestApproach | null =>
  crossings.reduce<ClosestApproach | null>(
    (best, one) =>
      best === null || one.closest.fromEdgeDeg < best.fromEdgeDeg - SAME_DEG ? one.closest : best,
    closest,
  );

function riskWord(
  { inFrame, nearFrame }: SweepSpans,
  hidden: readonly Interval[],
  closest: ClosestApproach | null,
): SunRiskWord {
  if (inFrame.length > 0) return "in-frame";
  if (nearFrame.length > 0) return "near-frame";
  if (hidden.length > 0) return "hidden";
  return closest === null ? "down" : "clear";
}

function crossing(
  tracker: Tracker,
  search: SweepSearch,
  nearest: SweepSearch,
  { fromMs, toMs }: Interval,
): SweepCrossing {
  const endS = tracker.frames.atMs.at(-1)! / MS_PER_SECOND;
  // Straight overhead a frame turns round in less time than is looked at: then the T+ of the nearest stands for it.
  const met = search.tPlusBetween(fromMs, toMs);
  const { t0Ms, atMs } = closestMet(search, nearest, fromMs, toMs);
  return {
    ...toTimeSpan({ fromMs, toMs }),
    tPlus: (met.length > 0 ? met : [{ fromMs: atMs, toMs: atMs }]).map((one) => toTPlusSpan(one, endS)),
    closest: approach(tracker, t0Ms, atMs),
  };
}

/** What hides the sun somewhere along the sweeps of some T-0s. */
function hidersAlong(room: SweepRoom, { view, hides }: Tracker, { fromMs, toMs }: Interval): string[] {
  const sunOf = cameraSunOf(room.track, view.place, view.air);
  return hiddenBy(hides, sunOf, { fromMs, toMs: toMs + room.toS * MS_PER_SECOND });
}
