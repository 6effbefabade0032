/**
 * Shapes in latitude and longitude, as RFC 7946 wants them: cut at the antimeridian (3.1.9) so that no part crosses it, with
 * the pole as a corner where an area holds it, and with points between where a straight line of latitude and longitude
 * would leave the true one.
 *
 * The cut is made in the Earth-fixed frame, where meridian and antimeridian are one plane (y = 0) and convex areas stay
 * convex: the sides of a pole or of 180 degrees need no cases of their own.
 */

import { MEAN_EARTH_RADIUS_M } from "../../base/constants.ts";
import { fromEarthFixed } from "../../base/earthFixed.ts";
import type { Place } from "../../base/place.ts";
import { cosDeg, RAD_PER_DEG, wrap180 } from "../../base/units.ts";
import { add, norm, scale, subtract, type Vec3 } from "../../base/vector.ts";
import { cutBy } from "../picture/polygons.ts";
import type { MapShape } from "./mapTypes.ts";

/** One part, or several where the antimeridian cuts. Areas: outer rings counterclockwise, not closed, heights not meant. */
export type MapParts =
  | { readonly kind: "point"; readonly at: Place }
  | { readonly kind: "lines"; readonly lines: readonly (readonly Place[])[]; readonly isFlat: boolean }
  | { readonly kind: "areas"; readonly rings: readonly (readonly Place[])[] };

/** So near to the plane of the antimeridian a point counts as on it, metres. */
const ON_PLANE_M = 1e-6;
/** So near to the axis of the Earth a point counts as the pole, where every longitude is: the last figure of a latitude, metres. */
const AT_POLE_M = 0.01;
/** A line between two points leaves the true one by no more, metres. */
const MOST_SAG_M = 0.25;
const MOST_HALVINGS = 12;

type Side = -1 | 0 | 1;

export function partsOf(shape: MapShape): MapParts {
  if (shape.kind === "point") return { kind: "point", at: placeOn(shape.atM, 0) };
  if (shape.kind === "area") return { kind: "areas", rings: areaRings(shape.cornersM.map(snapped)) };
  const { pathM, isFlat } = shape;
  return {
    kind: "lines",
    isFlat,
    lines: cutAtPole(pathM.map(snapped))
      .flatMap(cutPath)
      .map((piece) => placesAlong(piece, !isFlat, sideOf(piece))),
  };
}

const isPole = ([x, y]: Vec3): boolean => Math.hypot(x, y) < AT_POLE_M;

const snapped = (point: Vec3): Vec3 => (isPole(point) ? [0, 0, point[2]] : point);

/** East (1) or west (-1) of the plane through Greenwich and the antimeridian; 0 on it. */
const sideAt = ([, y]: Vec3): Side => (Math.abs(y) < ON_PLANE_M ? 0 : y > 0 ? 1 : -1);

/** The side that points lie on, those on the plane left out. */
const sideOf = (points: readonly Vec3[]): Side => points.map(sideAt).find((side) => side !== 0) ?? 1;

/** A place whose longitude on the antimeridian is 180 or -180 as its side asks for. */
function placeOn(pointM: Vec3, side: Side): Place {
  const place = fromEarthFixed(pointM);
  return side !== 0 && sideAt(pointM) === 0 && pointM[0] < 0 ? { ...place, longitudeDeg: 180 * side } : place;
}

/** The point of a segment on the plane; its ends lie on both sides. */
const onPlane = (a: Vec3, b: Vec3): Vec3 => {
  const share = a[1] / (a[1] - b[1]);
  return [a[0] + share * (b[0] - a[0]), 0, a[2] + share * (b[2] - a[2])];
};

/** A path cut where it runs over a pole: it comes on one meridian and leaves on another. */
function cutAtPole(pathM: readonly Vec3[]): Vec3[][] {
  const pieces: Vec3[][] = [[]];
  pathM.forEach((point, i) => {
    const before = pathM[i - 1];
    const pole = before === undefined ? null : isPole(point) ? point : poleBetween(before, point);
    if (pole !== null && i < pathM.length - (pole === point ? 1 : 0)) {
      pieces.at(-1)!.push(pole);
      pieces.push([pole]);
    }
    if (pole !== point || i === pathM.length - 1) pieces.at(-1)!.push(point);
  });
  return pieces;
}

/** Where a segment runs over a pole between its ends. */
function poleBetween(a: Vec3, b: Vec3): Vec3 | null {
  const [x, y] = [b[0] - a[0], b[1] - a[1]];
  const share = -(a[0] * x + a[1] * y) / (x * x + y * y);
  if (!(share > 0 && share < 1) || isPole(a) || isPole(b)) return null;
  const nearest: Vec3 = [a[0] + share * x, a[1] + share * y, a[2] + share * (b[2] - a[2])];
  return isPole(nearest) ? snapped(nearest) : null;
}

