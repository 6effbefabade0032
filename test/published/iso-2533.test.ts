/** The standard atmosphere, ISO 2533:1975, by geopotential height. */

import { expect, test } from "vitest";
import { standardAir } from "../../src/base/standardAir.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly geopotential_m: number;
  readonly T_K: number;
  readonly P_hPa: number;
}

const { rows } = readTruth<{ isa_1976: { rows: Row[] } }>("refraction-atmosphere").isa_1976;
/** Geometric height of a geopotential one; nominal radius 6,356,766 m (ISO 2533:1975). */
const geometricM = (geopotentialM: number): number =>
  (6_356_766 * geopotentialM) / (6_356_766 - geopotentialM);
/** The table's last rows stand in the stratosphere, above what the program needs: it holds the tropopause there. */
const troposphere = rows.filter(({ geopotential_m }) => geopotential_m < 11_000);

test("pressure up to 8 km", () => {
  compare(
    "ISO 2533 pressure",
    troposphere.map(({ geopotential_m, P_hPa }) => ({
      name: `${geopotential_m} m`,
      found: standardAir(geometricM(geopotential_m)).pressureHPa,
      expected: P_hPa,
    })),
  );
});

test("temperature up to 8 km", () => {
  compare(
    "ISO 2533 temperature",
    troposphere.map(({ geopotential_m, T_K }) => ({
      name: `${geopotential_m} m`,
      found: standardAir(geometricM(geopotential_m)).temperatureC + 273.15,
      expected: T_K,
    })),
  );
});

test("above 11 km the air of 11 km is held", () => {
  expect(standardAir(30_000)).toEqual(standardAir(11_000));
  expect(standardAir(11_000).pressureHPa).toBeGreaterThan(226.32);
  expect(standardAir(11_000).pressureHPa).toBeLessThan(228);
});
