/** Wall time of a zone as people read it on a sheet. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";
import type { TimeSpan } from "./sunRisk.ts";

type Rounding = "nearest" | "before" | "after";

const ROUND: Readonly<Record<Rounding, (minutes: number) => number>> = {
  nearest: Math.round,
  before: Math.floor,
  after: Math.ceil,
};

/** "19:40" in `zone`. */
export function wallClock(at: Date, zone: string, rounding: Rounding = "nearest"): string {
  const rounded = ROUND[rounding](at.getTime() / MS_PER_MINUTE) * MS_PER_MINUTE;
  const local = new Date(rounded + utcOffsetMinutes(new Date(rounded), zone) * MS_PER_MINUTE);
  return local.toISOString().slice(11, 16);
}

/** "17:42-18:10", rounded outward so that the whole span lies inside. */
export const wallSpan = (span: TimeSpan, zone: string): string =>
  `${wallClock(span.from, zone, "before")}-${wallClock(span.to, zone, "after")}`;

/** "17:42-18:10", rounded inward so that all of it can be counted on; null when less than a minute is left. */
export function wallSpanInside(span: TimeSpan, zone: string): string | null {
  const from = wallClock(span.from, zone, "after");
  const to = wallClock(span.to, zone, "before");
  return span.to.getTime() - span.from.getTime() < MS_PER_MINUTE ? null : `${from}-${to}`;
}

/** "2027-04-18" in `zone`. */
export function localDate(at: Date, zone: string): string {
  return new Date(at.getTime() + utcOffsetMinutes(at, zone) * MS_PER_MINUTE).toISOString().slice(0, 10);
}
