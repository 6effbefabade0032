/** How far a camera's picture reaches beyond its gate, and the line within which a sun makes flare. */

import { atan2Deg, cosDeg, sinDeg, tanDeg } from "../../base/units.ts";
import { angleBetweenDeg } from "../../base/vector.ts";
import { type Frame, fromEdgeDeg, throughGate } from "../../view/frame.ts";
import type { Point2 } from "../../view/prism.ts";
import type { FlareRule } from "../sunRisk.ts";
import { insidePicture, type Reach } from "./gatePolygons.ts";

/** The picture shows the whole margin where that takes no more than this, times the gate; else a little of it. */
const MOST_TIMES = 1.7;
const LITTLE_TIMES = 1.3;
/** Paper beyond the margin's border, as a share. */
const BEYOND_SHARE = 1.04;
/** Farther off the axis than this nothing is drawn flat. */
const MOST_DEG = 85;

export function reachOf(frame: Frame, { marginDeg }: FlareRule): Reach {
  const { gateWidthMm, gateHeightMm, focalMm } = frame.view;
  const times = [gateWidthMm / 2, gateHeightMm / 2].map((halfMm) => {
    const outerDeg = atan2Deg(halfMm, focalMm) + marginDeg;
    return outerDeg < MOST_DEG ? (focalMm * tanDeg(outerDeg)) / halfMm : MOST_TIMES + 1;
  });
  const wanted = Math.max(...times) * BEYOND_SHARE;
  const factor = wanted <= MOST_TIMES ? wanted : LITTLE_TIMES;
  return { xMm: (gateWidthMm / 2) * factor, yMm: (gateHeightMm / 2) * factor };
}

/** Directions around the gate in which the border is sought, and halvings of the search. */
const DIRECTIONS = 96;
const HALVINGS = 24;

/** The border as a polygon cut at the picture's; the sun's centre on it touches the flare margin. Empty where all of the picture lies within. */
export function flareBorder(frame: Frame, rule: FlareRule, reach: Reach): Point2[] {
  const farMm = 1.5 * Math.hypot(reach.xMm, reach.yMm);
  const points = Array.from({ length: DIRECTIONS }, (_, i) => {
    const angleDeg = (360 * i) / DIRECTIONS;
    const [x, y] = [cosDeg(angleDeg), sinDeg(angleDeg)];
    const awayMm = borderMm((mm) => isWithin(frame, rule, x * mm, y * mm), farMm);
    return { isFound: awayMm < farMm, at: [x * awayMm, y * awayMm, 0] as const };
  });
  if (points.every(({ isFound }) => !isFound)) return [];
  return insidePicture(
    points.map(({ at }) => at),
    reach,
  );
}

/** In the frame, or within the margin and into the hood. */
function isWithin(frame: Frame, { marginDeg, cutoffDeg }: FlareRule, xMm: number, yMm: number): boolean {
  const direction = throughGate(frame, xMm, yMm);
  const edgeDeg = fromEdgeDeg(frame, direction);
  if (edgeDeg <= 0) return true;
  return edgeDeg <= marginDeg && (cutoffDeg === null || angleBetweenDeg(frame.axis, direction) <= cutoffDeg);
}

/** How far out `isInside` holds, from the middle on. */
function borderMm(isInside: (mm: number) => boolean, farMm: number): number {
  if (isInside(farMm)) return farMm;
  let [low, high] = [0, farMm];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (isInside(middle)) low = middle;
    else high = middle;
  }
  return low;
}
