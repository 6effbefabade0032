/** When the sun's disc stands in a frame or near it: exact times, whatever the step of anything else. */

import { type Interval, intervalsBelowZero } from "../base/crossings.ts";
import { type HorizonAxes, horizonAxes } from "../base/earthFixed.ts";
import type { Air, Place } from "../base/place.ts";
import { refuse, requireDate } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { angleBetweenDeg, type Vec3 } from "../base/vector.ts";
import { requireAir } from "../sky/atmosphere.ts";
import { requirePlace } from "../sky/ephemeris.ts";
import { liftedEnu } from "../sky/sun.ts";
import { makeSunTrack, SUN_MAX_RATE_DEG_PER_MS, type SunSample, type SunTrack } from "../sky/sunTrack.ts";
import { type Frame, fromEdgeDeg, makeFrame, type View } from "./frame.ts";

/** The apparent sun in the sky of one camera. */
export interface CameraSun {
  readonly direction: Vec3;
  readonly apparentElevationDeg: number;
  readonly semidiameterDeg: number;
}

/** The apparent sun as a function of time for a camera at `place`. */
export function cameraSunOf(track: SunTrack, place: Place, air: Air): (ms: number) => CameraSun {
  const axes = horizonAxes(place);
  return (ms) => seenBy(axes, track.at(ms), air);
}

/** The apparent sun of one sample for a camera with these axes. */
export function seenBy(axes: HorizonAxes, sample: SunSample, air: Air): CameraSun {
  const { direction, apparentElevationDeg } = liftedEnu(axes, sample.fixed, air);
  return { direction, apparentElevationDeg, semidiameterDeg: sample.semidiameterDeg };
}

/** Below zero while any of the disc is above the horizontal: degrees from it down to the upper limb. */
export const aboveHorizonMeasure = (sun: CameraSun): number =>
  -(sun.apparentElevationDeg + sun.semidiameterDeg);

/** Below zero while part of the disc is up and inside the gate. */
export const inFrameMeasure = (frame: Frame, sun: CameraSun): number =>
  Math.max(fromEdgeDeg(frame, sun.direction) - sun.semidiameterDeg, aboveHorizonMeasure(sun));

/** Below zero while part of the disc is up and nearer to the axis than `cutoffDeg`, so that it shines into the hood. */
export const inHoodMeasure = (frame: Frame, sun: CameraSun, cutoffDeg: number): number =>
  Math.max(
    angleBetweenDeg(frame.axis, sun.direction) - sun.semidiameterDeg - cutoffDeg,
    aboveHorizonMeasure(sun),
  );

/** Intervals in which `measure` of the camera's sun is below zero. */
export function sunIntervals(
  sunOf: (ms: number) => CameraSun,
  measure: (sun: CameraSun) => number,
  fromMs: number,
  toMs: number,
): Interval[] {
  return intervalsBelowZero((ms) => measure(sunOf(ms)), fromMs, toMs, SUN_MAX_RATE_DEG_PER_MS);
}

/**
 * Intervals between `from` and `to` in which any part of the apparent disc is inside the gate and its upper limb is
 * above elevation 0. Ends are good to 0.1 s for a given direction of the sun. Standard air when `air` is left out.
 * Throws PadstopError for a view, place, air or time out of range.
 */
export function sunInFrame(
  view: View,
  place: Place,
  from: Date,
  to: Date,
  air?: Air,
): { from: Date; to: Date }[] {
  requirePlace(place);
  requireDate("from", from);
  requireDate("to", to);
  if (to.getTime() < from.getTime())
    refuse("E_ORDER", "to", to.toISOString(), `a time after ${from.toISOString()}`);
  const frame = makeFrame(view);
  const usedAir = air === undefined ? standardAir(place.heightM) : requireAir(air);
  const sunOf = cameraSunOf(makeSunTrack(place, from, to), place, usedAir);
  const intervals = sunIntervals(sunOf, (sun) => inFrameMeasure(frame, sun), from.getTime(), to.getTime());
  return intervals.map(({ fromMs, toMs }) => ({ from: new Date(fromMs), to: new Date(toMs) }));
}
