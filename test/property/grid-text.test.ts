/** Whatever is written for UTM or MGRS: a place on the grid or a fault that says something, soon. */

import fc from "fast-check";
import { expect, it } from "vitest";
import type { GridResult } from "../../src/site/gridZones.ts";
import { parseMgrs } from "../../src/site/mgrsText.ts";
import { parseUtm } from "../../src/site/utmText.ts";

const SEED = 20_250_101;

function check(result: GridResult): void {
  if (!result.ok) {
    expect(result.fault.found).not.toMatch(/NaN|undefined|Infinity/);
    expect((result.fault.accepted ?? "").length).toBeGreaterThan(5);
    return;
  }
  const { latitude, longitude } = result.place;
  expect(latitude >= -80 && latitude <= 84).toBe(true);
  expect(longitude >= -180 && longitude <= 180).toBe(true);
}

const piece = fc.constantFrom(
  "29",
  "1",
  "60",
  "0",
  "S",
  "N",
  "T",
  "X",
  "north",
  "south",
  "LR",
  "II",
  " ",
  ",",
  ".",
);
const number = fc.double({ min: -1e8, max: 1e8, noNaN: true }).map(String);
const digits = fc.stringMatching(/^\d{0,12}$/);
const texts = fc.oneof(
  fc.string(),
  fc.array(fc.oneof(piece, number, digits), { maxLength: 8 }).map((parts) => parts.join("")),
  fc
    .tuple(fc.nat(62), piece, number, number)
    .map(([zone, word, east, north]) => `${zone}${word} ${east} ${north}`),
  fc.tuple(fc.nat(62), fc.stringMatching(/^[A-Z]{3}$/), digits).map((parts) => parts.join("")),
);

it("reads or refuses any text", () => {
  fc.assert(
    fc.property(texts, (text) => {
      check(parseUtm(text));
      check(parseMgrs(text));
    }),
    { seed: SEED, numRuns: 3000 },
  );
});

it("reads what lies on the grid, whatever zone, band and metre", () => {
  const south = fc.boolean();
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      south,
      fc.nat(330_000),
      fc.nat(7_500_000),
      (zone, isSouth, east, up) => {
        // Within the zone at the equator, and so within 100 km of it nearly everywhere: the rest is refused for that.
        const text = `${zone} ${isSouth ? "south" : "north"} ${335_000 + east} ${isSouth ? 10_000_000 - up : up}`;
        const read = parseUtm(text);
        check(read);
        if (up < 6_600_000 && Math.abs(east - 165_000) < 160_000) expect(read.ok, text).toBe(true);
      },
    ),
    { seed: SEED, numRuns: 1000 },
  );
});

it("is soon done with a long one", () => {
  for (const long of [" ", "1", "1 ", ",", "26T 1 "]) {
    const text = `26T 3${long.repeat(200_000)}x`;
    const start = performance.now();
    expect([parseUtm(text).ok, parseMgrs(text).ok]).toEqual([false, false]);
    expect(performance.now() - start).toBeLessThan(500);
  }
});
