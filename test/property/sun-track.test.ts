/** The interpolated sun against the ephemeris called at each instant, 2000 to 2060, all latitudes. */

import { expect, test } from "vitest";
import { horizonAxes } from "../../src/base/earthFixed.ts";
import { standardAir } from "../../src/base/standardAir.ts";
import { angleBetweenDeg, fromAzimuthElevation } from "../../src/base/vector.ts";
import { seenFrom, sunAt } from "../../src/sky/sun.ts";
import { makeSunTrack, SUN_MAX_RATE_DEG_PER_MS, SUN_TRACK_BOUND_DEG } from "../../src/sky/sunTrack.ts";
import { compare } from "../support/compare.ts";
import { makeRandom, type Random } from "../support/random.ts";

const HOUR_MS = 3_600_000;
const FIRST_MS = Date.UTC(2000, 0, 1);
const LAST_MS = Date.UTC(2060, 11, 31);

function anyPlace(random: Random) {
  return {
    latitudeDeg: random.between(-90, 90),
    longitudeDeg: random.between(-180, 180),
    heightM: random.between(-400, 5000),
  };
}

/** Angle between the track's sun and the ephemeris's, both turned into the same horizon. */
function apartDeg(track: ReturnType<typeof makeSunTrack>, ms: number): number {
  const { place } = track;
  const seen = seenFrom(horizonAxes(place), track.at(ms).fixed, standardAir(place.heightM));
  const sun = sunAt(place, new Date(ms));
  return angleBetweenDeg(
    fromAzimuthElevation(seen.azimuthDeg, seen.airlessElevationDeg),
    fromAzimuthElevation(sun.azimuthDeg, sun.elevationDeg),
  );
}

test("300 tracks of up to two days, ten instants each", () => {
  const random = makeRandom(20_270_418);
  const samples = Array.from({ length: 300 }, () => {
    const place = anyPlace(random);
    const fromMs = Math.round(random.between(FIRST_MS, LAST_MS));
    const toMs = Math.round(fromMs + random.between(0.01, 48) * HOUR_MS);
    const track = makeSunTrack(place, new Date(fromMs), new Date(toMs));
    return Array.from({ length: 10 }, () => {
      const ms = random.whole(fromMs, toMs);
      return {
        name: `${JSON.stringify(place)} ${new Date(ms).toISOString()}`,
        found: apartDeg(track, ms),
        expected: 0,
      };
    });
  }).flat();
  compare("SunTrack against sunAt", samples);
});

test("the stated bound is above what was measured, and within the design's 0.001 degree", () => {
  expect(SUN_TRACK_BOUND_DEG).toBeLessThanOrEqual(0.001);
});

test("distance and semidiameter follow too", () => {
  const random = makeRandom(7);
  for (let i = 0; i < 100; i++) {
    const place = anyPlace(random);
    const fromMs = Math.round(random.between(FIRST_MS, LAST_MS));
    const track = makeSunTrack(place, new Date(fromMs), new Date(fromMs + 5 * HOUR_MS));
    const ms = random.whole(fromMs, fromMs + 5 * HOUR_MS);
    const sun = sunAt(place, new Date(ms));
    expect(Math.abs(track.at(ms).distanceAu - sun.distanceAu)).toBeLessThan(1e-6);
    expect(Math.abs(track.at(ms).semidiameterDeg - sun.semidiameterDeg)).toBeLessThan(1e-6);
  }
});

test("no sun moves faster across the sky than the rate the search for crossings relies on", () => {
  const random = makeRandom(11);
  for (let i = 0; i < 300; i++) {
    const place = anyPlace(random);
    const ms = Math.round(random.between(FIRST_MS, LAST_MS));
    const [a, b] = [ms, ms + 60_000].map((at) => {
      const sun = sunAt(place, new Date(at));
      return fromAzimuthElevation(sun.azimuthDeg, sun.apparentElevationDeg);
    });
    expect(angleBetweenDeg(a!, b!) / 60_000, JSON.stringify(place)).toBeLessThan(SUN_MAX_RATE_DEG_PER_MS);
  }
});
