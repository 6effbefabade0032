/** What holds for any path: no overshoot, no step in the velocity, a body of length one; and image motion against moments tried one by one. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { intervalOf, makeMonotoneCubic, slopeIn, steepestIn, valueIn } from "../../src/base/monotoneCubic.ts";
import { norm, subtract } from "../../src/base/vector.ts";
import { type CameraView, isInGate, makeCameraView } from "../../src/plan/cameraView.ts";
import { imageMotion } from "../../src/plan/motion.ts";
import {
  type AscentPath,
  bodyAxisInto,
  flightAt,
  makeAscentPath,
  type Triple,
} from "../../src/view/ascentPath.ts";
import { fromDownrange } from "../../src/view/downrange.ts";
import { poweredAscent } from "../../src/view/poweredAscent.ts";
import { carryTo } from "../../src/view/sightLine.ts";
import { siteOf } from "../plan/sites.ts";
import { FIXED } from "../support/seeded.ts";

/** Evenly spread: `fc.double` draws from the doubles, of which most lie next to zero. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000);

const anyTable = fc
  .array(fc.record({ step: between(0.05, 20), rise: between(-300, 300), flat: fc.boolean() }), {
    minLength: 2,
    maxLength: 15,
  })
  .map((rows) => {
    const knots = [0];
    const values = [0];
    for (const { step, rise, flat } of rows) {
      knots.push(knots.at(-1)! + step);
      values.push(values.at(-1)! + (flat ? 0 : rise));
    }
    return makeMonotoneCubic(Float64Array.from(knots), Float64Array.from(values));
  });

test("a curve never leaves the range of the two rows it runs between, rises only where they do, and no steeper than said", () => {
  fc.assert(
    fc.property(anyTable, (curve) => {
      const { knots, values } = curve;
      for (let i = 0; i + 1 < knots.length; i++) {
        const [low, high] = [Math.min(values[i]!, values[i + 1]!), Math.max(values[i]!, values[i + 1]!)];
        const sign = Math.sign(values[i + 1]! - values[i]!);
        const steepest = steepestIn(curve, i);
        let outside = 0;
        for (let share = 0; share < 1; share += 0.02) {
          const x = knots[i]! + share * (knots[i + 1]! - knots[i]!);
          const value = valueIn(curve, i, x);
          const slope = slopeIn(curve, i, x);
          outside = Math.max(outside, low - value, value - high, -sign * slope, Math.abs(slope) - steepest);
        }
        expect(outside).toBeLessThan(1e-8);
      }
    }),
    FIXED,
  );
});

test("values at the rows are the rows', and neither value nor slope makes a step there", () => {
  fc.assert(
    fc.property(anyTable, (curve) => {
      const { knots, values, slopes } = curve;
      for (let i = 0; i < knots.length; i++) {
        const at = intervalOf(knots, knots[i]!, 0);
        expect(valueIn(curve, at, knots[i]!)).toBe(values[i]);
        expect(slopeIn(curve, at, knots[i]!) - slopes[i]!).toBe(0);
        if (i === 0) continue;
        expect(valueIn(curve, i - 1, knots[i]!)).toBeCloseTo(values[i]!, 8);
        expect(Math.abs(slopeIn(curve, i - 1, knots[i]!) - slopes[i]!)).toBeLessThan(1e-7);
      }
    }),
    FIXED,
  );
});

test("the slope is that of the values", () => {
  fc.assert(
    fc.property(anyTable, between(0.01, 0.99), (curve, share) => {
      const x = curve.knots.at(-1)! * share;
      const [at, by] = [intervalOf(curve.knots, x, 0), 1e-5];
      const rise = (valueIn(curve, at, x + by) - valueIn(curve, at, x - by)) / (2 * by);
      expect(Math.abs(slopeIn(curve, at, x) - rise)).toBeLessThan(1e-3 * (1 + Math.abs(rise)));
    }),
    FIXED,
  );
});

test("the interval found does not hang on the hint", () => {
  fc.assert(
    fc.property(anyTable, fc.integer({ min: -2, max: 20 }), between(-5, 150), ({ knots }, hint, x) => {
      const expected = [...knots].filter((knot) => knot <= x).length - 1;
      expect(intervalOf(knots, x, hint)).toBe(expected);
    }),
    FIXED,
  );
});

const anyFlight = fc
  .record({
    latitudeDeg: between(-80, 80),
    headingDeg: between(0, 360),
    thrustToWeight: between(1.05, 3),
    massFlowPerS: between(0, 0.008),
    burnS: between(5, 120),
    pitch: fc
      .array(between(-10, 90), { minLength: 1, maxLength: 5 })
      .map((angles) => angles.map((pitchDeg, i) => ({ tPlusS: i * 20, pitchDeg }))),
  })
  .map((flight) => ({ flight, path: makeAscentPath(poweredAscent(flight)) }));

/** Where a path is, how fast it moves, or where its body points. */
const at = (into: (tPlusS: number, out: Triple) => void, tPlusS: number): Triple => {
  const out: Triple = [0, 0, 0];
  into(tPlusS, out);
  return out;
};

