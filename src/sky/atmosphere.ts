/**
 * The air along the line of sight: standard atmosphere, refraction, air mass.
 *
 * Refraction near the horizon scatters by minutes of arc in real air (an inversion over cold sea can double it);
 * what is computed here is the mean.
 */

import type { Air } from "../base/place.ts";
import { requireNumber } from "../base/problem.ts";
import { clamp, sinDeg, tanDeg } from "../base/units.ts";

/** `air` when its values are possible; refuses others by range. */
export function requireAir(air: Air): Air {
  requireNumber("pressureHPa", air.pressureHPa, 100, 1200, "hPa");
  requireNumber("temperatureC", air.temperatureC, -90, 70, "°C");
  return air;
}

/** The formula is not made for suns below this; the lift then fades linearly and is gone at the next. */
const LOWEST_FITTED_ELEVATION_DEG = -1;
const NO_LIFT_ELEVATION_DEG = -5;

/**
 * Lift by refraction in degrees for an airless elevation (Saemundsson 1986 as in Meeus 1998, eq. 16.4, scaled by
 * pressure and temperature as in SPA, Reda & Andreas 2003, eq. 42). Never negative.
 */
export function refractionDeg(airlessElevationDeg: number, air: Air): number {
  const fitted = Math.max(airlessElevationDeg, LOWEST_FITTED_ELEVATION_DEG);
  const arcMinutes = 1.02 / tanDeg(fitted + 10.3 / (fitted + 5.11));
  const scaled = arcMinutes * (air.pressureHPa / 1010) * (283 / (273 + air.temperatureC));
  const fade =
    (airlessElevationDeg - NO_LIFT_ELEVATION_DEG) / (LOWEST_FITTED_ELEVATION_DEG - NO_LIFT_ELEVATION_DEG);
  return Math.max(0, (scaled / 60) * Math.min(1, fade));
}

/** Relative optical air mass at an apparent elevation (Kasten & Young 1989, Appl. Opt. 28, 4735); held at 0 below the horizon. */
export function airMassKastenYoung1989(apparentElevationDeg: number): number {
  const held = clamp(apparentElevationDeg, 0, 90);
  return 1 / (sinDeg(held) + 0.50572 * (held + 6.07995) ** -1.6364);
}
