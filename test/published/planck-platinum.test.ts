/** Luminance of black bodies: Planck's law with the CIE 1924 V at 1 nm, and the candela's former definition by platinum. */

import { expect, test } from "vitest";
import { planckLuminance } from "../../src/light/planck.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

const { rows } = readTruth<{ rows: { T_K: number; luminance_cd_m2: number }[] }>("planck-luminance");

test("1200 to 6500 K within 0.1 % of the 1 nm integral", () => {
  compare(
    "black body luminance",
    rows.map(({ T_K, luminance_cd_m2 }) => ({
      name: `${T_K} K`,
      found: planckLuminance(T_K),
      expected: luminance_cd_m2,
    })),
  );
});

test("freezing platinum is 60 cd/cm2 (9th CGPM 1948), reached at 2042.39 K", () => {
  compare("platinum", [
    { name: "2042.39 K", found: planckLuminance(2042.39), expected: 600_000 },
    { name: "2042 K", found: planckLuminance(2042), expected: 598_590 },
  ]);
});

test("the former definition's temperature of 2042 K gives 60 cd/cm2 within 0.3 %", () => {
  expect(Math.abs(planckLuminance(2042) / 600_000 - 1)).toBeLessThan(0.003);
});

test("d ln L / d ln T falls from 16.2 to 8.4", () => {
  const slopeAt = (temperatureK: number): number =>
    Math.log(planckLuminance(temperatureK * 1.001) / planckLuminance(temperatureK / 1.001)) /
    (2 * Math.log(1.001));
  compare("black body slope", [
    { name: "1500 K", found: slopeAt(1500), expected: 16.2 },
    { name: "2000 K", found: slopeAt(2000), expected: 12.4 },
    { name: "2500 K", found: slopeAt(2500), expected: 10.0 },
    { name: "3000 K", found: slopeAt(3000), expected: 8.4 },
  ]);
});

test("a sun of 5772 K gives 125.4 klx above the air (6.7999e-5 sr at 1 au)", () => {
  const solidAngleSr = Math.PI * Math.sin((959.63 / 3600) * (Math.PI / 180)) ** 2;
  expect((planckLuminance(5772) * solidAngleSr) / 1000).toBeCloseTo(125.4, 1);
});
