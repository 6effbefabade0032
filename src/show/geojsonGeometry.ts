/** A shape as a geometry of RFC 7946: longitude, latitude and height, rings closed, parts of a cut shape together. */

import type { Place } from "../base/place.ts";
import { partsOf } from "../plan/map/cutShapes.ts";
import type { MapShape } from "../plan/map/mapTypes.ts";

/** Longitude, latitude, and height where it is meant. */
export type Position = readonly number[];

export type Geometry =
  | { readonly type: "Point"; readonly coordinates: Position }
  | { readonly type: "LineString"; readonly coordinates: readonly Position[] }
  | { readonly type: "MultiLineString"; readonly coordinates: readonly (readonly Position[])[] }
  | { readonly type: "Polygon"; readonly coordinates: readonly (readonly Position[])[] }
  | {
      readonly type: "MultiPolygon";
      readonly coordinates: readonly (readonly (readonly Position[])[])[];
    };

/** A hundredth of a metre on the ground, and in height. */
const ANGLE_DECIMALS = 7;
const HEIGHT_DECIMALS = 2;
const LEAST_LINE = 2;
/** A closed ring has four positions or more (RFC 7946, 3.1.6). */
const LEAST_RING = 4;

/** Null for a shape that is smaller than the last figure of its coordinates. */
export function geometryOf(shape: MapShape): Geometry | null {
  const parts = partsOf(shape);
  if (parts.kind === "point") return { type: "Point", coordinates: position(parts.at, true) };
  if (parts.kind === "lines") {
    const lines = parts.lines
      .map((line) => different(line.map((place) => position(place, !parts.isFlat))))
      .filter((line) => line.length >= LEAST_LINE);
    if (lines.length > 1) return { type: "MultiLineString", coordinates: lines };
    return lines[0] === undefined ? null : { type: "LineString", coordinates: lines[0] };
  }
  const rings = parts.rings.map(closedRing).filter((ring) => ring.length >= LEAST_RING);
  if (rings.length > 1) return { type: "MultiPolygon", coordinates: rings.map((ring) => [ring]) };
  return rings[0] === undefined ? null : { type: "Polygon", coordinates: [rings[0]] };
}

function closedRing(places: readonly Place[]): Position[] {
  const open = different(places.map((place) => position(place, false)));
  const first = open[0]!;
  while (open.length > 1 && isSame(open.at(-1)!, first)) open.pop();
  return [...open, first];
}

/** Without positions that repeat the one before. */
const different = (line: readonly Position[]): Position[] =>
  line.filter((at, i) => i === 0 || !isSame(at, line[i - 1]!));

const isSame = (a: Position, b: Position): boolean => a.every((value, i) => value === b[i]);

function position({ longitudeDeg, latitudeDeg, heightM }: Place, withHeight: boolean): Position {
  const level = [rounded(longitudeDeg, ANGLE_DECIMALS), rounded(latitudeDeg, ANGLE_DECIMALS)];
  return withHeight ? [...level, rounded(heightM, HEIGHT_DECIMALS)] : level;
}

/** Never -0. */
const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;
