/** Ticks and labels of a sweep's path: T+ along it, clock times along the sun's way, elevations on their rings. */

import { cosDeg, MS_PER_DAY, mix, sinDeg, wrap180 } from "../../base/units.ts";
import { makeClock } from "../../plan/clock.ts";
import type { SkyPoint, SunPoint, SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { roundTimesMs } from "../../plan/roundTimes.ts";
import { azimuthText } from "../numbers.ts";
import { tPlusName } from "../sweepTimes.ts";
import { type Box, squareAt } from "./boxes.ts";
import { textWidthPx } from "./fitText.ts";
import { boxesAbout, placeLabels } from "./labelRoom.ts";
import type { Point } from "./paths.ts";
import { SKY_SHEET, type SweepSky } from "./sweepSky.ts";

export interface SkyLabel {
  readonly kind: "t-plus" | "clock" | "elevation";
  readonly at: Point;
  readonly text: string;
  /** Null without room. */
  readonly box: Box | null;
}

export const SKY_LABEL_PX = 9;
const LABEL_HEIGHT = 11;
/** Blank between two labels. */
const APART_PX = 4;
/** Half of the side of the squares that keep labels off of a line. */
const LINE_PX = 2;

export function skyLabels(path: SweepPath, sky: SweepSky, zone: string): SkyLabel[] {
  const marks = [
    ...endsFirst(path.ticks).map((tick) => ({
      kind: "t-plus" as const,
      at: sky.at(tick),
      text: tPlusName(tick.tPlusS),
    })),
    ...clockLabels(path, sky, zone),
  ];
  const rings = ELEVATIONS.map((elevationDeg) => ({
    kind: "elevation" as const,
    at: sky.at({ azimuthDeg: 0, elevationDeg }),
    text: ringText(elevationDeg),
  }));
  const taken = [
    ...[...path.points, ...path.sun.flat()].map((point) => squareAt(sky.at(point), LINE_PX)),
    ...rimLabels(sky).map(({ at }) => squareAt(at, RIM_LABEL_PX)),
  ];
  const places = [
    ...marks.map(({ at, text }) => placesAbout(at, textWidthPx(text, SKY_LABEL_PX) + APART_PX)),
    ...ELEVATIONS.map((elevationDeg) => ringPlaces(elevationDeg, sky)),
  ];
  const boxes = placeLabels(places, taken, SKY_SHEET);
  return [...marks, ...rings].map((one, i) => ({ ...one, box: boxes[i]! }));
}

const ringText = (elevationDeg: number): string => `${elevationDeg}°`;

/** The first and the last say most. */
const endsFirst = <T>(ticks: readonly T[]): T[] => [
  ...ticks.slice(0, 1),
  ...ticks.slice(1).slice(-1),
  ...ticks.slice(1, -1),
];

/** Rings with their elevation on them. */
export const ELEVATIONS: readonly number[] = [30, 60];

export interface RimLabel {
  readonly azimuthDeg: number;
  readonly text: string;
  readonly isQuarter: boolean;
  /** Its middle. */
  readonly at: Point;
}

const QUARTERS: Readonly<Record<number, string>> = { 0: "N", 90: "E", 180: "S", 270: "W" };
const AZIMUTH_STEP_DEG = 30;
/** Half of the room of a label at the rim, and how far off it stands. */
const RIM_LABEL_PX = 9;
const OFF_RIM_PX = 13;

/** Azimuths round the rim. */
export const rimLabels = ({ centre: [x, y], rimPx }: SweepSky): RimLabel[] =>
  Array.from({ length: 360 / AZIMUTH_STEP_DEG }, (_, i) => {
    const azimuthDeg = i * AZIMUTH_STEP_DEG;
    const quarter = QUARTERS[azimuthDeg];
    const reachPx = rimPx + OFF_RIM_PX;
    return {
      azimuthDeg,
      text: quarter ?? azimuthText(azimuthDeg, 0),
      isQuarter: quarter !== undefined,
      at: [x + reachPx * sinDeg(azimuthDeg), y - reachPx * cosDeg(azimuthDeg)],
    };
  });

/** How far off its mark a label stands: farther where that is taken. */
const OFFS_PX: readonly number[] = [4, 8];

const placesAbout = (at: Point, width: number): Box[] =>
  OFFS_PX.flatMap((offPx) => boxesAbout(at, { width, height: LABEL_HEIGHT }, offPx));

/** Anywhere on its ring. */
function ringPlaces(elevationDeg: number, sky: SweepSky): Box[] {
  const width = textWidthPx(ringText(elevationDeg), SKY_LABEL_PX);
  return RING_AZIMUTHS.map((azimuthDeg) => {
    const [x, y] = sky.at({ azimuthDeg, elevationDeg });
    return { x: x - width / 2, y: y - LABEL_HEIGHT / 2, width, height: LABEL_HEIGHT };
  });
}

const RING_AZIMUTHS: readonly number[] = [135, 225, 45, 315, 150, 120, 210, 240, 60, 30, 300, 330];

/** Neighbouring clock times may stand on either side of the sun's way. */
const CLOCK_SHARE = 0.8;

function clockLabels({ window, sun }: SweepPath, sky: SweepSky, zone: string): Omit<SkyLabel, "box">[] {
  const clock = makeClock(zone, window.opens, window.closes);
  const ways = sun.map((way) => way.map((point) => sky.at(point)));
  const lengthPx = ways.reduce((sum, way) => sum + lengthOf(way), 0);
  const spanMs = sun.reduce((sum, way) => sum + way.at(-1)!.atMs - way[0]!.atMs, 0);
  if (lengthPx === 0 || spanMs === 0) return [];
  const roomPx = CLOCK_SHARE * textWidthPx(clock.at(window.opens), SKY_LABEL_PX);
  // Of a window of days the sun's ways lie all but on one another: the first day's times stand for them, its end left out.
  const firstDay = {
    opens: window.opens,
    closes: new Date(Math.min(window.closes.getTime(), window.opens.getTime() + MS_PER_DAY - 1)),
  };
  const times = roundTimesMs(firstDay, zone, (roomPx * spanMs) / lengthPx);
  return (times.length > 0 ? times : [window.opens.getTime()]).flatMap((ms) => {
    const point = sunAlong(sun, ms);
    if (point === null) return [];
    return [{ kind: "clock" as const, at: sky.at(point), text: clock.at(new Date(ms)) }];
  });
}

const lengthOf = (way: readonly Point[]): number =>
  way.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - way[i]![0], y - way[i]![1]), 0);

/** Between the points of the sun's way; null while it is down. */
function sunAlong(ways: SweepPath["sun"], ms: number): SkyPoint | null {
  for (const way of ways) {
    const i = way.findIndex(({ atMs }) => atMs >= ms);
    if (i === -1 || (i === 0 && way[0]!.atMs > ms)) continue;
    return i === 0 ? way[0]! : between(way[i - 1]!, way[i]!, ms);
  }
  return null;
}

function between(a: SunPoint, b: SunPoint, ms: number): SkyPoint {
  const t = (ms - a.atMs) / (b.atMs - a.atMs);
  // The short way round, through north too.
  const turnDeg = wrap180(b.azimuthDeg - a.azimuthDeg);
  return { azimuthDeg: a.azimuthDeg + turnDeg * t, elevationDeg: mix(a.elevationDeg, b.elevationDeg, t) };
}
