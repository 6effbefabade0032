/** Relative optical air mass: Kasten & Young 1989, Appl. Opt. 28, 4735-4738, by apparent elevation. */

import { expect, test } from "vitest";
import { airMassKastenYoung1989 } from "../../src/sky/atmosphere.ts";
import { absoluteAirMass } from "../../src/sky/daylight.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

const { rows } = readTruth<{ rows: { h_deg: number; m: number }[] }>("air-mass");

test("air mass from the zenith to the horizon", () => {
  compare(
    "Kasten-Young air mass",
    rows.map(({ h_deg, m }) => ({ name: `h ${h_deg}`, found: airMassKastenYoung1989(h_deg), expected: m })),
  );
});

test("the formula's printed checks: zenith distance 80 and 89.9", () => {
  expect(airMassKastenYoung1989(10)).toBeCloseTo(5.586, 3);
  expect(airMassKastenYoung1989(0.1)).toBeCloseTo(36.467, 3);
});

test("a thinner column of air counts in proportion to its pressure", () => {
  // m P / 1013.25 (ISO 2533 sea level); P at 3000 m from the standard atmosphere's table.
  expect(absoluteAirMass({ apparentElevationDeg: 30, pressureHPa: 701.085 })).toBeCloseTo(
    (1.9943 * 701.085) / 1013.25,
    4,
  );
});
