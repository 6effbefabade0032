/** Where the T-0s of a window stand on a chart. */

import { clamp } from "../../base/units.ts";
import type { Box } from "./boxes.ts";
import { textWidthPx } from "./fitText.ts";
import { cut } from "./paths.ts";

/** Where a chart's time runs, in the drawing's units; plain numbers, so that a page can carry it as JSON. */
export interface TimeFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Of the whole drawing. */
  readonly sheetWidth: number;
  readonly sheetHeight: number;
  /** Opening and closing, UTC. */
  readonly fromMs: number;
  readonly toMs: number;
}

export interface MsSpan {
  readonly fromMs: number;
  readonly toMs: number;
}

export const msSpan = ({ from, to }: { readonly from: Date; readonly to: Date }): MsSpan => ({
  fromMs: from.getTime(),
  toMs: to.getTime(),
});

/** Opening and closing of a window. */
export const windowSpan = ({ opens, closes }: { readonly opens: Date; readonly closes: Date }): MsSpan => ({
  fromMs: opens.getTime(),
  toMs: closes.getTime(),
});

/** The x of a T-0. */
export const xOf = ({ left, width, fromMs, toMs }: TimeFrame, ms: number): number =>
  cut(left + ((ms - fromMs) / (toMs - fromMs)) * width);

/** A stretch of time as a box, cut at the window and at least `leastPx` wide; null with none of it in the window. */
export function spanBox(
  frame: TimeFrame,
  { fromMs, toMs }: MsSpan,
  y: number,
  height: number,
  leastPx = 0,
): Box | null {
  if (toMs < frame.fromMs || fromMs > frame.toMs || toMs < fromMs) return null;
  const from = xOf(frame, Math.max(fromMs, frame.fromMs));
  const to = xOf(frame, Math.min(toMs, frame.toMs));
  const width = cut(Math.max(to - from, Math.min(leastPx, frame.width)));
  const right = frame.left + frame.width;
  // Widened about its middle, but never past the ends.
  const x = Math.min(Math.max((from + to - width) / 2, frame.left), right - width);
  return { x: cut(x), y: cut(y), width, height: cut(height) };
}

/** Marks of an axis reach so far out of the frame. */
export const TICK_PX = 4;

/** Between a word and the edge of the sheet. */
const EDGE_PX = 3;

/** The middle of a word that wants to stand at `x`, kept on the sheet. */
export function placedIn({ sheetWidth }: TimeFrame, x: number, text: string, fontPx: number): number {
  const half = textWidthPx(text, fontPx) / 2 + EDGE_PX;
  return cut(clamp(x, half, sheetWidth - half));
}
