/** Round trips of the base: Earth-fixed coordinates, horizons, angles around the circle. */

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  fromEarthFixed,
  fromHorizon,
  horizonAxes,
  toEarthFixed,
  toHorizon,
} from "../../src/base/earthFixed.ts";
import { wrap180, wrap360 } from "../../src/base/units.ts";
import { fromAzimuthElevation, norm, subtract, toAzimuthElevation } from "../../src/base/vector.ts";
import { lookAt, placeFrom } from "../../src/view/sightLine.ts";
import { between, FIXED } from "../support/seeded.ts";

const anyPlace = fc.record({
  latitudeDeg: between(-90, 90),
  longitudeDeg: between(-180, 180),
  heightM: between(-500, 100_000),
});

test("to Earth-fixed metres and back is the same place to the micrometre", () => {
  fc.assert(
    fc.property(anyPlace, (place) => {
      const back = fromEarthFixed(toEarthFixed(place));
      expect(norm(subtract(toEarthFixed(back), toEarthFixed(place)))).toBeLessThan(1e-6);
      expect(Math.abs(back.latitudeDeg - place.latitudeDeg)).toBeLessThan(1e-10);
      expect(Math.abs(back.heightM - place.heightM)).toBeLessThan(1e-6);
    }),
    FIXED,
  );
});

test("into a horizon and out again is the same vector, with the same length", () => {
  const metres = between(-1e6, 1e6);
  fc.assert(
    fc.property(anyPlace, fc.tuple(metres, metres, metres), (place, vector) => {
      const axes = horizonAxes(place);
      const seen = toHorizon(axes, vector);
      expect(norm(subtract(fromHorizon(axes, seen), vector))).toBeLessThan(1e-8);
      expect(Math.abs(norm(seen) - norm(vector))).toBeLessThan(1e-8);
    }),
    FIXED,
  );
});

test("a place set out by bearing and range is seen there", () => {
  // Within a kilometre of the ground the tangent plane of the origin is the horizon it is seen in.
  fc.assert(
    fc.property(
      fc.record({
        latitudeDeg: between(-89, 89),
        longitudeDeg: between(-180, 180),
        heightM: between(-400, 5000),
      }),
      between(0, 360),
      between(1, 30_000),
      between(-50, 500),
      (origin, bearingDeg, rangeM, upM) => {
        const sight = lookAt(origin, placeFrom(origin, bearingDeg, rangeM, upM));
        expect(Math.abs(sight.rangeM - Math.hypot(rangeM, upM))).toBeLessThan(1e-5);
        const offM = Math.abs(wrap180(sight.azimuthDeg - bearingDeg)) * (Math.PI / 180) * rangeM;
        expect(offM).toBeLessThan(1e-5);
        expect(Math.abs(Math.tan((sight.elevationDeg * Math.PI) / 180) * rangeM - upM)).toBeLessThan(1e-5);
      },
    ),
    FIXED,
  );
});

test("azimuth and elevation survive the way through a vector", () => {
  fc.assert(
    fc.property(between(0, 359.999), between(-89.9, 89.9), (azimuthDeg, elevationDeg) => {
      const back = toAzimuthElevation(fromAzimuthElevation(azimuthDeg, elevationDeg));
      expect(Math.abs(wrap180(back.azimuthDeg - azimuthDeg))).toBeLessThan(1e-9);
      expect(Math.abs(back.elevationDeg - elevationDeg)).toBeLessThan(1e-9);
    }),
    FIXED,
  );
});

test("wrapped angles lie in their range and point the same way", () => {
  fc.assert(
    fc.property(between(-5000, 5000), (angleDeg) => {
      const whole = wrap360(angleDeg);
      const half = wrap180(angleDeg);
      expect(whole).toBeGreaterThanOrEqual(0);
      expect(whole).toBeLessThan(360);
      expect(half).toBeGreaterThan(-180);
      expect(half).toBeLessThanOrEqual(180);
      for (const wrapped of [whole, half]) {
        const turns = (wrapped - angleDeg) / 360;
        expect(Math.abs(turns - Math.round(turns))).toBeLessThan(1e-9);
      }
      expect(Object.is(whole, -0)).toBe(false);
    }),
    FIXED,
  );
});

test("whole turns and half turns wrap to the included end", () => {
  for (const [angleDeg, whole, half] of [
    [0, 0, 0],
    [-0, 0, 0],
    [360, 0, 0],
    [-360, 0, 0],
    [180, 180, 180],
    [-180, 180, 180],
    [-1e-14, 0, 0],
  ] as const) {
    expect(wrap360(angleDeg), `${angleDeg}`).toBeCloseTo(whole, 12);
    expect(wrap180(angleDeg), `${angleDeg}`).toBeCloseTo(half, 12);
  }
});
