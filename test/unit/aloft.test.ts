/** Light at a vehicle that has left the ground: cases worked by hand, the ground's own light, continuity. */

import { describe, expect, test } from "vitest";
import { type AloftInput, daylightAloft } from "../../src/sky/aloft.ts";
import { refractionDeg } from "../../src/sky/atmosphere.ts";
import { daylightThrough, type Sky } from "../../src/sky/daylight.ts";
import { earthShadowHeightM } from "../../src/sky/earthShadow.ts";
import { airShareAbove } from "../../src/sky/thinAir.ts";
import { makeRandom } from "../support/random.ts";

const AIR = { pressureHPa: 1013.25, temperatureC: 15 };
const SKIES: readonly Sky[] = [
  "clear",
  "haze",
  "bright-cloud",
  "overcast",
  { state: "haze", linkeTurbidity: 2 },
  { state: "haze", linkeTurbidity: 4 },
  { state: "haze", linkeTurbidity: 10 },
];

const aloft = (airlessElevationDeg: number, heightM: number, changed: Partial<AloftInput> = {}) =>
  daylightAloft({
    airlessElevationDeg,
    heightM,
    groundHeightM: 0,
    groundAir: AIR,
    orbitalFactor: 1,
    groundReflectance: 0.2,
    sky: "clear",
    ...changed,
  });

describe("a sun 6 degrees down", () => {
  test("sends 84.2 klx to a vehicle at 60 km", () => {
    // Lowest point: 6431.009 km x cos 6 (0.9945219) - 6371.009 km = 24.770 km, 24.674 km geopotential, 221.32 K there:
    // 54.749 hPa x (216.65 / 221.324)^34.1632 = 26.41 hPa, a share of 0.02606. Twice 37.9196 horizontal air masses of it
    // are 1.9764; from 60 km (0.2196 hPa, 2.17e-4) onward 8.9 x 2.17e-4 = 0.0019 less: 1.9745.
    // 127,500 lx x exp(-0.21 x 1.9745) = 127,500 x 0.66057 = 84,220 lx; the whole disc is up, the edge is 7.8 degrees down.
    const found = aloft(-6, 60_000);
    expect(found.isSunlit).toBe(true);
    expect(found.airMass).toBeCloseTo(1.9745, 3);
    expect(found.directNormalLx / 84_220).toBeCloseTo(1, 3);
  });

  test("leaves one at 15 km in the dark, and just over the edge of the shadow lights it as good as not at all", () => {
    expect(aloft(-6, 15_000)).toMatchObject({ isSunlit: false, directNormalLx: 0 });
    const grazed = aloft(-6, 22_000);
    expect(grazed.isSunlit).toBe(true);
    // Some 74 air masses: exp(-15.5) of 127,500 lx.
    expect(grazed.directNormalLx).toBeGreaterThan(0);
    expect(grazed.directNormalLx).toBeLessThan(0.03);
  });
});

/** Depression of the sun and the edge for the refracted upper limb in km (geometry of a sphere, tabulated outside this project). */
const EDGES = [
  [2, 0.35],
  [3, 2.49],
  [4, 6.57],
  [5, 12.6],
  [6, 20.59],
  [8, 42.5],
  [10, 72.45],
  [12, 110.6],
  [15, 183.8],
  [18, 277.1],
] as const;

test("a vehicle comes into the sun at the edge of the Earth's shadow, over high ground counted from there", () => {
  for (const [downDeg, km] of EDGES) {
    for (const groundHeightM of [0, 1500]) {
      const at = (heightKm: number) => aloft(-downDeg, groundHeightM + 1000 * heightKm, { groundHeightM });
      expect(at(km - 0.06).isSunlit, `${downDeg} down, under ${km} km`).toBe(false);
      expect(at(km + 0.06).isSunlit, `${downDeg} down, over ${km} km`).toBe(true);
    }
    const edgeM = earthShadowHeightM(-downDeg)!;
    expect(aloft(-downDeg, edgeM - 1).isSunlit).toBe(false);
    expect(aloft(-downDeg, edgeM + 10).isSunlit).toBe(true);
  }
});

test("largest depressions still lit: 100 km to 10.086 + 1.4 degrees, 400 km to 19.793 + 1.4", () => {
  for (const [km, mostDeg] of [
    [10, 3.208],
    [50, 7.155],
    [100, 10.086],
    [400, 19.793],
  ] as const) {
    expect(aloft(-mostDeg - 1.398, 1000 * km).isSunlit, `${km} km`).toBe(true);
    expect(aloft(-mostDeg - 1.402, 1000 * km).isSunlit, `${km} km`).toBe(false);
  }
});

