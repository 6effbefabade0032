/** Convex hulls: of points in a plane, of a footprint made wider, and of a solid as seen from a point. */

import { DEG_PER_RAD } from "../base/units.ts";
import { add, cross, dot, norm, scale, unit, type Vec3 } from "../base/vector.ts";
import { outlineOf, type Side } from "./outline.ts";
import type { Point2, Prism } from "./prism.ts";

/** Indices of the corners of the convex hull, counterclockwise (monotone chain, Andrew 1979). */
export function hullIndices(points: readonly Point2[]): number[] {
  const order = points
    .map((_, i) => i)
    .sort((a, b) => points[a]![0] - points[b]![0] || points[a]![1] - points[b]![1]);
  const chain = (indices: readonly number[]): number[] => {
    const hull: number[] = [];
    for (const index of indices) {
      while (hull.length >= 2 && turn(points[hull.at(-2)!]!, points[hull.at(-1)!]!, points[index]!) <= 0)
        hull.pop();
      hull.push(index);
    }
    return hull.slice(0, -1);
  };
  return [...chain(order), ...chain([...order].reverse())];
}

const turn = (a: Point2, b: Point2, c: Point2): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Corners of the round that a widened corner gets; it stands about the true round, up to 2 % of its radius outside. */
const ROUND_SIDES = 16;

/** A footprint made wider by `byM` all round. */
export function widened(footprint: readonly Point2[], byM: number): Point2[] {
  const cornerM = byM / Math.cos(Math.PI / ROUND_SIDES);
  const points = footprint.flatMap(([x, y]) =>
    Array.from({ length: ROUND_SIDES }, (_, i): Point2 => {
      const rad = (2 * Math.PI * i) / ROUND_SIDES;
      return [x + cornerM * Math.cos(rad), y + cornerM * Math.sin(rad)];
    }),
  );
  return hullIndices(points).map((index) => points[index]!);
}

/** A viewpoint this near to a solid counts as on its surface, metres. */
const ON_SURFACE_M = 1e-3;
/** Directions at or behind the edge of what can be drawn flat are held just inside it. */
const LEAST_AHEAD = 1e-4;

/** The region of the sky that a solid covers. */
export interface Silhouette {
  readonly sides: readonly Side[];
  /** A cone around it, for a first look. */
  readonly centre: Vec3;
  readonly radiusRad: number;
  /** No direction lies deeper inside than this: half the width between a side and the corner farthest from it. */
  readonly mostDepthDeg: number;
}

/**
 * The outline of a solid from a viewpoint outside it (pad frame, metres). `turned` carries a pad direction into the frame
 * the outline is wanted in. Null from inside the solid: all directions are covered.
 */
export function silhouetteOf(prism: Prism, viewpointM: Vec3, turned: (enu: Vec3) => Vec3): Silhouette | null {
  const ahead = towardsNearest(prism, viewpointM);
  if (ahead === null) return null;
  const corners = [prism.footM, prism.topM].flatMap((upM) =>
    prism.footprint.map(([x, y]): Vec3 => [x - viewpointM[0], y - viewpointM[1], upM - viewpointM[2]]),
  );
  // All corners lie ahead of the plane through the viewpoint across the way to the nearest point: the solid is convex.
  const side = unit(cross(ahead, Math.abs(ahead[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const upper = cross(side, ahead);
  const directions = corners.map((corner) => heldAhead(unit(corner), ahead));
  const flat = directions.map((direction): Point2 => {
    const depth = dot(direction, ahead);
    return [dot(direction, side) / depth, dot(direction, upper) / depth];
  });
  const hull = hullIndices(flat).map((index) => unit(turned(directions[index]!)));
  const centre = unit(hull.reduce(add, [0, 0, 0]));
  const radiusRad = Math.max(...hull.map((corner) => angleRad(corner, centre)));
  const sides = outlineOf(hull, centre);
  return { sides, centre, radiusRad, mostDepthDeg: mostDepthDeg(sides, hull, radiusRad) };
}

/** Half the least width between a side and the corner farthest from it; between corners a side bulges by 1 / cos of half its length. */
function mostDepthDeg(sides: readonly Side[], corners: readonly Vec3[], radiusRad: number): number {
  if (radiusRad > Math.PI / 3) return Number.POSITIVE_INFINITY;
  let leastSine = 1;
  for (const { inward } of sides) {
    let mostSine = 0;
    for (const corner of corners) mostSine = Math.max(mostSine, dot(inward, corner));
    leastSine = Math.min(leastSine, mostSine);
  }
  return ((Math.asin(leastSine) / 2) * DEG_PER_RAD) / Math.cos(radiusRad);
}

const angleRad = (a: Vec3, b: Vec3): number => Math.atan2(norm(cross(a, b)), dot(a, b));

function heldAhead(direction: Vec3, ahead: Vec3): Vec3 {
  const depth = dot(direction, ahead);
  return depth >= LEAST_AHEAD ? direction : unit(add(direction, scale(ahead, LEAST_AHEAD - depth)));
}

/** Unit vector from a viewpoint to the nearest point of a solid; null inside it. On its surface: to its middle. */
function towardsNearest(prism: Prism, [east, north, up]: Vec3): Vec3 | null {
  const [x, y] = nearestOf(prism.footprint, east, north);
  const nearest: Vec3 = [x - east, y - north, Math.min(prism.topM, Math.max(prism.footM, up)) - up];
  if (norm(nearest) >= ON_SURFACE_M) return unit(nearest);
  const isWithin =
    up > prism.footM + ON_SURFACE_M &&
    up < prism.topM - ON_SURFACE_M &&
    isWellWithin(prism.footprint, east, north);
  if (isWithin) return null;
  return unit([prism.middle[0] - east, prism.middle[1] - north, (prism.footM + prism.topM) / 2 - up]);
}

/** Distance of a point from each edge's line, positive inside. */
const insideEdges = (footprint: readonly Point2[], x: number, y: number): number[] =>
  footprint.map(([fromX, fromY], i) => {
    const [toX, toY] = footprint[(i + 1) % footprint.length]!;
    return ((toX - fromX) * (y - fromY) - (toY - fromY) * (x - fromX)) / Math.hypot(toX - fromX, toY - fromY);
  });

const isWellWithin = (footprint: readonly Point2[], x: number, y: number): boolean =>
  insideEdges(footprint, x, y).every((distanceM) => distanceM > ON_SURFACE_M);

/** The point of a convex footprint nearest to (x, y): itself when inside. */
function nearestOf(footprint: readonly Point2[], x: number, y: number): Point2 {
  if (insideEdges(footprint, x, y).every((distanceM) => distanceM >= 0)) return [x, y];
  let best: Point2 = footprint[0]!;
  let bestSquared = Number.POSITIVE_INFINITY;
  footprint.forEach(([fromX, fromY], i) => {
    const [toX, toY] = footprint[(i + 1) % footprint.length]!;
    const [edgeX, edgeY] = [toX - fromX, toY - fromY];
    const along = ((x - fromX) * edgeX + (y - fromY) * edgeY) / (edgeX * edgeX + edgeY * edgeY);
    const t = Math.min(1, Math.max(0, along));
    const point: Point2 = [fromX + t * edgeX, fromY + t * edgeY];
    const squared = (point[0] - x) ** 2 + (point[1] - y) ** 2;
    if (squared < bestSquared) {
      best = point;
      bestSquared = squared;
    }
  });
  return best;
}
