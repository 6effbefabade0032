/** Round clock times over a window: for any axis, and over a row of T-0s that stands one character per stretch. */

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

/** A round clock time. */
export interface ClockTick {
  readonly ms: number;
  /** "19:40", with date or offset where the window needs them. */
  readonly text: string;
}

/** Round clock times from opening to closing, both counted, at least `leastMs` apart. */
export function clockTicks(
  { opens, closes }: CutWindow["window"],
  zone: string,
  leastMs: number,
): ClockTick[] {
  const clock = makeClock(zone, opens, closes);
  return roundTimesMs({ opens, closes }, zone, leastMs).map((ms) => ({
    ms,
    text: clock.at(new Date(ms)),
  }));
}

/** Round clock times with room between them, and a mark over the stretch each falls in. */
export function clockLines({ edges, window }: CutWindow, zone: string): [string, string] {
  const columns = edges.length - 1;
  const opensMs = window.opens.getTime();
  const stretchMs = (window.closes.getTime() - opensMs) / columns;
  const longest = makeClock(zone, window.opens, window.closes).at(window.opens).length;
  let times = "";
  let marks = "";
  for (const { ms, text } of clockTicks(window, zone, (longest + GAP) * stretchMs)) {
    const column = Math.floor((ms - opensMs) / stretchMs);
    if (column + text.length > columns) break;
    times = `${times.padEnd(column)}${text}`;
    marks = `${marks.padEnd(column)}|`;
  }
  return [times, marks];
}
