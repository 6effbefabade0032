/**
 * Upright solids around a pad: a convex footprint between two heights. One ray test tells both what hides the sun from a
 * point and what shades a body: the heights from which a ray towards the sun meets the solid.
 *
 * In the pad's tangent frame (metres east, north and up of the datum). Uprights are parallel to the pad's vertical: a
 * tower a kilometre away leans by 0.009 degree in truth.
 */

import type { Place } from "../base/place.ts";
import { cosDeg, sinDeg } from "../base/units.ts";
import { spotFromPadM } from "../site/standing.ts";
import type { Structure, Vehicle } from "../site/types.ts";

/** (east, north), metres. */
export type Point2 = readonly [number, number];

export interface Prism {
  readonly name: string;
  /** Share of the light it stops, 0..1. */
  readonly solidity: number;
  /** Corners counterclockwise seen from above; of a circle, corners on it. */
  readonly footprint: readonly Point2[];
  /** Radius of a round footprint; null for one with straight sides. */
  readonly roundM: number | null;
  readonly footM: number;
  readonly topM: number;
  /** A circle around the footprint, for a first look. */
  readonly middle: Point2;
  readonly reachM: number;
}

/** How the vehicle is named where it hides the sun. */
export const VEHICLE_NAME = "vehicle";

/** Corners of a polygon where it stands for a circle: on it, so that it lies nowhere outside. */
export const CIRCLE_CORNERS = 32;
const EVEN_RAD = Array.from({ length: CIRCLE_CORNERS }, (_, i) => (2 * Math.PI * i) / CIRCLE_CORNERS);

/** A structure in the frame of its pad. Its foot stands at its spot's own height plus `baseM`. */
export function prismOf(pad: Place, structure: Structure): Prism {
  const [east, north, up] = spotFromPadM(structure.at, pad);
  const footM = up + structure.baseM;
  const { name, solidity, turnDeg } = structure;
  const upright = { name, solidity, footM, topM: footM + structure.heightM };
  if (structure.shape === "cylinder") return roundPrism(upright, [east, north], structure.diameterM! / 2);
  const corners = rectangle(structure.widthM!, structure.depthM!, turnDeg);
  return makePrism({ ...upright, roundM: null, footprint: corners.map(([x, y]) => [east + x, north + y]) });
}

/** The vehicle in its place at T-0. */
export const vehiclePrism = ({ diameterM, baseM, heightM }: Vehicle): Prism =>
  roundPrism({ name: VEHICLE_NAME, solidity: 1, footM: baseM, topM: baseM + heightM }, [0, 0], diameterM / 2);

/** A solid on a round footprint. */
export function roundPrism(
  upright: Pick<Prism, "name" | "solidity" | "footM" | "topM">,
  [x, y]: Point2,
  radiusM: number,
): Prism {
  const footprint = circle(radiusM, EVEN_RAD).map(([east, north]): Point2 => [x + east, y + north]);
  return { ...upright, footprint, roundM: radiusM, middle: [x, y], reachM: radiusM };
}

export function makePrism(solid: Omit<Prism, "middle" | "reachM">): Prism {
  const count = solid.footprint.length;
  const middle: Point2 = [
    solid.footprint.reduce((sum, [x]) => sum + x, 0) / count,
    solid.footprint.reduce((sum, [, y]) => sum + y, 0) / count,
  ];
  const reachM = Math.max(...solid.footprint.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])));
  return { ...solid, middle, reachM };
}

/** Points of a circle, at angles counterclockwise from the east. */
export const circle = (radiusM: number, anglesRad: readonly number[]): Point2[] =>
  anglesRad.map((rad) => [radiusM * Math.cos(rad), radiusM * Math.sin(rad)]);

/** `turnDeg` is the azimuth of the width. */
function rectangle(widthM: number, depthM: number, turnDeg: number): Point2[] {
  const along: Point2 = [sinDeg(turnDeg), cosDeg(turnDeg)];
  const corner = (w: number, d: number): Point2 => [
    (w * widthM * along[0] - d * depthM * along[1]) / 2,
    (w * widthM * along[1] + d * depthM * along[0]) / 2,
  ];
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** Heights between which a level ray's starting point must stand, metres above the datum. */
export interface Heights {
  readonly fromM: number;
  readonly toM: number;
}

/** With a steeper sun shadows end at the foot of what throws them; keeps products with a length of 0 finite. */
const STEEPEST_TANGENT = 1e9;

/** Tangent of an elevation, for rays: finite at the zenith. */
export const rayTangent = (up: number, level: number): number =>
  Math.min(STEEPEST_TANGENT, up / Math.max(level, Number.MIN_VALUE));

/**
 * The heights at (`east`, `north`) from which a ray towards the sun meets the solid; null when none does. `towards` is the
 * level unit vector to the sun, `tangent` that of its elevation, 0 or more. Exact: the ray crosses the footprint from
 * `near` to `far` and climbs by the tangent on the way.
 */
export function heightsStopped(
  prism: Prism,
  east: number,
  north: number,
  towards: Point2,
  tangent: number,
): Heights | null {
  const crossed = stretchOver(prism, east, north, towards);
  if (crossed === null) return null;
  return { fromM: prism.footM - crossed.far * tangent, toM: prism.topM - crossed.near * tangent };
}

/** From where to where a level ray runs over a footprint, metres from its start; null when it misses. */
export function stretchOver(
  prism: Prism,
  east: number,
  north: number,
  towards: Point2,
): { near: number; far: number } | null {
  const x = prism.middle[0] - east;
  const y = prism.middle[1] - north;
  const acrossM = x * towards[1] - y * towards[0];
  const alongM = x * towards[0] + y * towards[1];
  if (Math.abs(acrossM) > prism.reachM || alongM < -prism.reachM) return null;
  return prism.roundM === null
    ? stretchOverSides(prism.footprint, east, north, towards)
    : stretchOverRound(prism.roundM, alongM, acrossM);
}

/** The same over a round one, whose middle lies so far along and across the ray. */
function stretchOverRound(
  radiusM: number,
  alongM: number,
  acrossM: number,
): { near: number; far: number } | null {
  const halfM = Math.sqrt(radiusM * radiusM - acrossM * acrossM);
  const near = Math.max(0, alongM - halfM);
  const far = alongM + halfM;
  return near < far ? { near, far } : null;
}

/** The same over a convex one with straight sides (Cyrus & Beck 1978). */
function stretchOverSides(
  footprint: readonly Point2[],
  east: number,
  north: number,
  [dx, dy]: Point2,
): { near: number; far: number } | null {
  let near = 0;
  let far = Number.POSITIVE_INFINITY;
  let [fromX, fromY] = footprint.at(-1)!;
  for (let i = 0; i < footprint.length; i++) {
    const [toX, toY] = footprint[i]!;
    // Inside is on the left of each edge: at + slope x along >= 0.
    const [edgeX, edgeY] = [toX - fromX, toY - fromY];
    const at = edgeX * (north - fromY) - edgeY * (east - fromX);
    const slope = edgeX * dy - edgeY * dx;
    if (slope > 0) near = Math.max(near, -at / slope);
    else if (slope < 0) far = Math.min(far, -at / slope);
    else if (at < 0) return null;
    [fromX, fromY] = [toX, toY];
  }
  return near < far ? { near, far } : null;
}
