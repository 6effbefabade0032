/** `parseInstant` for thousands of times of one zone: the zone's rules are asked once for each hour of wall time. */

import { MS_PER_HOUR, MS_PER_MINUTE, MS_PER_SECOND } from "../base/units.ts";
import { type InstantResult, parseInstant } from "./zoneTime.ts";

/** A wall time without an offset, cut behind the hour. */
const WALL = /^(\d{4}-\d\d-\d\d[T ]\d\d):([0-5]\d)(?::([0-5]\d)(?:\.(\d{1,3}))?)?$/;

/** Gives what `parseInstant` gives for the same text, to the millisecond. */
export function instantReader(zone: string): (text: string) => InstantResult {
  /** Start of each hour in which the clock runs on evenly; null for one in which it does not, and for no date. */
  const hours = new Map<string, number | null>();
  return (text) => {
    const match = WALL.exec(text);
    if (match === null) return parseInstant(text, zone);
    const [, hour = "", minute, second = "0", fraction = "0"] = match;
    const known = hours.get(hour);
    const startMs = known === undefined ? evenHour(hour, zone) : known;
    if (known === undefined) hours.set(hour, startMs);
    if (startMs === null) return parseInstant(text, zone);
    const inHourMs = Number(minute) * MS_PER_MINUTE + Number(second) * MS_PER_SECOND;
    return {
      ok: true,
      at: new Date(startMs + inHourMs + Math.floor(Number(`0.${fraction}`) * MS_PER_SECOND)),
    };
  };
}

/** Both ends exist once and lie an hour apart: then no change of the clock falls between them. */
function evenHour(hour: string, zone: string): number | null {
  const from = parseInstant(`${hour}:00`, zone);
  const to = parseInstant(`${hour}:59:59.999`, zone);
  if (!from.ok || !to.ok || to.at.getTime() - from.at.getTime() !== MS_PER_HOUR - 1) return null;
  return from.at.getTime();
}
