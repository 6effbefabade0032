/** The sky of a picture: neighbours of one tone are one part. */

import type { SkyCell } from "../../plan/picture/skyCells.ts";
import { alikeRuns } from "./alikeRuns.ts";
import type { PictureExposure } from "./frameProps.ts";
import type { TonedPart } from "./frameTone.tsx";
import { toneOf } from "./tone.ts";

/** Cells stand row by row, from left to right. */
export function skyParts(
  cells: readonly SkyCell[],
  luminancesCdM2: readonly number[],
  { midToneLog2, range }: PictureExposure,
): TonedPart[] {
  const toneAt = (i: number): string => toneOf(Math.log2(luminancesCdM2[i]!) - midToneLog2, range);
  return alikeRuns(
    cells.length,
    (first, i) => isBeside(cells[i - 1]!, cells[i]!) && toneAt(i) === toneAt(first),
  ).map(([first, last]) => ({
    outline: around(cells[first]!, cells[last]!),
    luminanceCdM2: luminancesCdM2[first]!,
  }));
}

const isBeside = (left: SkyCell, right: SkyCell): boolean =>
  left.yMm === right.yMm && Math.abs(left.xMm + left.widthMm - right.xMm) < left.widthMm / 2;

function around(left: SkyCell, right: SkyCell): TonedPart["outline"] {
  const { xMm, yMm } = left;
  const toMm = right.xMm + right.widthMm;
  const topMm = yMm + left.heightMm;
  return [
    [xMm, yMm],
    [toMm, yMm],
    [toMm, topMm],
    [xMm, topMm],
  ];
}
