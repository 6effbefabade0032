/**
 * A tracker's sweep tried out moment by moment, with vectors and formulas of its own: nothing is shared with the search
 * but where the sun stands (`sunAt`).
 */

import type { Air, Place } from "../../src/base/place.ts";
import { sunAt } from "../../src/sky/sun.ts";

export type Vector = readonly [number, number, number];

/** A tracker that follows a point on a way given by a formula. */
export interface TriedTracker {
  readonly name: string;
  readonly pad: Place;
  readonly camera: Place;
  /** Of the followed point in the pad's tangent plane, metres east, north and up, by seconds after T-0. */
  readonly way: (tPlusS: number) => Vector;
  readonly fromS: number;
  readonly toS: number;
  readonly focalMm: number;
  readonly gateWidthMm: number;
  readonly gateHeightMm: number;
  readonly rollDeg: number;
  readonly offsetShare: number;
  readonly air?: Air;
}

const RAD = Math.PI / 180;

/** Metres around the Earth's middle on WGS 84 (IOGP Guidance Note 7-2, method 9602), written out once more. */
export function earthMiddleM({ latitudeDeg, longitudeDeg, heightM }: Place): Vector {
  const [a, b] = [6378137, 6378137 * (1 - 1 / 298.257223563)];
  const [lat, lon] = [latitudeDeg * RAD, longitudeDeg * RAD];
  const normal = (a * a) / Math.hypot(a * Math.cos(lat), b * Math.sin(lat));
  const level = (normal + heightM) * Math.cos(lat);
  return [
    level * Math.cos(lon),
    level * Math.sin(lon),
    (((b * b) / (a * a)) * normal + heightM) * Math.sin(lat),
  ];
}

/** East, north and up of a place, seen from the Earth's middle. */
export function compassOf({ latitudeDeg, longitudeDeg }: Place): readonly [Vector, Vector, Vector] {
  const [lat, lon] = [latitudeDeg * RAD, longitudeDeg * RAD];
  const up: Vector = [Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat)];
  const east: Vector = [-Math.sin(lon), Math.cos(lon), 0];
  const north: Vector = [
    up[1] * east[2] - up[2] * east[1],
    up[2] * east[0] - up[0] * east[2],
    up[0] * east[1] - up[1] * east[0],
  ];
  return [east, north, up];
}

export const times = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** From the camera to a point given in the pad's tangent plane, metres east, north and up of the camera. */
export function lineTo(pad: Place, camera: Place): (point: Vector) => Vector {
  const [padM, cameraM] = [earthMiddleM(pad), earthMiddleM(camera)];
  const [east, north, up] = compassOf(pad);
  const own = compassOf(camera);
  return ([e, n, u]) => {
    const apart = (i: 0 | 1 | 2): number => padM[i] - cameraM[i] + e * east[i] + n * north[i] + u * up[i];
    const line: Vector = [apart(0), apart(1), apart(2)];
    return [times(own[0], line), times(own[1], line), times(own[2], line)];
  };
}

/** Right, ahead and up of the picture, in the camera's horizon. */
export type Picture = readonly [Vector, Vector, Vector];

/** The picture of a camera pointed by azimuth and elevation and rolled clockwise as seen from behind, radians. */
export function pictureOf(azimuth: number, elevation: number, roll: number): Picture {
  const [sinAz, cosAz] = [Math.sin(azimuth), Math.cos(azimuth)];
  const [sinEl, cosEl] = [Math.sin(elevation), Math.cos(elevation)];
  const level: Vector = [cosAz, -sinAz, 0];
  const above: Vector = [-sinEl * sinAz, -sinEl * cosAz, cosEl];
  const mixed = (c: number, s: number): Vector => [
    c * level[0] + s * above[0],
    c * level[1] + s * above[1],
    c * level[2] + s * above[2],
  ];
  const ahead: Vector = [cosEl * sinAz, cosEl * cosAz, sinEl];
  return [mixed(Math.cos(roll), -Math.sin(roll)), ahead, mixed(Math.sin(roll), Math.cos(roll))];
}

/** The picture at any T+: pointed straight, then led step by step until the point stands on its place in the gate. */
export function pictureMaker(tracker: TriedTracker): (tPlusS: number) => Picture {
  const line = lineTo(tracker.pad, tracker.camera);
  const { focalMm, gateHeightMm, offsetShare } = tracker;
  const roll = tracker.rollDeg * RAD;
  const wanted = offsetShare * gateHeightMm;
  return (tPlusS) => {
    const point = line(tracker.way(tPlusS));
    let azimuth = Math.atan2(point[0], point[1]);
    let elevation = Math.atan2(point[2], Math.hypot(point[0], point[1]));
    let picture = pictureOf(azimuth, elevation, roll);
    for (let step = 0; wanted !== 0 && step < 30; step++) {
      const ahead = times(picture[1], point);
      const x = (focalMm * times(picture[0], point)) / ahead;
      const y = (focalMm * times(picture[2], point)) / ahead - wanted;
      if (Math.abs(x) + Math.abs(y) < 1e-9) break;
      azimuth += (x * Math.cos(roll) + y * Math.sin(roll)) / focalMm / Math.cos(elevation);
      elevation += (y * Math.cos(roll) - x * Math.sin(roll)) / focalMm;
      picture = pictureOf(azimuth, elevation, roll);
    }
    return picture;
  };
}

