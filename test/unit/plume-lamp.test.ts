/** The plume as a lamp: what must hold anywhere about it, a case worked by hand, and what is refused. */

import { expect, test } from "vitest";
import { PadstopError } from "../../src/base/problem.ts";
import {
  lampFaceLxPerCdM2,
  lampRadiusM,
  makePlumeLamp,
  type PlumeLamp,
  plumeOnBodyLxPerCdM2,
  plumeOnDeckLxPerCdM2,
} from "../../src/light/plumeLamp.ts";
import type { Plume, Vehicle } from "../../src/site/types.ts";
import { makeRandom } from "../support/random.ts";

const PLUME: Plume = { propellant: "solid", luminanceCdM2: null, lengthM: 60, widthM: 6 };
const VEHICLE: Vehicle = {
  name: null,
  heightM: 58,
  diameterM: 3.7,
  baseM: 6,
  reflectance: 0.8,
  plume: PLUME,
  ascent: null,
};
const LAMP = makePlumeLamp(VEHICLE)!;
/** A solid plume: half of a black body at 2300 K. */
const LUMINANCE_CD_M2 = 1.18e6;

test("a plume 60 m by 6 m under a foot 6 m up: a lamp of 10.70 m radius, 3 m up", () => {
  // 360 m2 / pi = 114.59 m2.
  expect(LAMP.radiusM).toBeCloseTo(10.7047, 4);
  expect(LAMP).toEqual({ radiusM: LAMP.radiusM, centreUpM: 3, footM: 6, bodyRadiusM: 1.85 });
});

test("worked by hand: 1.9e6 lx at the foot of the body, 2.0e5 lx 10 m up, 2.7e3 lx at its top", () => {
  // Plane of the side 1.85 m before the axis: 140.6 of 360 m2 in front, their middle 3.708 m in front. 10 m up, 13 m aside:
  // d2 = 13.75 + 169 = 182.7; 1.18e6 x 140.6 x (3.708 / 13.52) / (182.7 + 140.6 / pi) = 2.000e5.
  const atUp = (upM: number): number => LUMINANCE_CD_M2 * plumeOnBodyLxPerCdM2(LAMP, upM);
  const expected = [
    [0, 1.911e6],
    [10, 2.0e5],
    [29, 1.764e4],
    [58, 2.663e3],
  ] as const;
  for (const [upM, lx] of expected) expect(Math.abs(atUp(upM) / lx - 1), `${upM} m`).toBeLessThan(0.0005);
});

test("worked by hand: 5.9e5 lx on the deck 11 m out, 1.6e5 lx at 20 m, 8.5e3 lx at 58 m", () => {
  // Deck 3 m under the middle: 243.4 m2 above it, their middle 5.972 m up. 20 m out: d2 = 35.67 + 400 = 435.7;
  // 1.18e6 x 243.4 x (5.972 / 20.87) / (435.7 + 243.4 / pi) = 1.601e5.
  const atOut = (outM: number): number => LUMINANCE_CD_M2 * plumeOnDeckLxPerCdM2(LAMP, outM);
  const expected = [
    [11, 5.852e5],
    [20, 1.601e5],
    [58, 8.46e3],
  ] as const;
  for (const [outM, lx] of expected) expect(Math.abs(atOut(outM) / lx - 1), `${outM} m`).toBeLessThan(0.0005);
});

test("the lamp stands on the deck when the foot is at it or below, and the body is counted from its foot", () => {
  const sunk = makePlumeLamp({ ...VEHICLE, baseM: -20 })!;
  expect(sunk.centreUpM).toBe(0);
  expect(plumeOnDeckLxPerCdM2(sunk, 30)).toBe(lampFaceLxPerCdM2(sunk.radiusM, 0, 30));
  expect(plumeOnBodyLxPerCdM2(sunk, 50)).toBe(lampFaceLxPerCdM2(sunk.radiusM, -1.85, 30));
  // As far under the middle as over it.
  expect(plumeOnBodyLxPerCdM2(sunk, 10)).toBe(plumeOnBodyLxPerCdM2(sunk, 30));
  expect(makePlumeLamp({ ...VEHICLE, baseM: 0 })!.centreUpM).toBe(0);
});

