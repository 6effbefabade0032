/** The sun at one place and instant, airless and apparent. */

import { type HorizonAxes, horizonAxes, toHorizon } from "../base/earthFixed.ts";
import type { Air, Place } from "../base/place.ts";
import { requireDate } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { atan2Deg, cosDeg, sinDeg } from "../base/units.ts";
import { dot, fromAzimuthElevation, toAzimuthElevation, type Vec3 } from "../base/vector.ts";
import { refractionDeg, requireAir } from "./atmosphere.ts";
import { requirePlace, semidiameterDeg, sunEquatorial } from "./ephemeris.ts";

export interface SunPosition {
  readonly azimuthDeg: number;
  /** Airless. */
  readonly elevationDeg: number;
  /** Lifted by refraction. */
  readonly apparentElevationDeg: number;
  readonly semidiameterDeg: number;
  readonly rightAscensionDeg: number;
  readonly declinationDeg: number;
  readonly distanceAu: number;
}

/**
 * The sun as seen from `place` at `at`: degrees, distance in au.
 * Topocentric, equator of date, with aberration; `air` bends the light (standard atmosphere at the place's height
 * when left out). Throws PadstopError for a place, date or air out of range.
 */
export function sunAt(place: Place, at: Date, air?: Air): SunPosition {
  requirePlace(place);
  requireDate("at", at);
  const sun = sunEquatorial(place, at);
  const level = cosDeg(sun.declinationDeg);
  const fixed: Vec3 = [
    level * cosDeg(sun.greenwichHourAngleDeg),
    -level * sinDeg(sun.greenwichHourAngleDeg),
    sinDeg(sun.declinationDeg),
  ];
  const seen = seenFrom(
    horizonAxes(place),
    fixed,
    air === undefined ? standardAir(place.heightM) : requireAir(air),
  );
  return {
    azimuthDeg: seen.azimuthDeg,
    elevationDeg: seen.airlessElevationDeg,
    apparentElevationDeg: seen.apparentElevationDeg,
    semidiameterDeg: semidiameterDeg(sun.distanceAu),
    rightAscensionDeg: sun.rightAscensionDeg,
    declinationDeg: sun.declinationDeg,
    distanceAu: sun.distanceAu,
  };
}

/** A direction in the sky of one place, with and without refraction. */
export interface SeenDirection {
  readonly azimuthDeg: number;
  readonly airlessElevationDeg: number;
  readonly apparentElevationDeg: number;
}

/** An Earth-fixed direction in the horizon of a place, lifted by its air. */
export function seenFrom(axes: HorizonAxes, fixed: Vec3, air: Air): SeenDirection {
  const { azimuthDeg, elevationDeg } = toAzimuthElevation(toHorizon(axes, fixed));
  return {
    azimuthDeg,
    airlessElevationDeg: elevationDeg,
    apparentElevationDeg: elevationDeg + refractionDeg(elevationDeg, air),
  };
}

/** The apparent direction as a unit vector (east, north, up). */
export const apparentEnu = (seen: SeenDirection): Vec3 =>
  fromAzimuthElevation(seen.azimuthDeg, seen.apparentElevationDeg);

/** A lifted direction to be written over. */
export interface LiftedDirection {
  /** Unit vector (east, north, up). */
  readonly direction: [number, number, number];
  airlessElevationDeg: number;
  apparentElevationDeg: number;
}

export const liftedScratch = (): LiftedDirection => ({
  direction: [0, 0, 0],
  airlessElevationDeg: 0,
  apparentElevationDeg: 0,
});

/** As `seenFrom` without the azimuth's detour, for the many: an Earth-fixed unit direction lifted by the air of a place. */
export function liftInto(axes: HorizonAxes, fixed: Vec3, air: Air, lifted: LiftedDirection): void {
  const east = dot(axes.east, fixed);
  const north = dot(axes.north, fixed);
  const level = Math.sqrt(east * east + north * north);
  const airlessElevationDeg = atan2Deg(dot(axes.up, fixed), level);
  const apparentElevationDeg = airlessElevationDeg + refractionDeg(airlessElevationDeg, air);
  const stretch = level === 0 ? 0 : cosDeg(apparentElevationDeg) / level;
  lifted.direction[0] = east * stretch;
  lifted.direction[1] = north * stretch;
  lifted.direction[2] = sinDeg(apparentElevationDeg);
  lifted.airlessElevationDeg = airlessElevationDeg;
  lifted.apparentElevationDeg = apparentElevationDeg;
}

/** The same as an object of its own. */
export function liftedEnu(axes: HorizonAxes, fixed: Vec3, air: Air): LiftedDirection {
  const lifted = liftedScratch();
  liftInto(axes, fixed, air, lifted);
  return lifted;
}
