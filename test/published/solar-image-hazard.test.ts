/** What the sun's image does behind a lens: radiance of the disc through a lossless lens (radiometry, computed). */

import { expect, test } from "vitest";
import { sunImageMm, sunImageWCm2 } from "../../src/exposure/sharpness.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Truth {
  readonly rows: { N: number; W_cm2_at_1000: number; W_cm2_at_1361: number }[];
  readonly image_diameter_mm: { f_mm: number; d: number }[];
  readonly power_W_at_1000: { f_mm: number; N: number; P: number }[];
  readonly od5_f8_W_cm2: number;
}
const truth = readTruth<Truth>("solar-image");
/** Meeus 1998, ch. 55, at 1 au. */
const SEMIDIAMETER_DEG = 959.63 / 3600;

test("irradiance of the image from f/1.4 to f/32, at the ground and above the air", () => {
  compare(
    "sun image irradiance",
    truth.rows.flatMap(({ N, W_cm2_at_1000, W_cm2_at_1361 }) => [
      { name: `f/${N} 1000`, found: sunImageWCm2(1000, N, SEMIDIAMETER_DEG), expected: W_cm2_at_1000 },
      { name: `f/${N} 1361`, found: sunImageWCm2(1361, N, SEMIDIAMETER_DEG), expected: W_cm2_at_1361 },
    ]),
  );
});

test("diameter of the image from 50 to 2000 mm", () => {
  compare(
    "sun image diameter",
    truth.image_diameter_mm.map(({ f_mm, d }) => ({
      name: `${f_mm} mm`,
      found: sunImageMm(f_mm, SEMIDIAMETER_DEG),
      expected: d,
    })),
  );
});

test("irradiance times area is the power the lens took in", () => {
  compare(
    "sun image power",
    truth.power_W_at_1000.map(({ f_mm, N, P }) => ({
      name: `${f_mm} mm f/${N}`,
      found:
        sunImageWCm2(1000, N, SEMIDIAMETER_DEG) * Math.PI * (sunImageMm(f_mm, SEMIDIAMETER_DEG) / 20) ** 2,
      expected: P,
    })),
  );
});

test("a filter of density 5 leaves 0.00018 W/cm2 at f/8", () => {
  expect(sunImageWCm2(1000, 8, SEMIDIAMETER_DEG) * 1e-5).toBeCloseTo(truth.od5_f8_W_cm2, 6);
});
