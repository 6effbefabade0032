/** What a picture of a sweep shows for one T-0: how near the sun comes to the axis, at which T+, and when it is in the frame. */

import { MS_PER_SECOND } from "../../base/units.ts";
import { toTPlus, toTPlusSpan } from "../sweep/approach.ts";
import { lowestUpAt, NOWHERE_DEG, sunUpSpans } from "../sweep/closestUp.ts";
import { sunWord } from "../sweep/timeline.ts";
import type { Tracker } from "../sweep/tracker.ts";
import { sunPass } from "./sunPass.ts";
import type { SweptTracker } from "./sweepPath.ts";
import type { MomentClosest, SweepMoment } from "./sweepPathTypes.ts";
import { pathFrame, sunPointAt } from "./sweepPlaces.ts";

/** Gives any T-0 of the window, ms. Made once for a tracker: a T-0 then takes a fraction of a millisecond. */
export function sweepMomentMaker({ room, tracker }: SweptTracker): (t0Ms: number) => SweepMoment {
  const { sunPath, offAxis, inFrame, frames } = tracker;
  const [startMs, endMs] = [room.fromS * MS_PER_SECOND, room.toS * MS_PER_SECOND];
  const up = sunUpSpans(room, tracker);
  const lowestUp = lowestUpAt(offAxis, frames, up);
  return (t0Ms) => {
    const isUpThroughout = up.some(({ fromMs, toMs }) => fromMs <= t0Ms + startMs && toMs >= t0Ms + endMs);
    const { atMs, value } = isUpThroughout ? offAxis.lowestAt(t0Ms) : lowestUp(t0Ms);
    if (value >= NOWHERE_DEG) return { atMs: t0Ms, sun: null, closest: null, inFrame: [] };
    return {
      atMs: t0Ms,
      sun: { from: sunPointAt(sunPath, t0Ms + startMs), to: sunPointAt(sunPath, t0Ms + endMs) },
      closest: closestOf(tracker, t0Ms, atMs),
      inFrame: inFrame.tPlusAt(t0Ms).map((span) => toTPlusSpan(span, room.toS)),
    };
  };
}

function closestOf(tracker: Tracker, t0Ms: number, tPlusMs: number): MomentClosest {
  const { edge, offAxis, frames, sunPath } = tracker;
  const offAxisDeg = offAxis.valueAt(t0Ms, tPlusMs);
  return {
    tPlusS: toTPlus(tPlusMs),
    offAxisDeg,
    fromEdgeDeg: edge.valueAt(t0Ms, tPlusMs),
    word: sunWord(tracker, t0Ms, tPlusMs),
    frame: pathFrame(frames, tPlusMs / MS_PER_SECOND),
    sun: sunPointAt(sunPath, t0Ms + tPlusMs),
    pass: sunPass(tracker, t0Ms, tPlusMs, offAxisDeg),
  };
}
