/** From the gate to paper: mm become px, the picture stands with the world's up on top whatever the camera's roll. */

import type { FrameLayout } from "../../plan/picture/frameLayout.ts";
import type { Point2 } from "../../view/prism.ts";
import type { Point } from "./paths.ts";

/** Room for the picture, px. */
const MOST_WIDTH = 400;
const MOST_HEIGHT = 290;

export interface FramePaper {
  readonly width: number;
  readonly height: number;
  /** Quarter turns to the left by which the picture is shown. */
  readonly quarters: number;
  readonly at: (mm: Point2) => Point;
}

export function framePaper({ reach, quarters }: Pick<FrameLayout, "reach" | "quarters">): FramePaper {
  const isAcross = quarters % 2 === 1;
  const [halfX, halfY] = isAcross ? [reach.yMm, reach.xMm] : [reach.xMm, reach.yMm];
  const pxPerMm = Math.min(MOST_WIDTH / (2 * halfX), MOST_HEIGHT / (2 * halfY));
  const [width, height] = [2 * halfX * pxPerMm, 2 * halfY * pxPerMm];
  return {
    width,
    height,
    quarters,
    at: (mm) => {
      const [x, y] = turned(mm, quarters);
      return [width / 2 + x * pxPerMm, height / 2 - y * pxPerMm];
    },
  };
}

/** To the left by quarter turns. */
export function turned([x, y]: Point2, quarters: number): Point2 {
  if (quarters === 1) return [-y, x];
  if (quarters === 2) return [-x, -y];
  return quarters === 3 ? [y, -x] : [x, y];
}
