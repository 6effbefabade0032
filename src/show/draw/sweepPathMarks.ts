/** The frame's mark on the sky of a sweep. */

import { rectangleBorder } from "../../plan/picture/polygons.ts";
import type { PathFrame } from "../../plan/picture/sweepPathTypes.ts";
import { closedPath, type Point } from "./paths.ts";
import type { SweepSky } from "./sweepSky.ts";

interface FrameMark {
  readonly d: string;
  /** Drawn larger than it is. */
  readonly isSmall: boolean;
  /** So large that it must not cover what lies under it. */
  readonly isWide: boolean;
}

const WIDE_PX = 12;
/** Smaller than this a frame is not seen. */
const LEAST_FRAME_PX = 4;

/** A frame's border in its true size, or a square where that is too small to see. */
export function frameMark(frame: PathFrame, sky: SweepSky): FrameMark {
  const outline = frame.outline.map(sky.at);
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const sizePx = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  if (sizePx >= LEAST_FRAME_PX) return { d: closedPath(outline), isSmall: false, isWide: sizePx > WIDE_PX };
  const [x, y] = sky.at(frame);
  const half = LEAST_FRAME_PX / 2;
  const corners = rectangleBorder(half, half).map(([right, down]): Point => [x + right, y + down]);
  return { d: closedPath(corners), isSmall: true, isWide: false };
}
