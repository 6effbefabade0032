/** Small sites as the live view has them, their frames laid out, and one camera worked by similar triangles. */

import { type LiveWindow, liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import { type FrameLayout, frameLayoutOf } from "../../src/plan/picture/frameLayout.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import type { Point2 } from "../../src/view/prism.ts";
import { EVENING, type SiteParts, siteOf } from "./sites.ts";

export const RAD = Math.PI / 180;

export function liveOf(parts: SiteParts, window = EVENING, skies: readonly Sky[] = ["clear"]): LiveWindow {
  const site = siteOf(parts);
  return liveWindowOf(site, chooseWindow(site, window), skies);
}

export const layoutOf = (live: LiveWindow, index = 0): FrameLayout =>
  frameLayoutOf(live, live.cameras[index]!);

/** The layout of one camera's frame. */
export const layoutAlone = (camera: string, more = ""): FrameLayout =>
  layoutOf(liveOf({ cameras: [camera], more }));

/** Least and most of one coordinate. */
export const range = (points: readonly Point2[], axis: 0 | 1): [number, number] => [
  Math.min(...points.map((point) => point[axis])),
  Math.max(...points.map((point) => point[axis])),
];

/** Of a polygon (Gauss), mm2. */
export const areaOf = (points: readonly Point2[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = points[(i + 1) % points.length]!;
      return sum + x * nextY - nextX * y;
    }, 0) / 2,
  );

/** Level, 400 m east of the body, 25 m above the datum: the body stands from 5 to 45 m, its middle on the axis. */
export const LEVEL =
  "id: C, at: { bearing: 90, range: 400, up: 25 }, aim: { up: 25 }, lens: { focal: 100 }, gate: { width: 36, height: 24 }";
