/** Convex hulls: of points in a plane, of a footprint made wider, and of a solid as seen from a point. */

import { DEG_PER_RAD } from "../base/units.ts";
import { add, cross, dot, norm, scale, unit, type Vec3 } from "../base/vector.ts";
import { outlineOf, type Side } from "./outline.ts";
import { CIRCLE_CORNERS, circle, type Point2, type Prism } from "./prism.ts";

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

/** Sides of the round that a footprint is widened by; its corners stand on the true round. */
const ROUND_SIDES = 128;

/** A footprint made wider by `byM` all round: at most 0.03 % of that less. The sum of two convex outlines, edges merged by direction. */
export function widened(footprint: readonly Point2[], byM: number): Point2[] {
  const round = Array.from({ length: ROUND_SIDES }, (_, i): Point2 => {
    const rad = (2 * Math.PI * i) / ROUND_SIDES;
    return [byM * Math.cos(rad), byM * Math.sin(rad)];
  });
  const edges = [...edgesOf(footprint), ...edgesOf(round)].sort((a, b) => a.rad - b.rad);
  // From the corner where the first edge by direction starts: the lowest of both.
  let [x, y] = lowest(footprint);
  const [roundX, roundY] = lowest(round);
  x += roundX;
  y += roundY;
  return edges.map((edge): Point2 => {
    const corner: Point2 = [x, y];
    x += edge.x;
    y += edge.y;
    return corner;
  });
}

/** Edges with their directions, 0 (to the east) to 2 pi. */
const edgesOf = (outline: readonly Point2[]): { x: number; y: number; rad: number }[] =>
  outline.map(([fromX, fromY], i) => {
    const [toX, toY] = outline[(i + 1) % outline.length]!;
    const [x, y] = [toX - fromX, toY - fromY];
    const rad = Math.atan2(y, x);
    return { x, y, rad: rad < 0 ? rad + 2 * Math.PI : rad };
  });

/** The corner farthest south and, of two, farthest west: the edges from it on run by direction from 0. */
const lowest = (outline: readonly Point2[]): Point2 =>
  outline.reduce((a, b) => (b[1] < a[1] || (b[1] === a[1] && b[0] < a[0]) ? b : a));

/** A viewpoint this near to a solid counts as on its surface, metres. */
const ON_SURFACE_M = 1e-3;
/** Directions at or behind the edge of what can be drawn flat are held just inside it. */
const LEAST_AHEAD = 1e-7;

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
  const footprint = footprintFrom(prism, viewpointM);
  const corners = [prism.footM, prism.topM].flatMap((upM) =>
    footprint.map(([x, y]): Vec3 => [x - viewpointM[0], y - viewpointM[1], upM - viewpointM[2]]),
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

/** A round footprint with corners where its uprights touch the view: there the outline is exact, its rim within half a per cent. */
function footprintFrom({ roundM, middle, footprint }: Prism, [east, north]: Vec3): readonly Point2[] {
  if (roundM === null) return footprint;
  const [x, y] = [east - middle[0], north - middle[1]];
  const awayM = Math.hypot(x, y);
  if (awayM <= roundM) return footprint;
  const facingRad = Math.atan2(y, x);
  const touchRad = Math.acos(roundM / awayM);
  const near = evenly(facingRad - touchRad, facingRad + touchRad);
  const far = evenly(facingRad + touchRad, facingRad + 2 * Math.PI - touchRad);
  return circle(roundM, [...near, ...far]).map(
    ([cornerX, cornerY]): Point2 => [middle[0] + cornerX, middle[1] + cornerY],
  );
}

/** Angles from one to before another, as close as on a whole circle of corners. */
function evenly(fromRad: number, toRad: number): number[] {
  const count = Math.max(4, Math.ceil((CIRCLE_CORNERS * (toRad - fromRad)) / (2 * Math.PI)));
  return Array.from({ length: count }, (_, i) => fromRad + ((toRad - fromRad) * i) / count);
}

const angleRad = (a: Vec3, b: Vec3): number => Math.atan2(norm(cross(a, b)), dot(a, b));

function heldAhead(direction: Vec3, ahead: Vec3): Vec3 {
  const depth = dot(direction, ahead);
  return depth >= LEAST_AHEAD ? direction : unit(add(direction, scale(ahead, LEAST_AHEAD - depth)));
}

/** Unit vector from a viewpoint to the nearest point of a solid; null inside it. On its surface: straight into the face. */
function towardsNearest(prism: Prism, [east, north, up]: Vec3): Vec3 | null {
  const [x, y] = nearestOf(prism.footprint, east, north);
  const nearest: Vec3 = [x - east, y - north, Math.min(prism.topM, Math.max(prism.footM, up)) - up];
  if (norm(nearest) >= ON_SURFACE_M) return unit(nearest);
  const { depthM, inward } = nearestFace(prism, [east, north, up]);
  return depthM > ON_SURFACE_M ? null : inward;
}

/** How deep a point lies behind the face it is nearest to, and that face's normal into the solid. */
function nearestFace(
  { footprint, footM, topM }: Prism,
  [east, north, up]: Vec3,
): { depthM: number; inward: Vec3 } {
  const walls = insideEdges(footprint, east, north).map((depthM, i): { depthM: number; inward: Vec3 } => {
    const [fromX, fromY] = footprint[i]!;
    const [toX, toY] = footprint[(i + 1) % footprint.length]!;
    return { depthM, inward: unit([fromY - toY, toX - fromX, 0]) };
  });
  const faces: { depthM: number; inward: Vec3 }[] = [
    ...walls,
    { depthM: up - footM, inward: [0, 0, 1] },
    { depthM: topM - up, inward: [0, 0, -1] },
  ];
  return faces.reduce((a, b) => (b.depthM < a.depthM ? b : a));
}

/** Distance of a point from each edge's line, positive inside. */
const insideEdges = (footprint: readonly Point2[], x: number, y: number): number[] =>
  footprint.map(([fromX, fromY], i) => {
    const [toX, toY] = footprint[(i + 1) % footprint.length]!;
    return ((toX - fromX) * (y - fromY) - (toY - fromY) * (x - fromX)) / Math.hypot(toX - fromX, toY - fromY);
  });

/** The point of a convex footprint nearest to (x, y): itself when inside. */
export function nearestOf(footprint: readonly Point2[], x: number, y: number): Point2 {
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
