/** What must hold of a body in any attitude: brute force, turning and mirroring the scene, directions that have no side. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { fromAzimuthElevation, scale, type Vec3 } from "../../src/base/vector.ts";
import { type SurroundingLight, type TiltedView, tiltedBody } from "../../src/light/tiltedBody.ts";
import { between, FIXED } from "../support/seeded.ts";
import { facetByFacet } from "../support/tiltedFacets.ts";

const anyDirection = fc
  .tuple(between(0, 360), between(-1, 1))
  .map(([azimuthDeg, sine]) => fromAzimuthElevation(azimuthDeg, (Math.asin(sine) * 180) / Math.PI));
/** With axes, suns and observers that fall together, stand square or level more often than chance would have it. */
const direction: fc.Arbitrary<Vec3> = fc.oneof(
  { weight: 3, arbitrary: anyDirection },
  fc.constantFrom<Vec3>([0, 0, 1], [0, 0, -1], [1, 0, 0], [0, -1, 0], [0.6, 0, 0.8]),
);
const anyView = fc.record({ axis: direction, toSun: direction, toObserver: direction });
const anyLight = fc.record({
  directNormalLx: between(0, 120_000),
  skyLx: between(0, 30_000),
  belowLx: between(0, 30_000),
  floodlightLx: between(0, 500),
});

const sine = (a: Vec3, b: Vec3): number => {
  const cosine = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  return Math.sqrt(Math.max(0, 1 - cosine * cosine));
};

test("it is the sum of its facets", () => {
  fc.assert(
    fc.property(anyView, anyLight, (view, light) => {
      // With the observer on the axis nothing of the side is seen to be summed.
      fc.pre(sine(view.axis, view.toObserver) > 1e-6);
      const found = tiltedBody(view, light, Math.PI);
      const sum = facetByFacet(view, light, 6000);
      const most = 1 + light.directNormalLx + light.skyLx + light.belowLx + light.floodlightLx;
      expect(Math.abs(found.meanLx - sum.meanLx)).toBeLessThan(1e-5 * most);
      // The last facet that is seen stands up to 0.06 degrees inside the edge.
      expect(Math.abs(found.brightestCdM2 - sum.brightestLx)).toBeLessThan(1.1e-3 * most);
      expect(Math.abs(found.darkestCdM2 - sum.darkestLx)).toBeLessThan(1.1e-3 * most);
      expect(found.brightestCdM2).toBeGreaterThan(sum.brightestLx - 1e-9 * most);
      expect(found.darkestCdM2).toBeLessThan(sum.darkestLx + 1e-9 * most);
      if (light.directNormalLx * sine(view.axis, view.toSun) > 1e-3)
        expect(Math.abs(found.litShare - sum.litShare)).toBeLessThan(1e-3);
    }),
    FIXED,
  );
});

type Change = (direction: Vec3) => Vec3;

/** Expects the same body in a scene that is turned, mirrored or has its axis turned round. */
function expectSame(view: TiltedView, light: SurroundingLight, change: Change, axis: Vec3): void {
  const before = tiltedBody(view, light, 0.8);
  const after = tiltedBody(
    { axis, toSun: change(view.toSun), toObserver: change(view.toObserver) },
    light,
    0.8,
  );
  for (const key of Object.keys(before) as (keyof typeof before)[])
    expect(Math.abs(after[key] - before[key]), key).toBeLessThan(1e-6 * (1 + before[key]));
}

test("turning the scene about the vertical, mirroring it and turning the body round its middle change nothing", () => {
  fc.assert(
    fc.property(anyView, anyLight, between(0, 2 * Math.PI), (view, light, turnRad) => {
      // Within the width of this, rounding decides whether there is a side.
      for (const other of [view.toSun, view.toObserver])
        fc.pre(sine(view.axis, other) > 1e-6 || sine(view.axis, other) === 0);
      const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
      const turned: Change = ([x, y, z]) => [c * x - s * y, s * x + c * y, z];
      const mirrored: Change = ([x, y, z]) => [-x, y, z];
      expectSame(view, light, turned, turned(view.axis));
      expectSame(view, light, mirrored, mirrored(view.axis));
      expectSame(view, light, (same) => same, scale(view.axis, -1));
    }),
    FIXED,
  );
});

test("every figure is finite and in its range, with sun and observer on the axis too", () => {
  const near = (axis: Vec3): fc.Arbitrary<Vec3> =>
    fc.oneof(fc.constantFrom(axis, scale(axis, -1)), direction);
  const scene = direction.chain((axis) =>
    fc.record({ axis: fc.constant(axis), toSun: near(axis), toObserver: near(axis) }),
  );
  fc.assert(
    fc.property(scene, anyLight, (view, light) => {
      const found = tiltedBody(view, light, 0.8);
      for (const [key, value] of Object.entries(found)) expect(Number.isFinite(value), key).toBe(true);
      expect(found.darkestCdM2).toBeGreaterThanOrEqual(0);
      expect(found.meanCdM2).toBeGreaterThanOrEqual(found.darkestCdM2 * (1 - 1e-9) - 1e-9);
      expect(found.meanCdM2).toBeLessThanOrEqual(found.brightestCdM2 * (1 + 1e-9) + 1e-9);
      expect(found.litShare).toBeGreaterThanOrEqual(0);
      expect(found.litShare).toBeLessThanOrEqual(1);
      expect(found.phaseDeg).toBeGreaterThanOrEqual(0);
      expect(found.phaseDeg).toBeLessThanOrEqual(180);
      expect(found.endOnDeg).toBeGreaterThanOrEqual(0);
      expect(found.endOnDeg).toBeLessThanOrEqual(90);
    }),
    FIXED,
  );
});

test("by convention: sun on the axis lights nothing, an observer on it sees the half towards the sun", () => {
  const light = { directNormalLx: 80_000, skyLx: 12_000, belowLx: 4000, floodlightLx: 0 };
  const axis: Vec3 = [0.6, 0, 0.8];
  const across: Vec3 = [0.8, 0, -0.6];
  const sunAhead = tiltedBody({ axis, toSun: axis, toObserver: [0, 1, 0] }, light, Math.PI);
  expect([sunAhead.litShare, sunAhead.phaseDeg]).toEqual([0, 0]);
  expect(sunAhead.meanLx).toBeCloseTo(8000, 6);
  const behind = tiltedBody({ axis, toSun: across, toObserver: scale(axis, -1) }, light, Math.PI);
  expect([behind.litShare, behind.phaseDeg]).toEqual([1, 0]);
  expect(behind.endOnDeg).toBeCloseTo(0, 6);
  expect(behind.meanLx).toBeCloseTo((Math.PI / 4) * (80_000 - 0.6 * 4000) + 8000, 6);
  const both = tiltedBody({ axis, toSun: axis, toObserver: axis }, light, Math.PI);
  expect(both.meanLx).toBeCloseTo(8000, 6);
  // Facets as steep as the axis allows: 8000 +- 4000 x 0.6.
  expect([both.brightestCdM2, both.darkestCdM2].map(Math.round)).toEqual([10_400, 5600]);
});
