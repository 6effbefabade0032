/** The sky of a picture in cells, each with the direction of its middle: as many as its luminance can be seen to change over. */

import { clamp } from "../../base/units.ts";
import type { Vec3 } from "../../base/vector.ts";
import { fieldDeg, type Orientation, throughGate } from "../../view/frame.ts";
import type { Reach } from "./gatePolygons.ts";

export interface SkyCell {
  /** Lower left corner and size, mm on the gate. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Unit vector in the camera's horizon, held at the level. */
  readonly direction: Vec3;
}

/** Degrees of a cell, and most cells across or up. */
const CELL_DEG = 4;
const MOST_CELLS = 8;

export function skyCells(frame: Orientation, reach: Reach): SkyCell[] {
  const { focalMm } = frame.view;
  const [columns, rows] = [reach.xMm, reach.yMm].map((halfMm) =>
    clamp(Math.round(fieldDeg(2 * halfMm, focalMm) / CELL_DEG), 1, MOST_CELLS),
  ) as [number, number];
  const [widthMm, heightMm] = [(2 * reach.xMm) / columns, (2 * reach.yMm) / rows];
  const cells: SkyCell[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [xMm, yMm] = [column * widthMm - reach.xMm, row * heightMm - reach.yMm];
      const corners = [
        [xMm, yMm],
        [xMm + widthMm, yMm],
        [xMm, yMm + heightMm],
        [xMm + widthMm, yMm + heightMm],
      ] as const;
      // Covered by the ground.
      if (corners.every(([x, y]) => throughGate(frame, x, y)[2] < 0)) continue;
      const [east, north, up] = throughGate(frame, xMm + widthMm / 2, yMm + heightMm / 2);
      cells.push({ xMm, yMm, widthMm, heightMm, direction: atLevel(east, north, up) });
    }
  }
  return cells;
}

/** Just above the level at the lowest: below it there is no sky. */
function atLevel(east: number, north: number, up: number): Vec3 {
  const held = Math.max(LEAST_UP, up);
  const level = Math.hypot(east, north);
  const scale = level === 0 ? 0 : Math.sqrt(1 - held * held) / level;
  return [east * scale, north * scale, held];
}

const LEAST_UP = 0.01;
