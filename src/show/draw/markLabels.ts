/** Places for labels beside their marks, none over another, with a leader line where one stands off. */

import { ABOVE_BASE_SHARE, type Anchor, holds, LINE_EM, textBox } from "./boxes.ts";
import { type LabelPlace, type LabelRoom, takePlace } from "./labelRoom.ts";
import type { Point } from "./paths.ts";

/** A mark that wants its label. Coordinates and sizes in px. */
interface LabelWish {
  readonly text: string;
  readonly at: Point;
  /** From the middle of the mark to its edge. */
  readonly markPx: number;
  readonly fontPx: number;
  /** May stand far off, its leader over marks. */
  readonly isFar?: boolean;
}

export interface PlacedLabel extends LabelPlace {
  /** Baseline, at the end that `anchor` names. */
  readonly at: Point;
  readonly anchor: Anchor;
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
export const placeLabel = (wish: LabelWish, room: LabelRoom): PlacedLabel | null =>
  // A leader starts in its own mark, or in one that stands on the same spot.
  takePlace(placesOf(wish), room, (mark) => wish.isFar === true || holds(mark, wish.at));

/** Nearest first. */
function* placesOf(wish: LabelWish): Generator<PlacedLabel> {
  for (const distancePx of wish.isFar ? FAR_PX : DISTANCES_PX)
    for (const way of WAYS) yield labelAt(wish, way, distancePx);
}

function labelAt({ at, text, markPx, fontPx }: LabelWish, [dx, dy]: Point, distancePx: number): PlacedLabel {
  const reachPx = markPx + distancePx;
  const [x, y] = [at[0] + dx * reachPx, at[1] + dy * reachPx];
  const anchor = dx > 0 ? "start" : dx < 0 ? "end" : "middle";
  const above = dx === 0 ? (dy < 0 ? 1 : 0) : 0.5;
  const base: Point = [x, y + (ABOVE_BASE_SHARE - above) * LINE_EM * fontPx];
  const isNear = distancePx === DISTANCES_PX[0];
  const edge: Point = [at[0] + dx * markPx, at[1] + dy * markPx];
  return {
    at: base,
    anchor,
    box: textBox(text, base, fontPx, anchor),
    leader: isNear ? null : [edge, [x - dx, y - dy]],
  };
}
