/**
 * From day to night without a step: more sun and more moon are more light, wherever the published pieces meet; and the
 * interpolated moon against the ephemeris called at each instant.
 */

import fc from "fast-check";
import { expect, test } from "vitest";
import { horizonAxes } from "../../src/base/earthFixed.ts";
import { standardAir } from "../../src/base/standardAir.ts";
import { sinDeg } from "../../src/base/units.ts";
import { angleBetweenDeg, fromAzimuthElevation, norm } from "../../src/base/vector.ts";
import { SKY_STATES } from "../../src/site/types.ts";
import { refractionDeg } from "../../src/sky/atmosphere.ts";
import { daylight, daylightInputFor, daylightThrough, type Sky } from "../../src/sky/daylight.ts";
import { moonEquatorial, moonSemidiameterDeg } from "../../src/sky/ephemeris.ts";
import { moonAt, moonIlluminanceLx } from "../../src/sky/moon.ts";
import { MOON_TRACK_BOUND_DEG, makeMoonTrack, moonScratch } from "../../src/sky/moonTrack.ts";
import { seenFrom } from "../../src/sky/sun.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../../src/sky/sunTrack.ts";
import { sunIlluminanceLx } from "../../src/sky/twilight.ts";
import { compare } from "../support/compare.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { between, FIXED } from "../support/seeded.ts";

/** Largest change over one step of `stepDeg`, and least (below zero when it falls), in stops. */
function changes(lx: (elevationDeg: number) => number, fromDeg: number, toDeg: number, stepDeg: number) {
  const count = Math.round((toDeg - fromDeg) / stepDeg);
  let before = Math.log2(lx(fromDeg));
  let [most, least] = [-Infinity, Infinity];
  for (let i = 1; i <= count; i++) {
    const now = Math.log2(lx(Math.min(toDeg, fromDeg + i * stepDeg)));
    most = Math.max(most, now - before);
    least = Math.min(least, now - before);
    before = now;
  }
  return { most, least };
}

/** The light of one is 1.57 stops a degree where it changes fastest, in dusk, and 1.75 where a join is led over. */
const MOST_STOPS_PER_DEG = 1.8;
const STEP_DEG = 1e-4;

test("the sun's light rises with it at every ten-thousandth of a degree, and nowhere jumps", () => {
  const { most, least } = changes(sunIlluminanceLx, -30, 90, STEP_DEG);
  expect(least).toBeGreaterThan(0);
  expect(most).toBeLessThan(MOST_STOPS_PER_DEG * STEP_DEG);
});

test("the moon's light rises with it at every ten-thousandth of a degree, and nowhere jumps", () => {
  const { most, least } = changes((h) => moonIlluminanceLx(h, 0, 0.951), -30, 90, STEP_DEG);
  expect(least).toBeGreaterThan(0);
  expect(most).toBeLessThan(MOST_STOPS_PER_DEG * STEP_DEG);
});

test("of two suns or moons the higher one gives more, however far apart", () => {
  fc.assert(
    fc.property(between(-90, 89.9), between(1e-6, 60), between(0, 180), (lowDeg, moreDeg, phaseDeg) => {
      const highDeg = Math.min(90, lowDeg + moreDeg);
      expect(sunIlluminanceLx(highDeg)).toBeGreaterThan(sunIlluminanceLx(lowDeg));
      expect(moonIlluminanceLx(highDeg, phaseDeg, 0.951)).toBeGreaterThan(
        moonIlluminanceLx(lowDeg, phaseDeg, 0.951),
      );
    }),
    { ...FIXED, numRuns: 2000 },
  );
});

test("moonlight is a number above zero, less of it the farther and the less lit the moon", () => {
  fc.assert(
    fc.property(
      between(-90, 90),
      between(0, 179),
      between(0.85, 1),
      (elevationDeg, phaseDeg, parallaxDeg) => {
        const lux = moonIlluminanceLx(elevationDeg, phaseDeg, parallaxDeg);
        expect(lux).toBeGreaterThan(0);
        expect(lux).toBeLessThan(0.33);
        expect(moonIlluminanceLx(elevationDeg, phaseDeg + 0.5, parallaxDeg)).toBeLessThan(lux);
        expect(moonIlluminanceLx(elevationDeg, phaseDeg, parallaxDeg + 0.01)).toBeGreaterThan(lux);
      },
    ),
    FIXED,
  );
});

const totalLx = (
  light: { directNormalLx: number; diffuseHorizontalLx: number },
  apparentDeg: number,
): number => light.directNormalLx * Math.max(0, sinDeg(apparentDeg)) + light.diffuseHorizontalLx;

