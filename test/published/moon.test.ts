/**
 * The moon: Meeus 1998 (Astronomical Algorithms, 2nd ed.) by the numbers of its examples and as the library astronomia 4, and its
 * light against the Explanatory Supplement to the Astronomical Almanac (Seidelmann, ed., 1992; table 5-1 in Vallado).
 */

import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { horizonAxes, toEarthFixed, toHorizon } from "../../src/base/earthFixed.ts";
import { PadstopError } from "../../src/base/problem.ts";
import { standardAir } from "../../src/base/standardAir.ts";
import { angleBetweenDeg, fromAzimuthElevation, norm, subtract, type Vec3 } from "../../src/base/vector.ts";
import { refractionDeg } from "../../src/sky/atmosphere.ts";
import { moonEquatorial, moonGeocentric, moonSemidiameterDeg } from "../../src/sky/ephemeris.ts";
import { moonAt, moonIlluminanceLx } from "../../src/sky/moon.ts";
import { compare } from "../support/compare.ts";

interface Spherical {
  readonly ra: number;
  readonly dec: number;
  readonly range: number;
}
/** Radians, kilometres and (the sun) au. */
interface Astronomia {
  readonly moonposition: { position(jde: number): { lon: number; lat: number; range: number } };
  readonly moonillum: { phaseAngleEquatorial(moon: Spherical, sun: Spherical): number };
  readonly nutation: { nutation(jde: number): [number, number]; meanObliquity(jde: number): number };
  readonly planetposition: { readonly Planet: new (vsop87: unknown) => unknown };
  readonly solar: { apparentEquatorialVSOP87(earth: unknown, jde: number): Spherical };
  /** Seconds of time. */
  readonly sidereal: { apparent(jd: number): number };
}

// The library has no types, so it is loaded at run time.
const load = createRequire(import.meta.url);
const { moonposition, moonillum, nutation, planetposition, solar, sidereal } = load(
  "astronomia",
) as Astronomia;
const earth = new planetposition.Planet(
  (load("astronomia/data") as { default: { vsop87Bearth: unknown } }).default.vsop87Bearth,
);

const RAD = Math.PI / 180;
/** IAU 2012. */
const AU_KM = 149_597_870.7;
const jdOf = (at: Date): number => at.getTime() / 86_400_000 + 2_440_587.5;

/** From mean longitude and latitude of date to right ascension and declination (Meeus 1998, ch. 22 and eq. 13.3, 13.4). */
function equatorOf(lonRad: number, latRad: number, jde: number): { ra: number; dec: number } {
  const [inLongitude, inObliquity] = nutation.nutation(jde);
  const lon = lonRad + inLongitude;
  const tilt = nutation.meanObliquity(jde) + inObliquity;
  return {
    ra: Math.atan2(Math.sin(lon) * Math.cos(tilt) - Math.tan(latRad) * Math.sin(tilt), Math.cos(lon)),
    dec: Math.asin(Math.sin(latRad) * Math.cos(tilt) + Math.cos(latRad) * Math.sin(tilt) * Math.sin(lon)),
  };
}

/** Earth-fixed. */
function fixedKm({ ra, dec, range }: Spherical, at: Date): Vec3 {
  const eastRad = ra - (sidereal.apparent(jdOf(at)) / 240) * RAD;
  const level = range * Math.cos(dec);
  return [level * Math.cos(eastRad), level * Math.sin(eastRad), range * Math.sin(dec)];
}

/** 1992 April 12, 0h dynamical time (59 s of Delta T: Meeus 1998, table 10.A). */
const EXAMPLE = new Date(Date.UTC(1992, 3, 12) - 59_000);

test("47.a: place and distance of the moon (p. 342)", () => {
  const expected = equatorOf(133.162655 * RAD, -3.229126 * RAD, 2_448_724.5);
  const found = moonGeocentric(EXAMPLE).fixedKm;
  compare("Meeus 47.a", [
    {
      name: "direction",
      found: angleBetweenDeg(found, fixedKm({ ...expected, range: 1 }, EXAMPLE)),
      expected: 0,
    },
  ]);
  compare("Meeus 47.a distance", [{ name: "km", found: norm(found), expected: 368_409.7 }]);
  const { parallaxDeg } = moonEquatorial({ latitudeDeg: 45, longitudeDeg: 90, heightM: 0 }, EXAMPLE);
  compare("Meeus 47.a parallax", [{ name: "parallax", found: parallaxDeg, expected: 0.99199 }]);
});

