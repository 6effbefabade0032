/** The sun against a tracker's axis for one T-0: the library's smallest door to the sweep. */

import type { Air, Place } from "../base/place.ts";
import { refuse, requireDate } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { atan2Deg, MS_PER_SECOND } from "../base/units.ts";
import type { AscentPoint } from "../site/types.ts";
import { requireAir } from "../sky/atmosphere.ts";
import { requirePlace } from "../sky/ephemeris.ts";
import { makeSunPath } from "../sky/sunPath.ts";
import { makeSunTrack } from "../sky/sunTrack.ts";
import { type AscentPath, makeAscentPath } from "./ascentPath.ts";
import { type Frame, fromEdgeDeg } from "./frame.ts";
import { makeSweepFrames, type SweepFrames } from "./sweepFrames.ts";
import { type SweepMeasure, type SweptSun, sweepSearch } from "./sweepSearch.ts";

export interface SweptView {
  readonly pad: Place;
  readonly camera: Place;
  /** The followed point by T+, metres in the pad's tangent frame (east, north, up); two points or more, in the order of time. */
  readonly ascent: readonly AscentPoint[];
  readonly focalMm: number;
  readonly gateWidthMm: number;
  readonly gateHeightMm: number;
}

/** From the axis to the sun's centre, degrees. */
export const offAxisDeg = ({ inFrame }: SweptSun): number =>
  atan2Deg(Math.hypot(inFrame[0], inFrame[2]), inFrame[1]);

/** Below zero while part of the disc is up and inside the gate. */
export const sweptInFrame =
  (frame: Frame): SweepMeasure =>
  (sun) =>
    Math.max(
      fromEdgeDeg(frame, sun.inFrame) - sun.semidiameterDeg,
      -(sun.apparentElevationDeg + sun.semidiameterDeg),
    );

/**
 * The sun along the sweep of a tracker that keeps the followed point in the middle of its picture, horizon level, from
 * the ascent's first point to its last: closest approach of the sun's centre to the axis (up or not), and the stretches of
 * T+ in which any part of the apparent disc is inside the gate and its upper limb above elevation 0. The sun moves while
 * the vehicle climbs; between points the way is a monotone cubic. Standard air at the camera when `air` is left out.
 * Throws PadstopError for places, points, gate, time or air out of range.
 */
export function sweepSun(
  view: SweptView,
  t0: Date,
  air?: Air,
): {
  closest: { tPlusS: number; offAxisDeg: number };
  inFrame: { fromS: number; toS: number }[];
} {
  const { camera } = view;
  requirePlace(view.pad);
  requirePlace(camera);
  requireDate("t0", t0);
  const path = makeAscentPath(view.ascent);
  const frames = framesOf(view, path);
  const t0Ms = t0.getTime();
  const at = (s: number): Date => new Date(t0Ms + s * MS_PER_SECOND);
  const track = makeSunTrack(camera, at(path.fromS), at(path.toS));
  const usedAir = air === undefined ? standardAir(camera.heightM) : requireAir(air);
  const sunPath = makeSunPath(track, camera, usedAir);
  const closest = sweepSearch(frames, sunPath, offAxisDeg).lowestAt(t0Ms);
  const inFrame = sweepSearch(frames, sunPath, sweptInFrame(frames.frame)).tPlusAt(t0Ms);
  return {
    closest: { tPlusS: closest.atMs / MS_PER_SECOND, offAxisDeg: closest.value },
    inFrame: inFrame.map(({ fromMs, toMs }) => ({
      fromS: fromMs / MS_PER_SECOND,
      toS: toMs / MS_PER_SECOND,
    })),
  };
}

/** The frames from the first point to the last. Refuses a followed point that passes through the camera. */
function framesOf(view: SweptView, path: AscentPath): SweepFrames {
  const gate = {
    rollDeg: 0,
    focalMm: view.focalMm,
    gateWidthMm: view.gateWidthMm,
    gateHeightMm: view.gateHeightMm,
    offsetShare: 0,
  };
  const target = { pad: view.pad, path, footUpM: 0, alongM: 0 };
  const frames = makeSweepFrames(gate, view.camera, target, path.fromS, path.toS);
  if (frames.turns.some(Number.isNaN))
    refuse("E_AT_PAD", "camera", "a place on the way of the followed point", "a place beside it");
  return frames;
}
