/**
 * The skyline: elevations at some azimuths, straight in between, taken as so far away that every camera sees the same.
 * Below the horizontal it hides nothing that the Earth does not hide.
 */

import { atan2Deg, clamp, cosDeg, mix, wrap360 } from "../base/units.ts";
import { fromAzimuthElevation, type Vec3 } from "../base/vector.ts";
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
/** A stretch straight in azimuth and elevation is cut so fine that its great circles stay within 0.001 degree of it up to 60 degrees. */
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
  const next = points.findIndex((point) => point.azimuthDeg > azimuthDeg);
  const after = points[Math.max(0, next)]!;
  const before = points.at(next <= 0 ? -1 : next - 1)!;
  const spanDeg = wrap360(after.azimuthDeg - before.azimuthDeg) || 360;
  return mix(before.elevationDeg, after.elevationDeg, wrap360(azimuthDeg - before.azimuthDeg) / spanDeg);
}

interface Stretch {
  readonly azimuthDeg: number;
  readonly widthDeg: number;
  readonly side: Side;
}

const ZENITH: Vec3 = [0, 0, 1];

/** Short sides all round, cut at every point of the skyline. */
function sidesAlong(
  points: readonly HorizonPoint[],
  elevationDeg: (azimuthDeg: number) => number,
): Stretch[] {
  const cuts = new Set<number>(points.map(({ azimuthDeg }) => azimuthDeg));
  for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += MOST_STRETCH_DEG) cuts.add(azimuthDeg);
  const azimuths = [...cuts].sort((a, b) => a - b);
  const corner = (azimuthDeg: number): Vec3 => fromAzimuthElevation(azimuthDeg, elevationDeg(azimuthDeg));
  return azimuths.map((azimuthDeg, i) => {
    const nextDeg = azimuths[(i + 1) % azimuths.length]!;
    const side = sideBetween(corner(azimuthDeg), corner(nextDeg), ZENITH);
    return { azimuthDeg, widthDeg: wrap360(nextDeg - azimuthDeg), side };
  });
}

/** The sides that can come within the farthest distance of a direction. */
function sidesAround(stretches: readonly Stretch[], azimuthDeg: number, ownDeg: number): Side[] {
  const highestDeg = Math.min(90, Math.abs(ownDeg) + FARTHEST_DEG);
  // Level with the zenith every azimuth is near.
  const reachDeg = highestDeg >= 89 ? 180 : clamp(FARTHEST_DEG / cosDeg(highestDeg), FARTHEST_DEG, 180);
  const first = wrap360(azimuthDeg - reachDeg);
  const near = stretches.filter(
    (stretch) => wrap360(stretch.azimuthDeg + stretch.widthDeg - first) <= 2 * reachDeg + 2,
  );
  return (reachDeg >= 179 ? stretches : near).map(({ side }) => side);
}
