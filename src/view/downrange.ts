/**
 * Ways along the ground: geodesics of the WGS 84 ellipsoid (Karney 2013, J. Geodesy 87, 43-55) by his own library. Exact to
 * a fraction of a millimetre; the height of the pad is not counted in a distance (1.6e-4 of it per kilometre of height).
 */

import geodesic from "geographiclib-geodesic";
import { horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import type { Place } from "../base/place.ts";
import { requireNumber } from "../base/problem.ts";
import { subtract } from "../base/vector.ts";
import type { AscentPoint, DownrangePoint } from "../site/types.ts";
import { requirePlace } from "../sky/ephemeris.ts";

/**
 * Downrange (along the ground) and altitude (above the pad's height, along the vertical below the vehicle), metres, in the
 * pad's tangent plane; the flight follows the geodesic that leaves the pad in the heading, degrees from true north.
 * Throws PadstopError for a pad or a heading out of range.
 */
export function fromDownrange(
  pad: Place,
  headingDeg: number,
  points: readonly DownrangePoint[],
): AscentPoint[] {
  requirePlace(pad);
  requireNumber("headingDeg", headingDeg, -360, 720, "degrees");
  const { WGS84 } = geodesic.Geodesic;
  const axes = horizonAxes(pad);
  const padFixed = toEarthFixed(pad);
  return points.map(({ tPlusS, downrangeM, altitudeM }) => {
    const { lat2, lon2 } = WGS84.Direct(pad.latitudeDeg, pad.longitudeDeg, headingDeg, downrangeM);
    const below = { latitudeDeg: lat2!, longitudeDeg: lon2!, heightM: pad.heightM + altitudeM };
    const [eastM, northM, upM] = toHorizon(axes, subtract(toEarthFixed(below), padFixed));
    return { tPlusS, eastM, northM, upM };
  });
}

/** Along the ground from below one place to below another, metres. */
export const groundDistanceM = (from: Place, to: Place): number =>
  geodesic.Geodesic.WGS84.Inverse(from.latitudeDeg, from.longitudeDeg, to.latitudeDeg, to.longitudeDeg).s12!;
