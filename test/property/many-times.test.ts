/** Times read by the thousand are those read one by one, also where clocks jump, and by half an hour. */

import fc from "fast-check";
import { expect, it } from "vitest";
import { instantReader } from "../../src/site/manyTimes.ts";
import { parseInstant } from "../../src/site/zoneTime.ts";
import { FIXED } from "../support/seeded.ts";

const ZONES = [
  "UTC",
  "Atlantic/Azores",
  "Australia/Lord_Howe",
  "America/St_Johns",
  "Asia/Kathmandu",
  "Pacific/Apia",
];
const two = (value: number): string => String(value).padStart(2, "0");

/** Dates around changes of the clock among them, and one that a zone left out. */
const DATES = [
  "2027-03-28",
  "2027-10-31",
  "2027-04-04",
  "2027-10-03",
  "2027-03-14",
  "2027-11-07",
  "2011-12-30",
  "2027-06-20",
  "2027-02-29",
];

it("for any wall time, with and without seconds, and text that is none", () => {
  const readers = new Map(ZONES.map((zone) => [zone, instantReader(zone)]));
  fc.assert(
    fc.property(
      fc.constantFrom(...ZONES),
      fc.constantFrom(...DATES),
      fc.integer({ min: 0, max: 24 }),
      fc.integer({ min: 0, max: 60 }),
      fc.constantFrom("", ":00", ":07", ":59.9", ":59.999", ":60", "Z", "+01:00", ".5"),
      fc.constantFrom("T", " "),
      (zone, date, hour, minute, rest, gap) => {
        const text = `${date}${gap}${two(hour)}:${two(minute)}${rest}`;
        expect(readers.get(zone)!(text)).toEqual(parseInstant(text, zone));
      },
    ),
    { ...FIXED, numRuns: 3000 },
  );
});
