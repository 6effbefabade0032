/** What a run of days must say: days without a window, and where the zone's clocks change. */

import { offsetName } from "../plan/clock.ts";
import type { DailyWindows } from "../site/dailyWindows.ts";

export function runNotes({ skipped, clockChanges }: DailyWindows, zone: string): string[] {
  return [
    ...skipped.map(({ date, found, next, code }) => {
      const why =
        code === "E_GAP" ? "the clocks skip" : code === "E_TWICE" ? "happens twice:" : "cannot be read:";
      return `${date} is not ranked: ${code === "E_TWICE" ? `${found} happens twice` : `${why} ${found}`}${next === null ? "" : `; to have it too, ${next} (--window)`}`;
    }),
    ...clockChanges.map(
      ({ date, fromOffsetMinutes, toOffsetMinutes }) =>
        `${zone} goes from ${offsetName(fromOffsetMinutes)} to ${offsetName(toOffsetMinutes)} before the window of ${date}: the wall time is kept, so against the sun the window moves by ${movedText(toOffsetMinutes - fromOffsetMinutes)}`,
    ),
  ];
}

/** Clocks set forward bring the same wall time earlier. */
function movedText(minutes: number): string {
  const size = Math.abs(minutes);
  const amount = size % 60 === 0 ? `${size / 60} h` : `${size} min`;
  return `${amount} ${minutes > 0 ? "earlier" : "later"}`;
}
