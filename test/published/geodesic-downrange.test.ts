/**
 * Downrange and altitude to the pad's tangent plane: published geodesics (the line of Vincenty 1975; Karney 2013), the circle
 * of the equator, geodesics integrated here step by step, and the sphere.
 */

import { expect, test } from "vitest";
import { fromEarthFixed, horizonAxes, toEarthFixed, toHorizon } from "../../src/base/earthFixed.ts";
import { norm, subtract, toAzimuthElevation, type Vec3 } from "../../src/base/vector.ts";
import { flightAt, makeAscentPath, type Triple } from "../../src/view/ascentPath.ts";
import { fromDownrange } from "../../src/view/downrange.ts";
import { placeAtEnu } from "../../src/view/sightLine.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

const RAD = Math.PI / 180;
const A = 6_378_137;
const E2 = 0.00669437999014;

const placeOf = ([latitudeDeg, longitudeDeg]: readonly [number, number], heightM = 0) => ({
  latitudeDeg,
  longitudeDeg,
  heightM,
});
const pointAt = (
  pad: ReturnType<typeof placeOf>,
  headingDeg: number,
  downrangeM: number,
  altitudeM: number,
) => {
  const { eastM, northM, upM } = fromDownrange(pad, headingDeg, [{ tPlusS: 0, downrangeM, altitudeM }])[0]!;
  return [eastM, northM, upM] as const;
};

interface Line {
  readonly name: string;
  readonly p1: readonly [number, number];
  readonly p2: readonly [number, number];
  readonly s_m: number;
  readonly az1_deg?: number;
  readonly az12_deg?: number;
}

test("published geodesics end where they should", () => {
  const { geodesics } = readTruth<{ geodesics: readonly Line[] }>("geodesy");
  const samples = geodesics.map(({ name, p1, p2, s_m, az1_deg, az12_deg }) => {
    const end = placeAtEnu(placeOf(p1), pointAt(placeOf(p1), (az1_deg ?? az12_deg)!, s_m, 0));
    return { name, found: norm(subtract(toEarthFixed(end), toEarthFixed(placeOf(p2)))), expected: 0 };
  });
  compare("published geodesics", samples);
});

test("east along the equator, a circle: range and elevation by hand", () => {
  const pad = placeOf([0, 20]);
  const rows = [50_000, 400_000, 900_000].map((downrangeM) => {
    const [east, north, up] = pointAt(pad, 90, downrangeM, 150_000);
    expect(Math.abs(north)).toBeLessThan(1e-6);
    const turn = downrangeM / A;
    const [eastBy, upBy] = [(A + 150_000) * Math.sin(turn), (A + 150_000) * Math.cos(turn) - A];
    return { downrangeM, found: [east, up] as const, expected: [eastBy, upBy] as const };
  });
  compare(
    "equator downrange, range",
    rows.map(({ downrangeM, found, expected }) => ({
      name: `${downrangeM} m`,
      found: Math.hypot(...found),
      expected: Math.hypot(...expected),
    })),
  );
  compare(
    "equator downrange, elevation",
    rows.map(({ downrangeM, found, expected }) => ({
      name: `${downrangeM} m`,
      found: Math.atan2(found[1], found[0]) / RAD,
      expected: Math.atan2(expected[1], expected[0]) / RAD,
    })),
  );
});

/** A geodesic from its differential equations (Clairaut), by Runge-Kutta steps: latitude and longitude in degrees. */
function integrated(latitudeDeg: number, headingDeg: number, lengthM: number): readonly [number, number] {
  const slope = ([phi, , alpha]: Vec3): Vec3 => {
    const w2 = 1 - E2 * Math.sin(phi) ** 2;
    const meridianM = (A * (1 - E2)) / w2 ** 1.5;
    const crossM = A / Math.sqrt(w2);
    const eastward = Math.sin(alpha) / crossM;
    return [Math.cos(alpha) / meridianM, eastward / Math.cos(phi), Math.tan(phi) * eastward];
  };
  const moved = (a: Vec3, b: Vec3, f: number): Vec3 => [a[0] + f * b[0], a[1] + f * b[1], a[2] + f * b[2]];
  let at: Vec3 = [latitudeDeg * RAD, 0, headingDeg * RAD];
  const step = lengthM / 2000;
  for (let i = 0; i < 2000; i++) {
    const k1 = slope(at);
    const k2 = slope(moved(at, k1, step / 2));
    const k3 = slope(moved(at, k2, step / 2));
    const k4 = slope(moved(at, k3, step));
    at = moved(moved(moved(moved(at, k1, step / 6), k2, step / 3), k3, step / 3), k4, step / 6);
  }
  return [at[0] / RAD, at[1] / RAD];
}

