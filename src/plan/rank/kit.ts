/** The settings of one camera as two ascending rows of numbers: asked millions of times whether one of them reaches. */

import { HELD_EPSILON, type MediumRange, type SettingChoice } from "../../exposure/solver.ts";
import { BLACK_CD_M2 } from "../things.ts";

export interface Kit {
  /** log2 of the luminance each setting renders as the mid-tone, ascending. */
  readonly midTonesLog2: Float64Array;
  /** Brightest and darkest luminance (cd/m2) each setting keeps with the spare that is wanted, ascending. */
  readonly brightestCdM2: Float64Array;
  readonly darkestCdM2: Float64Array;
  readonly range: MediumRange;
}

/** `spareStops` must be left over at both ends of the range. */
export function makeKit(choices: readonly SettingChoice[], range: MediumRange, spareStops: number): Kit {
  const midTones = [...new Set(choices.map(({ midToneLog2 }) => midToneLog2))].sort((a, b) => a - b);
  const slack = HELD_EPSILON - spareStops;
  return {
    midTonesLog2: Float64Array.from(midTones),
    brightestCdM2: Float64Array.from(midTones, (x) => 2 ** (x + range.overStops + slack)),
    darkestCdM2: Float64Array.from(midTones, (x) => 2 ** (x - range.underStops - slack)),
    range: { underStops: range.underStops, overStops: range.overStops },
  };
}

/** Whether some setting keeps everything from the darkest to the brightest. */
export function reaches(kit: Kit, darkestCdM2: number, brightestCdM2: number): boolean {
  // Of those that keep the brightest, the one that exposes most keeps the most of the dark end.
  const index = leastThatKeeps(kit.brightestCdM2, brightestCdM2, 0);
  return index < kit.midTonesLog2.length && kit.darkestCdM2[index]! <= darkestCdM2;
}

/** Index in an ascending row of the first that keeps `brightestCdM2`; `start` is where the last search ended. */
export function leastThatKeeps(kept: Float64Array, brightestCdM2: number, start: number): number {
  let index = start;
  while (index > 0 && kept[index - 1]! >= brightestCdM2) index--;
  while (index < kept.length && kept[index]! < brightestCdM2) index++;
  return index;
}

/** Most spare that one setting of the kit leaves between a darkest and a brightest luminance, stops. */
export function mostSpareStops(kit: Kit, darkestCdM2: number, brightestCdM2: number): number {
  const { underStops, overStops } = kit.range;
  const lowLog2 = Math.log2(Math.max(BLACK_CD_M2, brightestCdM2)) - overStops;
  const highLog2 = Math.log2(Math.max(BLACK_CD_M2, darkestCdM2)) + underStops;
  let most = Number.NEGATIVE_INFINITY;
  for (const x of kit.midTonesLog2) {
    const spare = Math.min(x - lowLog2, highLog2 - x);
    // It rises to one top and falls: the mid-tones ascend.
    if (spare < most) break;
    most = spare;
  }
  return most;
}
