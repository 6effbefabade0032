/** SVG paths. Coordinates are cut to hundredths of a unit: a picture of metres or millimetres never shows more. */

import { pathRound } from "d3-path";

export type Point = readonly [x: number, y: number];

/** Hundredths; never "-0". */
export const cut = (value: number): number => Math.round(value * 100) / 100 + 0;

/** A line through points; empty for none. */
export function openPath(points: readonly Point[]): string {
  const path = pathRound(2);
  points.forEach(([x, y], i) => {
    if (i === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  });
  return path.toString();
}

/** The same, closed. */
export const closedPath = (points: readonly Point[]): string =>
  points.length === 0 ? "" : `${openPath(points)}Z`;
