/** Text in drawings: how wide it comes out, and cut to the room there is. */

import { safeText } from "../../site/sourcePlaces.ts";

/** Widths in ems of the sans-serifs a drawing may be shown in, rather too wide than too narrow (our measure). */
const WIDE_EM = 1.1;
const CAPITAL_EM = 0.76;
const BROAD_EM = 1;
const NARROW_EM = 0.36;
const USUAL_EM = 0.64;

/** Text of the class "strong" is wider by this. */
export const STRONG_TIMES = 1.1;

/** Scripts written in squares, and pictures. */
const SQUARE =
  /[\u1100-\u115f\u2e80-\ua4cf\ua960-\ua97f\uac00-\ud7ff\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\u{20000}-\u{3ffff}]|\p{Extended_Pictographic}/u;

function emsOf(char: string): number {
  // Marks that stand over or under a letter; those beside or around it take room of their own.
  if (/\p{Mn}/u.test(char)) return 0;
  if (SQUARE.test(char)) return WIDE_EM;
  if (/[MWmw@%\u2014\u2026]/.test(char)) return BROAD_EM;
  if (/[ilj.,:;'`|!()[\] It\u00b7]/.test(char)) return NARROW_EM;
  return /[\p{Lu}&]/u.test(char) ? CAPITAL_EM : USUAL_EM;
}

/** An upper estimate of the width of `text` at a font size, both in the drawing's units. */
export const textWidthPx = (text: string, fontPx: number): number =>
  [...text].reduce((sum, char) => sum + emsOf(char), 0) * fontPx;

/** At most as wide as the room, the last character a mark that there was more. */
export function fittedText(text: string, roomPx: number, fontPx: number): string {
  const safe = safeText(text);
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

/** Folded at blanks to lines no wider than the room, `most` of them; a word or a last line too long for it is cut. */
export function foldedText(text: string, roomPx: number, fontPx: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of safeText(text).split(" ")) {
    const longer = `${lines.at(-1)} ${word}`;
    const isMore = lines.length > 0 && textWidthPx(longer, fontPx) <= roomPx;
    lines.splice(isMore ? -1 : lines.length, 1, isMore ? longer : word);
  }
  const last = lines.slice(most - 1).join(" ");
  return [...lines.slice(0, most - 1), ...(last === "" ? [] : [last])].map((line) =>
    fittedText(line, roomPx, fontPx),
  );
}
