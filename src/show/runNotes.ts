/** What a run of days must say: days without a window, and where the zone's clocks change. */

import { offsetName } from "../plan/clock.ts";
import type { DailyWindows, SkippedDay } from "../site/dailyWindows.ts";

export function runNotes({ skipped, clockChanges }: DailyWindows, zone: string): string[] {
  return [
    ...skipped.map((day) => `${day.date} has no window: ${reasonFor(day)}`),
    ...clockChanges.map(
      ({ date, fromOffsetMinutes, toOffsetMinutes }) =>
        `${zone} goes from ${offsetName(fromOffsetMinutes)} to ${offsetName(toOffsetMinutes)} before the window of ${date}: the wall time is kept, so against the sun the window moves by ${movedText(toOffsetMinutes - fromOffsetMinutes)}`,
    ),
  ];
}

function reasonFor({ code, found, accepted, next }: SkippedDay): string {
  const instead = next === null ? "" : `; as a --window of its own, ${next}`;
  if (code === "E_GAP") return `the clocks skip ${found}${instead}`;
  return code === "E_TWICE" ? `${found} happens twice${instead}` : `found ${found}, accepted ${accepted}`;
}

/** Clocks set forward bring the same wall time earlier. */
function movedText(minutes: number): string {
  const size = Math.abs(minutes);
  const amount = size % 60 === 0 ? `${size / 60} h` : `${size} min`;
  return `${amount} ${minutes > 0 ? "earlier" : "later"}`;
}
