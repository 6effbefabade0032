/** The two descriptions of "where" that every part shares. */

/** A point on or near the Earth, WGS 84: latitude -90..90, longitude (east positive) -180..360, ellipsoidal height in metres. */
export interface Place {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly heightM: number;
}

/** A direction in the horizon of a place: azimuth clockwise from true north, elevation above the horizontal. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** The air that bends the light: pressure at the place (not reduced to sea level) and temperature. */
export interface Air {
  readonly pressureHPa: number;
  readonly temperatureC: number;
}
