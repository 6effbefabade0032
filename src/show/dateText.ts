/** Dates and zones as people read them, in English whatever the machine's locale. */

import { DateTime } from "luxon";
import { MS_PER_MINUTE } from "../base/units.ts";
import { offsetName } from "../plan/clock.ts";

const inZone = (at: Date, zone: string): DateTime => DateTime.fromJSDate(at, { zone }).setLocale("en-US");

/** "Sunday 18 April 2027". */
export const dateText = (at: Date, zone: string): string => inZone(at, zone).toFormat("cccc d LLLL yyyy");
/** "17:10", to the nearest minute. */
export const clockText = (at: Date, zone: string): string =>
  inZone(new Date(Math.round(at.getTime() / MS_PER_MINUTE) * MS_PER_MINUTE), zone).toFormat("HH:mm");
/** "UTC+1", "UTC-3:30". */
export const offsetText = (at: Date, zone: string): string => offsetName(inZone(at, zone).offset);
/** True when both instants fall on one date of the zone. */
export const isSameDate = (a: Date, b: Date, zone: string): boolean =>
  inZone(a, zone).toISODate() === inZone(b, zone).toISODate();
/** "Sun 18 Apr 2027". */
export const shortDateText = (at: Date, zone: string): string => inZone(at, zone).toFormat("ccc d LLL yyyy");
/** "Sun 18 Apr": where the year is told elsewhere. */
export const dayText = (at: Date, zone: string): string => inZone(at, zone).toFormat("ccc d LLL");
/** "2027". */
export const yearText = (at: Date, zone: string): string => inZone(at, zone).toFormat("yyyy");
/** "Sun 18 Apr 2027 17:10-19:40", with the date of the end where it is another, and offsets where they differ; dates by `dateOf`. */
export function windowRangeText(
  { opens, closes }: { opens: Date; closes: Date },
  zone: string,
  dateOf: (at: Date, zone: string) => string = shortDateText,
): string {
  const isOneDate = isSameDate(opens, closes, zone);
  const offsets = [offsetText(opens, zone), offsetText(closes, zone)];
  const [from, to] = offsets[0] === offsets[1] ? ["", ""] : offsets.map((offset) => ` ${offset}`);
  const end = `${isOneDate ? "" : `${dateOf(closes, zone)} `}${clockText(closes, zone)}${to}`;
  return `${dateOf(opens, zone)} ${clockText(opens, zone)}${from}${isOneDate ? "-" : " to "}${end}`;
}
