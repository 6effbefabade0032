/** Places for labels beside their marks, none over another: the first of several places that is free, with a leader line where it is off. */

import type { Box } from "./lightMarks.tsx";
import type { Point } from "./paths.ts";

/** A mark that wants its label. Coordinates and sizes in px. */
export interface LabelWish {
  readonly text: string;
  readonly at: Point;
  /** From the middle of the mark to its edge. */
  readonly markPx: number;
  readonly fontPx: number;
  /** May stand far off, its leader over marks. */
  readonly isFar?: boolean;
}

export interface PlacedLabel {
  /** Baseline, at the end that `anchor` names. */
  readonly at: Point;
  readonly anchor: "start" | "middle" | "end";
  readonly box: Box;
  readonly leader: Segment | null;
}

export type Segment = readonly [Point, Point];

/** What is taken already; placing adds to labels and leaders. */
export interface LabelRoom {
  readonly isInside: (box: Box) => boolean;
  readonly marks: readonly Box[];
  readonly labels: Box[];
  readonly leaders: Segment[];
}

/** East first, then what is next easiest to read. */
const WAYS: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0.8, -0.6],
  [0.8, 0.6],
  [-0.8, -0.6],
  [-0.8, 0.6],
  [0, -1],
  [0, 1],
  [0.5, -0.87],
  [-0.5, -0.87],
  [0.5, 0.87],
  [-0.5, 0.87],
];
/** From the mark's edge to the label. Farther ones have a leader. */
const DISTANCES_PX: readonly number[] = [3, 11, 20, 32, 46];
const FAR_PX: readonly number[] = [...DISTANCES_PX, 62, 80, 100, 122];

/** Null where there is no room. */
export function placeLabel(wish: LabelWish, room: LabelRoom): PlacedLabel | null {
  for (const distancePx of wish.isFar ? FAR_PX : DISTANCES_PX) {
    for (const way of WAYS) {
      const placed = labelAt(wish, way, distancePx);
      if (!isFree(placed, wish, room)) continue;
      room.labels.push(placed.box);
      if (placed.leader) room.leaders.push(placed.leader);
      return placed;
    }
  }
  return null;
}

function labelAt({ at, text, markPx, fontPx }: LabelWish, [dx, dy]: Point, distancePx: number): PlacedLabel {
  const reachPx = markPx + distancePx;
  const [x, y] = [at[0] + dx * reachPx, at[1] + dy * reachPx];
  const width = textWidthPx(text, fontPx);
  const height = fontPx * 1.15;
  const anchor = dx > 0 ? "start" : dx < 0 ? "end" : "middle";
  const left = { start: x, end: x - width, middle: x - width / 2 }[anchor];
  const top = dx === 0 ? (dy < 0 ? y - height : y) : y - height / 2;
  const isNear = distancePx === DISTANCES_PX[0];
  const edge: Point = [at[0] + dx * markPx, at[1] + dy * markPx];
  return {
    at: [x, top + height * 0.8],
    anchor,
    box: { x: left, y: top, width, height },
    leader: isNear ? null : [edge, [x - dx, y - dy]],
  };
}

function isFree({ box, leader }: PlacedLabel, wish: LabelWish, room: LabelRoom): boolean {
  const { isInside, marks, labels, leaders } = room;
  if (!isInside(box) || leaders.some((line) => crosses(line, box))) return false;
  if (labels.some((other) => overlap(box, other)) || marks.some((other) => overlap(box, other))) return false;
  if (leader === null) return true;
  if (labels.some((other) => crosses(leader, other)) || leaders.some((line) => meet(leader, line)))
    return false;
  // It starts in its own mark, or in one that stands on the same spot.
  return wish.isFar || marks.every((other) => holds(other, wish.at) || !crosses(leader, other));
}

const holds = ({ x, y, width, height }: Box, [px, py]: Point): boolean =>
  px >= x && px <= x + width && py >= y && py <= y + height;

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

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

/** A wide guess at the width of a text in the drawings' font: better too much room than too little. */
export function textWidthPx(text: string, fontPx: number): number {
  let ems = 0;
  for (const letter of text) ems += emsOf(letter);
  return ems * fontPx;
}

/** From a wide sans-serif, by kind of letter. */
function emsOf(letter: string): number {
  if (/[ilj.,:;|!'`·]/.test(letter)) return 0.36;
  if (/[mwMW@%…]/.test(letter)) return 1;
  if (/[A-Z&]/.test(letter)) return 0.76;
  if (letter.codePointAt(0)! < 0x2e80) return 0.64;
  return 1.1;
}
