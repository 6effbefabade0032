/**
 * Low sun and twilight against the Explanatory Supplement to the Astronomical Almanac (Seidelmann, ed., 1992; table 5-1 in
 * Vallado), with published levels and USNO Circular 171 (Janiczek & DeYoung 1987) as second opinions.
 */

import { expect, test } from "vitest";
import { daylight } from "../../src/sky/daylight.ts";
import { sunIlluminanceLx } from "../../src/sky/twilight.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Level {
  readonly h_deg: number;
  readonly lux: number;
}
interface Truth {
  readonly polynomial: { readonly sun_values: Level[]; readonly sun_rows: { h_min: number }[] };
  readonly circular_171: { readonly values: Level[] };
}

const truth = readTruth<Truth>("natural-illuminance");

const totalLx = (elevationDeg: number, sky: "clear" | "overcast"): number => {
  const light = daylight(elevationDeg, sky);
  return (
    light.directNormalLx * Math.max(0, Math.sin((elevationDeg * Math.PI) / 180)) + light.diffuseHorizontalLx
  );
};

test("the polynomials' values from 90 to -18 degrees", () => {
  compare(
    "twilight polynomials",
    truth.polynomial.sun_values.map(({ h_deg, lux }) => ({
      name: `h ${h_deg}`,
      found: sunIlluminanceLx(h_deg),
      expected: lux,
    })),
  );
});

test("the rows join with steps of 1 % or less, as their authors' rounding leaves them", () => {
  for (const { h_min } of truth.polynomial.sun_rows.filter((row) => row.h_min > -18)) {
    const ratio = sunIlluminanceLx(h_min) / sunIlluminanceLx(h_min - 1e-9);
    expect(ratio, `at ${h_min}`).toBeGreaterThan(0.99);
    expect(ratio, `at ${h_min}`).toBeLessThan(1.0105);
  }
});

test("sunset and the end of civil twilight lie in the AMS Glossary of Meteorology's ranges", () => {
  // "585-410 lx at sunset, 3.5-2 lx at the end of civil twilight" under a clear sky.
  expect(totalLx(-0.8333, "clear")).toBeGreaterThan(410);
  expect(totalLx(-0.8333, "clear")).toBeLessThan(585);
  expect(totalLx(-6, "clear")).toBeGreaterThan(2);
  expect(totalLx(-6, "clear")).toBeLessThan(3.5);
});

test("general tables: sunset 400 lx clear and 40 lx overcast, end of nautical twilight 0.008 lx, night 0.002 lx", () => {
  compare("general tables of illuminance", [
    { name: "sunset, clear", found: Math.log2(totalLx(-0.8333, "clear")), expected: Math.log2(400) },
    { name: "sunset, overcast", found: Math.log2(totalLx(-0.8333, "overcast")), expected: Math.log2(40) },
    { name: "-12 degrees", found: Math.log2(totalLx(-12, "clear")), expected: Math.log2(0.008) },
    { name: "deep night", found: Math.log2(totalLx(-50, "clear")), expected: Math.log2(0.002) },
  ]);
});

test("the blended light of a clear dusk is the polynomial's plus the night sky's 0.002 lx", () => {
  const down = truth.polynomial.sun_values.filter(({ h_deg }) => h_deg <= -0.8333);
  compare(
    "clear dusk",
    down.map(({ h_deg, lux }) => ({
      name: `h ${h_deg}`,
      found: totalLx(h_deg, "clear"),
      expected: lux + 0.002,
    })),
  );
});

test("USNO Circular 171, a second opinion: never more than 0.55 stop apart from 90 down to -10 degrees", () => {
  // Its refraction ends at -5/6 degree; it is 46 % above the polynomials at sunset and 12 % below them at -6.
  const rows = truth.circular_171.values.filter(({ h_deg }) => h_deg >= -10);
  compare(
    "Circular 171 against polynomials",
    rows.map(({ h_deg, lux }) => ({
      name: `h ${h_deg}`,
      found: Math.log2(sunIlluminanceLx(h_deg)),
      expected: Math.log2(lux),
    })),
  );
  compare(
    "Circular 171 against clear daylight",
    rows.map(({ h_deg, lux }) => ({
      name: `h ${h_deg}`,
      found: Math.log2(totalLx(h_deg, "clear")),
      expected: Math.log2(lux),
    })),
  );
});
