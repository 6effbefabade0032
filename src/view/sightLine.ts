/** Places around a pad and the straight lines between them. No refraction of the sight line: under 0.01 degree within 20 km. */

import { fromEarthFixed, fromHorizon, horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import type { Place } from "../base/place.ts";
import { refuse, requireNumber } from "../base/problem.ts";
import { cosDeg, sinDeg } from "../base/units.ts";
import { add, norm, subtract, toAzimuthElevation, type Vec3 } from "../base/vector.ts";
import { requirePlace } from "../sky/ephemeris.ts";

export interface SightLine {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** Straight distance in metres. */
  readonly rangeM: number;
}

/** Azimuth, elevation (both in the horizon of `from`) and straight range from one place to another. Throws for the same place. */
export function lookAt(from: Place, to: Place): SightLine {
  requirePlace(from);
  requirePlace(to);
  const enu = toHorizon(horizonAxes(from), subtract(toEarthFixed(to), toEarthFixed(from)));
  const rangeM = norm(enu);
  if (rangeM === 0) refuse("E_AT_PAD", "to", "the place looked from", "another place");
  return { ...toAzimuthElevation(enu), rangeM };
}

/**
 * The place at a bearing (degrees from true north), a range and a height in the tangent plane (east, north, up) of
 * `origin`, metres. A kilometre out, the plane stands 0.08 m above the curved Earth; 10 km out, 7.8 m.
 */
export function placeFrom(origin: Place, bearingDeg: number, rangeM: number, upM: number): Place {
  requirePlace(origin);
  requireNumber("bearingDeg", bearingDeg, -360, 720, "degrees");
  requireNumber("rangeM", rangeM, 0, 2_000_000, "m");
  requireNumber("upM", upM, -10_000, 2_000_000, "m");
  return placeAtEnu(origin, [rangeM * sinDeg(bearingDeg), rangeM * cosDeg(bearingDeg), upM]);
}

/** The place at (east, north, up) metres in the tangent plane of `origin`. */
export function placeAtEnu(origin: Place, enuM: Vec3): Place {
  return fromEarthFixed(add(toEarthFixed(origin), fromHorizon(horizonAxes(origin), enuM)));
}

/** Carries (east, north, up) metres of `origin` into (east, north, up) metres of `place`: the vector from there to the point. */
export function carryTo(origin: Place, place: Place): (enuM: Vec3) => Vec3 {
  const originAxes = horizonAxes(origin);
  const placeAxes = horizonAxes(place);
  const between = subtract(toEarthFixed(origin), toEarthFixed(place));
  return (enuM) => toHorizon(placeAxes, add(between, fromHorizon(originAxes, enuM)));
}
