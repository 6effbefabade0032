/** A matt cylinder in any attitude: cases worked by hand from Lambert's law, and sums over 100,000 facets. */

import { expect, test } from "vitest";
import { fromAzimuthElevation, type Vec3 } from "../../src/base/vector.ts";
import { bodySpan } from "../../src/light/body.ts";
import { type SurroundingLight, tiltedBody } from "../../src/light/tiltedBody.ts";
import { compare } from "../support/compare.ts";
import { makeRandom } from "../support/random.ts";
import { facetByFacet } from "../support/tiltedFacets.ts";

const SUN_ALONE: SurroundingLight = { directNormalLx: 80_000, skyLx: 0, belowLx: 0, floodlightLx: 0 };
const FILL_ALONE: SurroundingLight = { directNormalLx: 0, skyLx: 12_000, belowLx: 4000, floodlightLx: 100 };
const EAST: Vec3 = [1, 0, 0];
const NORTH: Vec3 = [0, 1, 0];
const UP: Vec3 = [0, 0, 1];
const DOWN: Vec3 = [0, 0, -1];
/** A reflectance at which luminance is illuminance in numbers. */
const UNIT = Math.PI;

test("lying, the sun in the zenith: from below all in shadow, from the side half lit, from above full", () => {
  const seenFrom = (toObserver: Vec3) => tiltedBody({ axis: NORTH, toSun: UP, toObserver }, SUN_ALONE, UNIT);
  // F(180) = 0, F(90) = 1/4, F(0) = pi/4; the brightest facet at the side is the one on top.
  const under = seenFrom(DOWN);
  expect(under.meanLx).toBeCloseTo(0, 6);
  expect([under.phaseDeg, under.litShare]).toEqual([180, 0]);
  const beside = seenFrom(EAST);
  expect(beside.meanLx).toBeCloseTo(20_000, 6);
  expect(beside.brightestCdM2).toBeCloseTo(80_000, 6);
  expect(beside.darkestCdM2).toBeCloseTo(0, 6);
  expect(beside.litShare).toBeCloseTo(0.5, 12);
  const over = seenFrom(UP);
  expect(over.meanLx).toBeCloseTo(20_000 * Math.PI, 6);
  expect([over.phaseDeg, over.endOnDeg, over.litShare]).toEqual([0, 90, 1]);
});

test("lying under a sky of 12,000 lx over 4000 lx from below, with 100 lx of floodlights", () => {
  const seenFrom = (toObserver: Vec3) => tiltedBody({ axis: NORTH, toSun: UP, toObserver }, FILL_ALONE, UNIT);
  // Even part 8000 + 100; swing 4000: mean 8100 +- 4000 pi/4 = 3141.59.
  const under = seenFrom(DOWN);
  expect(under.meanLx).toBeCloseTo(8100 - 3141.5927, 3);
  expect(under.darkestCdM2).toBeCloseTo(4100, 6);
  expect(under.brightestCdM2).toBeCloseTo(8100, 6);
  const over = seenFrom(UP);
  expect(over.meanLx).toBeCloseTo(8100 + 3141.5927, 3);
  expect(over.brightestCdM2).toBeCloseTo(12_100, 6);
  expect(over.darkestCdM2).toBeCloseTo(8100, 6);
  const beside = seenFrom(EAST);
  expect(beside.meanLx).toBeCloseTo(8100, 6);
  expect([beside.brightestCdM2, beside.darkestCdM2]).toEqual([12_100, 4100]);
});

