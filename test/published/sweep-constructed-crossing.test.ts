/**
 * A geometric construction, no published figures: a vehicle that climbs straight up at constant acceleration, and a camera whose line of
 * sight meets the apparent sun at a height that follows from where things stand on a curved Earth.
 *
 * The sun's azimuth A and apparent elevation e are taken from `sunAt` for a camera and a time. The pad is put at the azimuth A, d away.
 * On a sphere of radius R the pad's vertical then meets the line of sight to the sun at h = (R + c) cos e / cos(e + g) - R, with c the
 * camera's height and g = d / R (sine rule in the triangle camera, vehicle, middle of the Earth). A climb h = a t^2 / 2 gets there at
 * t = sqrt(2 h / a): T-0 is put so long before. The same is done on the ellipsoid, with Earth-fixed vectors and no formula.
 */

import { expect, test } from "vitest";
import type { Place } from "../../src/base/place.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { sweepSun } from "../../src/view/sweepSun.ts";
import { compare, type Sample } from "../support/compare.ts";
import { compassOf, earthMiddleM, times, type Vector } from "../support/sweepBruteForce.ts";

const RAD = Math.PI / 180;

interface Construction {
  readonly name: string;
  readonly camera: Place;
  readonly at: string;
  readonly rangeM: number;
  readonly accelerationMS2: number;
}

/** Elevations of the sun from 1 to 70 degrees, heights of the crossing from 120 m to 56 km. */
const CONSTRUCTIONS: readonly Construction[] = [
  {
    name: "evening",
    ...standing(45.2, -27.4, 10),
    at: "2027-04-18T20:30:00Z",
    rangeM: 6000,
    accelerationMS2: 4,
  },
  {
    name: "low sun",
    ...standing(-12, 130, 40),
    at: "2027-07-01T22:12:00Z",
    rangeM: 18_000,
    accelerationMS2: 6,
  },
  { name: "south", ...standing(-38, 178, 300), at: "2031-12-21T03:00:00Z", rangeM: 4000, accelerationMS2: 8 },
  { name: "noon", ...standing(28.5, 15, 0), at: "2027-03-21T11:00:00Z", rangeM: 12_000, accelerationMS2: 5 },
  {
    name: "high sun",
    ...standing(5, -52, 20),
    at: "2029-06-21T15:00:00Z",
    rangeM: 20_000,
    accelerationMS2: 10,
  },
  {
    name: "far off",
    ...standing(62, 20, 1200),
    at: "2027-05-01T06:30:00Z",
    rangeM: 30_000,
    accelerationMS2: 3,
  },
];

function standing(latitudeDeg: number, longitudeDeg: number, heightM: number) {
  return { camera: { latitudeDeg, longitudeDeg, heightM } };
}

/** Radius of the Earth along an azimuth (Euler's theorem on the two radii of the ellipsoid). */
function radiusM({ latitudeDeg }: Place, azimuth: number): number {
  const [a, squared] = [6378137, 0.00669437999014];
  const w = 1 - squared * Math.sin(latitudeDeg * RAD) ** 2;
  const [meridian, across] = [(a * (1 - squared)) / w ** 1.5, a / Math.sqrt(w)];
  return 1 / (Math.cos(azimuth) ** 2 / meridian + Math.sin(azimuth) ** 2 / across);
}

/** The place at height 0 that is seen at an azimuth, a straight distance off: led there step by step. */
function padAt(camera: Place, azimuth: number, rangeM: number): Place {
  const [east, north] = [rangeM * Math.sin(azimuth), rangeM * Math.cos(azimuth)];
  let pad: Place = { ...camera, heightM: 0 };
  const [eastward, northward] = compassOf(camera);
  const from = earthMiddleM(camera);
  for (let step = 0; step < 20; step++) {
    const at = earthMiddleM(pad);
    const way: Vector = [at[0] - from[0], at[1] - from[1], at[2] - from[2]];
    const missing = [east - times(eastward, way), north - times(northward, way)] as const;
    pad = {
      latitudeDeg: pad.latitudeDeg + missing[1] / 6.37e6 / RAD,
      longitudeDeg: pad.longitudeDeg + missing[0] / 6.37e6 / RAD / Math.cos(pad.latitudeDeg * RAD),
      heightM: 0,
    };
  }
  return pad;
}

