/** Lines with no more points than the eye can tell. */

import type { Point } from "./paths.ts";

/** How far a point lies off the straight line between two others, in the drawing's units. */
type Away = (point: Point, from: Point, to: Point) => number;

/** The points that a line within `strayPx` of all of them needs (Douglas & Peucker 1973). */
export function simplified(points: readonly Point[], strayPx: number, awayPx: Away): Point[] {
  const kept = new Set([0, points.length - 1]);
  const open: [number, number][] = [[0, points.length - 1]];
  for (let pair = open.pop(); pair !== undefined; pair = open.pop()) {
    const [first, last] = pair;
    let farthest: number | null = null;
    let mostPx = strayPx;
    for (let i = first + 1; i < last; i++) {
      const px = awayPx(points[i]!, points[first]!, points[last]!);
      if (px > mostPx) [mostPx, farthest] = [px, i];
    }
    if (farthest === null) continue;
    kept.add(farthest);
    open.push([first, farthest], [farthest, last]);
  }
  return points.filter((_, i) => kept.has(i));
}
