/**
 * The moon at one place and instant, and its light on the horizontal under a clear sky.
 *
 * A full moon in the zenith gives 0.27 lx, a typical one 0.05 to 0.1 (Kyba, Mohar & Posch 2017), a half moon a tenth of
 * a full one: with a lit plume or a floodlight in sight it is nothing, on an unlit pad it is all there is.
 */

import { horizonAxes } from "../base/earthFixed.ts";
import type { Air, Place } from "../base/place.ts";
import { requireDate, requireNumber } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { cosDeg, sinDeg } from "../base/units.ts";
import { requireAir } from "./atmosphere.ts";
import { moonEquatorial, moonSemidiameterDeg, requirePlace } from "./ephemeris.ts";
import { seenFrom } from "./sun.ts";
import { type IlluminanceRow, joinRows, log10Lx, tenTo } from "./twilight.ts";

export interface MoonPosition {
  readonly azimuthDeg: number;
  /** Airless. */
  readonly elevationDeg: number;
  /** Lifted by refraction. */
  readonly apparentElevationDeg: number;
  /** As seen from the place. */
  readonly semidiameterDeg: number;
  /** Sun, moon, Earth's centre: 0 full, 180 new. */
  readonly phaseAngleDeg: number;
  /** Of the disc, 0..1. */
  readonly litShare: number;
  /** Of the moon alone, on the horizontal under a clear sky. */
  readonly illuminanceLx: number;
}

/**
 * The moon as seen from `place` at `at`: degrees, light in lx.
 * Topocentric, equator of date; `air` bends the light (standard atmosphere at the place's height when left out).
 * Throws PadstopError for a place, date or air out of range.
 */
export function moonAt(place: Place, at: Date, air?: Air): MoonPosition {
  requirePlace(place);
  requireDate("at", at);
  const bending = air === undefined ? standardAir(place.heightM) : requireAir(air);
  const moon = moonEquatorial(place, at);
  const level = cosDeg(moon.declinationDeg);
  const seen = seenFrom(
    horizonAxes(place),
    [
      level * cosDeg(moon.greenwichHourAngleDeg),
      -level * sinDeg(moon.greenwichHourAngleDeg),
      sinDeg(moon.declinationDeg),
    ],
    bending,
  );
  return {
    azimuthDeg: seen.azimuthDeg,
    elevationDeg: seen.airlessElevationDeg,
    apparentElevationDeg: seen.apparentElevationDeg,
    semidiameterDeg: moonSemidiameterDeg(moon.distanceKm),
    phaseAngleDeg: moon.phaseAngleDeg,
    litShare: moon.litShare,
    illuminanceLx: moonIlluminanceLx(seen.airlessElevationDeg, moon.phaseAngleDeg, moon.parallaxDeg),
  };
}

/** Full moon at mean distance (Explanatory Supplement to the Astronomical Almanac 1992, as Table 5-1 in Vallado). */
const MOON_ROWS: readonly IlluminanceRow[] = [
  { fromDeg: 20, coefficients: [-1.95, 4.06, -4.24, 1.56] },
  { fromDeg: 5, coefficients: [-2.58, 12.58, -42.58, 59.06] },
  { fromDeg: -0.8, coefficients: [-2.79, 24.27, -252.95, 1321.29] },
];
/**
 * The rows step down, so that a rising moon would darken, by 0.003 stop at 20 degrees and 0.022 at 5: spread over the last
 * half degree below the join, as for the sun but flatter, since the rows are.
 */
const MOON = joinRows(MOON_ROWS, 0.5);

/** Parallax of the distance the rows are for. */
const MEAN_PARALLAX_DEG = 0.951;

/**
 * Light of the moon alone on the horizontal, lx, under a clear sky: airless elevation -90..90 degrees, phase angle 0 (full)
 * to 180 (new), equatorial horizontal parallax 0.8..1.1 degrees. Below -0.8 degree it goes on falling at the last slope
 * and is soon lost in the night sky's own 0.002 lx. Throws PadstopError out of range.
 */
export function moonIlluminanceLx(
  airlessElevationDeg: number,
  phaseAngleDeg: number,
  parallaxDeg: number,
): number {
  requireNumber("airlessElevationDeg", airlessElevationDeg, -90, 90, "degrees");
  requireNumber("phaseAngleDeg", phaseAngleDeg, 0, 180, "degrees");
  requireNumber("parallaxDeg", parallaxDeg, 0.8, 1.1, "degrees");
  const f = phaseAngleDeg;
  // As the rows' source: phase, then distance.
  const phase = -8.68e-3 * f - 2.2e-9 * f * f * f * f;
  const distance = 2 * Math.log10(parallaxDeg / MEAN_PARALLAX_DEG);
  return tenTo(log10Lx(MOON, airlessElevationDeg) + phase + distance);
}
