/** Round clock times of a window, and how they stand over a row of T-0s with one character per stretch. */

import { makeClock } from "../plan/clock.ts";
import { roundTimesMs } from "../plan/roundTimes.ts";

/** Blanks between two times. */
const GAP = 2;

/** A window cut into stretches. */
export interface CutWindow {
  readonly window: { readonly opens: Date; readonly closes: Date };
  /** Beginning of each stretch, and the end of the last. */
  readonly edges: readonly Date[];
}

/** Round clock times with room between them, and a mark over the stretch each falls in. */
export function clockLines({ edges, window }: CutWindow, zone: string): [string, string] {
  const clock = makeClock(zone, window.opens, window.closes);
  const columns = edges.length - 1;
  const opensMs = window.opens.getTime();
  const stretchMs = (window.closes.getTime() - opensMs) / columns;
  const room = (clock.at(window.opens).length + GAP) * stretchMs;
  let times = "";
  let marks = "";
  for (const ms of roundTimesMs(window, zone, room)) {
    const column = Math.floor((ms - opensMs) / stretchMs);
    const text = clock.at(new Date(ms));
    if (column + text.length > columns) break;
    times = `${times.padEnd(column)}${text}`;
    marks = `${marks.padEnd(column)}|`;
  }
  return [times, marks];
}
