/**
 * The one door to astronomy-engine: sun and moon as seen from a place, airless.
 *
 * The library throws strings and takes any number, so arguments are checked before and its errors are rewrapped.
 * Universal time is taken as UTC (|UT1-UTC| < 0.9 s moves the sun by less than 0.004 degree).
 */

import {
  type AstroTime,
  Body,
  Equator,
  type EquatorialCoordinates,
  Illumination,
  KM_PER_AU,
  MakeTime,
  Observer,
  RotateVector,
  Rotation_EQJ_EQD,
  SiderealTime,
} from "astronomy-engine";
import {
  MOON_SEMIDIAMETER_ARCSEC_AT_1_KM,
  SUN_SEMIDIAMETER_ARCSEC_AT_1_AU,
  WGS84_SEMI_MAJOR_M,
} from "../base/constants.ts";
import type { Place } from "../base/place.ts";
import { refuse, requireDate, requireNumber } from "../base/problem.ts";
import { asinDeg, cosDeg, sinDeg, wrap360 } from "../base/units.ts";
import type { Vec3 } from "../base/vector.ts";

/** The sun, topocentric, equator and equinox of date, with aberration. */
export interface SunEquatorial {
  readonly rightAscensionDeg: number;
  readonly declinationDeg: number;
  readonly distanceAu: number;
  /** West of the Greenwich meridian, 0..360. */
  readonly greenwichHourAngleDeg: number;
}

/** A place within the ranges every function accepts; refuses others by name and range. */
export function requirePlace(place: Place): Place {
  requireNumber("latitudeDeg", place.latitudeDeg, -90, 90, "degrees");
  requireNumber("longitudeDeg", place.longitudeDeg, -360, 360, "degrees");
  requireNumber("heightM", place.heightM, -1500, 100_000, "m");
  return place;
}

export function sunEquatorial(place: Place, at: Date): SunEquatorial {
  requirePlace(place);
  return asked(at, (time) => {
    const { ra, dec, dist } = seenFromPlace(Body.Sun, place, time);
    const rightAscensionDeg = wrap360(ra * 15);
    return {
      rightAscensionDeg,
      declinationDeg: dec,
      distanceAu: dist,
      greenwichHourAngleDeg: wrap360(SiderealTime(time) * 15 - rightAscensionDeg),
    };
  });
}

/** The moon, topocentric, equator and equinox of date; light time and aberration (0.7 arc second together) are in the theory. */
export interface MoonEquatorial {
  readonly declinationDeg: number;
  /** West of the Greenwich meridian, 0..360. */
  readonly greenwichHourAngleDeg: number;
  /** From the place. */
  readonly distanceKm: number;
  /** Equatorial horizontal parallax, by the distance from the Earth's centre. */
  readonly parallaxDeg: number;
  /** Sun, moon, Earth's centre: 0 full, 180 new. */
  readonly phaseAngleDeg: number;
  /** Of the disc, 0..1. */
  readonly litShare: number;
}

/**
 * The moon from `place` at `at`, by a shortened Brown theory: within 0.003 degree of that of Meeus 1998. The phase leaves out the
 * sun's aberration, 0.006 degree. Throws PadstopError for a place or date out of range.
 */
export function moonEquatorial(place: Place, at: Date): MoonEquatorial {
  requirePlace(place);
  return asked(at, (time) => {
    const { ra, dec, dist } = seenFromPlace(Body.Moon, place, time);
    const { phase_angle, geo_dist } = Illumination(Body.Moon, time);
    return {
      declinationDeg: dec,
      greenwichHourAngleDeg: wrap360((SiderealTime(time) - ra) * 15),
      distanceKm: dist * KM_PER_AU,
      parallaxDeg: moonParallaxDeg(geo_dist * KM_PER_AU),
      phaseAngleDeg: phase_angle,
      litShare: litShareAt(phase_angle),
    };
  });
}

/** The moon from the Earth's centre. */
export interface MoonGeocentric {
  /** Earth-fixed, airless. */
  readonly fixedKm: Vec3;
  readonly phaseAngleDeg: number;
}

/** The moon at `at`, wherever it is looked for from. Throws PadstopError for a date out of range. */
export function moonGeocentric(at: Date): MoonGeocentric {
  return asked(at, (time) => {
    const { phase_angle, gc } = Illumination(Body.Moon, time);
    const { x, y, z } = RotateVector(Rotation_EQJ_EQD(time), gc);
    const siderealDeg = SiderealTime(time) * 15;
    const [cosine, sine] = [cosDeg(siderealDeg), sinDeg(siderealDeg)];
    return {
      fixedKm: [KM_PER_AU * (x * cosine + y * sine), KM_PER_AU * (y * cosine - x * sine), KM_PER_AU * z],
      phaseAngleDeg: phase_angle,
    };
  });
}

const seenFromPlace = (body: Body, place: Place, time: AstroTime): EquatorialCoordinates =>
  Equator(body, time, new Observer(place.latitudeDeg, place.longitudeDeg, place.heightM), true, true);

/** What the library says of an instant; its errors become ours. */
function asked<T>(at: Date, ask: (time: AstroTime) => T): T {
  requireDate("at", at);
  try {
    return ask(MakeTime(at));
  } catch (thrown) {
    return refuse("E_TIME", "at", `${at.toISOString()} (${String(thrown)})`, "a date the ephemeris covers");
  }
}

/** Angular radius of the disc (Meeus 1998, ch. 55). */
export const semidiameterDeg = (distanceAu: number): number =>
  SUN_SEMIDIAMETER_ARCSEC_AT_1_AU / 3600 / distanceAu;

/** Angular radius of the moon's disc (Meeus 1998, ch. 55); topocentric when the distance is. */
export const moonSemidiameterDeg = (distanceKm: number): number =>
  MOON_SEMIDIAMETER_ARCSEC_AT_1_KM / 3600 / distanceKm;

/** Equatorial horizontal parallax by the distance from the Earth's centre (Meeus 1998, ch. 47). */
export const moonParallaxDeg = (geocentricKm: number): number =>
  asinDeg(WGS84_SEMI_MAJOR_M / 1000 / geocentricKm);

/** Lit share of a disc (Meeus 1998, eq. 48.1). */
export const litShareAt = (phaseAngleDeg: number): number => (1 + cosDeg(phaseAngleDeg)) / 2;
