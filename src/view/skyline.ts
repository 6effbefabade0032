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
  /** Degrees from a direction to the skyline, positive above it; no farther than `FARTHEST_DEG` either way. */
  fromEdgeDeg(direction: Vec3): number;
}

/** Distances are told up to here: who asks wants to know whether a disc and its margin are clear. */
export const FARTHEST_DEG = 11;
/** A stretch straight in azimuth and elevation is cut so fine that its great circles stay within 0.001 degree of it, on a cliff within 0.01. */
const MOST_STRETCH_DEG = 0.5;

/** Points in the order of their azimuths, 0..360; null when there are none or all are at or below the horizontal. */
export function skylineOf(points: readonly HorizonPoint[]): Skyline | null {
  const highestDeg = Math.max(0, ...points.map((point) => point.elevationDeg));
  if (highestDeg === 0) return null;
  const elevationDeg = (azimuthDeg: number): number => Math.max(0, between(points, wrap360(azimuthDeg)));
  const sides = sidesAlong(points, elevationDeg);
  const fromEdgeDeg = (direction: Vec3): number => {
    const level = Math.hypot(direction[0], direction[1]);
    const ownDeg = atan2Deg(direction[2], level);
    if (ownDeg > highestDeg + FARTHEST_DEG) return FARTHEST_DEG;
    const azimuthDeg = wrap360(atan2Deg(direction[0], direction[1]));
    const nearestDeg = Math.min(FARTHEST_DEG, toSidesDeg(sidesAround(sides, azimuthDeg, ownDeg), direction));
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

/** The sides that can come within the farthest distance of a direction. */
function sidesAround(stretches: readonly Stretch[], azimuthDeg: number, ownDeg: number): Side[] {
  const highestDeg = Math.min(90, Math.abs(ownDeg) + FARTHEST_DEG);
  // Level with the zenith every azimuth is near.
  const reachDeg = highestDeg >= 89 ? 180 : clamp(FARTHEST_DEG / cosDeg(highestDeg), FARTHEST_DEG, 180);
  if (reachDeg >= 179) return stretches.map(({ side }) => side);
  const firstDeg = wrap360(azimuthDeg - reachDeg);
  // The side before the first one that begins within reach may end in it.
  const start = firstBeyond(stretches, firstDeg) - 1 + stretches.length;
  const near: Side[] = [];
  for (let k = 0; k < stretches.length; k++) {
    const stretch = stretches[(start + k) % stretches.length]!;
    if (k > 0 && wrap360(stretch.azimuthDeg - firstDeg) > 2 * reachDeg) break;
    near.push(stretch.side);
  }
  return near;
}