test("under every sky the light rises with the sun and never jumps by 0.05 stop, from deep night to the low sun's end", () => {
  for (const sky of SKY_STATES) {
    const { most, least } = changes((h) => totalLx(daylight(h, sky), h), -30, 6, 1e-3);
    expect(least, sky).toBeGreaterThan(0);
    expect(most, sky).toBeLessThan(MOST_STOPS_PER_DEG * 1e-3);
  }
});

test("and so in the air of a site, whose refraction lifts the one sun and leaves the other", () => {
  for (const heightM of [0, 3000]) {
    const air = standardAir(heightM);
    const through = (h: number, sky: Sky): number => {
      const apparentElevationDeg = h + refractionDeg(h, air);
      const seen = { airlessElevationDeg: h, apparentElevationDeg };
      return totalLx(daylightThrough(daylightInputFor(seen, 1, heightM), sky), apparentElevationDeg);
    };
    for (const sky of SKY_STATES) {
      const { most, least } = changes((h) => through(h, sky), -20, 5.5, 1e-3);
      expect(least, sky).toBeGreaterThan(0);
      expect(most, sky).toBeLessThan(MOST_STOPS_PER_DEG * 1e-3);
    }
  }
});

const HOUR_MS = 3_600_000;
const FIRST_MS = Date.UTC(1900, 0, 3);
const LAST_MS = Date.UTC(2099, 11, 31);

/** Every tenth at a pole. */
const anyPlace = (random: Random) => ({
  latitudeDeg: random.whole(1, 10) === 1 ? random.whole(0, 1) * 180 - 90 : random.between(-90, 90),
  longitudeDeg: random.between(-180, 180),
  heightM: random.between(-400, 5000),
});

test("300 tracks of the moon of up to a year, ten instants each: direction", () => {
  const random = makeRandom(20_270_418);
  const samples = Array.from({ length: 300 }, (_, i) => {
    const place = anyPlace(random);
    const fromMs = Math.round(random.between(FIRST_MS, LAST_MS));
    const toMs = Math.round(fromMs + random.between(0.01, i % 2 === 0 ? 20 : 8760) * HOUR_MS);
    const track = makeMoonTrack(place, new Date(fromMs), new Date(toMs));
    return Array.from({ length: 10 }, () => {
      const ms = random.whole(fromMs, toMs);
      const seen = seenFrom(horizonAxes(place), track.at(ms).fixed, standardAir(place.heightM));
      const moon = moonAt(place, new Date(ms));
      const found = angleBetweenDeg(
        fromAzimuthElevation(seen.azimuthDeg, seen.airlessElevationDeg),
        fromAzimuthElevation(moon.azimuthDeg, moon.elevationDeg),
      );
      expect(found).toBeLessThan(MOON_TRACK_BOUND_DEG);
      return { name: `${JSON.stringify(place)} ${new Date(ms).toISOString()}`, found, expected: 0 };
    });
  }).flat();
  compare("MoonTrack against moonAt", samples);
});

test("phase, lit share, parallax and semidiameter follow too, asked in any order, at the ends as well", () => {
  const random = makeRandom(7);
  for (let i = 0; i < 100; i++) {
    const place = anyPlace(random);
    const fromMs = Math.round(random.between(FIRST_MS, LAST_MS));
    const toMs = fromMs + 800 * HOUR_MS;
    const track = makeMoonTrack(place, new Date(fromMs), new Date(toMs));
    const sample = moonScratch();
    for (const ms of [toMs, random.whole(fromMs, toMs), fromMs]) {
      track.into(ms, sample);
      const moon = moonEquatorial(place, new Date(ms));
      // The angle itself is ill set within a degree of full and new.
      expect(Math.abs(sample.phaseAngleDeg - moon.phaseAngleDeg)).toBeLessThan(0.01);
      expect(Math.abs(sample.litShare - moon.litShare)).toBeLessThan(1e-6);
      expect(Math.abs(sample.parallaxDeg - moon.parallaxDeg)).toBeLessThan(2e-6);
      expect(Math.abs(sample.semidiameterDeg - moonSemidiameterDeg(moon.distanceKm))).toBeLessThan(1e-6);
      expect(norm(sample.fixed)).toBeCloseTo(1, 12);
      expect(track.at(ms)).toEqual(sample);
    }
  }
});

test("no moon moves faster across the sky than the rate the search for crossings relies on", () => {
  const random = makeRandom(11);
  for (let i = 0; i < 300; i++) {
    const place = anyPlace(random);
    const ms = Math.round(random.between(FIRST_MS, LAST_MS));
    const [a, b] = [ms, ms + 60_000].map((at) => {
      const moon = moonAt(place, new Date(at));
      return fromAzimuthElevation(moon.azimuthDeg, moon.apparentElevationDeg);
    });
    expect(angleBetweenDeg(a!, b!) / 60_000, JSON.stringify(place)).toBeLessThan(SUN_MAX_RATE_DEG_PER_MS);
  }
});
