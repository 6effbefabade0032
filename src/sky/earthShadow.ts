/**
 * The Earth's shadow at dawn and dusk: how high a vehicle has to climb into the sun.
 *
 * Geometry of a sphere; places stand on it, heights are above it, straight up. Leaves out terrain, clouds and what the
 * air takes away: light that grazes the ground is almost gone, so that a vehicle looks sunlit only some 10 to 20 km
 * above the edge given here (from memory).
 */

import { FIRST_LIGHT_DEPRESSION_DEG, MEAN_EARTH_RADIUS_M } from "../base/constants.ts";
import { requireNumber } from "../base/problem.ts";
import { asinDeg, cosDeg, sinDeg } from "../base/units.ts";

/**
 * Which light the edge is of. `first`: the upper limb, seen through the air. `centre`: the sun's centre, without air.
 * `first` turns the ray that grazes the ground by what the air bends it on its way in and out, but does not lift it: a ray
 * traced through such air lies up to 1.7 km higher. With the sun 0.83 to 1.40 degrees down the edge is given as 0, though
 * the ground is out of the sun and the traced edge up to 0.25 km above it.
 */
export type ShadowEdge = "first" | "centre";

/**
 * Height in metres of the edge of the Earth's shadow straight above a place with the sun's centre at an airless elevation
 * of -90..90 degrees; 0 while the place itself is in the light. Null where no height is high enough: with the sun in the
 * nadir and no air to bend its light. Throws PadstopError out of range.
 */
export function earthShadowHeightM(
  airlessSunElevationDeg: number,
  light: ShadowEdge = "first",
): number | null {
  requireNumber("airlessSunElevationDeg", airlessSunElevationDeg, -90, 90, "degrees");
  const liftedDeg = light === "first" ? FIRST_LIGHT_DEPRESSION_DEG : 0;
  const depressionDeg = Math.max(0, -airlessSunElevationDeg - liftedDeg);
  if (depressionDeg >= 90) return null;
  // A ray that grazes the sphere: (R + H) cos d = R.
  return MEAN_EARTH_RADIUS_M * (1 / cosDeg(depressionDeg) - 1);
}

/** Half way round the Earth, rounded down. */
const FARTHEST_M = 2e7;

/**
 * Airless elevation of the sun, degrees, at a place downrange: `groundDistanceM` (0..2e7) along the ground from where it
 * is -90..90 degrees, in a direction `azimuthFromSunDeg` from the sun's azimuth, either way round. Throws PadstopError
 * out of range.
 */
export function sunElevationDownrangeDeg(
  airlessSunElevationDeg: number,
  groundDistanceM: number,
  azimuthFromSunDeg: number,
): number {
  requireNumber("airlessSunElevationDeg", airlessSunElevationDeg, -90, 90, "degrees");
  requireNumber("groundDistanceM", groundDistanceM, 0, FARTHEST_M, "m");
  requireNumber("azimuthFromSunDeg", azimuthFromSunDeg, -360, 720, "degrees");
  const alongRad = groundDistanceM / MEAN_EARTH_RADIUS_M;
  // Law of cosines in the spherical triangle of zenith, zenith downrange and sun.
  return asinDeg(
    sinDeg(airlessSunElevationDeg) * Math.cos(alongRad) +
      cosDeg(airlessSunElevationDeg) * Math.sin(alongRad) * cosDeg(azimuthFromSunDeg),
  );
}

/** `earthShadowHeightM` straight above a place downrange (arguments as `sunElevationDownrangeDeg`): a vehicle above it is in the light. */
export const litAboveM = (
  airlessSunElevationDeg: number,
  groundDistanceM: number,
  azimuthFromSunDeg: number,
  light: ShadowEdge = "first",
): number | null =>
  earthShadowHeightM(
    sunElevationDownrangeDeg(airlessSunElevationDeg, groundDistanceM, azimuthFromSunDeg),
    light,
  );
