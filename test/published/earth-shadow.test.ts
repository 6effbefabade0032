/** The Earth's shadow against the geometry of a sphere, tabulated outside this project; rays traced through the air; vectors. */

import { expect, test } from "vitest";
import {
  MEAN_EARTH_RADIUS_M,
  RISE_SET_ELEVATION_DEG,
  WGS84_FLATTENING,
  WGS84_SEMI_MAJOR_M,
} from "../../src/base/constants.ts";
import { PadstopError } from "../../src/base/problem.ts";
import { cross, dot, fromAzimuthElevation, norm, scale } from "../../src/base/vector.ts";
import {
  earthShadowHeightM,
  litAboveM,
  type ShadowEdge,
  sunElevationDownrangeDeg,
} from "../../src/sky/earthShadow.ts";
import { compare } from "../support/compare.ts";
import { makeRandom } from "../support/random.ts";

/** Computed from H = R (1 / cos d - 1): depression of the sun in degrees; km for its centre without air, and for the refracted upper limb. */
const EDGES = [
  [0, 0, 0],
  [1, 0.97, 0],
  [2, 3.88, 0.35],
  [3, 8.74, 2.49],
  [4, 15.56, 6.57],
  [5, 24.34, 12.6],
  [6, 35.09, 20.59],
  [7, 47.85, 30.55],
  [8, 62.61, 42.5],
  [9, 79.42, 56.46],
  [10, 98.28, 72.45],
  [12, 142.33, 110.61],
  [15, 224.74, 183.79],
  [18, 327.87, 277.08],
] as const;

/** Computed the other way, from acos(R / (R + H)): height in km and the largest depression at which it is still lit, without air. */
const LARGEST_DEPRESSIONS = [
  [10, 3.208],
  [20, 4.534],
  [50, 7.155],
  [80, 9.033],
  [100, 10.086],
  [150, 12.313],
  [200, 14.172],
  [400, 19.793],
] as const;

/** A height that has to be there. */
function edgeKm(airlessSunElevationDeg: number, light?: ShadowEdge): number {
  const heightM = earthShadowHeightM(airlessSunElevationDeg, light);
  expect(heightM, `at ${airlessSunElevationDeg}`).not.toBeNull();
  return heightM! / 1000;
}

test("the edge for the sun's centre without air, 0 to 18 degrees down", () => {
  compare(
    "Earth's shadow, sun's centre",
    EDGES.map(([downDeg, expected]) => ({
      name: `${downDeg} down`,
      found: edgeKm(-downDeg, "centre"),
      expected,
    })),
  );
});

test("the edge for the refracted upper limb, which is the one given unasked", () => {
  compare(
    "Earth's shadow, first light",
    EDGES.map(([downDeg, , expected]) => ({ name: `${downDeg} down`, found: edgeKm(-downDeg), expected })),
  );
  for (const [downDeg] of EDGES) expect(edgeKm(-downDeg)).toBe(edgeKm(-downDeg, "first"));
});

test("the largest depression at which 10 to 400 km are lit", () => {
  const largestDeg = (km: number): number => {
    let [lit, dark] = [0, 60];
    for (let i = 0; i < 50; i++) {
      const middle = (lit + dark) / 2;
      if (edgeKm(-middle, "centre") <= km) lit = middle;
      else dark = middle;
    }
    return lit;
  };
  compare(
    "largest depression in the light",
    LARGEST_DEPRESSIONS.map(([km, expected]) => ({ name: `${km} km`, found: largestDeg(km), expected })),
  );
});

test("100 km straight toward a sun 6 degrees down it stands 5.1007 degrees down", () => {
  const found = sunElevationDownrangeDeg(-6, 100_000, 0);
  compare("sun downrange", [{ name: "toward the sun", found, expected: -5.1007 }]);
  expect(litAboveM(-6, 100_000, 0)).toBe(earthShadowHeightM(found));
  expect(litAboveM(-6, 100_000, 0, "centre")).toBe(earthShadowHeightM(found, "centre"));
});

/**
 * A ray from the ground outward through air whose excess of refractive index falls off with 8.9 km and bends a ray from the
 * horizon by 34' (2.702e-4 at the ground): height in km, and how far round the Earth it is by then, degrees. Traced by
 * Snell's law in steps of 20 m by a program that is not part of this project.
 */
const TRACED = [
  [0.2, 0.505],
  [1, 1.128],
  [5, 2.502],
  [12, 3.834],
  [20, 4.904],
  [30, 5.955],
] as const;

