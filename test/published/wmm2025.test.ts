/**
 * The World Magnetic Model 2025: the twelve test values published with it (NOAA/NCEI and BGS, December 2024), and its
 * coefficients summed here from the definition of the potential.
 */

import { expect, it, test } from "vitest";
import { magneticField } from "../../src/site/magneticField.ts";
import { compare } from "../support/compare.ts";
import { type Coefficient, fieldFromPotential } from "../support/fieldFromPotential.ts";
import { makeRandom } from "../support/random.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly year: number;
  readonly height_km: number;
  readonly lat_deg: number;
  readonly lon_deg: number;
  readonly H_nT: number;
  readonly D_deg: number;
}

const { test_rows, coefficients } = readTruth<{
  readonly test_rows: readonly Row[];
  readonly coefficients: readonly Coefficient[];
}>("wmm2025");

/** Of a year with its fraction, by the days that the year has: 2027.5 is noon of the 183rd of 365. */
function instantOf(year: number): Date {
  const [fromMs, toMs] = [0, 1].map((later) => Date.UTC(Math.floor(year) + later, 0, 1)) as [number, number];
  return new Date(fromMs + (year % 1) * (toMs - fromMs));
}
const placeOf = (row: Row) => ({
  latitudeDeg: row.lat_deg,
  longitudeDeg: row.lon_deg > 180 ? row.lon_deg - 360 : row.lon_deg,
  heightM: row.height_km * 1000,
});

test("the twelve published test values", () => {
  const rows = test_rows.map((row) => ({
    name: `${row.year} ${row.lat_deg} ${row.lon_deg} ${row.height_km} km`,
    field: magneticField(placeOf(row), instantOf(row.year))!,
    row,
  }));
  compare(
    "WMM2025 declination",
    rows.map(({ name, field, row }) => ({ name, found: field.declinationDeg, expected: row.D_deg })),
  );
  compare(
    "WMM2025 horizontal intensity",
    rows.map(({ name, field, row }) => ({ name, found: field.horizontalNT, expected: row.H_nT })),
  );
});

test("the slow sum meets the published values itself", () => {
  for (const row of test_rows) {
    const [east, north] = fieldFromPotential(coefficients, row.year, placeOf(row));
    expect(Math.abs(Math.hypot(east, north) - row.H_nT)).toBeLessThan(0.06);
    expect(Math.abs((Math.atan2(east, north) * 180) / Math.PI - row.D_deg)).toBeLessThan(0.0051);
  }
});

test("anywhere, at any time of its years, at any height of a pad: the potential's slope", () => {
  const random = makeRandom(2025);
  const samples = Array.from({ length: 120 }, (_, i) => {
    const place = {
      latitudeDeg: random.between(-89, 89),
      longitudeDeg: random.between(-180, 180),
      heightM: random.between(-400, 9000),
    };
    const year = random.between(2025, 2030);
    const [east, north] = fieldFromPotential(coefficients, year, place);
    const field = magneticField(place, instantOf(year))!;
    // Near the magnetic poles a tenth of a nT turns the needle by more than is printed: what is compared is across the field.
    const apartDeg = field.declinationDeg - (Math.atan2(east, north) * 180) / Math.PI;
    const acrossNT = Math.hypot(east, north) * Math.sin((apartDeg * Math.PI) / 180);
    return {
      name: `${i}`,
      found: acrossNT,
      expected: 0,
      along: field.horizontalNT - Math.hypot(east, north),
    };
  });
  compare("WMM2025 anywhere, across the field", samples);
  for (const { along } of samples) expect(Math.abs(along)).toBeLessThan(0.06);
});

it("has no field outside its years", () => {
  const place = { latitudeDeg: 45, longitudeDeg: -27, heightM: 0 };
  const has = (text: string): boolean => magneticField(place, new Date(text)) !== null;
  expect([has("2024-12-31T23:59:59Z"), has("2025-01-01T00:00:00Z")]).toEqual([false, true]);
  expect([has("2029-12-31T23:59:59Z"), has("2030-01-01T00:00:00Z")]).toEqual([true, false]);
  expect(magneticField(place, new Date(Number.NaN))).toBeNull();
});
