/** Round clock times are round on the wall of the zone, whatever its offset. */

import { expect, it } from "vitest";
import { roundTimesMs } from "../../src/plan/roundTimes.ts";

const window = { opens: new Date("2027-04-18T10:07:00Z"), closes: new Date("2027-04-18T12:15:00Z") };
const utc = (zone: string, minutes: number): string[] =>
  roundTimesMs(window, zone, minutes * 60_000).map((ms) => new Date(ms).toISOString().slice(11, 16));

it.each([
  // Wall time is UTC+5:45: 16:00, 16:30, 17:00, 17:30, and 18:00, which is the close.
  ["Asia/Kathmandu", 20, ["10:15", "10:45", "11:15", "11:45", "12:15"]],
  // UTC-2:30 in April: 8:00 and 9:00.
  ["America/St_Johns", 45, ["10:30", "11:30"]],
  ["UTC", 45, ["11:00", "12:00"]],
  // UTC+9: of 100 minutes it makes two hours, and of 20:00 and 21:00 only the first is a whole number of those.
  ["Asia/Tokyo", 100, ["11:00"]],
])("%s, %i minutes apart or more", (zone, minutes, wanted) => {
  expect(utc(zone, minutes)).toEqual(wanted);
});
