/** Boxes and lines on paper, and which of them meet. */

import { textWidthPx } from "./fitText.ts";
import type { Point } from "./paths.ts";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Segment = readonly [Point, Point];

/** A square around a point. */
export const squareAt = ([x, y]: Point, halfPx: number): Box => ({
  x: x - halfPx,
  y: y - halfPx,
  width: 2 * halfPx,
  height: 2 * halfPx,
});

export type Anchor = "start" | "middle" | "end";

/** Classes of a text, to be joined to others. */
export const ANCHOR_CLASS: Readonly<Record<Anchor, string>> = { start: "", middle: " mid", end: " end" };

/** Where a text stands that starts, ends or has its middle at a point of its base line. */
export function textBox(text: string, [x, y]: Point, fontPx: number, anchor: Anchor): Box {
  const [width, height] = [textWidthPx(text, fontPx), fontPx * LINE_EM];
  const left = { start: x, middle: x - width / 2, end: x - width }[anchor];
  return { x: left, y: y - height * ABOVE_BASE_SHARE, width, height };
}

/** Height of a line of text in ems, and the share of it that stands above the base line. */
export const LINE_EM = 1.15;
export const ABOVE_BASE_SHARE = 0.8;

/** Boxes that only touch do not overlap. */
export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const isWithin = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height;

export const holds = ({ x, y, width, height }: Box, [px, py]: Point): boolean =>
  px >= x && px <= x + width && py >= y && py <= y + height;

/** Whether any of a line lies in a box (Liang & Barsky 1984). */
export function crosses([[x0, y0], [x1, y1]]: Segment, box: Box): boolean {
  let [from, to] = [0, 1];
  const walls = [
    [x0 - x1, x0 - box.x],
    [x1 - x0, box.x + box.width - x0],
    [y0 - y1, y0 - box.y],
    [y1 - y0, box.y + box.height - y0],
  ] as const;
  for (const [along, room] of walls) {
    if (along === 0 && room < 0) return false;
    if (along < 0) from = Math.max(from, room / along);
    if (along > 0) to = Math.min(to, room / along);
  }
  return from < to;
}

/** Whether two lines cross. */
export function meet([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}
