/** Round clock times: on the wall clock, both ends counted, never closer than asked. */

import { expect, it } from "vitest";
import { clockTicks } from "../../src/show/clockTicks.ts";

const HOUR_MS = 3_600_000;
const windowOf = (opens: string, hours: number): { opens: Date; closes: Date } => {
  const from = new Date(opens);
  return { opens: from, closes: new Date(from.getTime() + hours * HOUR_MS) };
};
const texts = (opens: string, hours: number, leastMs: number, zone = "UTC"): string[] =>
  clockTicks(windowOf(opens, hours), zone, leastMs).map(({ text }) => text);

it("are the next round step of what is asked, from opening to closing", () => {
  expect(texts("2027-04-18T17:10Z", 1, 16 * 60_000)).toEqual(["17:30", "18:00"]);
  expect(texts("2027-04-18T17:00Z", 1, 11 * 60_000)).toEqual(["17:00", "17:15", "17:30", "17:45", "18:00"]);
  expect(texts("2027-04-18T17:01Z", 0.5, 59 * 60_000)).toEqual([]);
});

it("are round on the wall clock of a zone off the hour", () => {
  expect(texts("2027-04-18T17:00Z", 1.5, HOUR_MS / 2, "Asia/Kathmandu")).toEqual(
    ["23:00", "23:30", "00:00"].map((time, i) => `${i < 2 ? "Sun" : "Mon"} ${time}`),
  );
});

it("are whole numbers of two days where that is still too close", () => {
  const ticks = clockTicks(windowOf("2027-04-01T00:00Z", 7 * 24), "UTC", 50 * HOUR_MS);
  expect(ticks.length).toBe(2);
  expect(ticks[1]!.ms - ticks[0]!.ms).toBe(96 * HOUR_MS);
});
