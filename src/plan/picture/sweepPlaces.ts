/** Where a tracker's axis and frame point at a T+, and the sun at an instant, as directions from the camera. */

import { MS_PER_SECOND } from "../../base/units.ts";
import { toAzimuthElevation, type Vec3 } from "../../base/vector.ts";
import { pathSun, type SunPath } from "../../sky/sunPath.ts";
import { type SweepFrames, TURN_LENGTH, type Turn } from "../../view/sweepFrames.ts";
import { rectangleBorder } from "./polygons.ts";
import type { PathFrame, PathPoint, SunPoint } from "./sweepPathTypes.ts";

/** Place of the axis in a turn. */
const AXIS_AT = 3;
const UP_AT = 6;

const vectorOf = (turn: Turn, at: number): Vec3 => [turn[at]!, turn[at + 1]!, turn[at + 2]!];

/** The axis of the turn that stands at a place among turns. */
export const axisOf = (turns: Turn, at: number, tPlusS: number): PathPoint => ({
  tPlusS,
  ...toAzimuthElevation(vectorOf(turns, at + AXIS_AT)),
});

/** Points to each side of a frame, so that a wide one bends as the sky does. */
const SIDE_POINTS = 6;

/** The frame at a T+, its border as the camera's gate has it. */
export function pathFrame({ turnInto, gate }: SweepFrames, tPlusS: number): PathFrame {
  const turn = new Float64Array(TURN_LENGTH);
  turnInto(tPlusS * MS_PER_SECOND, turn);
  const [right, axis, up] = [vectorOf(turn, 0), vectorOf(turn, AXIS_AT), vectorOf(turn, UP_AT)];
  const through = (xMm: number, yMm: number) =>
    toAzimuthElevation([
      gate.focalMm * axis[0] + xMm * right[0] + yMm * up[0],
      gate.focalMm * axis[1] + xMm * right[1] + yMm * up[1],
      gate.focalMm * axis[2] + xMm * right[2] + yMm * up[2],
    ]);
  const border = rectangleBorder(gate.gateWidthMm / 2, gate.gateHeightMm / 2, SIDE_POINTS);
  const outline = border.map(([xMm, yMm]) => through(xMm, yMm));
  return { ...axisOf(turn, 0, tPlusS), outline };
}

/** The apparent sun. */
export function sunPointAt(sunPath: SunPath, atMs: number): SunPoint {
  const sun = pathSun();
  sunPath.into(atMs, sun);
  return {
    atMs,
    azimuthDeg: toAzimuthElevation(sun.direction).azimuthDeg,
    elevationDeg: sun.apparentElevationDeg,
  };
}