test("the body's axis is of length one and turns without a step; the speed keeps to its bound", () => {
  fc.assert(
    fc.property(anyFlight, between(-10, 130), ({ path }, tPlusS) => {
      const axis = at((s, out) => bodyAxisInto(path, s, out), tPlusS);
      expect(norm(axis)).toBeCloseTo(1, 12);
      const later = at((s, out) => bodyAxisInto(path, s, out), tPlusS + 1e-6);
      expect(norm(subtract(later, axis))).toBeLessThan(1e-4);
      const speedMS = norm(at(path.velocityInto, tPlusS));
      expect(speedMS).toBeLessThanOrEqual(path.boundMS(tPlusS - 0.3, tPlusS + 0.2) * (1 + 1e-12));
    }),
    FIXED,
  );
});

test("a flight never sinks below its place", () => {
  const RADIUS_M = 6_371_008.8;
  fc.assert(
    fc.property(anyFlight, between(0, 130), ({ path }, tPlusS) => {
      const [east, north, up] = at(path.positionInto, tPlusS);
      // Chords of the curved ground between points half a second apart lie under it by centimetres.
      expect(Math.hypot(east, north, up + RADIUS_M) - RADIUS_M).toBeGreaterThan(-0.1);
    }),
    FIXED,
  );
});

test("downrange and altitude come back", () => {
  fc.assert(
    fc.property(between(-85, 85), between(0, 360), between(1, 900_000), (latitudeDeg, headingDeg, wayM) => {
      const pad = { latitudeDeg, longitudeDeg: 10, heightM: 50 };
      const rows = [0, 0.5, 1].map((share) => ({
        ...{ tPlusS: share * 100, downrangeM: share * wayM, altitudeM: share * 200_000 },
      }));
      const points = fromDownrange(pad, headingDeg, rows);
      expect(Math.hypot(points[0]!.eastM, points[0]!.northM, points[0]!.upM)).toBeLessThan(1e-6);
      const path = makeAscentPath(points);
      for (const { tPlusS, altitudeM, downrangeM } of rows) {
        const flight = flightAt(path, pad, tPlusS);
        expect(Math.abs(flight.altitudeM - altitudeM)).toBeLessThan(1e-3);
        expect(Math.abs(flight.groundDistanceM - downrangeM)).toBeLessThan(1e-3);
      }
    }),
    FIXED,
  );
});

const anyCamera = fc.record({
  bearing: between(0, 359),
  range: between(60, 3000),
  turn: between(-15, 15),
  aimUp: between(5, 400),
  elevation: between(0, 60),
  focal: between(15, 300),
  roll: between(-90, 90),
  aimed: fc.boolean(),
});

/** The fastest movement on the image by moments 2 ms apart, each with the foot carried to the camera. */
function byMoments(path: AscentPath, view: CameraView): number | null {
  const carry = carryTo({ latitudeDeg: 45, longitudeDeg: 0, heightM: 20 }, view.place);
  let most: number | null = null;
  let before: readonly [number, number, number] | null = null;
  for (let s = 0; s < path.toS; s += 0.002) {
    const [east, north, up] = at(path.positionInto, s);
    const foot = carry([east, north, up + 5]);
    if (before !== null && up < 5000 && isInGate(view.frame, foot)) {
      const range = norm(foot);
      const moved = subtract(foot, before);
      const along = (moved[0] * foot[0] + moved[1] * foot[1] + moved[2] * foot[2]) / range;
      const across = Math.sqrt(Math.max(0, norm(moved) ** 2 - along ** 2)) / 0.002;
      most = Math.max(most ?? 0, (view.camera.lens.focalMm * across) / range);
    }
    before = foot;
    if (up > 5000) break;
  }
  return most;
}

test("image motion is that of the fastest of moments tried one by one", () => {
  let seen = 0;
  fc.assert(
    fc.property(anyFlight, anyCamera, ({ path }, { aimed, ...c }) => {
      const aim = aimed
        ? `aim: { up: ${c.aimUp} }`
        : `azimuth: ${(c.bearing + 180 + c.turn) % 360}, elevation: ${c.elevation}`;
      const keys = `at: { bearing: ${c.bearing}, range: ${c.range}, up: 2 }, ${aim}, roll: ${c.roll}`;
      const site = siteOf({ cameras: [`id: C, ${keys}, lens: { focal: ${c.focal} }`] });
      const view = makeCameraView(site, site.cameras[0]!);
      const found =
        imageMotion({ path, kind: "parameters", source: "made", assumed: [] }, site, view)?.imageMmS ?? null;
      const expected = byMoments(path, view);
      if (expected === null || found === null) expect(found ?? 0).toBe(expected ?? 0);
      else expect(Math.abs(found - expected)).toBeLessThan(0.01 * expected + 0.01);
      if (expected !== null) seen++;
    }),
    { ...FIXED, numRuns: 120 },
  );
  expect(seen).toBeGreaterThan(40);
});
