/**
 * Air left above a height, against the tables of the US Standard Atmosphere 1976 (the same layers as ISO 2533:1975): 11 km
 * as in the published values of this project, above it from memory of the printed tables.
 */

import { expect, test } from "vitest";
import { GEOPOTENTIAL_RADIUS_M, STANDARD_PRESSURE_HPA } from "../../src/base/constants.ts";
import { standardAir } from "../../src/base/standardAir.ts";
import { airShareAbove, airSharePerM } from "../../src/sky/thinAir.ts";
import { compare } from "../support/compare.ts";

/** Geopotential height in km, pressure in hPa. */
const FEET_OF_LAYERS = [
  [0, 1013.25],
  [11, 226.32],
  [20, 54.749],
  [32, 8.6802],
  [47, 1.1091],
  [51, 0.66939],
  [71, 0.039564],
] as const;

const geometricM = (geopotentialM: number): number =>
  (GEOPOTENTIAL_RADIUS_M * geopotentialM) / (GEOPOTENTIAL_RADIUS_M - geopotentialM);

test("pressure at the feet of the layers", () => {
  compare(
    "standard air by layers",
    FEET_OF_LAYERS.map(([km, expected]) => ({
      name: `${km} km`,
      found: airShareAbove(geometricM(1000 * km)) * STANDARD_PRESSURE_HPA,
      expected,
    })),
  );
});

test("in the troposphere it is the plan's own air, below sea level too", () => {
  for (let heightM = -500; heightM <= 11_000; heightM += 250)
    expect(airShareAbove(heightM) * STANDARD_PRESSURE_HPA).toBeCloseTo(standardAir(heightM).pressureHPa, 9);
  expect(airShareAbove(-500)).toBeGreaterThan(1.06);
  expect(airShareAbove(-9000)).toBe(airShareAbove(-500));
});

test("above the layers it is within 5 % of the table: 1.8359e-3 hPa at 90 km, 3.2011e-4 at 100 km (geometric, from memory)", () => {
  expect((airShareAbove(90_000) * STANDARD_PRESSURE_HPA) / 1.8359e-3).toBeCloseTo(1, 1);
  expect((airShareAbove(100_000) * STANDARD_PRESSURE_HPA) / 3.2011e-4).toBeCloseTo(1, 1);
  for (const heightM of [120_000, 400_000, 1e9]) expect(airShareAbove(heightM)).toBe(0);
});

test("it falls all the way without a step, to nothing at 120 km", () => {
  let above = airShareAbove(-500);
  for (let heightM = -400; heightM < 120_000; heightM += 100) {
    const here = airShareAbove(heightM);
    expect(here).toBeGreaterThan(0);
    expect(here, `${heightM} m`).toBeLessThan(above);
    // 100 m are at most 2 % of a scale height of 5.4 km; at the very top what is left goes to 0.
    if (heightM < 110_000) expect(here / above, `${heightM} m`).toBeGreaterThan(0.975);
    above = here;
  }
  expect(airShareAbove(119_999)).toBeLessThan(1e-11);
});

test("per metre it is the fall of the share; a scale height at sea level is 8434 m", () => {
  // 287.05287 x 288.15 / 9.80665.
  expect(1 / airSharePerM(0)).toBeCloseTo(8434.5, 1);
  for (const heightM of [-400, 50, 8000, 15_000, 25_000, 40_000, 49_000, 60_000, 80_000, 90_000, 115_000]) {
    const fall = (airShareAbove(heightM - 1) - airShareAbove(heightM + 1)) / 2;
    expect(airSharePerM(heightM) / fall, `${heightM} m`).toBeCloseTo(1, 5);
  }
  expect(airSharePerM(120_000)).toBe(0);
});
