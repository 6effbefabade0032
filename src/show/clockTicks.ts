/** Round clock times over a window: for any axis, and over a row of T-0s that stands one character per stretch. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { makeClock } from "../plan/clock.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";

/** Minutes from one clock time to the next. */
const TICK_MINUTES = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880] as const;
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
  const tickMs = tickSpacingMs(leastMs);
  const offsetMs = utcOffsetMinutes(opens, zone) * MS_PER_MINUTE;
  const firstMs = Math.ceil((opens.getTime() + offsetMs) / tickMs) * tickMs - offsetMs;
  const count = Math.max(0, Math.floor((closes.getTime() - firstMs) / tickMs) + 1);
  return Array.from({ length: count }, (_, i) => {
    const ms = firstMs + i * tickMs;
    return { ms, text: clock.at(new Date(ms)) };
  });
}

function tickSpacingMs(leastMs: number): number {
  const minutes = TICK_MINUTES.find((one) => one * MS_PER_MINUTE >= leastMs);
  if (minutes !== undefined) return minutes * MS_PER_MINUTE;
  // Longer than any: whole numbers of the largest.
  const largestMs = TICK_MINUTES.at(-1)! * MS_PER_MINUTE;
  return Math.ceil(leastMs / largestMs) * largestMs;
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
