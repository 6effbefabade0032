/** Room for small texts in a drawing: each takes the first of its places where nothing stands yet. */

import type { Box } from "./lightMarks.tsx";

/** A letter of the drawings' fonts takes about this share of its size; wide scripts take twice that. */
const LETTER_SHARE = 0.6;
const WIDE =
  /[\u1100-\u115f\u2e80-\u9fff\ua960-\ua97f\uac00-\ud7ff\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60]|\p{Emoji_Presentation}/u;

/** About how wide a text will stand. */
export const textWidthPx = (text: string, sizePx: number): number =>
  [...text].reduce((sum, letter) => sum + sizePx * LETTER_SHARE * (WIDE.test(letter) ? 2 : 1), 0);

export const isApart = (a: Box, b: Box): boolean =>
  a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;

const isWithin = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height;

/** For each label the first of its places that is within the sheet and free; null for one without room. */
export function placeLabels(
  labels: readonly (readonly Box[])[],
  taken: readonly Box[],
  within: Box,
): (Box | null)[] {
  const full = [...taken];
  return labels.map((places) => {
    const place = places.find((box) => isWithin(box, within) && full.every((other) => isApart(box, other)));
    if (place !== undefined) full.push(place);
    return place ?? null;
  });
}
