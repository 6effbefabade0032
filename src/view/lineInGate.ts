/** The stretch of a straight line that falls on the gate, exactly: each side of the gate is a plane through the camera. */

import { dot, type Vec3 } from "../base/vector.ts";
import type { Orientation } from "./frame.ts";

/** The point at `along` is foot + along x step; (east, north, up) metres from the camera. */
export interface Line {
  readonly foot: Vec3;
  readonly step: Vec3;
}

export const pointOn = (line: Line, along: number): Vec3 => [
  line.foot[0] + along * line.step[0],
  line.foot[1] + along * line.step[1],
  line.foot[2] + along * line.step[2],
];

/** The part of `from`..`to` along the line that lies on the gate; null when none does. */
export function stretchInGate(
  gate: Orientation,
  line: Line,
  from: number,
  to: number,
): { from: number; to: number } | null {
  const { focalMm, gateWidthMm, gateHeightMm } = gate.view;
  const ahead = alongLine(gate.axis, line);
  const right = alongLine(gate.right, line);
  const up = alongLine(gate.up, line);
  const halfWidth = gateWidthMm / 2 / focalMm;
  const halfHeight = gateHeightMm / 2 / focalMm;
  // On the gate: in front, and |x| <= half the width, |y| <= half the height, all times the distance ahead.
  const limits = [
    ahead,
    combined(ahead, halfWidth, right, 1),
    combined(ahead, halfWidth, right, -1),
    combined(ahead, halfHeight, up, 1),
    combined(ahead, halfHeight, up, -1),
  ];
  let low = from;
  let high = to;
  for (const { at, slope } of limits) {
    // Kept where at + slope x along >= 0.
    if (slope > 0) low = Math.max(low, -at / slope);
    else if (slope < 0) high = Math.min(high, -at / slope);
    else if (at < 0) return null;
  }
  return low <= high ? { from: low, to: high } : null;
}

/** A measure that changes evenly along the line. */
interface Linear {
  readonly at: number;
  readonly slope: number;
}

const alongLine = (direction: Vec3, line: Line): Linear => ({
  at: dot(direction, line.foot),
  slope: dot(direction, line.step),
});

const combined = (a: Linear, aFactor: number, b: Linear, bFactor: number): Linear => ({
  at: aFactor * a.at + bFactor * b.at,
  slope: aFactor * a.slope + bFactor * b.slope,
});
