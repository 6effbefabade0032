/**
 * The plume as a lamp just after ignition, the vehicle still in its place and the fire spread about its foot.
 *
 * A round source that shows the same area, length times width of the plume, to every side, on the vehicle's axis half way
 * between pad datum and foot. All results are lx per cd/m2 of the plume, so that its low, nominal and high luminance share
 * one geometry. Nobody knows the fire's shape: where the lamp is six times as wide as the body or wider, a ball would give
 * body and deck up to 1.1 stops more and a flat disc up to 0.6 less from 1.2 of its radii aside, 0.4 and 0.25 from 2 on.
 * Nearer in the fire may touch the face itself.
 * Leaves out smoke and steam, what structures hide, and the light that deck and ground throw back.
 */

import { requireNumber } from "../base/problem.ts";
import type { Vehicle } from "../site/types.ts";

export interface PlumeLamp {
  readonly radiusM: number;
  /** Its middle above the pad datum, 0 or more. */
  readonly centreUpM: number;
  /** The vehicle's foot above the pad datum. */
  readonly footM: number;
  readonly bodyRadiusM: number;
}

/** The lamp of a vehicle; null when it has no plume, or one whose length or width is not given. */
export function makePlumeLamp(vehicle: Vehicle): PlumeLamp | null {
  const lengthM = vehicle.plume?.lengthM ?? null;
  const widthM = vehicle.plume?.widthM ?? null;
  if (lengthM === null || widthM === null) return null;
  return {
    radiusM: lampRadiusM(lengthM, widthM),
    centreUpM: Math.max(0, vehicle.baseM / 2),
    footM: vehicle.baseM,
    bodyRadiusM: vehicle.diameterM / 2,
  };
}

/** Radius in metres of the circle with the area of a plume, length 0.1..5000 m and width 0.1..1000 m. Throws PadstopError out of range. */
export function lampRadiusM(lengthM: number, widthM: number): number {
  requireNumber("lengthM", lengthM, 0.1, 5000, "m");
  requireNumber("widthM", widthM, 0.1, 1000, "m");
  return Math.sqrt((lengthM * widthM) / Math.PI);
}

/** On a facet of the vehicle's side `upM` (-1000..100,000) above its foot, turned any way, lx per cd/m2. Throws PadstopError out of range. */
export function plumeOnBodyLxPerCdM2(lamp: PlumeLamp, upM: number): number {
  requireNumber("upM", upM, -1000, 100_000, "m");
  return lampFaceLxPerCdM2(lamp.radiusM, -lamp.bodyRadiusM, Math.abs(upM + lamp.footM - lamp.centreUpM));
}

/** On the level deck at the pad datum `outM` (0..100,000) from the vehicle's axis, lx per cd/m2. Throws PadstopError out of range. */
export function plumeOnDeckLxPerCdM2(lamp: PlumeLamp, outM: number): number {
  requireNumber("outM", outM, 0, 100_000, "m");
  return lampFaceLxPerCdM2(lamp.radiusM, lamp.centreUpM, outM);
}

/**
 * On a small face, lx per cd/m2 of the lamp: 0 to pi. The middle of the lamp, radius 0.01..10,000 m, lies `inFrontM`
 * (-1e6..1e6) in front of the face's plane and `asideM` (0..1e6) from its normal. Only what lies in front of the plane
 * counts: the whole circle, or a segment of it. Throws PadstopError out of range.
 */
export function lampFaceLxPerCdM2(radiusM: number, inFrontM: number, asideM: number): number {
  requireNumber("radiusM", radiusM, 0.01, 10_000, "m");
  requireNumber("inFrontM", inFrontM, -1e6, 1e6, "m");
  requireNumber("asideM", asideM, 0, 1e6, "m");
  const { areaM2, middleInFrontM } = partInFront(radiusM, inFrontM);
  // Rounding can spoil the area of the thinnest slivers, a small difference, and with it their middle.
  if (areaM2 <= 0 || middleInFrontM <= 0) return 0;
  const distanceM = Math.hypot(middleInFrontM, asideM);
  // A disc turned to the point: pi sin^2 of its half angle, times the cosine on the face (Lambert's law, in closed form).
  return (areaM2 * (middleInFrontM / distanceM)) / (distanceM * distanceM + areaM2 / Math.PI);
}

/** Area of a circle in front of a plane, and how far its middle lies in front. */
function partInFront(radiusM: number, inFrontM: number): { areaM2: number; middleInFrontM: number } {
  if (inFrontM >= radiusM) return { areaM2: Math.PI * radiusM * radiusM, middleInFrontM: inFrontM };
  if (inFrontM <= -radiusM) return { areaM2: 0, middleInFrontM: 0 };
  const halfChordM = Math.sqrt((radiusM - inFrontM) * (radiusM + inFrontM));
  // Segment of a circle: its area, and its first moment about the circle's middle, two thirds of the half chord cubed.
  const areaM2 = radiusM * radiusM * Math.acos(-inFrontM / radiusM) + inFrontM * halfChordM;
  return { areaM2, middleInFrontM: inFrontM + ((2 / 3) * halfChordM ** 3) / areaM2 };
}
