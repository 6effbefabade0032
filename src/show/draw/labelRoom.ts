/** Room for labels in a drawing: each takes the first of its places where nothing stands yet. */

import { type Box, crosses, isWithin, meet, overlap, type Segment } from "./boxes.ts";
import type { Point } from "./paths.ts";

/** A place a label may take. */
export interface LabelPlace {
  readonly box: Box;
  /** To a mark that it stands off; null beside it. */
  readonly leader: Segment | null;
}

/** What is taken already; placing adds to labels and leaders. */
export interface LabelRoom {
  readonly isInside: (box: Box) => boolean;
  readonly marks: readonly Box[];
  readonly labels: Box[];
  readonly leaders: Segment[];
}

/** Takes the first free place; null for none. `mayCross`: marks that a leader may run over. */
export function takePlace<Place extends LabelPlace>(
  places: Iterable<Place>,
  room: LabelRoom,
  mayCross: (mark: Box) => boolean = () => false,
): Place | null {
  for (const place of places) {
    if (!isFree(place, room, mayCross)) continue;
    room.labels.push(place.box);
    if (place.leader) room.leaders.push(place.leader);
    return place;
  }
  return null;
}

function isFree({ box, leader }: LabelPlace, room: LabelRoom, mayCross: (mark: Box) => boolean): boolean {
  const { isInside, marks, labels, leaders } = room;
  if (!isInside(box) || leaders.some((line) => crosses(line, box))) return false;
  if (labels.some((other) => overlap(box, other)) || marks.some((other) => overlap(box, other))) return false;
  if (leader === null) return true;
  if (labels.some((other) => crosses(leader, other)) || leaders.some((line) => meet(leader, line)))
    return false;
  return marks.every((other) => mayCross(other) || !crosses(leader, other));
}

/** For each label the first of its places that is within the sheet and free; null for one without room. */
export function placeLabels(
  labels: readonly (readonly Box[])[],
  taken: readonly Box[],
  within: Box,
): (Box | null)[] {
  const room: LabelRoom = { isInside: (box) => isWithin(box, within), marks: taken, labels: [], leaders: [] };
  return labels.map((boxes) => takePlace(boxes.map(withoutLeader), room)?.box ?? null);
}

const withoutLeader = (box: Box): LabelPlace => ({ box, leader: null });

/** To the right, left, above, below and aslant. */
const SIDES: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
];

/** The first so many are not aslant. */
export const STRAIGHT_SIDES = 4;

/** Places around a point, so far off it. */
export const boxesAbout = (
  [x, y]: Point,
  { width, height }: Pick<Box, "width" | "height">,
  offPx: number,
): Box[] =>
  SIDES.map(([sideX, sideY]) => ({
    x: x + sideX * (width / 2 + offPx) - width / 2,
    y: y + sideY * (height / 2 + offPx) - height / 2,
    width,
    height,
  }));

/** Something that wants to stand with its middle at a place on an axis, and what it takes of the axis. */
interface Wish {
  readonly at: number;
  readonly size: number;
}

/** Middles, in the order of the wishes: each pushed on past the one before, then all back from `high`; they may pass `low` if there is no room. */
export function spreadAlong(wishes: readonly Wish[], low: number, high: number): number[] {
  const order = wishes.map((_, i) => i).sort((a, b) => wishes[a]!.at - wishes[b]!.at || a - b);
  const placed = wishes.map(({ at }) => at);
  let least = low;
  for (const i of order) {
    const half = wishes[i]!.size / 2;
    placed[i] = Math.max(least + half, placed[i]!);
    least = placed[i]! + half;
  }
  let most = high;
  for (const i of order.toReversed()) {
    const half = wishes[i]!.size / 2;
    placed[i] = Math.min(most - half, placed[i]!);
    most = placed[i]! - half;
  }
  return placed;
}

/** The same for lines of text, `gap` from one to the next; `low` and `high` are for their middles. */
export const spreadLabels = (wanted: readonly number[], gap: number, low: number, high: number): number[] =>
  spreadAlong(
    wanted.map((at) => ({ at, size: gap })),
    low - gap / 2,
    high + gap / 2,
  );
