/**
 * A ray caster of its own: boxes and circular cylinders from their definitions in a site file, in the pad's frame
 * (metres east, north and up). Shares nothing with `src/view` but the shape of a structure.
 */

import type { Place } from "../../src/base/place.ts";
import type { Vec3 } from "../../src/base/vector.ts";
import type { Site, Structure, Vehicle } from "../../src/site/types.ts";

const RAD = Math.PI / 180;

export interface Solid {
  readonly name: string;
  readonly solidity: number;
  readonly east: number;
  readonly north: number;
  readonly footM: number;
  readonly topM: number;
  /** A cylinder's; null for a box. */
  readonly radiusM: number | null;
  /** Half the sides of a box and the direction of its width. */
  readonly half: readonly [number, number];
  readonly turnRad: number;
}

/** The view draws the rim of a circle from corners that stand on it: its radius lies between these shares. */
export const LEAST_ROUND = 0.995;
export const MOST_ROUND = 1.000001;

/** Earth-fixed metres on WGS 84 (IOGP Guidance Note 7-2, method 9602), written out once more. */
function earthFixed({ latitudeDeg, longitudeDeg, heightM }: Place): Vec3 {
  const flattening = 1 / 298.257223563;
  const squared = flattening * (2 - flattening);
  const [lat, lon] = [latitudeDeg * RAD, longitudeDeg * RAD];
  const curve = 6378137 / Math.sqrt(1 - squared * Math.sin(lat) ** 2);
  return [
    (curve + heightM) * Math.cos(lat) * Math.cos(lon),
    (curve + heightM) * Math.cos(lat) * Math.sin(lon),
    (curve * (1 - squared) + heightM) * Math.sin(lat),
  ];
}

/** Rows: east, north and up of a place in the Earth-fixed frame. */
function axesOf({ latitudeDeg, longitudeDeg }: Place): readonly [Vec3, Vec3, Vec3] {
  const [sinLat, cosLat] = [Math.sin(latitudeDeg * RAD), Math.cos(latitudeDeg * RAD)];
  const [sinLon, cosLon] = [Math.sin(longitudeDeg * RAD), Math.cos(longitudeDeg * RAD)];
  return [
    [-sinLon, cosLon, 0],
    [-sinLat * cosLon, -sinLat * sinLon, cosLat],
    [cosLat * cosLon, cosLat * sinLon, sinLat],
  ];
}

const times = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Metres (east, north, up) of a place in the frame of the pad. */
export function inPadFrame(pad: Place, place: Place): Vec3 {
  const [from, to] = [earthFixed(pad), earthFixed(place)];
  const way: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const [east, north, up] = axesOf(pad);
  return [times(east, way), times(north, way), times(up, way)];
}

/** A direction in the horizon of `place` carried into the frame of the pad. */
export function turnedToPad(pad: Place, place: Place): (direction: Vec3) => Vec3 {
  const own = axesOf(place);
  const [east, north, up] = axesOf(pad);
  return (d) => {
    const part = (i: 0 | 1 | 2): number => own[0][i] * d[0] + own[1][i] * d[1] + own[2][i] * d[2];
    const fixed: Vec3 = [part(0), part(1), part(2)];
    return [times(east, fixed), times(north, fixed), times(up, fixed)];
  };
}

export function solidOf(pad: Place, structure: Structure): Solid {
  const { at, baseM, heightM, turnDeg, name, solidity } = structure;
  const [east, north, up]: Vec3 =
    at.kind === "place"
      ? inPadFrame(pad, at.place)
      : [at.rangeM * Math.sin(at.bearingDeg * RAD), at.rangeM * Math.cos(at.bearingDeg * RAD), at.upM];
  const radiusM = structure.shape === "cylinder" ? structure.diameterM! / 2 : null;
  const half = [(structure.widthM ?? 0) / 2, (structure.depthM ?? 0) / 2] as const;
  const [footM, topM] = [up + baseM, up + baseM + heightM];
  return { name, solidity, east, north, footM, topM, radiusM, half, turnRad: turnDeg * RAD };
}

export const bodySolid = ({ diameterM, baseM, heightM }: Vehicle): Solid => ({
  name: "vehicle",
  solidity: 1,
  east: 0,
  north: 0,
  footM: baseM,
  topM: baseM + heightM,
  radiusM: diameterM / 2,
  half: [0, 0],
  turnRad: 0,
});

export const solidsOf = ({ place, structures }: Site): Solid[] =>
  structures.map((structure) => solidOf(place, structure));

/** Of a ray from `at` along `way` (1 a unit of its length): where `at + t way` lies between two values. */
type Stretch = readonly [number, number];
const NOTHING: Stretch = [1, 0];
const ALL: Stretch = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];

function slab(at: number, way: number, low: number, high: number): Stretch {
  if (way === 0) return at >= low && at <= high ? ALL : NOTHING;
  const [a, b] = [(low - at) / way, (high - at) / way];
  return a < b ? [a, b] : [b, a];
}

function disc(x: number, y: number, wx: number, wy: number, radiusM: number): Stretch {
  const a = wx * wx + wy * wy;
  const c = x * x + y * y - radiusM * radiusM;
  if (a === 0) return c <= 0 ? ALL : NOTHING;
  const b = x * wx + y * wy;
  const root = b * b - a * c;
  if (root < 0) return NOTHING;
  return [(-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a];
}

/** Whether a ray from a point meets a solid in front of it; `round` makes circles wider. */
export function meets(solid: Solid, from: Vec3, direction: Vec3, round = 1): boolean {
  const [x, y] = [from[0] - solid.east, from[1] - solid.north];
  const level = slab(from[2], direction[2], solid.footM, solid.topM);
  const [first, last] = [Math.max(0, level[0]), level[1]];
  if (first >= last) return false;
  const [enter, leave] = crossed(solid, x, y, direction, round);
  return Math.max(first, enter) < Math.min(last, leave);
}

function crossed(solid: Solid, x: number, y: number, [wx, wy]: Vec3, round: number): Stretch {
  if (solid.radiusM !== null) return disc(x, y, wx, wy, solid.radiusM * round);
  const [sine, cosine] = [Math.sin(solid.turnRad), Math.cos(solid.turnRad)];
  const along = slab(x * sine + y * cosine, wx * sine + wy * cosine, -solid.half[0], solid.half[0]);
  const across = slab(x * cosine - y * sine, wx * cosine - wy * sine, -solid.half[1], solid.half[1]);
  return [Math.max(along[0], across[0]), Math.min(along[1], across[1])];
}

/** Share of the light from a direction that reaches a point past all solids. */
export function passing(solids: readonly Solid[], from: Vec3, direction: Vec3, round = 1): number {
  let share = 1;
  for (const solid of solids) if (meets(solid, from, direction, round)) share *= 1 - solid.solidity;
  return share;
}

/** A point of an upright cylinder round the pad's vertical, `psiRad` clockwise of an azimuth. */
export const onBody = (diameterM: number, azimuthRad: number, psiRad: number, upM: number): Vec3 => [
  (Math.sin(azimuthRad + psiRad) * diameterM) / 2,
  (Math.cos(azimuthRad + psiRad) * diameterM) / 2,
  upM,
];
