/** Convex regions of the sky with straight sides (stretches of great circles): how far a direction lies from their border. */

import { DEG_PER_RAD } from "../base/units.ts";
import { add, cross, dot, scale, unit, type Vec3 } from "../base/vector.ts";

/** One side: a stretch of great circle from corner to corner. */
export interface Side {
  readonly from: Vec3;
  readonly to: Vec3;
  /** Normal of the side's plane, pointing into the region. */
  readonly inward: Vec3;
  /** A point's foot lies on the stretch when it is on the positive side of these three. */
  readonly pastStart: Vec3;
  readonly beforeEnd: Vec3;
  readonly middle: Vec3;
}

/** Sides from corner to corner of a convex region; corners are unit vectors in either turning sense, `within` is any direction inside. */
export const outlineOf = (corners: readonly Vec3[], within: Vec3): Side[] =>
  corners.map((from, i) => sideBetween(from, corners[(i + 1) % corners.length]!, within));

/** The side from one corner to the next; `within` lies on its inner side. */
export function sideBetween(from: Vec3, to: Vec3, within: Vec3): Side {
  const normal = unit(cross(from, to));
  return {
    from,
    to,
    inward: dot(normal, within) >= 0 ? normal : scale(normal, -1),
    pastStart: cross(normal, from),
    beforeEnd: cross(to, normal),
    middle: add(from, to),
  };
}

/** Whether a unit direction lies inside a convex outline or on its border. */
export function isInside(sides: readonly Side[], direction: Vec3): boolean {
  for (let i = 0; i < sides.length; i++) if (dot(sides[i]!.inward, direction) < 0) return false;
  return true;
}

/** Smallest angle in degrees from a unit direction to the border of a convex outline, positive outside. */
export function fromOutlineDeg(sides: readonly Side[], direction: Vec3): number {
  const nearest = toSidesDeg(sides, direction);
  return isInside(sides, direction) ? -nearest : nearest;
}

/** Smallest angle in degrees, 0 or more, from a unit direction to any of `count` sides from `start` on, round the end. */
export function toSidesDeg(
  sides: readonly Side[],
  direction: Vec3,
  start: number = 0,
  count: number = sides.length,
): number {
  let leastSine = Number.POSITIVE_INFINITY;
  let leastChordSquared = 4;
  for (let i = 0; i < count; i++) {
    const side = sides[(start + i) % sides.length]!;
    const sine = dot(side.inward, direction);
    leastChordSquared = Math.min(leastChordSquared, chordSquared(side.from, direction));
    if (Math.abs(sine) < leastSine && isOverStretch(side, direction, sine)) leastSine = Math.abs(sine);
  }
  const toCornerRad = 2 * Math.asin(Math.sqrt(leastChordSquared) / 2);
  const toSideRad = leastSine <= 1 ? Math.asin(leastSine) : Math.PI;
  return Math.min(toSideRad, toCornerRad) * DEG_PER_RAD;
}

/** Whether the foot of the perpendicular from a direction to a side's circle lies between its corners. */
function isOverStretch(side: Side, direction: Vec3, sine: number): boolean {
  const { inward } = side;
  const x = direction[0] - sine * inward[0];
  const y = direction[1] - sine * inward[1];
  const z = direction[2] - sine * inward[2];
  return (
    isAhead(side.pastStart, x, y, z) && isAhead(side.beforeEnd, x, y, z) && isAhead(side.middle, x, y, z)
  );
}

const isAhead = (v: Vec3, x: number, y: number, z: number): boolean => v[0] * x + v[1] * y + v[2] * z >= 0;

function chordSquared(a: Vec3, b: Vec3): number {
  const x = a[0] - b[0];
  const y = a[1] - b[1];
  const z = a[2] - b[2];
  return x * x + y * y + z * z;
}