test("the edge lies 0.2 to 1.75 km under a traced ray's: the ray is turned, but not lifted", () => {
  for (const [heightKm, roundDeg] of TRACED) {
    const lowKm = heightKm - edgeKm(RISE_SET_ELEVATION_DEG - roundDeg);
    expect(lowKm, `${heightKm} km`).toBeGreaterThanOrEqual(0.2);
    expect(lowKm, `${heightKm} km`).toBeLessThan(1.75);
  }
});

test("seen in vectors, the ray to the edge downrange grazes the Earth, beyond the line between day and night", () => {
  const random = makeRandom(15);
  let below = 0;
  for (let i = 0; i < 1000; i++) {
    const elevationDeg = random.between(-60, 10);
    const groundDistanceM = random.between(0, 3e6);
    const azimuthFromSunDeg = random.between(-360, 720);
    const alongDeg = (groundDistanceM / MEAN_EARTH_RADIUS_M) * (180 / Math.PI);
    // In the horizon of the place that was left, the sun in the north.
    const upThere = fromAzimuthElevation(azimuthFromSunDeg, 90 - alongDeg);
    const sun = fromAzimuthElevation(0, elevationDeg);
    const heightM = litAboveM(elevationDeg, groundDistanceM, azimuthFromSunDeg, "centre")!;
    const point = scale(upThere, MEAN_EARTH_RADIUS_M + heightM);
    if (dot(upThere, sun) < 0) below++;
    if (dot(upThere, sun) < 0) expect(norm(cross(point, sun)) / MEAN_EARTH_RADIUS_M).toBeCloseTo(1, 10);
    else expect(heightM).toBe(0);
  }
  expect(below).toBeGreaterThan(500);
  expect(below).toBeLessThan(900);
});

test("straight above it is 0 by day and rises as the sun goes down; round the Earth's side there is no step", () => {
  for (const light of ["first", "centre"] as const) {
    for (const up of [0, 0.001, 1, 45, 90]) expect(earthShadowHeightM(up, light)).toBe(0);
    const rests = light === "first" ? 1.4 : 0;
    for (let downDeg = rests + 0.01; downDeg < 90; downDeg += 0.05)
      expect(edgeKm(-downDeg, light)).toBeGreaterThan(edgeKm(-downDeg + 0.01, light));
    expect(edgeKm(-rests, light)).toBe(0);
    // 0.01 degree past the edge of the light is 0.1 m of height.
    expect(edgeKm(-rests - 0.01, light)).toBeCloseTo(0.000_097, 6);
  }
});

test("only a sun in the nadir, without air, leaves no height lit", () => {
  expect(earthShadowHeightM(-90, "centre")).toBeNull();
  expect(edgeKm(-89.999, "centre")).toBeGreaterThan(1e8);
  expect(edgeKm(-90)).toBeGreaterThan(2.5e5);
  expect(litAboveM(-90, 0, 0, "centre")).toBeNull();
});

test("downrange along the sun's azimuth it rises by the arc, and either side is alike", () => {
  const arcDeg = 2.5;
  const arcM = (arcDeg * Math.PI * MEAN_EARTH_RADIUS_M) / 180;
  expect(sunElevationDownrangeDeg(-9, arcM, 0)).toBeCloseTo(-9 + arcDeg, 9);
  expect(sunElevationDownrangeDeg(-9, arcM, 180)).toBeCloseTo(-9 - arcDeg, 9);
  expect(sunElevationDownrangeDeg(-9, arcM, 70)).toBeCloseTo(sunElevationDownrangeDeg(-9, arcM, -70), 12);
  expect(sunElevationDownrangeDeg(-9, 0, 123)).toBeCloseTo(-9, 12);
});

test("the radius is the mean of WGS 84's three half axes", () => {
  const a = WGS84_SEMI_MAJOR_M;
  expect(Math.abs((2 * a + a * (1 - WGS84_FLATTENING)) / 3 - MEAN_EARTH_RADIUS_M)).toBeLessThan(0.05);
});

test("what is out of range is refused", () => {
  for (const wrong of [-90.01, 90.01, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => earthShadowHeightM(wrong)).toThrow(PadstopError);
    expect(() => sunElevationDownrangeDeg(wrong, 0, 0)).toThrow(PadstopError);
  }
  for (const wrong of [-1, 2.1e7, Number.NaN]) expect(() => litAboveM(-6, wrong, 0)).toThrow(PadstopError);
  for (const wrong of [-361, 721, Number.NaN]) expect(() => litAboveM(-6, 0, wrong)).toThrow(PadstopError);
});
