/** WGS 84 coordinates, the Earth-fixed frame, and the east-north-up frame of a place. Exact; heights are ellipsoidal. */

import { WGS84_FLATTENING, WGS84_SEMI_MAJOR_M } from "./constants.ts";
import type { Place } from "./place.ts";
import { atan2Deg, cosDeg, RAD_PER_DEG, sinDeg } from "./units.ts";
import { add, dot, scale, type Vec3 } from "./vector.ts";

const ECCENTRICITY_SQUARED = WGS84_FLATTENING * (2 - WGS84_FLATTENING);

/** Earth-fixed position in metres (IOGP Guidance Note 7-2, method 9602). */
export function toEarthFixed(place: Place): Vec3 {
  const sine = sinDeg(place.latitudeDeg);
  const primeVerticalM = WGS84_SEMI_MAJOR_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sine * sine);
  const levelM = (primeVerticalM + place.heightM) * cosDeg(place.latitudeDeg);
  return [
    levelM * cosDeg(place.longitudeDeg),
    levelM * sinDeg(place.longitudeDeg),
    (primeVerticalM * (1 - ECCENTRICITY_SQUARED) + place.heightM) * sine,
  ];
}

/** Latitude, longitude and height of an Earth-fixed position in metres; Bowring's iteration, converged to below 1e-9 m. */
export function fromEarthFixed(positionM: Vec3): Place {
  const [x, y, z] = positionM;
  const levelM = Math.hypot(x, y);
  const semiMinorM = WGS84_SEMI_MAJOR_M * (1 - WGS84_FLATTENING);
  const secondEccentricitySquared = ECCENTRICITY_SQUARED / (1 - ECCENTRICITY_SQUARED);
  let reducedRad = Math.atan2(z * WGS84_SEMI_MAJOR_M, levelM * semiMinorM);
  let latitudeRad = 0;
  for (let i = 0; i < 4; i++) {
    latitudeRad = Math.atan2(
      z + secondEccentricitySquared * semiMinorM * Math.sin(reducedRad) ** 3,
      levelM - ECCENTRICITY_SQUARED * WGS84_SEMI_MAJOR_M * Math.cos(reducedRad) ** 3,
    );
    reducedRad = Math.atan((1 - WGS84_FLATTENING) * Math.tan(latitudeRad));
  }
  const sine = Math.sin(latitudeRad);
  const cosine = Math.cos(latitudeRad);
  const heightM =
    levelM * cosine + z * sine - WGS84_SEMI_MAJOR_M * Math.sqrt(1 - ECCENTRICITY_SQUARED * sine * sine);
  return {
    latitudeDeg: latitudeRad / RAD_PER_DEG,
    longitudeDeg: levelM === 0 ? 0 : atan2Deg(y, x),
    heightM,
  };
}

/** The horizon of a place: unit vectors to the east, north and (ellipsoidal) up, in the Earth-fixed frame. */
export interface HorizonAxes {
  readonly east: Vec3;
  readonly north: Vec3;
  readonly up: Vec3;
}

export function horizonAxes(place: Pick<Place, "latitudeDeg" | "longitudeDeg">): HorizonAxes {
  const sinLat = sinDeg(place.latitudeDeg);
  const cosLat = cosDeg(place.latitudeDeg);
  const sinLon = sinDeg(place.longitudeDeg);
  const cosLon = cosDeg(place.longitudeDeg);
  return {
    east: [-sinLon, cosLon, 0],
    north: [-sinLat * cosLon, -sinLat * sinLon, cosLat],
    up: [cosLat * cosLon, cosLat * sinLon, sinLat],
  };
}

/** An Earth-fixed vector seen in the horizon of a place: (east, north, up). */
export function toHorizon(axes: HorizonAxes, fixed: Vec3): Vec3 {
  return [dot(axes.east, fixed), dot(axes.north, fixed), dot(axes.up, fixed)];
}

/** An (east, north, up) vector of a place in the Earth-fixed frame. */
export function fromHorizon(axes: HorizonAxes, enu: Vec3): Vec3 {
  return add(add(scale(axes.east, enu[0]), scale(axes.north, enu[1])), scale(axes.up, enu[2]));
}
