/** How far a spot lies from the pad's axis. Flat-Earth distances: exact to a millimetre near the pad, to some per cent far out. */

import { WGS84_FLATTENING, WGS84_SEMI_MAJOR_M } from "../base/constants.ts";
import type { Place } from "../base/place.ts";
import { cosDeg, RAD_PER_DEG, sinDeg, wrap180 } from "../base/units.ts";
import type { Spot, Vehicle } from "./types.ts";

const LEAST_DISTANCE_M = 1;
/** Cameras stand nearer than this. */
export const FARTHEST_CAMERA_M = 200_000;

/** Horizontal distance from the pad's axis, metres. */
export const padDistanceM = (spot: Spot, pad: Place): number =>
  spot.kind === "bearing" ? spot.rangeM : levelDistanceM(spot.place, pad);

/** True when the horizontal distance is below the vehicle's radius or 1 m. */
export const isAtPad = (spot: Spot, pad: Place, vehicle: Vehicle | null): boolean =>
  padDistanceM(spot, pad) < Math.max(LEAST_DISTANCE_M, (vehicle?.diameterM ?? 0) / 2);

/** Radii of curvature of the ellipsoid (NIMA TR8350.2) at the pad, times the differences of the coordinates. */
function levelDistanceM(place: Place, pad: Place): number {
  const e2 = WGS84_FLATTENING * (2 - WGS84_FLATTENING);
  const w2 = 1 - e2 * sinDeg(pad.latitudeDeg) ** 2;
  const meridianM = (WGS84_SEMI_MAJOR_M * (1 - e2)) / w2 ** 1.5;
  const primeVerticalM = WGS84_SEMI_MAJOR_M / Math.sqrt(w2);
  const northM = (place.latitudeDeg - pad.latitudeDeg) * RAD_PER_DEG * meridianM;
  const eastM =
    wrap180(place.longitudeDeg - pad.longitudeDeg) * RAD_PER_DEG * primeVerticalM * cosDeg(pad.latitudeDeg);
  return Math.hypot(northM, eastM);
}
