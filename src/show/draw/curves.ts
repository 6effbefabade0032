/** Values over time as curves: gaps kept, and no more points than the eye can tell. */

import { openPath, type Point } from "./paths.ts";

/** So far a curve may stray from its values, in the drawing's units. */
const STRAY_PX = 0.12;

/** Stretches of points between gaps. */
export function unbroken(points: readonly (Point | null)[]): Point[][] {
  const parts: Point[][] = [[]];
  for (const point of points) {
    if (point === null) parts.push([]);
    else parts.at(-1)!.push(point);
  }
  return parts.filter((part) => part.length > 0);
}

/** Path of a curve with gaps; a value alone between two gaps is a short dash. */
export const curvePath = (points: readonly (Point | null)[]): string =>
  unbroken(points)
    .map((part) => (part.length === 1 ? `${openPath(part)}h1.5` : openPath(simplified(part))))
    .join("");

/** The points that a curve within `STRAY_PX` of all of them needs (Douglas & Peucker 1973, measured along y as x is time). */
export function simplified(points: readonly Point[]): Point[] {
  const kept = new Set([0, points.length - 1]);
  const open: [number, number][] = [[0, points.length - 1]];
  for (let pair = open.pop(); pair !== undefined; pair = open.pop()) {
    const [first, last] = pair;
    const farthest = farthestBetween(points, first, last);
    if (farthest === null) continue;
    kept.add(farthest);
    open.push([first, farthest], [farthest, last]);
  }
  return points.filter((_, i) => kept.has(i));
}

function farthestBetween(points: readonly Point[], first: number, last: number): number | null {
  const [ax, ay] = points[first]!;
  const [bx, by] = points[last]!;
  let farthest: number | null = null;
  let most = STRAY_PX;
  for (let i = first + 1; i < last; i++) {
    const [x, y] = points[i]!;
    const strayed = Math.abs(y - (bx === ax ? ay : ay + ((x - ax) / (bx - ax)) * (by - ay)));
    if (strayed > most) [most, farthest] = [strayed, i];
  }
  return farthest;
}
