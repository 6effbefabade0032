/** Wall times of a window as people read them: "19:40", or "Tue 19:40" where the window holds more than one date. */

import { MS_PER_DAY, MS_PER_MINUTE, MS_PER_SECOND } from "../base/units.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";

export interface TimeSpan {
  readonly from: Date;
  readonly to: Date;
}

export type Rounding = "nearest" | "before" | "after";

export interface Clock {
  readonly zone: string;
  at(at: Date, rounding?: Rounding): string;
  /** "17:42-18:10", rounded outward so that the whole span lies inside. */
  span(span: TimeSpan): string;
  /** "17:42-18:10", rounded inward so that all of it can be counted on; null when less than a minute is left. */
  spanInside(span: TimeSpan): string | null;
}

const ROUND: Readonly<Record<Rounding, (minutes: number) => number>> = {
  nearest: Math.round,
  before: Math.floor,
  after: Math.ceil,
};
const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] as const;

/** A clock for the times between `from` and `to`. Where the zone's offset changes between them, each time carries its own. */
export function makeClock(zone: string, from: Date, to: Date): Clock {
  // An end at midnight belongs to the day before.
  const hasDates = localDate(from, zone) !== localDate(new Date(to.getTime() - 1), zone);
  const hasTwoOffsets = utcOffsetMinutes(from, zone) !== utcOffsetMinutes(to, zone);
  const at = (time: Date, rounding: Rounding = "nearest"): string => {
    const rounded = new Date(ROUND[rounding](time.getTime() / MS_PER_MINUTE) * MS_PER_MINUTE);
    const local = inZone(rounded, zone);
    const day = hasDates ? `${DAYS[local.getUTCDay()]} ` : "";
    const offset = hasTwoOffsets ? ` ${offsetName(utcOffsetMinutes(rounded, zone))}` : "";
    return `${day}${local.toISOString().slice(11, 16)}${offset}`;
  };
  return {
    zone,
    at,
    span: ({ from: start, to: end }) => `${at(start, "before")}-${at(end, "after")}`,
    spanInside: ({ from: start, to: end }) => {
      const isEmpty = Math.ceil(start.getTime() / MS_PER_MINUTE) >= Math.floor(end.getTime() / MS_PER_MINUTE);
      return isEmpty ? null : `${at(start, "after")}-${at(end, "before")}`;
    },
  };
}

/** "UTC", "UTC+1", "UTC-3:30". */
export function offsetName(offsetMinutes: number): string {
  if (offsetMinutes === 0) return "UTC";
  const size = Math.abs(offsetMinutes);
  const minutes = size % 60 === 0 ? "" : `:${String(size % 60).padStart(2, "0")}`;
  return `UTC${offsetMinutes < 0 ? "-" : "+"}${Math.floor(size / 60)}${minutes}`;
}

/** A date whose UTC fields are the wall time of the zone. */
const inZone = (at: Date, zone: string): Date =>
  new Date(at.getTime() + utcOffsetMinutes(at, zone) * MS_PER_MINUTE);

/** "2027-04-18" in `zone`. */
export const localDate = (at: Date, zone: string): string => inZone(at, zone).toISOString().slice(0, 10);

/** A window as `--window` takes it: wall time, or UTC where the zone's offset changes inside. */
export function isoInterval({ opens, closes }: { opens: Date; closes: Date }, zone: string): string {
  const hasTwoOffsets = utcOffsetMinutes(opens, zone) !== utcOffsetMinutes(closes, zone);
  const text = (at: Date): string =>
    hasTwoOffsets ? at.toISOString() : inZone(at, zone).toISOString().slice(0, 19).replace(/:00$/, "");
  return `${text(opens)}/${text(closes)}`;
}

/** "17:10:00/19:40:00", or "17:10:00/PT90000S" for a day and more: a window as a time of every day. */
export function dailyTimes({ opens, closes }: { opens: Date; closes: Date }, zone: string): string {
  const [from, to] = [inZone(opens, zone), inZone(closes, zone)];
  const time = (wall: Date): string => wall.toISOString().slice(11, 19);
  // By the wall clock: where it changes inside the window the elapsed time says something else.
  const wallMs = to.getTime() - from.getTime();
  const seconds = Math.round((closes.getTime() - opens.getTime()) / MS_PER_SECOND);
  return `${time(from)}/${wallMs > 0 && wallMs <= MS_PER_DAY ? time(to) : `PT${seconds}S`}`;
}
