/** SVG paths. Coordinates are cut to hundredths of a unit: a picture of metres or millimetres never shows more. */

import { line } from "d3-shape";

export type Point = readonly [x: number, y: number];

/** Hundredths; never "-0". */
export const cut = (value: number): number => Math.round(value * 100) / 100 + 0;

const through = line().digits(2);

/** A line through points; empty for none. */
export const openPath = (points: readonly Point[]): string =>
  through([...points] as [number, number][]) ?? "";

/** The same, closed. */
export const closedPath = (points: readonly Point[]): string =>
  points.length === 0 ? "" : `${openPath(points)}Z`;
