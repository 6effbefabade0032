/**
 * The hazy sky: irradiance by Ineichen & Perez 2002, Solar Energy 73(3) 151-157, times the luminous efficacies of Perez
 * et al. 1990, Solar Energy 44(5) 271-289. The rows were computed from the papers' formulas: sea level, 1364 W/m2, 2 cm of
 * water, air mass of Kasten & Young 1989.
 */

import { expect, test } from "vitest";
import { exposureValue } from "../../src/exposure/exposureValue.ts";
import { directVerticalLx, fillLx } from "../../src/light/body.ts";
import { daylight } from "../../src/sky/daylight.ts";
import { efficacyPerez1990 } from "../../src/sky/turbidSky.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

/** Elevation, direct normal lx, diffuse horizontal lx. */
const TURBIDITY_5: readonly (readonly [number, number, number])[] = [
  [10, 8736, 5882],
  [15, 21_681, 10_487],
  [20, 33_413, 13_589],
  [30, 52_603, 18_398],
  [40, 63_610, 21_151],
  [50, 70_489, 22_965],
  [60, 75_953, 22_153],
  [75, 79_590, 22_574],
  [88, 80_671, 22_672],
];
/** The same, and EV at ISO 100 on a front-lit vertical face over ground of 0.2. */
const TURBIDITY_6: readonly (readonly [number, number, number, number])[] = [
  [10, 5289, 5493, 11.75],
  [20, 25_703, 14_376, 13.72],
  [30, 42_475, 19_747, 14.31],
  [40, 54_949, 23_509, 14.54],
  [50, 62_279, 25_702, 14.56],
  [60, 67_038, 27_126, 14.44],
];

interface Coefficients {
  readonly a: number[];
  readonly b: number[];
  readonly c: number[];
  readonly d: number[];
}
interface Efficacies {
  readonly coefficients: { bins_epsilon: number[]; diffuse: Coefficients; direct: Coefficients };
  readonly check: {
    "bin6_epsilon_2.8_4.5": { diffuse: number; direct: number };
    "bin8_epsilon_gt_6.2": { diffuse: number; direct: number };
  };
}
const efficacies = readTruth<Efficacies>("luminous-efficacy");

const haze = (linkeTurbidity: number) => ({ state: "haze", linkeTurbidity }) as const;

test("Linke turbidity 5: beam and sky from 10 to 88 degrees", () => {
  compare(
    "turbid sky, Linke 5",
    TURBIDITY_5.flatMap(([h, direct, diffuse]) => [
      { name: `beam ${h}`, found: daylight(h, haze(5)).directNormalLx, expected: direct },
      { name: `sky ${h}`, found: daylight(h, haze(5)).diffuseHorizontalLx, expected: diffuse },
    ]),
  );
});

test("Linke turbidity 6, which is what `haze` means: beam and sky from 10 to 60 degrees", () => {
  compare(
    "turbid sky, Linke 6",
    TURBIDITY_6.flatMap(([h, direct, diffuse]) => [
      { name: `beam ${h}`, found: daylight(h, "haze").directNormalLx, expected: direct },
      { name: `sky ${h}`, found: daylight(h, "haze").diffuseHorizontalLx, expected: diffuse },
    ]),
  );
  expect(daylight(37, "haze")).toEqual(daylight(37, haze(6)));
});

test("Linke turbidity 6: EV on a front-lit vertical face", () => {
  compare(
    "turbid sky, vertical face",
    TURBIDITY_6.map(([h, , , ev]) => {
      const light = { ...daylight(h, "haze"), sunElevationDeg: h, groundReflectance: 0.2, floodlightLx: 0 };
      return {
        name: `h ${h}`,
        found: exposureValue({ illuminanceLx: directVerticalLx(light) + fillLx(light) }),
        expected: ev,
      };
    }),
  );
});

/** Beam that puts a sky of 100 W/m2 into a clearness of `epsilon` at a zenith distance (the paper's eq. 1). */
function beamFor(epsilon: number, zenithDeg: number): number {
  const kappa = 1.041 * ((zenithDeg * Math.PI) / 180) ** 3;
  return 100 * (epsilon * (1 + kappa) - kappa - 1);
}

test("the efficacies' two checks: zenith distance 30, 2 cm of water, brightness 0.1", () => {
  const bin6 = efficacyPerez1990(beamFor(3.5, 30), 100, 30, 0.1);
  const bin8 = efficacyPerez1990(beamFor(8, 30), 100, 30, 0.1);
  const { check } = efficacies;
  compare("Perez efficacy checks", [
    { name: "bin 6 sky", found: bin6.diffuseLmW, expected: check["bin6_epsilon_2.8_4.5"].diffuse },
    { name: "bin 6 beam", found: bin6.directLmW, expected: check["bin6_epsilon_2.8_4.5"].direct },
    { name: "bin 8 sky", found: bin8.diffuseLmW, expected: check["bin8_epsilon_gt_6.2"].diffuse },
    { name: "bin 8 beam", found: bin8.directLmW, expected: check["bin8_epsilon_gt_6.2"].direct },
  ]);
});

test("every coefficient of table 4 is in its place", () => {
  const { bins_epsilon, diffuse, direct } = efficacies.coefficients;
  const conditions = [20, 45, 70].flatMap((zenithDeg) =>
    [0.05, 0.3].map((brightness) => ({ zenithDeg, brightness })),
  );
  compare(
    "Perez table 4",
    bins_epsilon.flatMap((from, bin) =>
      conditions.flatMap(({ zenithDeg, brightness }) => {
        const zRad = (zenithDeg * Math.PI) / 180;
        const found = efficacyPerez1990(beamFor(from + 0.02, zenithDeg), 100, zenithDeg, brightness);
        const sky =
          diffuse.a[bin]! +
          2 * diffuse.b[bin]! +
          diffuse.c[bin]! * Math.cos(zRad) +
          diffuse.d[bin]! * Math.log(brightness);
        const beam =
          direct.a[bin]! +
          2 * direct.b[bin]! +
          direct.c[bin]! * Math.exp(5.73 * zRad - 5) +
          direct.d[bin]! * brightness;
        return [
          { name: `bin ${bin + 1} sky at ${zenithDeg}`, found: found.diffuseLmW, expected: sky },
          {
            name: `bin ${bin + 1} beam at ${zenithDeg}`,
            found: found.directLmW,
            expected: Math.max(0, beam),
          },
        ];
      }),
    ),
  );
});
