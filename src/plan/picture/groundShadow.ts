/** Shadows of upright solids on level ground at the height of the pad datum, for a plan seen from above. */

import { cosDeg, sinDeg, tanDeg } from "../../base/units.ts";
import { hullIndices } from "../../view/hull.ts";
import type { Point2, Prism } from "../../view/prism.ts";
import { cutBy } from "./polygons.ts";

/** The sun over the pad, degrees. */
export interface PlanSun {
  readonly azimuthDeg: number;
  readonly apparentElevationDeg: number;
}

/** What throws a shadow: metres east and north, heights above the pad datum. */
export type ShadowSolid = Pick<Prism, "footprint" | "footM" | "topM">;

/** Corners of the polygon that stands for a drawing's border. */
const BORDER_CORNERS = 72;

/** From under a point at a height to its shadow, metres; null with the sun's centre down. */
export const shadowLengthM = (heightM: number, { apparentElevationDeg }: PlanSun): number | null =>
  apparentElevationDeg <= 0 ? null : Math.max(0, heightM) / tanDeg(Math.min(apparentElevationDeg, 90));

/**
 * The outline of a shadow inside a circle around the pad: the footprint swept from where the foot's shadow falls to where
 * the top's does. Null with the sun down, nothing above the ground, or all of it outside. Flat ground: no slope, no skyline.
 */
export function shadowOutline(
  { footprint, footM, topM }: ShadowSolid,
  sun: PlanSun,
  radiusM: number,
): readonly Point2[] | null {
  const [nearM, farM] = [shadowLengthM(footM, sun), shadowLengthM(topM, sun)];
  if (nearM === null || farM === null || topM <= 0) return null;
  // All of it that far away is outside: a low sun makes no huge coordinates.
  const outsideM = radiusM + Math.max(...footprint.map(([x, y]) => Math.hypot(x, y)));
  if (nearM > outsideM) return null;
  const away: Point2 = [-sinDeg(sun.azimuthDeg), -cosDeg(sun.azimuthDeg)];
  const ends = [nearM, Math.min(farM, outsideM)].flatMap((lengthM) =>
    footprint.map(([x, y]): Point2 => [x + away[0] * lengthM, y + away[1] * lengthM]),
  );
  const outline = hullIndices(ends).map((index) => ends[index]!);
  const inside = cutToCircle(outline, radiusM);
  return inside.length < 3 ? null : inside;
}

/** A convex outline cut to a circle around the pad (by the sides of a polygon on the circle). */
export function cutToCircle(outline: readonly Point2[], radiusM: number): readonly Point2[] {
  if (outline.every(([x, y]) => Math.hypot(x, y) <= radiusM)) return outline;
  let kept = outline;
  const apothemM = radiusM * Math.cos(Math.PI / BORDER_CORNERS);
  for (let i = 0; i < BORDER_CORNERS; i++) {
    const rad = (2 * Math.PI * (i + 0.5)) / BORDER_CORNERS;
    const [dx, dy] = [Math.cos(rad), Math.sin(rad)];
    kept = cutBy(kept, ([x, y]) => apothemM - x * dx - y * dy);
  }
  return kept;
}