test("48.a: phase angle and lit share on the same day (p. 347)", () => {
  const moon = moonAt({ latitudeDeg: -30, longitudeDeg: 90, heightM: 0 }, EXAMPLE);
  compare("Meeus 48.a", [{ name: "phase angle", found: moon.phaseAngleDeg, expected: 69.0756 }]);
  compare("Meeus 48.a lit share", [{ name: "lit share", found: moon.litShare, expected: 0.6785 }]);
  expect(moonGeocentric(EXAMPLE).phaseAngleDeg).toBe(moon.phaseAngleDeg);
});

test("ch. 55: the semidiameter is 358,473,400 arc seconds over the distance in km", () => {
  expect(moonSemidiameterDeg(358_473_400)).toBeCloseTo(1 / 3600, 15);
  // Topocentric: from where it is in the zenith the moon is larger by the Earth's radius over its distance.
  const [x, y, z] = moonGeocentric(EXAMPLE).fixedKm;
  const longitudeDeg = Math.atan2(y, x) / RAD;
  const below = { latitudeDeg: Math.atan2(z, Math.hypot(x, y)) / RAD, longitudeDeg, heightM: 0 };
  const near = moonAt(below, EXAMPLE).semidiameterDeg;
  expect(near * 3600).toBeCloseTo(358_473_400 / (368_409.7 - 6378), 0);
});

const PLACES = [
  [90, 0, 0],
  [78.2, 15.6, 10],
  [59.3, 18.1, 30],
  [23.44, 120, 0],
  [0, 180, 0],
  [-12, 31, 2500],
  [-37.9, 144.4, 60],
  [-90, 0, 2800],
] as const;
/** Delta T is given to them: 64 s in 2000, 68 s in 2015, 69 s in 2027 (IERS). Our ephemeris takes 76 s in 2027: 0.001 degree of moon. */
const YEARS = [
  { year: 2000, deltaTS: 64 },
  { year: 2015, deltaTS: 68 },
  { year: 2027, deltaTS: 69 },
] as const;

/** Every eighth day at an hour that walks around the clock: 46 instants a year and place. */
const CASES = YEARS.flatMap(({ year, deltaTS }) =>
  PLACES.flatMap(([latitudeDeg, longitudeDeg, heightM]) =>
    Array.from({ length: 46 }, (_, i) => {
      const at = new Date(Date.UTC(year, 0, 1 + 8 * i, (i * 7) % 24, (i * 13) % 60));
      const jde = jdOf(at) + deltaTS / 86_400;
      const { lon, lat, range } = moonposition.position(jde);
      return {
        name: `${latitudeDeg}, ${longitudeDeg} at ${at.toISOString()}`,
        place: { latitudeDeg, longitudeDeg, heightM },
        at,
        moon: { ...equatorOf(lon, lat, jde), range },
        jde,
      };
    }),
  ),
);

test("three years of moons against astronomia: direction from the place, and the refraction of its air", () => {
  const samples = CASES.map(({ name, place, at, moon }) => {
    const observerKm = toEarthFixed(place).map((metres) => metres / 1000) as unknown as Vec3;
    const theirs = toHorizon(horizonAxes(place), subtract(fixedKm(moon, at), observerKm));
    const ours = moonAt(place, at);
    const lift = refractionDeg(ours.elevationDeg, standardAir(place.heightM));
    expect(ours.apparentElevationDeg).toBeCloseTo(ours.elevationDeg + lift, 12);
    const seen = fromAzimuthElevation(ours.azimuthDeg, ours.elevationDeg);
    return { name, found: angleBetweenDeg(seen, theirs), expected: 0 };
  });
  compare("years of moons against astronomia", samples);
});

