/** What a picture of a sweep shows for every T-0: the tracker's axis along the ascent, its frame, the sun's way over the window. */

import type { Interval } from "../../base/crossings.ts";
import { MS_PER_MINUTE, MS_PER_SECOND } from "../../base/units.ts";
import { fieldDeg } from "../../view/frame.ts";
import { type SweepFrames, TURN_LENGTH } from "../../view/sweepFrames.ts";
import { sunUpSpans } from "../sweep/closestUp.ts";
import type { PreparedSweep } from "../sweep/prepareSweep.ts";
import type { Tracker } from "../sweep/tracker.ts";
import type { PathPoint, SunPoint, SweepPath } from "./sweepPathTypes.ts";
import { axisOf, pathFrame, sunPointAt } from "./sweepPlaces.ts";

/** What a picture needs of a prepared tracker. */
export type SweptTracker = Pick<PreparedSweep, "room" | "tracker">;

/** Seconds from tick to tick of T+. */
const TICKS_S = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300] as const;
const MOST_TICKS = 18;
const MOST_FRAMES = 5;

export function sweepPathOf({ room, tracker }: SweptTracker): SweepPath {
  const { frames, camera } = tracker;
  const { fromS, toS } = room;
  const ticksS = tickTimes(fromS, toS);
  const framesS = [...new Set(Array.from({ length: MOST_FRAMES }, (_, i) => framePlace(ticksS.length, i)))];
  return {
    id: camera.id,
    window: { opens: room.window.opens, closes: room.window.closes },
    fromS,
    toS,
    isRough: room.ascent.kind === "parameters",
    fieldDeg: {
      horizontal: fieldDeg(camera.gate.widthMm, camera.lens.focalMm),
      vertical: fieldDeg(camera.gate.heightMm, camera.lens.focalMm),
    },
    points: pathPoints(frames),
    ticks: ticksS.map((tPlusS) => axisAt(frames, tPlusS)),
    frames: framesS.map((i) => pathFrame(frames, ticksS[i]!)),
    sun: sunUpSpans(room, tracker).map((span) => sunWay(tracker, span)),
  };
}

function tickTimes(fromS: number, toS: number): number[] {
  const everyS = TICKS_S.find((step) => (toS - fromS) / step <= MOST_TICKS) ?? TICKS_S.at(-1)!;
  const first = Math.ceil(fromS / everyS);
  const count = Math.floor(toS / everyS) - first + 1;
  // A multiple of a tenth is cut to what it is meant to be.
  return Array.from({ length: count }, (_, i) => Math.round((first + i) * everyS * 10) / 10);
}

/** Frames stand at ticks, the first and the last among them. */
const framePlace = (ticks: number, i: number): number => Math.round(((ticks - 1) * i) / (MOST_FRAMES - 1));

/** Knots of the sweep stand closer than a picture needs: a point wherever the axis has turned by so much. */
const POINT_STEP_DEG = 0.5;

function pathPoints({ atMs, turns, way }: SweepFrames): PathPoint[] {
  const points: PathPoint[] = [];
  let lastWay = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < atMs.length; i++) {
    if (way[i]! - lastWay < POINT_STEP_DEG && i < atMs.length - 1) continue;
    lastWay = way[i]!;
    points.push(axisOf(turns, TURN_LENGTH * i, atMs[i]! / MS_PER_SECOND));
  }
  return points;
}

function axisAt({ turnInto }: SweepFrames, tPlusS: number): PathPoint {
  const turn = new Float64Array(TURN_LENGTH);
  turnInto(tPlusS * MS_PER_SECOND, turn);
  return axisOf(turn, 0, tPlusS);
}

const LEAST_SUN_STEP_MS = 5 * MS_PER_MINUTE;
const MOST_SUN_POINTS = 300;

/** At both ends and at even times between. */
function sunWay({ sunPath }: Tracker, { fromMs, toMs }: Interval): SunPoint[] {
  const steps = Math.max(1, Math.min(MOST_SUN_POINTS, Math.ceil((toMs - fromMs) / LEAST_SUN_STEP_MS)));
  return Array.from({ length: steps + 1 }, (_, i) =>
    sunPointAt(sunPath, fromMs + ((toMs - fromMs) * i) / steps),
  );
}
