/**
 * The skyline: elevations at some azimuths, straight in between, taken as so far away that every camera sees the same.
 * Below the horizontal it hides nothing that the Earth does not hide.
 */

import { atan2Deg, clamp, cosDeg, mix, wrap180, wrap360 } from "../base/units.ts";
import { fromAzimuthElevation, norm, type Vec3 } from "../base/vector.ts";
import type { HorizonPoint } from "../site/types.ts";
import { type Side, sideBetween, toSidesDeg } from "./outline.ts";

/** How the skyline is named where it hides the sun. */
export const SKYLINE_NAME = "horizon";

export interface Skyline {
  readonly highestDeg: number;
  /** Elevation of the skyline, degrees, 0 or more. */
  elevationDeg(azimuthDeg: number): number;
  /** Degrees from a direction to the skyline, positive above it; told as the farthest asked for where it is farther. */
  fromEdgeDeg(direction: Vec3): number;
}

/** Distances are told up to here at most: who asks wants to know whether a disc and its margin are clear. */
export const FARTHEST_DEG = 11;
/** A stretch straight in azimuth and elevation is cut so fine that its great circles stay within 0.001 degree of it up to 30 degrees, on a cliff within 0.03. */
const MOST_STRETCH_DEG = 1;

/** Points in the order of their azimuths, 0..360; null when there are none or all are at or below the horizontal. */
export function skylineOf(
  points: readonly HorizonPoint[],
  farthestDeg: number = FARTHEST_DEG,
): Skyline | null {
  const highestDeg = Math.max(0, ...points.map((point) => point.elevationDeg));
  if (highestDeg === 0) return null;
  const elevationDeg = (azimuthDeg: number): number => Math.max(0, between(points, wrap360(azimuthDeg)));
  const stretches = sidesAlong(points, elevationDeg);
  const sides = stretches.map(({ side }) => side);
  const fromEdgeDeg = (direction: Vec3): number => {
    const level = Math.hypot(direction[0], direction[1]);
    const ownDeg = atan2Deg(direction[2], level);
    if (ownDeg > highestDeg + farthestDeg) return farthestDeg;
    const azimuthDeg = wrap360(atan2Deg(direction[0], direction[1]));
    const { start, count } = sidesAround(stretches, azimuthDeg, reachDeg(ownDeg, farthestDeg));
    const nearestDeg = Math.min(farthestDeg, toSidesDeg(sides, direction, start, count));
    return ownDeg < elevationDeg(azimuthDeg) ? -nearestDeg : nearestDeg;
  };
  return { highestDeg, elevationDeg, fromEdgeDeg };
}

/** Straight between the points on either side, round the north. */
function between(points: readonly HorizonPoint[], azimuthDeg: number): number {
  const next = firstBeyond(points, azimuthDeg);
  const after = points[next % points.length]!;
  const before = points.at(next - 1)!;
  const spanDeg = wrap360(after.azimuthDeg - before.azimuthDeg) || 360;
  return mix(before.elevationDeg, after.elevationDeg, wrap360(azimuthDeg - before.azimuthDeg) / spanDeg);
}

/** Index of the first of ascending azimuths beyond one; their number when none is. */
function firstBeyond(ascending: readonly { readonly azimuthDeg: number }[], azimuthDeg: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]!.azimuthDeg > azimuthDeg) high = middle;
    else low = middle + 1;
  }
  return low;
}

interface Stretch {
  readonly azimuthDeg: number;
  readonly side: Side;
}

const ZENITH: Vec3 = [0, 0, 1];

/** Cuts closer together than this are one, degrees. */
const SAME_CUT_DEG = 1e-9;

/** Short sides all round, cut at every point of the skyline and wherever it meets the level. */
function sidesAlong(
  points: readonly HorizonPoint[],
  elevationDeg: (azimuthDeg: number) => number,
): Stretch[] {
  const own = [...points.map(({ azimuthDeg }) => azimuthDeg), ...levelCrossings(points)];
  const even = Array.from({ length: 360 / MOST_STRETCH_DEG }, (_, i) => i * MOST_STRETCH_DEG);
  const isOwn = (cut: number): boolean => own.some((one) => Math.abs(wrap180(one - cut)) < SAME_CUT_DEG);
  const azimuths = [...own, ...even.filter((cut) => !isOwn(cut))].sort((a, b) => a - b);
  const corner = (azimuthDeg: number): Vec3 => fromAzimuthElevation(azimuthDeg, elevationDeg(azimuthDeg));
  return azimuths.flatMap((azimuthDeg, i) => {
    const nextDeg = azimuths[(i + 1) % azimuths.length]!;
    if (azimuthDeg === nextDeg) return [];
    const side = sideBetween(corner(azimuthDeg), corner(nextDeg), ZENITH);
    // Two corners that rounding makes one are no side.
    return norm(side.inward) === 0 ? [] : [{ azimuthDeg, side }];
  });
}

/** Azimuths at which the skyline crosses the horizontal. */
const levelCrossings = (points: readonly HorizonPoint[]): number[] =>
  points.flatMap((from, i) => {
    const to = points[(i + 1) % points.length]!;
    if (from.elevationDeg < 0 === to.elevationDeg < 0) return [];
    const spanDeg = wrap360(to.azimuthDeg - from.azimuthDeg) || 360;
    const share = from.elevationDeg / (from.elevationDeg - to.elevationDeg);
    return [wrap360(from.azimuthDeg + share * spanDeg)];
  });

/** Half the azimuths in which the skyline can come within the farthest distance of a direction. */
function reachDeg(ownDeg: number, farthestDeg: number): number {
  const highestDeg = Math.min(90, Math.abs(ownDeg) + farthestDeg);
  // Level with the zenith every azimuth is near.
  return highestDeg >= 89 ? 180 : clamp(farthestDeg / cosDeg(highestDeg), farthestDeg, 180);
}

/** The sides within reach of an azimuth: index of the first, and their number. */
function sidesAround(
  stretches: readonly Stretch[],
  azimuthDeg: number,
  withinDeg: number,
): { start: number; count: number } {
  if (withinDeg >= 179) return { start: 0, count: stretches.length };
  const firstDeg = wrap360(azimuthDeg - withinDeg);
  const lastDeg = wrap360(azimuthDeg + withinDeg);
  // The side before the first one that begins within reach may end in it.
  const start = (firstBeyond(stretches, firstDeg) - 1 + stretches.length) % stretches.length;
  const end = (firstBeyond(stretches, lastDeg) - 1 + stretches.length) % stretches.length;
  return { start, count: end >= start ? end - start + 1 : end - start + 1 + stretches.length };
}
