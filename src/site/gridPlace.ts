/**
 * Grid coordinates of the Universal Transverse Mercator grid to latitude and longitude, WGS 84. By geodesy's class: Krueger's
 * series to the sixth order (Karney 2011, J. Geodesy 85, 475-485), good to nanometres inside the grid. The only file that
 * knows that package.
 */

import Utm from "geodesy/utm.js";
import { wrap180 } from "../base/units.ts";

/** A point of the grid: zone 1..60, metres east of the zone's false origin and north of the equator's (10,000 km in the south). */
export interface GridPoint {
  readonly zone: number;
  readonly isSouth: boolean;
  readonly eastingM: number;
  readonly northingM: number;
}

/** Degrees, north and east positive, longitude -180..180. */
export interface GridPlace {
  readonly latitude: number;
  readonly longitude: number;
}

export function gridPlace({ zone, isSouth, eastingM, northingM }: GridPoint): GridPlace {
  const point = new Utm(zone, isSouth ? "S" : "N", eastingM, northingM, undefined, null, null, false);
  const { lat, lon } = point.toLatLon();
  return { latitude: lat, longitude: wrap180(lon) };
}
