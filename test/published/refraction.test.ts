/** Refraction from the true altitude: Saemundsson 1986 as in Meeus 1998, eq. 16.4 (10 degrees C, 1010 hPa). */

import { expect, test } from "vitest";
import { refractionDeg } from "../../src/sky/atmosphere.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Truth {
  readonly saemundsson: { readonly R_arcmin: { readonly h_true_deg: number; readonly R: number }[] };
  readonly bennett: { readonly R_arcmin: { readonly h_app_deg: number; readonly R: number }[] };
  readonly scaling: { readonly check: { P: number; T_C: number; h_airless_deg: number; R_deg: number } };
}

const truth = readTruth<Truth>("refraction-atmosphere");
const MEEUS_AIR = { pressureHPa: 1010, temperatureC: 10 };
const liftArcmin = (trueDeg: number): number => 60 * refractionDeg(trueDeg, MEEUS_AIR);

test("the table by true altitude comes out, -1 to 45 degrees", () => {
  const rows = truth.saemundsson.R_arcmin.filter(({ h_true_deg }) => h_true_deg < 90);
  compare(
    "refraction by true altitude",
    rows.map(({ h_true_deg, R }) => ({
      name: `h ${h_true_deg}`,
      found: liftArcmin(h_true_deg),
      expected: R,
    })),
  );
});

test("at the zenith the formula's small negative value is held at nothing", () => {
  const zenith = truth.saemundsson.R_arcmin.find(({ h_true_deg }) => h_true_deg === 90)!;
  expect(zenith.R).toBeLessThan(0);
  expect(liftArcmin(90)).toBe(0);
});

test("pressure and temperature scale it as in SPA (Reda & Andreas 2003, eq. 42)", () => {
  const { P, T_C, h_airless_deg, R_deg } = truth.scaling.check;
  const found = refractionDeg(h_airless_deg, { pressureHPa: P, temperatureC: T_C });
  compare("SPA worked refraction", [{ name: "820 hPa, 11 C", found, expected: R_deg }]);
});

test("Bennett's formula by apparent altitude agrees as the book states (1982; Meeus 1998, p. 106: within 4 arc seconds)", () => {
  const rows = truth.bennett.R_arcmin.filter(({ h_app_deg }) => h_app_deg >= 0.5 && h_app_deg < 90);
  compare(
    "refraction by apparent altitude",
    rows.map(({ h_app_deg, R }) => ({
      name: `apparent ${h_app_deg}`,
      found: liftArcmin(h_app_deg - R / 60),
      expected: R,
    })),
  );
});
