/** Text in drawings: how wide it comes out, cut to the room there is, and labels kept from standing on each other. */

import { safeText } from "../../site/sourcePlaces.ts";

/** Widths in ems of the sans-serifs a drawing may be shown in, rather too wide than too narrow (our measure). */
const WIDE_EM = 1.05;
const CAPITAL_EM = 0.72;
const BROAD_EM = 0.98;
const NARROW_EM = 0.34;
const USUAL_EM = 0.62;

/** Scripts written in squares, and pictures. */
const SQUARE =
  /[\u1100-\u115f\u2e80-\u9fff\uac00-\ud7a3\uf900-\ufaff\uff00-\uff60]|\p{Extended_Pictographic}/u;

function emsOf(char: string): number {
  if (/\p{M}/u.test(char)) return 0;
  if (SQUARE.test(char)) return WIDE_EM;
  if (/[MWmw@%\u2014]/.test(char)) return BROAD_EM;
  if (/[ilj.,:;'|!()[\] It]/.test(char)) return NARROW_EM;
  return /\p{Lu}/u.test(char) ? CAPITAL_EM : USUAL_EM;
}

/** An upper estimate of the width of `text` at a font size, both in the drawing's units. */
export const textWidthPx = (text: string, fontPx: number): number =>
  [...text].reduce((sum, char) => sum + emsOf(char), 0) * fontPx;

/** A name as any file may hold it: what XML or a screen cannot take is replaced. */
export const drawnText = (text: string): string => safeText(text).replace(/[\p{Cs}\ufffe\uffff]/gu, "\ufffd");

/** At most as wide as the room, the last character a mark that there was more. */
export function fittedText(text: string, roomPx: number, fontPx: number): string {
  const safe = drawnText(text);
  if (textWidthPx(safe, fontPx) <= roomPx) return safe;
  let kept = "";
  let widthPx = textWidthPx("…", fontPx);
  for (const char of safe) {
    widthPx += emsOf(char) * fontPx;
    if (widthPx > roomPx) break;
    kept += char;
  }
  return `${kept.trimEnd()}…`;
}

/**
 * Places of labels that want to stand at `wanted`, in its order: at least `gap` apart, moved as little as that takes, between
 * `low` and `high` if they all fit there.
 */
export function spreadLabels(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const placed = [...wanted];
  let least = low;
  for (const i of order) {
    placed[i] = Math.max(least, wanted[i]!);
    least = placed[i]! + gap;
  }
  let most = high;
  for (const i of order.toReversed()) {
    placed[i] = Math.min(most, placed[i]!);
    most = placed[i]! - gap;
  }
  return placed;
}
