/** The sun's way over a camera's picture during the window, with round clock times on it. */

import { MS_PER_MINUTE } from "../../base/units.ts";
import { angleBetweenDeg } from "../../base/vector.ts";
import { halfDiagonalDeg, onGateMm } from "../../view/frame.ts";
import type { Point2 } from "../../view/prism.ts";
import { aboveHorizonMeasure } from "../../view/sunInFrame.ts";
import type { LiveCamera, LiveWindow } from "../live/liveWindow.ts";
import { roundTimesMs } from "../roundTimes.ts";
import type { Reach } from "./gatePolygons.ts";

interface SunTick {
  readonly at: Date;
  readonly xMm: number;
  readonly yMm: number;
}

export interface SunTrackPicture {
  /** Stretches of the way of the disc's centre while any of it is up, mm on the gate. */
  readonly lines: readonly (readonly Point2[])[];
  readonly ticks: readonly SunTick[];
}

/** The sun goes this far in a minute at most. */
const SUN_DEG_PER_MINUTE = 0.25;
/** The same with room for refraction and rounding. */
const FASTEST_DEG_PER_MINUTE = 0.3;
/** Points over the picture's half diagonal, and over any window at least. */
const POINTS = 24;
const LEAST_POINTS = 48;
const MOST_TICKS = 7;

export function sunTrackPicture({ scene }: LiveWindow, camera: LiveCamera, reach: Reach): SunTrackPicture {
  const { opens, closes } = scene.window;
  const [fromMs, toMs] = [opens.getTime(), closes.getTime()];
  const reachDeg = halfDiagonalDeg({
    ...camera.view.frame.view,
    gateWidthMm: 2 * reach.xMm,
    gateHeightMm: 2 * reach.yMm,
  });
  const stepMs = Math.min(
    (toMs - fromMs) / LEAST_POINTS,
    (reachDeg / POINTS / SUN_DEG_PER_MINUTE) * MS_PER_MINUTE,
  );
  const count = Math.ceil((toMs - fromMs) / stepMs);
  const { lines, shownMs } = sunLines(camera, reach, { fromMs, toMs, count, reachDeg });
  // Over a week without the sun there would be one to ask for each minute.
  if (lines.length === 0) return { lines, ticks: [] };
  const ticks = roundTimesMs(scene.window, scene.site.zone, shownMs / MOST_TICKS);
  return {
    lines: lines.filter(({ length }) => length > 1),
    ticks: ticks.flatMap((ms) => {
      const point = sunOnPicture(camera, reach, ms);
      return point === null ? [] : [{ at: new Date(ms), xMm: point[0], yMm: point[1] }];
    }),
  };
}

interface Steps {
  readonly fromMs: number;
  readonly toMs: number;
  readonly count: number;
  /** Farther off the axis nothing is on the picture. */
  readonly reachDeg: number;
}

function sunLines(camera: LiveCamera, reach: Reach, { fromMs, toMs, count, reachDeg }: Steps) {
  const stepMs = (toMs - fromMs) / count;
  const lines: Point2[][] = [];
  let line: Point2[] = [];
  let shownMs = 0;
  for (let i = 0; i <= count; i++) {
    const ms = fromMs + stepMs * i;
    const point = sunOnPicture(camera, reach, ms);
    if (point !== null) line.push(point);
    if ((point === null || i === count) && line.length > 0) {
      shownMs += (line.length - 1) * stepMs;
      lines.push(line);
      line = [];
    }
    // A long lens asks for steps of a second; over days nearly all of them are far from the picture.
    if (point === null) i += Math.max(0, Math.floor(farMs(camera, reachDeg, ms) / stepMs) - 1);
  }
  return { lines, shownMs };
}

/** The sun cannot come onto the picture for so long. */
function farMs({ sunOf, view }: LiveCamera, reachDeg: number, ms: number): number {
  const offDeg = angleBetweenDeg(view.frame.axis, sunOf(ms).direction) - reachDeg;
  return (offDeg / FASTEST_DEG_PER_MINUTE) * MS_PER_MINUTE;
}

/** Null while it is down, behind the camera or off the picture. */
function sunOnPicture({ sunOf, view }: LiveCamera, { xMm, yMm }: Reach, ms: number): Point2 | null {
  const sun = sunOf(ms);
  if (aboveHorizonMeasure(sun) >= 0) return null;
  const point = onGateMm(view.frame, sun.direction);
  if (point === null || Math.abs(point.xMm) > xMm || Math.abs(point.yMm) > yMm) return null;
  return [point.xMm, point.yMm];
}