test("400 km out and 150 km up in any heading, by steps along the ground and Earth-fixed coordinates", () => {
  const samples = [
    [57.2, 98],
    [28, 82],
    [-39, 183],
    [5, 12],
    [0, 200],
    [69, 350],
  ].map(([latitudeDeg, headingDeg]) => {
    const pad = placeOf([latitudeDeg!, 0], 120);
    const [endLatitudeDeg, endLongitudeDeg] = integrated(latitudeDeg!, headingDeg!, 400_000);
    // IOGP Guidance Note 7-2, method 9602, written out.
    const [phi, lambda] = [endLatitudeDeg * RAD, endLongitudeDeg * RAD];
    const crossM = A / Math.sqrt(1 - E2 * Math.sin(phi) ** 2);
    const levelM = (crossM + 150_120) * Math.cos(phi);
    const z = (crossM * (1 - E2) + 150_120) * Math.sin(phi);
    const fixed: Vec3 = [levelM * Math.cos(lambda), levelM * Math.sin(lambda), z];
    const expected = toHorizon(horizonAxes(pad), subtract(fixed, toEarthFixed(pad)));
    const found = pointAt(pad, headingDeg!, 400_000, 150_000);
    return { name: `${latitudeDeg}, ${headingDeg}`, found: norm(subtract(found, expected)), expected: 0 };
  });
  compare("downrange by steps", samples);
});

test("the elevation of a sphere: tan e = (cos t - R / (R + H)) / sin t, but for the flattening", () => {
  const R = 6_371_008.77;
  const samples = [100_000, 400_000, 1_000_000].flatMap((downrangeM) =>
    [10, 100, 190, 280].map((headingDeg) => {
      const found = toAzimuthElevation(pointAt(placeOf([57.2, -5]), headingDeg, downrangeM, 150_000));
      const turn = downrangeM / R;
      const tangent = (Math.cos(turn) - R / (R + 150_000)) / Math.sin(turn);
      const name = `${downrangeM} m, ${headingDeg}`;
      return { name, found: found.elevationDeg, expected: Math.atan(tangent) / RAD };
    }),
  );
  compare("elevation on a sphere", samples);
});

test("a level flight 400 km out: level there, 3.6 degrees down in the pad's frame", () => {
  const pad = placeOf([57.2, -5], 20);
  const rows = Array.from({ length: 61 }, (_, i) => ({
    tPlusS: i * 5,
    downrangeM: i * 10_000,
    altitudeM: 150_000,
  }));
  const path = makeAscentPath(fromDownrange(pad, 98, rows));
  const velocity: Triple = [0, 0, 0];
  path.velocityInto(200, velocity);
  // 400 km around a sphere of 6371 km: 3.597 degrees.
  const inPadFrameDeg = toAzimuthElevation(velocity).elevationDeg;
  const flight = flightAt(path, pad, 200);
  compare("level flight", [
    { name: "there", found: flight.flightPathDeg!, expected: 0 },
    { name: "seen from the pad", found: inPadFrameDeg, expected: -400_000 / 6_371_008.77 / RAD },
  ]);
  compare("level flight, place", [
    { name: "altitude", found: flight.altitudeM, expected: 150_000 },
    { name: "along the ground", found: flight.groundDistanceM, expected: 400_000 },
  ]);
  // 2 km/s along the ground is faster 150 km above it.
  expect(flight.speedMS / (2000 * (1 + 150_000 / 6_371_008.77))).toBeCloseTo(1, 3);
  expect(fromEarthFixed(toEarthFixed(flight.place)).heightM).toBeCloseTo(150_020, 3);
});
