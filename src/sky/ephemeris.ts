/**
 * The one door to astronomy-engine: the sun as seen from a place, airless.
 *
 * The library throws strings and takes any number, so arguments are checked before and its errors are rewrapped.
 * Universal time is taken as UTC (|UT1-UTC| < 0.9 s moves the sun by less than 0.004 degree).
 */

import { Body, Equator, MakeTime, Observer, SiderealTime } from "astronomy-engine";
import { SUN_SEMIDIAMETER_ARCSEC_AT_1_AU } from "../base/constants.ts";
import type { Place } from "../base/place.ts";
import { refuse, requireDate, requireNumber } from "../base/problem.ts";
import { wrap360 } from "../base/units.ts";

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
  requireNumber("heightM", place.heightM, -500, 100_000, "m");
  return place;
}

export function sunEquatorial(place: Place, at: Date): SunEquatorial {
  requirePlace(place);
  requireDate("at", at);
  try {
    const time = MakeTime(at);
    const observer = new Observer(place.latitudeDeg, place.longitudeDeg, place.heightM);
    const equator = Equator(Body.Sun, time, observer, true, true);
    const rightAscensionDeg = wrap360(equator.ra * 15);
    return {
      rightAscensionDeg,
      declinationDeg: equator.dec,
      distanceAu: equator.dist,
      greenwichHourAngleDeg: wrap360(SiderealTime(time) * 15 - rightAscensionDeg),
    };
  } catch (thrown) {
    return refuse("E_TIME", "at", `${at.toISOString()} (${String(thrown)})`, "a date the ephemeris covers");
  }
}

/** Angular radius of the disc (Meeus 1998, ch. 55). */
export const semidiameterDeg = (distanceAu: number): number =>
  SUN_SEMIDIAMETER_ARCSEC_AT_1_AU / 3600 / distanceAu;
