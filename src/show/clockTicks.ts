/** Clock times over a row of T-0s that stands one character per stretch. */

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

/** Round clock times of a window, ms, at least so far apart: inside it, the close left out. */
export function clockTimes({ opens, closes }: CutWindow["window"], zone: string, leastMs: number): number[] {
  const tickMinutes =
    TICK_MINUTES.find((minutes) => minutes * MS_PER_MINUTE >= leastMs) ?? TICK_MINUTES.at(-1)!;
  const tickMs = tickMinutes * MS_PER_MINUTE;
  const opensMs = opens.getTime();
  const offsetMs = utcOffsetMinutes(opens, zone) * MS_PER_MINUTE;
  const firstMs = Math.ceil((opensMs + offsetMs) / tickMs) * tickMs - offsetMs;
  const count = Math.max(0, Math.ceil((closes.getTime() - firstMs) / tickMs));
  return Array.from({ length: count }, (_, i) => firstMs + i * tickMs);
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
  for (const ms of clockTimes(window, zone, room)) {
    const column = Math.floor((ms - opensMs) / stretchMs);
    const text = clock.at(new Date(ms));
    if (column + text.length > columns) break;
    times = `${times.padEnd(column)}${text}`;
    marks = `${marks.padEnd(column)}|`;
  }
  return [times, marks];
}