test("leaning 30 degrees north, the sun 30 degrees up in the south stands square on it, in the north 60 degrees off its axis", () => {
  const axis = fromAzimuthElevation(0, 60);
  const lit = (azimuthDeg: number, toObserver: Vec3) =>
    tiltedBody({ axis, toSun: fromAzimuthElevation(azimuthDeg, 30), toObserver }, SUN_ALONE, UNIT);
  const south = fromAzimuthElevation(180, 0);
  expect(lit(180, south).meanLx).toBeCloseTo(80_000 * (Math.PI / 4), 6);
  // Sun 30 degrees from the axis: sine 1/2.
  expect(lit(0, fromAzimuthElevation(0, 0)).meanLx).toBeCloseTo(80_000 * 0.5 * (Math.PI / 4), 6);
  // Seen level from the south, the line of sight stands 60 degrees to the axis; seen from below the foot, end on.
  expect(lit(180, south).endOnDeg).toBeCloseTo(60, 9);
  expect(lit(180, fromAzimuthElevation(180, -60)).endOnDeg).toBeCloseTo(0, 6);
});

test("upright it is the body on the pad, at every sun and every camera on the horizontal and off it", () => {
  const random = makeRandom(5);
  for (let i = 0; i < 500; i++) {
    const sunElevationDeg = random.between(-1, 90);
    const [sunAzimuthDeg, cameraAzimuthDeg] = [random.between(0, 360), random.between(0, 360)];
    const light = {
      directNormalLx: random.between(0, 110_000),
      diffuseHorizontalLx: random.between(1, 40_000),
      groundReflectance: random.between(0, 0.9),
      floodlightLx: random.between(0, 500),
    };
    const { directNormalLx, diffuseHorizontalLx: skyLx, groundReflectance, floodlightLx } = light;
    const totalLx = skyLx + directNormalLx * Math.max(0, Math.sin((sunElevationDeg * Math.PI) / 180));
    const toSun = fromAzimuthElevation(sunAzimuthDeg, sunElevationDeg);
    const toObserver = fromAzimuthElevation(cameraAzimuthDeg, random.between(-80, 80));
    const around = { directNormalLx, skyLx, belowLx: groundReflectance * totalLx, floodlightLx };
    const found = tiltedBody({ axis: UP, toSun, toObserver }, around, 0.7);
    const expected = bodySpan({ ...light, sunElevationDeg }, 0.7, sunAzimuthDeg - cameraAzimuthDeg);
    for (const key of ["meanCdM2", "brightestCdM2", "darkestCdM2", "meanLx", "litShare"] as const)
      expect(Math.abs(found[key] - expected[key]), key).toBeLessThan(1e-9 * (1 + expected[key]));
  }
});

test("sums over 100,000 facets: mean, brightest, darkest and lit width of 60 attitudes", () => {
  const random = makeRandom(20_270_419);
  const anyDirection = (): Vec3 => {
    const elevationDeg = (Math.asin(random.between(-1, 1)) * 180) / Math.PI;
    return fromAzimuthElevation(random.between(0, 360), elevationDeg);
  };
  const cases = Array.from({ length: 60 }, (_, i) => {
    const view = { axis: anyDirection(), toSun: anyDirection(), toObserver: anyDirection() };
    const light = {
      directNormalLx: random.between(0, 120_000),
      skyLx: random.between(0, 30_000),
      belowLx: random.between(0, 30_000),
      floodlightLx: random.between(0, 300),
    };
    return {
      name: `case ${i}`,
      ours: tiltedBody(view, light, UNIT),
      sum: facetByFacet(view, light, 100_000),
    };
  });
  const pairs = (found: (typeof cases)[0]["ours"], sum: (typeof cases)[0]["sum"]) =>
    ({
      "tilted cylinder, mean": [found.meanLx, sum.meanLx],
      "tilted cylinder, brightest": [found.brightestCdM2, sum.brightestLx],
      "tilted cylinder, darkest": [found.darkestCdM2, sum.darkestLx],
      "tilted cylinder, lit width": [found.litShare, sum.litShare],
    }) as const;
  for (const quantity of Object.keys(pairs(cases[0]!.ours, cases[0]!.sum)) as (keyof ReturnType<
    typeof pairs
  >)[])
    compare(
      quantity,
      cases.map(({ name, ours, sum }) => {
        const [found, expected] = pairs(ours, sum)[quantity];
        return { name, found, expected };
      }),
    );
});