test("three years of moons against astronomia: phase angle and parallax", () => {
  compare(
    "moon phase against astronomia",
    CASES.map(({ name, at, place, moon, jde }) => {
      const { ra, dec, range } = solar.apparentEquatorialVSOP87(earth, jde);
      const theirsRad = moonillum.phaseAngleEquatorial(moon, { ra, dec, range: range * AU_KM });
      return { name, found: moonAt(place, at).phaseAngleDeg, expected: theirsRad / RAD };
    }),
  );
  compare(
    "moon parallax against astronomia",
    CASES.map(({ name, at, place, moon }) => ({
      name,
      found: moonEquatorial(place, at).parallaxDeg,
      expected: Math.asin(6378.14 / moon.range) / RAD,
    })),
  );
});

/** Full moon at mean distance, as the rows give it. */
const FULL_LX = [
  [90, 0.26915],
  [60, 0.216],
  [40, 0.14252],
  [30, 0.097724],
  [20, 0.057539],
  [10, 0.023611],
  [5, 0.0099448],
  [2, 0.0043543],
  [0, 0.0016218],
  [-0.8, 0.00094049],
] as const;
/** Of the full moon's light. */
const PHASE_FACTORS = [
  [0, 1],
  [10, 0.8188],
  [30, 0.54679],
  [60, 0.28229],
  [90, 0.1187],
  [120, 0.031784],
  [150, 0.0038393],
] as const;

test("the polynomials' values of a full moon, and what the phase leaves of it", () => {
  compare(
    "full moon polynomials",
    FULL_LX.map(([h, lux]) => ({ name: `h ${h}`, found: moonIlluminanceLx(h, 0, 0.951), expected: lux })),
  );
  compare(
    "moon phase factors",
    PHASE_FACTORS.map(([f, factor]) => ({
      name: `f ${f}`,
      found: moonIlluminanceLx(40, f, 0.951) / moonIlluminanceLx(40, 0, 0.951),
      expected: factor,
    })),
  );
});

test("light goes with the square of the parallax (the rows' 2 log10(P / 0.951))", () => {
  const ratio = moonIlluminanceLx(50, 20, 1.02) / moonIlluminanceLx(50, 20, 0.9);
  expect(ratio).toBeCloseTo((1.02 / 0.9) ** 2, 12);
});

test("published levels: a typical full moon 0.05 to 0.3 lx, 0.32 at most, a quarter moon 0.01 lx", () => {
  // Kyba, Mohar & Posch 2017, Astron. & Geophys. 58(1) 1.31: typical 0.05 to 0.1, extreme 0.32 (perigee, tropics); 0.25 in handbooks.
  for (const h of [20, 30, 45, 60, 90]) {
    expect(moonIlluminanceLx(h, 0, 0.951)).toBeGreaterThan(0.05);
    expect(moonIlluminanceLx(h, 0, 0.951)).toBeLessThan(0.3);
  }
  const perigeeParallaxDeg = Math.asin(6378.14 / 356_500) / RAD;
  expect(moonIlluminanceLx(90, 0, perigeeParallaxDeg)).toBeGreaterThan(0.29);
  expect(moonIlluminanceLx(90, 0, perigeeParallaxDeg)).toBeLessThan(0.33);
  // General tables of illuminance.
  expect(Math.abs(Math.log2(moonIlluminanceLx(30, 90, 0.951) / 0.01))).toBeLessThan(0.5);
});

test("what is out of range is refused by name", () => {
  const place = { latitudeDeg: 10, longitudeDeg: 20, heightM: 0 };
  const wrong: readonly (readonly [RegExp, () => unknown])[] = [
    [/latitudeDeg/, () => moonAt({ ...place, latitudeDeg: 91 }, EXAMPLE)],
    [/E_TIME/, () => moonAt(place, new Date(Number.NaN))],
    [/pressureHPa/, () => moonAt(place, EXAMPLE, { pressureHPa: 0, temperatureC: 10 })],
    [/airlessElevationDeg/, () => moonIlluminanceLx(Number.NaN, 0, 0.951)],
    [/phaseAngleDeg/, () => moonIlluminanceLx(10, 181, 0.951)],
    [/parallaxDeg/, () => moonIlluminanceLx(10, 0, 0)],
  ];
  for (const [named, call] of wrong) {
    expect(call).toThrow(PadstopError);
    expect(call).toThrow(named);
  }
});
