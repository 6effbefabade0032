/** The air between a camera and a vehicle: cases worked by hand, the same air summed in pieces, what must hold of any line. */

import { expect, test } from "vitest";
import { airBetween, sightAir } from "../../src/sky/airBetween.ts";
import { airMassKastenYoung1989 } from "../../src/sky/atmosphere.ts";
import { airSharePerM } from "../../src/sky/thinAir.ts";
import { compare } from "../support/compare.ts";

const SEA = { cameraHeightM: 0, elevationDeg: 90, rangeM: 200_000 };

const clear = sightAir("clear", 0, 1013.25);

test("straight up it is one air mass, exp(-0.21); 4 km along the sea 4 / 8.43 of it; slanting that of Kasten and Young", () => {
  expect(airBetween(SEA, clear).transmittance / Math.exp(-0.21)).toBeCloseTo(1, 3);
  const level = airBetween({ ...SEA, elevationDeg: 0, rangeM: 4000 }, clear);
  expect(level.transmittance / Math.exp((-0.21 * 4) / 8.4345)).toBeCloseTo(1, 3);
  for (const elevationDeg of [5, 10, 30, 60]) {
    const depth = -Math.log(airBetween({ ...SEA, elevationDeg, rangeM: 2e6 }, clear).transmittance);
    expect(depth / 0.21 / airMassKastenYoung1989(elevationDeg), `${elevationDeg}`).toBeCloseTo(1, 1);
  }
});

test("added up in 20,000 pieces it is the same, 3 m to 2000 km, near the horizon and straight up, in haze and on a hill", () => {
  const samples = [];
  for (const sky of ["clear", "haze"] as const)
    for (const cameraHeightM of [0, 2500])
      for (const elevationDeg of [0, 0.3, 2, 10, 45, 90])
        for (const rangeM of [3, 4000, 30_000, 300_000, 2e6]) {
          const line = { cameraHeightM, elevationDeg, rangeM };
          const air = sightAir(sky, 0, 1013.25);
          const name = `${sky} ${JSON.stringify(line)}`;
          samples.push({
            name,
            found: -Math.log(airBetween(line, air).transmittance),
            expected: inPieces(line, air),
          });
        }
  compare("air along a line", samples);
});

test("farther off less arrives and more of the sky lies before it, all of it once the air is passed", () => {
  for (const elevationDeg of [-0.1, 0, 3, 40]) {
    let before = { transmittance: 1, skyShare: 0 };
    for (let rangeM = 3; rangeM < 1e6; rangeM *= 1.3) {
      const here = airBetween({ cameraHeightM: 20, elevationDeg, rangeM }, clear);
      // Once little air is left to come, the points tell up to half a per cent more or less of the depth.
      expect(here.transmittance).toBeLessThanOrEqual(before.transmittance * 1.01);
      expect(here.skyShare).toBeGreaterThanOrEqual(before.skyShare * 0.99);
      expect(here.skyShare).toBeGreaterThan(0);
      expect(here.skyShare).toBeLessThanOrEqual(1);
      before = here;
    }
  }
  expect(airBetween({ ...SEA, rangeM: 150_000 }, clear).skyShare).toBe(1);
  expect(airBetween({ ...SEA, rangeM: 0 }, clear)).toEqual({ transmittance: 1, skyShare: 0 });
  const space = airBetween({ cameraHeightM: 200_000, elevationDeg: 10, rangeM: 1e6 }, clear);
  expect(space).toEqual({ transmittance: 1, skyShare: 0 });
});

test("haze of turbidity 6 adds 0.34 in its 1250 m, one of 2 takes from the air's own; under clouds it is as clear", () => {
  const haze = sightAir("haze", 0, 1013.25);
  // The excess of the tables at 30 degrees: ln(83,874 / 42,475) / 1.9943 = 0.3412.
  expect(haze.hazeDepth).toBeCloseTo(0.3412, 3);
  const level = { ...SEA, elevationDeg: 0, rangeM: 4000 };
  const ratio = airBetween(level, haze).transmittance / airBetween(level, clear).transmittance;
  expect(-Math.log(ratio) / ((0.3412 * 4) / 1.25)).toBeCloseTo(1, 2);
  expect(sightAir("overcast", 0, 1013.25)).toEqual(clear);
  const thin = sightAir({ state: "haze", linkeTurbidity: 2 }, 0, 1013.25);
  expect(thin.hazeDepth).toBe(0);
  expect(thin.airDepth).toBeLessThan(0.21);
  expect(thin.airDepth).toBeGreaterThan(0.1);
});

/** Extinction along a line, summed. */
function inPieces(
  { cameraHeightM, elevationDeg, rangeM }: typeof SEA,
  { airDepth, hazeDepth }: ReturnType<typeof sightAir>,
): number {
  const pieces = 20_000;
  const cameraM = 6_371_008.8 + cameraHeightM;
  const [level, up] = [Math.cos((elevationDeg * Math.PI) / 180), Math.sin((elevationDeg * Math.PI) / 180)];
  let sum = 0;
  for (let i = 0; i < pieces; i++) {
    // Cubes crowd at the camera.
    const [near, far] = [rangeM * (i / pieces) ** 3, rangeM * ((i + 1) / pieces) ** 3];
    const middleM = (near + far) / 2;
    const heightM = Math.sqrt((middleM * level) ** 2 + (cameraM + middleM * up) ** 2) - 6_371_008.8;
    sum += (far - near) * (airDepth * airSharePerM(heightM) + (hazeDepth * Math.exp(-heightM / 1250)) / 1250);
  }
  return sum;
}
