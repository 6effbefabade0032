/** Round clock times of a zone inside a stretch of time. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";

/** Minutes from one clock time to the next. */
const STEP_MINUTES = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880] as const;

/** Inside a window, both ends counted, as near together as `leastMs` allows, ms; the zone's offset is that at the opening. */
export function roundTimesMs(
  { opens, closes }: { readonly opens: Date; readonly closes: Date },
  zone: string,
  leastMs: number,
): number[] {
  const stepMs = stepMsFor(leastMs);
  const offsetMs = utcOffsetMinutes(opens, zone) * MS_PER_MINUTE;
  const firstMs = Math.ceil((opens.getTime() + offsetMs) / stepMs) * stepMs - offsetMs;
  const count = Math.max(0, Math.floor((closes.getTime() - firstMs) / stepMs) + 1);
  return Array.from({ length: count }, (_, i) => firstMs + i * stepMs);
}

function stepMsFor(leastMs: number): number {
  const minutes = STEP_MINUTES.find((step) => step * MS_PER_MINUTE >= leastMs);
  if (minutes !== undefined) return minutes * MS_PER_MINUTE;
  // Longer than any: whole numbers of the largest.
  const largestMs = STEP_MINUTES.at(-1)! * MS_PER_MINUTE;
  return Math.ceil(leastMs / largestMs) * largestMs;
}