/** Elevation from the camera of a point so high over the pad, and its azimuth, radians. */
function seen(camera: Place, pad: Place, heightM: number): { azimuth: number; elevation: number } {
  const [from, foot] = [earthMiddleM(camera), earthMiddleM(pad)];
  const vertical = compassOf(pad)[2];
  const way: Vector = [0, 1, 2].map((i) => foot[i]! - from[i]! + heightM * vertical[i]!) as unknown as Vector;
  const [east, north, up] = compassOf(camera).map((axis) => times(axis, way)) as [number, number, number];
  return { azimuth: Math.atan2(east, north), elevation: Math.atan2(up, Math.hypot(east, north)) };
}

/** Where a rising function of height or time is zero. */
function zeroOf(f: (x: number) => number, low: number, high: number): number {
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A long lens on a square gate: the gate is entered through its lower and upper side. */
const LENS = { focalMm: 1500, gateWidthMm: 20, gateHeightMm: 20 };

const BUILT = CONSTRUCTIONS.map(({ name, camera, at, rangeM, accelerationMS2 }) => {
  const sun = sunAt(camera, new Date(at));
  const [azimuth, elevation] = [sun.azimuthDeg * RAD, sun.apparentElevationDeg * RAD];
  const pad = padAt(camera, azimuth, rangeM);
  const heightM = zeroOf((h) => seen(camera, pad, h).elevation - elevation, 0, 2e5);
  const tPlusS = Math.sqrt((2 * heightM) / accelerationMS2);
  const t0 = new Date(new Date(at).getTime() - Math.round(tPlusS * 1000));
  const toS = Math.ceil(tPlusS) + 30;
  const ascent = Array.from({ length: 2 * toS + 1 }, (_, i) => {
    return { tPlusS: i / 2, eastM: 0, northM: 0, upM: (accelerationMS2 * i * i) / 8 };
  });
  const found = sweepSun({ pad, camera, ascent, ...LENS }, t0);
  return {
    name,
    camera,
    rangeM,
    accelerationMS2,
    sun,
    azimuth,
    elevation,
    pad,
    heightM,
    tPlusS,
    t0,
    toS,
    found,
  };
});

test("a geometric construction: the sun is met at the height where the line of sight to it meets the climb", () => {
  compare(
    "constructed crossing, T+",
    BUILT.map(({ name, tPlusS, found }) => ({ name, found: found.closest.tPlusS, expected: tPlusS })),
  );
  compare(
    "constructed crossing, height",
    BUILT.map(({ name, accelerationMS2, heightM, found }) => {
      return { name, found: (accelerationMS2 * found.closest.tPlusS ** 2) / 2, expected: heightM };
    }),
  );
  compare(
    "constructed crossing, off the axis",
    BUILT.map(({ name, found }) => ({ name, found: found.closest.offAxisDeg, expected: 0 })),
  );
});

test("a geometric construction: on a sphere, by the sine rule", () => {
  compare(
    "constructed crossing on a sphere",
    BUILT.map(({ name, camera, rangeM, accelerationMS2, azimuth, elevation, found }): Sample => {
      const radius = radiusM(camera, azimuth);
      // The pad is so far off in the camera's plane: the way along the ground is a hair longer.
      const turn = Math.asin(rangeM / radius);
      const heightM = ((radius + camera.heightM) * Math.cos(elevation)) / Math.cos(elevation + turn) - radius;
      return { name, found: found.closest.tPlusS, expected: Math.sqrt((2 * heightM) / accelerationMS2) };
    }),
  );
});

test("a geometric construction: the disc's rim enters over one side of the gate and leaves over the other", () => {
  const samples = BUILT.flatMap(({ name, camera, pad, accelerationMS2, sun, t0, toS, found }): Sample[] => {
    expect(found.inFrame.length, name).toBe(1);
    const half = Math.atan(LENS.gateHeightMm / 2 / LENS.focalMm) + sun.semidiameterDeg * RAD;
    // The vehicle climbs past the sun: it comes down through the picture, half a gate and its own half above the axis at first.
    const below = (tPlusS: number): number => {
      const now = sunAt(camera, new Date(t0.getTime() + tPlusS * 1000));
      return (
        seen(camera, pad, (accelerationMS2 * tPlusS ** 2) / 2).elevation - now.apparentElevationDeg * RAD
      );
    };
    return [
      {
        name: `${name}, in`,
        found: found.inFrame[0]!.fromS,
        expected: zeroOf((t) => below(t) + half, 0, toS),
      },
      {
        name: `${name}, out`,
        found: found.inFrame[0]!.toS,
        expected: zeroOf((t) => below(t) - half, 0, toS),
      },
    ];
  });
  compare("constructed crossing, rim", samples);
});
