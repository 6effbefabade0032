/** Filters by optical density: transmittance 10^-D, stops D / log10 2. */

import { expect, test } from "vitest";
import { midToneLuminance } from "../../src/exposure/exposureValue.ts";
import { densityStops } from "../../src/exposure/scales.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly D: number;
  readonly T: number;
  readonly stops_exact: number;
}
const { rows } = readTruth<{ neutral_density: { rows: Row[] } }>("exposure").neutral_density;

test("stops of every density", () => {
  compare(
    "density in stops",
    rows.map(({ D, stops_exact }) => ({ name: `D ${D}`, found: densityStops(D), expected: stops_exact })),
  );
});

test("a filter divides the light by what it lets through", () => {
  const bare = { stop: 8, exposureS: 1 / 500, speedIso: 100, lossStops: 0 };
  compare(
    "density as transmittance",
    rows.map(({ D, T }) => ({
      name: `D ${D}`,
      found: midToneLuminance(bare) / midToneLuminance({ ...bare, lossStops: densityStops(D) }),
      expected: T,
    })),
  );
});

test("density 3.0 is a factor of 1000, 9.966 stops and not 10", () => {
  expect(2 ** densityStops(3)).toBeCloseTo(1000, 6);
  expect(densityStops(3)).toBeCloseTo(9.966, 3);
});