/** Degrees from a unit direction (right, ahead, up of the picture) to the gate's border, below zero inside. */
export function borderRuler(
  gate: Pick<TriedTracker, "focalMm" | "gateWidthMm" | "gateHeightMm">,
): (d: Vector) => number {
  const [x, y, z] = [gate.gateWidthMm / 2, gate.focalMm, gate.gateHeightMm / 2];
  const long = (v: Vector): Vector => {
    const size = Math.hypot(...v);
    return [v[0] / size, v[1] / size, v[2] / size];
  };
  const corners = [long([x, y, z]), long([x, y, -z]), long([-x, y, z]), long([-x, y, -z])] as const;
  const sides = [
    { inward: long([-y, x, 0]), middle: long([x, y, 0]), corner: corners[0] },
    { inward: long([y, x, 0]), middle: long([-x, y, 0]), corner: corners[2] },
    { inward: long([0, z, -y]), middle: long([0, y, z]), corner: corners[0] },
    { inward: long([0, z, y]), middle: long([0, y, -z]), corner: corners[1] },
  ].map((side) => ({ ...side, reach: times(side.middle, side.corner) }));
  return (d) => {
    let deepest = Number.POSITIVE_INFINITY;
    let nearest = Number.POSITIVE_INFINITY;
    for (const { inward, middle, reach } of sides) {
      const sine = times(inward, d);
      deepest = Math.min(deepest, sine);
      // Beside the side itself, not beyond its ends.
      if (times(middle, d) >= reach * Math.sqrt(1 - sine * sine)) nearest = Math.min(nearest, Math.abs(sine));
    }
    if (deepest >= 0) return -Math.asin(deepest) / RAD;
    let angle = Math.asin(Math.min(1, nearest));
    if (nearest > 1) angle = Math.PI;
    for (const c of corners)
      angle = Math.min(
        angle,
        2 * Math.asin(Math.min(1, Math.hypot(d[0] - c[0], d[1] - c[1], d[2] - c[2]) / 2)),
      );
    return angle / RAD;
  };
}

export interface TriedSun {
  readonly direction: Vector;
  readonly apparentElevationDeg: number;
  readonly semidiameterDeg: number;
}

/**
 * The apparent sun of a camera over a span of time, straight from `sunAt` every `stepMs`; between two moments it runs straight: off by
 * (0.008 degree)^2 / 8 in radians = 2e-7 degree in two seconds, by 1e-5 in fifteen.
 */
export function triedSun(
  camera: Place,
  fromMs: number,
  toMs: number,
  air?: Air,
  stepMs = 2000,
): (ms: number) => TriedSun {
  const asked: TriedSun[] = [];
  for (let ms = fromMs; ms < toMs + stepMs; ms += stepMs) {
    const sun = air === undefined ? sunAt(camera, new Date(ms)) : sunAt(camera, new Date(ms), air);
    const [az, el] = [sun.azimuthDeg * RAD, sun.apparentElevationDeg * RAD];
    asked.push({
      direction: [Math.cos(el) * Math.sin(az), Math.cos(el) * Math.cos(az), Math.sin(el)],
      apparentElevationDeg: sun.apparentElevationDeg,
      semidiameterDeg: sun.semidiameterDeg,
    });
  }
  return (ms) => {
    const at = Math.min(asked.length - 2, Math.max(0, Math.floor((ms - fromMs) / stepMs)));
    const share = (ms - fromMs) / stepMs - at;
    const [a, b] = [asked[at]!, asked[at + 1]!];
    const between = (i: 0 | 1 | 2): number => a.direction[i] + share * (b.direction[i] - a.direction[i]);
    return {
      direction: [between(0), between(1), between(2)],
      apparentElevationDeg:
        a.apparentElevationDeg + share * (b.apparentElevationDeg - a.apparentElevationDeg),
      semidiameterDeg: a.semidiameterDeg,
    };
  };
}

/** Degrees below zero inside of what is asked for: the sun in a picture. */
export type TriedMeasure = (inPicture: Vector, sun: TriedSun) => number;

export const triedOffAxis: TriedMeasure = (d) => Math.atan2(Math.hypot(d[0], d[2]), d[1]) / RAD;

/** Part of the disc up and in the gate, widened by `moreDeg`. */
export const triedInGate = (tracker: TriedTracker, moreDeg = 0): TriedMeasure => {
  const ruler = borderRuler(tracker);
  return (d, sun) =>
    Math.max(ruler(d) - sun.semidiameterDeg - moreDeg, -sun.apparentElevationDeg - sun.semidiameterDeg);
};

export const inPicture = ([right, ahead, up]: Picture, d: Vector): Vector => [
  times(right, d),
  times(ahead, d),
  times(up, d),
];
