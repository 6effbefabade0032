/** Round clock times of a zone inside a stretch of time. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";

/** Minutes from one clock time to the next. */
const STEP_MINUTES = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880] as const;

/** From `fromMs` to before `toMs`, as close together as `leastMs` allows; the zone's offset is that at the beginning. */
export function roundTimesMs(fromMs: number, toMs: number, zone: string, leastMs: number): number[] {
  const minutes = STEP_MINUTES.find((step) => step * MS_PER_MINUTE >= leastMs) ?? STEP_MINUTES.at(-1)!;
  const stepMs = minutes * MS_PER_MINUTE;
  const offsetMs = utcOffsetMinutes(new Date(fromMs), zone) * MS_PER_MINUTE;
  const firstMs = Math.ceil((fromMs + offsetMs) / stepMs) * stepMs - offsetMs;
  const times: number[] = [];
  for (let ms = firstMs; ms < toMs; ms += stepMs) times.push(ms);
  return times;
}