/** A path cut where it crosses the antimeridian. */
function cutPath(pathM: readonly Vec3[]): Vec3[][] {
  const pieces: Vec3[][] = [[]];
  let side: Side = 0;
  for (const point of pathM) {
    const here = sideAt(point);
    const piece = pieces.at(-1)!;
    if (side !== 0 && here !== 0 && here !== side) {
      const last = piece.at(-1)!;
      const crossing = sideAt(last) === 0 ? last : onPlane(last, point);
      if (crossing[0] < 0) {
        if (last !== crossing) piece.push(crossing);
        pieces.push([crossing]);
      }
    }
    if (here !== 0) side = here;
    pieces.at(-1)!.push(point);
  }
  return pieces;
}

/** One ring, or two where the antimeridian runs through. */
function areaRings(cornersM: readonly Vec3[]): Place[][] {
  const east = cutBy(cornersM, ([, y]) => y);
  const isCut =
    cornersM.some((corner) => sideAt(corner) === 1) &&
    cornersM.some((corner) => sideAt(corner) === -1) &&
    east.some((corner) => sideAt(corner) === 0 && corner[0] < 0);
  if (!isCut) return [ringOf(cornersM, sideOf(cornersM))];
  const west = cutBy(cornersM, ([, y]) => -y);
  return [ringOf(apart(east), 1), ringOf(apart(west), -1)];
}

/** Without corners that repeat the one before: a cut through a corner gives it twice. */
const apart = (cornersM: readonly Vec3[]): Vec3[] =>
  cornersM.filter((corner, i) => norm(subtract(corner, cornersM.at(i - 1)!)) > ON_PLANE_M);

/** Side by side; where a side runs along the plane from the antimeridian to Greenwich the pole lies on it. */
function ringOf(cornersM: readonly Vec3[], side: Side): Place[] {
  return cornersM.flatMap((corner, i) => {
    const next = cornersM[(i + 1) % cornersM.length]!;
    const pole = ({ longitudeDeg }: Place): Place => ({
      latitudeDeg: corner[2] > 0 ? 90 : -90,
      longitudeDeg,
      heightM: 0,
    });
    const [here, there] = [placeOn(corner, side), placeOn(next, side)];
    if (sideAt(corner) === 0 && sideAt(next) === 0 && corner[0] * next[0] < 0)
      return [here, pole(here), pole(there)];
    const along = placesAlong([corner, next], false, side).slice(0, -1);
    // A corner on the pole is come to on one meridian and left on another.
    return isPole(corner) ? [pole(placeOn(cornersM.at(i - 1)!, side)), ...along] : along;
  });
}

/** The places of a path on one side, with more between where they are needed. */
function placesAlong(pathM: readonly Vec3[], withHeights: boolean, side: Side): Place[] {
  return pathM.flatMap((point, i) => {
    const before = pathM[i - 1];
    // A pole has the longitude of what is beside it: paths hold one at their ends only.
    const beside = isPole(point) ? (before ?? pathM[i + 1] ?? point) : point;
    const place = { ...placeOn(point, side), longitudeDeg: placeOn(beside, side).longitudeDeg };
    if (before === undefined) return [place];
    return [...between(before, point, withHeights, MOST_HALVINGS).map((one) => placeOn(one, side)), place];
  });
}

/** Points between two, ends left out, so that straight lines of longitude, latitude and height follow the segment. */
function between(a: Vec3, b: Vec3, withHeights: boolean, halvings: number): Vec3[] {
  const middle = scale(add(a, b), 0.5);
  if (halvings === 0 || sagM(a, middle, b, withHeights) <= MOST_SAG_M) return [];
  return [
    ...between(a, middle, withHeights, halvings - 1),
    middle,
    ...between(middle, b, withHeights, halvings - 1),
  ];
}

/** From the middle of a segment to the mean of its ends' coordinates, metres. */
function sagM(a: Vec3, middle: Vec3, b: Vec3, withHeights: boolean): number {
  const [from, at, to] = [fromEarthFixed(a), fromEarthFixed(middle), fromEarthFixed(b)];
  const meterPerDeg = MEAN_EARTH_RADIUS_M * RAD_PER_DEG;
  const turnDeg = isPole(a) || isPole(b) ? 0 : wrap180(to.longitudeDeg - from.longitudeDeg);
  const startDeg = isPole(a) ? to.longitudeDeg : from.longitudeDeg;
  const eastM = wrap180(at.longitudeDeg - startDeg - turnDeg / 2) * meterPerDeg * cosDeg(at.latitudeDeg);
  const northM = (at.latitudeDeg - (from.latitudeDeg + to.latitudeDeg) / 2) * meterPerDeg;
  const upM = withHeights ? at.heightM - (from.heightM + to.heightM) / 2 : 0;
  return Math.hypot(eastM, northM, upM);
}
