/** Dates and zones as people read them, in English whatever the machine's locale. */

import { DateTime } from "luxon";

const inZone = (at: Date, zone: string): DateTime => DateTime.fromJSDate(at, { zone }).setLocale("en-US");

/** "Sunday 18 April 2027". */
export const dateText = (at: Date, zone: string): string => inZone(at, zone).toFormat("cccc d LLLL yyyy");
/** "17:10". */
export const clockText = (at: Date, zone: string): string => inZone(at, zone).toFormat("HH:mm");
/** "17:10:32". */
export const clockSecondsText = (at: Date, zone: string): string => inZone(at, zone).toFormat("HH:mm:ss");
/** "UTC+1", "UTC-03:30". */
export function offsetText(at: Date, zone: string): string {
  const minutes = inZone(at, zone).offset;
  if (minutes === 0) return "UTC";
  return `UTC${inZone(at, zone).toFormat("Z")}`;
}
/** True when both instants fall on one date of the zone. */
export const isSameDate = (a: Date, b: Date, zone: string): boolean =>
  inZone(a, zone).toISODate() === inZone(b, zone).toISODate();
