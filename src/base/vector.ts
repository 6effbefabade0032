/** Vectors in three dimensions. The frame (Earth-fixed, or east-north-up of a place) is the caller's and in the name. */

import { atan2Deg, cosDeg, sinDeg, wrap360 } from "./units.ts";

export type Vec3 = readonly [number, number, number];

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, factor: number): Vec3 => [a[0] * factor, a[1] * factor, a[2] * factor];
/** Not Math.hypot: several times slower, and nothing here is near overflow. */
export const norm = (a: Vec3): number => Math.sqrt(dot(a, a));
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** `a` with length 1; the zero vector stays zero. */
export function unit(a: Vec3): Vec3 {
  const length = norm(a);
  return length === 0 ? a : scale(a, 1 / length);
}

/** Angle between two directions in degrees; exact for small and for large angles. */
export function angleBetweenDeg(a: Vec3, b: Vec3): number {
  return atan2Deg(norm(cross(a, b)), dot(a, b));
}

/** Unit vector (east, north, up) of an azimuth and elevation. */
export function fromAzimuthElevation(azimuthDeg: number, elevationDeg: number): Vec3 {
  const level = cosDeg(elevationDeg);
  return [level * sinDeg(azimuthDeg), level * cosDeg(azimuthDeg), sinDeg(elevationDeg)];
}

/** Azimuth and elevation of an (east, north, up) vector of any length. */
export function toAzimuthElevation(enu: Vec3): { azimuthDeg: number; elevationDeg: number } {
  const level = Math.sqrt(enu[0] * enu[0] + enu[1] * enu[1]);
  return { azimuthDeg: wrap360(atan2Deg(enu[0], enu[1])), elevationDeg: atan2Deg(enu[2], level) };
}
