/** Flat and solid polygons: a rectangle's border, and what a straight cut leaves of a polygon. */

import type { Point2 } from "../../view/prism.ts";

const CORNERS: readonly Point2[] = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
];

/** Corners of a rectangle about the origin, or, so that it can be bent, that many points from each corner to the next. */
export const rectangleBorder = (halfX: number, halfY: number, sidePoints = 1): Point2[] =>
  CORNERS.flatMap(([x, y], corner) => {
    const [nextX, nextY] = CORNERS[(corner + 1) % CORNERS.length]!;
    return Array.from({ length: sidePoints }, (_, i): Point2 => {
      const share = i / sidePoints;
      return [halfX * (x + (nextX - x) * share), halfY * (y + (nextY - y) * share)];
    });
  });

/** The part of a convex polygon on which a straight measure is 0 or more (Sutherland & Hodgman 1974). */
export function cutBy<Corner extends readonly number[]>(
  corners: readonly Corner[],
  measure: (corner: Corner) => number,
): Corner[] {
  return corners.flatMap((corner, i) => {
    const next = corners[(i + 1) % corners.length]!;
    const [here, there] = [measure(corner), measure(next)];
    const kept = here >= 0 ? [corner] : [];
    if (here >= 0 === there >= 0) return kept;
    const share = here / (here - there);
    const between = corner.map((value, axis) => value + share * (next[axis]! - value));
    return [...kept, between as readonly number[] as Corner];
  });
}