test("no lamp without a plume, or without its length or width; its luminance may be anything", () => {
  const withPlume = (plume: Plume | null): PlumeLamp | null => makePlumeLamp({ ...VEHICLE, plume });
  expect(withPlume(null)).toBeNull();
  expect(withPlume({ ...PLUME, lengthM: null })).toBeNull();
  expect(withPlume({ ...PLUME, widthM: null })).toBeNull();
  expect(withPlume({ ...PLUME, propellant: null, luminanceCdM2: 4e6 })).toEqual(LAMP);
});

test("never above pi, nothing from behind, less the farther aside, and the same for all sizes", () => {
  const random = makeRandom(174);
  let seen = 0;
  for (let i = 0; i < 3000; i++) {
    const radiusM = random.between(0.05, 1200);
    // In radii; most of them near by.
    const front = random.between(-1.2, 1.2) * (i % 3 === 0 ? 25 : 1);
    const aside = random.between(0, 2) ** (1 + (i % 6));
    const at = (s: number, t: number): number => lampFaceLxPerCdM2(radiusM, s * radiusM, t * radiusM);
    const lx = at(front, aside);
    expect(lx).toBeLessThanOrEqual(Math.PI);
    expect(lx === 0, `${lx} at ${front}`).toBe(front <= -1);
    if (lx === 0) continue;
    seen++;
    expect(lx).toBeGreaterThan(0);
    expect(at(front, aside + random.between(1e-3, 1))).toBeLessThan(lx);
    // Slivers lose digits.
    expect(lampFaceLxPerCdM2(1, front, aside) / lx).toBeCloseTo(1, front < -0.9 ? 3 : 9);
  }
  expect(seen).toBeGreaterThan(2000);
});

test("no step where the lamp touches the face's plane from either side", () => {
  for (const aside of [0.1, 0.5, 1, 3, 20]) {
    const at = (front: number): number => lampFaceLxPerCdM2(1, front, aside);
    expect(at(1 - 1e-9) / at(1)).toBeCloseTo(1, 7);
    expect(at(1 + 1e-9) / at(1)).toBeCloseTo(1, 7);
    expect(at(-1)).toBe(0);
    expect(at(-1 + 1e-6)).toBeGreaterThan(0);
    expect(at(-1 + 1e-6)).toBeLessThan(1e-10);
  }
});

test("a sliver thinner than the numbers can tell is no light that is no number", () => {
  for (let digits = 1; digits <= 17; digits += 0.125) {
    for (const aside of [0, 1e-9, 1e-3, 1, 100]) {
      const lx = lampFaceLxPerCdM2(10.7, -10.7 * (1 - 10 ** -digits), aside);
      expect(lx, `1e-${digits}, ${aside} aside`).toBeGreaterThanOrEqual(0);
      expect(lx, `1e-${digits}, ${aside} aside`).toBeLessThanOrEqual(Math.PI);
    }
  }
});

test("what is out of range is refused", () => {
  const wrong: (() => unknown)[] = [
    () => lampRadiusM(0, 6),
    () => lampRadiusM(60, 1001),
    () => lampRadiusM(Number.NaN, 6),
    () => lampFaceLxPerCdM2(0, 1, 1),
    () => lampFaceLxPerCdM2(1, Number.NaN, 1),
    () => lampFaceLxPerCdM2(1, 1, -0.1),
    () => plumeOnBodyLxPerCdM2(LAMP, Number.NaN),
    () => plumeOnBodyLxPerCdM2(LAMP, -1001),
    () => plumeOnDeckLxPerCdM2(LAMP, -1),
    () => plumeOnDeckLxPerCdM2(LAMP, Number.POSITIVE_INFINITY),
  ];
  for (const call of wrong) expect(call, String(call)).toThrow(PadstopError);
  expect(lampRadiusM(60, 6)).toBe(LAMP.radiusM);
});
