/**
 * Places in a text: from an offset to file, line, column and the line itself.
 * Columns count UTF-16 units, as editors do. What a terminal makes of wide characters is left out.
 */

import type { FilePlace } from "../base/problem.ts";

/** Longest source line shown whole, and how far into a longer one a column may lie before the line is left out. */
const LINE_SHOWN_CHARS = 200;
const LINE_KEPT_CHARS = 1000;
const CHARS_AFTER_VALUE = 40;

/**
 * Characters that could act on a terminal or turn the text round (C0, DEL, C1, line separators, bidi overrides), and those that
 * no XML takes (halves of surrogate pairs, U+FFFE, U+FFFF): names go into drawings.
 */
export const UNSAFE_CHARS = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069\p{Cs}\ufffe\uffff]/u;
const UNSAFE_CHARS_ALL = new RegExp(UNSAFE_CHARS, "gu");

/** The text with every unsafe character replaced, one for one, so that columns stay. A tab becomes a space. */
export function safeText(text: string): string {
  return text.replace(UNSAFE_CHARS_ALL, (char) => (char === "\t" ? " " : "\ufffd"));
}

/** A short, safe form of a value for "found ...". */
export function shortText(text: string, maxChars = 60): string {
  const safe = safeText(text.slice(0, maxChars + 1));
  return safe.length > maxChars ? `${safe.slice(0, maxChars - 1)}…` : safe;
}

/** Gives the place of a stretch of one text. */
export type Places = (offset: number, lengthChars: number) => FilePlace;

/** Gives places in `text`, which was read from `file`. */
export function placesIn(text: string, file: string): Places {
  const starts = lineStarts(text);
  return (offset, lengthChars) => {
    const line = lineOf(starts, Math.min(Math.max(offset, 0), text.length));
    const start = starts[line] ?? 0;
    const end = (starts[line + 1] ?? text.length + 1) - 1;
    const source = text.slice(start, end).replace(/\r$/, "");
    const column = Math.min(offset - start, source.length) + 1;
    const length = Math.max(1, Math.min(lengthChars, source.length - column + 1));
    const sourceLine = shownLine(source, column - 1 + length);
    return { file, line: line + 1, column, sourceLine, lengthChars: length };
  };
}

/** A long line loses its tail, never its head: the caret must stay under its column. */
function shownLine(source: string, endOfValue: number): string | null {
  if (source.length <= LINE_SHOWN_CHARS) return safeText(source);
  if (endOfValue > LINE_KEPT_CHARS) return null;
  const kept = Math.max(LINE_SHOWN_CHARS, endOfValue + CHARS_AFTER_VALUE);
  return kept >= source.length ? safeText(source) : `${safeText(source.slice(0, kept))}…`;
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
}

/** Index of the last line that starts at or before `offset`. */
function lineOf(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
