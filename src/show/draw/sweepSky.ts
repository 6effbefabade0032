/** The sky a sweep's path is drawn on: the zenith in the middle, elevation in even steps to the rim, north up and east right as on a plan. */

import { cosDeg, sinDeg } from "../../base/units.ts";
import type { SkyPoint, SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import type { Box } from "./boxes.ts";
import { cut, type Point } from "./paths.ts";

export const PATH_WIDTH = 720;
export const PATH_HEIGHT = 452;
const [CENTRE_X, CENTRE_Y, RADIUS] = [226, 238, 190];
/** Labels of the sky stay in here. */
export const SKY_SHEET: Box = { x: 2, y: 24, width: 448, height: 426 };

export interface SweepSky {
  readonly centre: Point;
  /** To the lowest elevation shown, and to the horizontal. */
  readonly rimPx: number;
  readonly horizonPx: number;
  readonly pxPerDeg: number;
  readonly at: (point: SkyPoint) => Point;
}

/** Under the horizontal so much is shown, more where the axis points lower. */
const LEAST_GROUND_DEG = 4;
const MOST_GROUND_DEG = 60;

export function sweepSky({ points }: Pick<SweepPath, "points">): SweepSky {
  const lowestDeg = Math.min(0, ...points.map(({ elevationDeg }) => elevationDeg));
  const groundDeg = Math.min(MOST_GROUND_DEG, LEAST_GROUND_DEG - lowestDeg);
  const pxPerDeg = RADIUS / (90 + groundDeg);
  return {
    centre: [CENTRE_X, CENTRE_Y],
    rimPx: RADIUS,
    horizonPx: cut(90 * pxPerDeg),
    pxPerDeg,
    // What lies lower than the rim is held at it.
    at: ({ azimuthDeg, elevationDeg }) => {
      const fromZenithPx = Math.min(RADIUS, (90 - elevationDeg) * pxPerDeg);
      return [CENTRE_X + fromZenithPx * sinDeg(azimuthDeg), CENTRE_Y - fromZenithPx * cosDeg(azimuthDeg)];
    },
  };
}
