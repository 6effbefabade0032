/** What of the horizon a frame takes in: the azimuths between its left and right limits, as drawn on a plan. */

import { wrap180, wrap360 } from "../../base/units.ts";
import { toAzimuthElevation } from "../../base/vector.ts";
import { type Frame, throughGate } from "../../view/frame.ts";
import { isInGate } from "../cameraView.ts";
import { rectangleBorder } from "./polygons.ts";

/** Azimuths in degrees; the right one lies clockwise of the left, by less than 180. */
export interface LevelField {
  readonly leftDeg: number;
  readonly rightDeg: number;
}

/**
 * Null with the zenith or the nadir in the frame: then it takes in all azimuths. Else the frame is convex and lies to one
 * side of a plane through the vertical; along each of its edges the azimuth runs one way, so that corners are the limits.
 */
export function levelFieldOf(frame: Frame): LevelField | null {
  if (isInGate(frame, [0, 0, 1]) || isInGate(frame, [0, 0, -1])) return null;
  const { azimuthDeg, gateWidthMm, gateHeightMm } = frame.view;
  const offsets = rectangleBorder(gateWidthMm / 2, gateHeightMm / 2).map(([xMm, yMm]) =>
    wrap180(toAzimuthElevation(throughGate(frame, xMm, yMm)).azimuthDeg - azimuthDeg),
  );
  return {
    leftDeg: wrap360(azimuthDeg + Math.min(...offsets)),
    rightDeg: wrap360(azimuthDeg + Math.max(...offsets)),
  };
}

/** Width of a field, degrees 0..180. */
export const fieldWidthDeg = ({ leftDeg, rightDeg }: LevelField): number => wrap360(rightDeg - leftDeg);

/** A field turned clockwise. */
export const turnedField = ({ leftDeg, rightDeg }: LevelField, byDeg: number): LevelField => ({
  leftDeg: wrap360(leftDeg + byDeg),
  rightDeg: wrap360(rightDeg + byDeg),
});