test("on the ground it is the plan's own light: beam to 1e-9 (haze whose beam is nothing: to 0.01 lx), sky and ground", () => {
  const random = makeRandom(7);
  for (let i = 0; i < 2000; i++) {
    const sky = SKIES[i % SKIES.length]!;
    const airlessElevationDeg = random.between(-8, 89);
    const groundHeightM = random.between(0, 3000);
    const groundAir = { pressureHPa: random.between(700, 1040), temperatureC: random.between(-30, 45) };
    const orbitalFactor = random.between(0.967, 1.034);
    const found = aloft(airlessElevationDeg, groundHeightM, { groundHeightM, groundAir, orbitalFactor, sky });
    const apparentElevationDeg = airlessElevationDeg + refractionDeg(airlessElevationDeg, groundAir);
    const { pressureHPa } = groundAir;
    const ground = daylightThrough(
      { airlessElevationDeg, apparentElevationDeg, orbitalFactor, pressureHPa, heightM: groundHeightM },
      sky,
    );
    const totalLx =
      ground.directNormalLx * Math.max(0, Math.sin((apparentElevationDeg * Math.PI) / 180)) +
      ground.diffuseHorizontalLx;
    const name = `${JSON.stringify(sky)}, ${airlessElevationDeg}`;
    const capLx = typeof sky === "string" && sky !== "haze" ? 0 : 0.01;
    expect(Math.abs(found.directNormalLx - ground.directNormalLx), name).toBeLessThanOrEqual(
      Math.max(1e-9 * ground.directNormalLx, capLx),
    );
    expect(found.isSunlit, name).toBe(apparentElevationDeg > -0.2666);
    expect(found.skyLx, name).toBe(ground.diffuseHorizontalLx);
    expect(Math.abs(found.belowLx - 0.2 * totalLx), name).toBeLessThanOrEqual(1e-9 * totalLx);
  }
});

test("climbing, the beam grows and ends as that of space; the sky goes out", () => {
  for (const sky of ["clear", "haze", { state: "haze", linkeTurbidity: 2 }] as const)
    for (const elevationDeg of [60, 10, 2, 0, -0.5, -1, -2, -6]) {
      let [mostLx, skyLx] = [0, Number.POSITIVE_INFINITY];
      for (let heightM = 0; heightM < 130_000; heightM = Math.max(heightM * 1.01, heightM + 20)) {
        const here = aloft(elevationDeg, heightM, { sky });
        // Between first light and the sun in a straight line it may fall by a few per cent again, or by a lux.
        const slackLx = elevationDeg < -0.5 ? Math.max(1.1, 0.06 * mostLx) : 1e-9 * mostLx;
        const name = `${JSON.stringify(sky)}, ${elevationDeg} at ${heightM} m`;
        expect(here.directNormalLx, name).toBeGreaterThanOrEqual(mostLx - slackLx);
        expect(here.skyLx, name).toBeLessThanOrEqual(skyLx);
        mostLx = Math.max(mostLx, here.directNormalLx);
        skyLx = here.skyLx;
      }
      expect(skyLx).toBe(0);
      expect(mostLx / 127_500).toBeCloseTo(1, 3);
    }
});

test("a sun that sets at the vehicle passes the horizontal without a step", () => {
  for (const sky of ["clear", "haze"] as const)
    for (const heightM of [0, 300, 12_000, 60_000]) {
      let above = aloft(1, heightM, { sky });
      for (let elevationDeg = 0.999; elevationDeg > -3; elevationDeg -= 0.001) {
        const here = aloft(elevationDeg, heightM, { sky });
        expect(here.directNormalLx).toBeLessThanOrEqual(above.directNormalLx * (1 + 1e-12));
        // A thousandth of a degree: 0.6 % of the disc, 0.011 air masses; its last sliver goes faster.
        if (here.directNormalLx > 1) expect(here.directNormalLx / above.directNormalLx).toBeGreaterThan(0.9);
        above = here;
      }
    }
});

test("haze stays below: at 1250 m a low sun has lost 1/e of it, at 10 km none is felt; under clouds there is no beam anywhere", () => {
  const lost = (heightM: number) =>
    Math.log(aloft(20, heightM).directNormalLx / aloft(20, heightM, { sky: "haze" }).directNormalLx);
  expect(lost(1250) / lost(0)).toBeCloseTo(Math.exp(-1), 3);
  expect(lost(10_000)).toBeLessThan(0.001);
  for (const sky of ["bright-cloud", "overcast"] as const)
    for (const heightM of [0, 5000, 100_000])
      expect(aloft(40, heightM, { sky })).toMatchObject({ directNormalLx: 0, isSunlit: true });
});

test("at 11 km, sun 30 degrees up: 22 % of the air above, the rest throws light up", () => {
  // Ground: sky 11,760 lx, sum on the horizontal 53,697 lx (tabulated, sun 30 degrees apparent); geometric 11 km: 0.22403.
  const airlessDeg = 30 - refractionDeg(30 - 0.029, AIR);
  const share = airShareAbove(11_000);
  const found = aloft(airlessDeg, 11_000);
  expect(found.skyLx / (11_760 * share)).toBeCloseTo(1, 4);
  expect(found.belowLx / (0.2 * 53_697 + 11_760 * (1 - share))).toBeCloseTo(1, 4);
  expect(found.airMass).toBeCloseTo(1.9943 * share, 2);
});
