/**
 * Low sun and twilight against the Explanatory Supplement to the Astronomical Almanac (Seidelmann, ed., 1992; table 5-1 in
 * Vallado), with published levels and USNO Circular 171 (Janiczek & DeYoung 1987) as second opinions.
 */

import { expect, test } from "vitest";
import { SKY_STATES, type SkyState } from "../../src/site/types.ts";
import { daylight } from "../../src/sky/daylight.ts";
import { sunIlluminanceLx } from "../../src/sky/twilight.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Level {
  readonly h_deg: number;
  readonly lux: number;
}
interface Row {
  readonly h_min: number;
  readonly h_max: number;
  readonly l0: number;
  readonly l1: number;
  readonly l2: number;
  readonly l3: number;
  readonly stated_error_log10: number;
}
interface Truth {
  readonly polynomial: { readonly sun_values: Level[]; readonly sun_rows: Row[] };
  readonly circular_171: { readonly values: Level[] };
}

const truth = readTruth<Truth>("natural-illuminance");

const totalLx = (elevationDeg: number, sky: SkyState): number => {
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

/** log10 lux of a row as published. */
function published({ l0, l1, l2, l3 }: Row, elevationDeg: number): number {
  const x = elevationDeg / 90;
  return l0 + l1 * x + l2 * x ** 2 + l3 * x ** 3;
}

test("the rows as published do not meet, by 1 % at most; ours do, at the upper row's value", () => {
  const { sun_rows } = truth.polynomial;
  for (const [i, row] of sun_rows.entries()) {
    const below = sun_rows[i + 1];
    if (below === undefined) continue;
    const ratio = 10 ** (published(row, row.h_min) - published(below, row.h_min));
    expect(Math.abs(ratio - 1), `at ${row.h_min}`).toBeGreaterThan(0.002);
    expect(Math.abs(ratio - 1), `at ${row.h_min}`).toBeLessThan(0.0101);
    expect(sunIlluminanceLx(row.h_min)).toBeCloseTo(10 ** published(row, row.h_min), 9);
    expect(sunIlluminanceLx(row.h_min) / sunIlluminanceLx(row.h_min - 1e-9)).toBeCloseTo(1, 7);
  }
});

test("what makes them meet is half the stated error at most, and nothing but for 0.03 degree below each join", () => {
  for (const row of truth.polynomial.sun_rows) {
    let [offAtJoin, offElsewhere] = [0, 0];
    for (let i = 0; i < 20_000; i++) {
      // The more, the nearer the upper end.
      const belowDeg = (row.h_max - row.h_min) * ((i + 0.5) / 20_000) ** 2;
      const h = row.h_max - belowDeg;
      const off = Math.abs(Math.log10(sunIlluminanceLx(h)) - published(row, h));
      if (row.h_max < 90 && belowDeg < 0.03) offAtJoin = Math.max(offAtJoin, off);
      else offElsewhere = Math.max(offElsewhere, off);
    }
    expect(offAtJoin, `below ${row.h_max}`).toBeLessThan(row.stated_error_log10 / 2);
    expect(offElsewhere, `below ${row.h_max}`).toBeLessThan(1e-12);
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

test("sunset 400 to 760 lx, from the upper limb's to the centre's; civil twilight ends at 3.4 lx, nautical at 0.008", () => {
  // General tables of illuminance say 400, the rows 759 with the centre on the horizon.
  for (const lux of [sunIlluminanceLx(-0.8333), totalLx(-0.8333, "clear"), sunIlluminanceLx(0)]) {
    expect(lux).toBeGreaterThan(400);
    expect(lux).toBeLessThan(760);
  }
  expect(Math.abs(totalLx(-6, "clear") - 3.4)).toBeLessThan(0.05);
  expect(Math.abs(sunIlluminanceLx(-12) - 0.008)).toBeLessThan(0.0005);
});

test("starlight with airglow: 0.002 lx under every sky long after dusk", () => {
  compare(
    "night without a moon",
    SKY_STATES.map((state) => ({ name: state, found: totalLx(-30, state), expected: 0.002 })),
  );
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
