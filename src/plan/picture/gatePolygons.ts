/** Solids and directions on the gate of a camera as flat polygons: cut where they pass behind the camera, and at the picture's border. */

import { dot, type Vec3 } from "../../base/vector.ts";
import type { Orientation } from "../../view/frame.ts";
import type { Point2 } from "../../view/prism.ts";
import { cutBy, rectangleBorder } from "./polygons.ts";

/** Half the picture's width and height, mm on the gate. */
export interface Reach {
  readonly xMm: number;
  readonly yMm: number;
}

/** Nothing nearer to the camera's own plane than this is drawn, as a share of the distance. */
const LEAST_AHEAD_SHARE = 1e-3;

/** Corners (vectors from the camera in its horizon, any length) as a polygon in mm on the gate, inside the picture; empty outside. */
export function onPicture(frame: Orientation, corners: readonly Vec3[], reach: Reach): Point2[] {
  const { focalMm } = frame.view;
  const turned = corners.map(
    (corner): Vec3 => [dot(corner, frame.right), dot(corner, frame.up), dot(corner, frame.axis)],
  );
  const leastAhead = LEAST_AHEAD_SHARE * Math.max(...turned.map((corner) => Math.hypot(...corner)));
  const ahead = cutBy(turned, (corner) => corner[2] - leastAhead);
  const flat = ahead.map(([x, y, z]): Vec3 => [(focalMm * x) / z, (focalMm * y) / z, 0]);
  return insidePicture(flat, reach);
}

/** A flat polygon cut at the picture's border. */
export function insidePicture(flat: readonly Vec3[], { xMm, yMm }: Reach): Point2[] {
  const limits: readonly ((point: Vec3) => number)[] = [
    ([x]) => xMm - x,
    ([x]) => xMm + x,
    ([, y]) => yMm - y,
    ([, y]) => yMm + y,
  ];
  return limits.reduce((kept, limit) => cutBy(kept, limit), flat).map(([x, y]): Point2 => [x, y]);
}

/** The half of the picture below the level of the camera. */
export function belowLevel(frame: Orientation, reach: Reach): Point2[] {
  const upOf = ([x, y]: Point2): number =>
    frame.axis[2] * frame.view.focalMm + frame.right[2] * x + frame.up[2] * y;
  return cutBy(rectangleBorder(reach.xMm, reach.yMm), (corner) => -upOf(corner));
}
