/** One T-0 of a tracker, row by row along T+. */

import { MS_PER_SECOND, tanDeg } from "../../base/units.ts";
import { cross, norm, toAzimuthElevation, type Vec3 } from "../../base/vector.ts";
import { exactStop } from "../../exposure/scales.ts";
import { depthOfField, motionBlurMm } from "../../exposure/sharpness.ts";
import { pathSun } from "../../sky/sunPath.ts";
import { flightAt } from "../../view/ascentPath.ts";
import type { Instant } from "../instants.ts";
import type { Setting } from "../setting.ts";
import { exactTimeS } from "../settingWords.ts";
import type { SunRiskWord } from "../sunRisk.ts";
import type { AloftThings } from "./aloft.ts";
import { toTPlus } from "./approach.ts";
import type { FlightPoint } from "./flightPoints.ts";
import { rateReader } from "./slewRates.ts";
import type { SweepLight } from "./sweepLight.ts";
import type { SweepRow } from "./sweepTypes.ts";
import type { SweepRoom, Tracker } from "./tracker.ts";

export const DEFAULT_EVERY_S = 5;

/** Rows of a T-0 (`instant`) every so many seconds, the sweep's end, the sun's closest approach and the middle of each of its stays in the frame among them; under the first sky. */
export function timelineRows(
  room: SweepRoom,
  tracker: Tracker,
  light: SweepLight,
  setting: Setting | null,
  instant: Instant,
  everyS: number,
): SweepRow[] {
  const read = rowReader(room, tracker, light, setting, instant);
  return rowTimes(room, tracker, instant.ms, everyS).map(read);
}

function rowTimes(
  { fromS, toS }: SweepRoom,
  { edge, inFrame }: Tracker,
  t0Ms: number,
  everyS: number,
): number[] {
  const times = new Set<number>([fromS, toTPlus(edge.lowestAt(t0Ms).atMs)]);
  for (const { fromMs, toMs } of inFrame.tPlusAt(t0Ms)) times.add(toTPlus((fromMs + toMs) / 2));
  for (let i = 1; fromS + i * everyS < toS; i++) times.add(toTPlus((fromS + i * everyS) * MS_PER_SECOND));
  // A row that would read as the last one is left out.
  const early = [...times].filter((tPlusS) => tPlusS < toS - SAME_ROW_S);
  return [...early, toS].sort((a, b) => a - b);
}

/** T+ closer than this read alike. */
const SAME_ROW_S = 0.05;

function rowReader(
  room: SweepRoom,
  tracker: Tracker,
  { pointAt, thingsAt, onPad }: SweepLight,
  setting: Setting | null,
  instant: Instant,
): (tPlusS: number) => SweepRow {
  const ratesAt = rateReader(tracker.frames);
  const t0Ms = instant.ms;
  const { path } = room.ascent;
  return (tPlusS) => {
    const ms = tPlusS * MS_PER_SECOND;
    const point = pointAt(tPlusS);
    const things = tPlusS === room.fromS ? onPad(instant, 0) : thingsAt(point, t0Ms, 0);
    const flight = flightAt(path, room.site.place, tPlusS);
    const rates = ratesAt(ms);
    return {
      tPlusS,
      azimuthDeg: point.azimuthDeg,
      elevationDeg: point.elevationDeg,
      rangeM: point.rangeM,
      azimuthRateDegS: rates.azimuthDegS,
      elevationRateDegS: rates.elevationDegS,
      altitudeM: flight.altitudeM,
      speedMS: flight.speedMS,
      flightPathDeg: flight.flightPathDeg ?? 90,
      ...lightOf(things),
      ...imageOf(tracker, point),
      ...sharpness(tracker, point, setting, acrossMS(tracker, ms)),
      ...sunOf(tracker, t0Ms + ms),
      offAxisDeg: tracker.offAxis.valueAt(t0Ms, ms),
      fromEdgeDeg: tracker.edge.valueAt(t0Ms, ms),
      sun: sunWord(tracker, t0Ms, ms),
    };
  };
}

const lightOf = ({ light, phaseDeg, endOnDeg, ev, body, skyCdM2, plume }: AloftThings) => ({
  light,
  phaseDeg,
  litShare: body.litShare,
  endOnDeg,
  ev,
  bodyMeanCdM2: body.meanCdM2,
  skyCdM2,
  plumeCdM2: plume?.nominalCdM2 ?? null,
});

function imageOf({ camera: { lens, gate } }: Tracker, { vehicleDeg }: FlightPoint) {
  const vehicleMm = 2 * lens.focalMm * tanDeg(Math.min(vehicleDeg, WIDEST_DEG) / 2);
  return { vehicleMm, vehicleShare: vehicleMm / gate.heightMm };
}

/** A vehicle that fills more than this of the sky is past any picture. */
const WIDEST_DEG = 150;

type Sharpness = Pick<SweepRow, "blurMm" | "sharpNearM" | "sharpFarM">;

function sharpness(
  { camera: { lens, medium } }: Tracker,
  { rangeM }: FlightPoint,
  setting: Setting | null,
  speedAcrossMS: number,
): Sharpness {
  if (setting === null || medium === null) return { blurMm: null, sharpNearM: null, sharpFarM: null };
  const stop = exactStop(setting.stop, lens.stops);
  const { nearM, farM } = depthOfField(lens.focalMm, stop, medium.blurMm, rangeM);
  return {
    blurMm: motionBlurMm(speedAcrossMS, exactTimeS(setting), lens.focalMm, rangeM),
    sharpNearM: nearM,
    sharpFarM: farM,
  };
}

const SPEED_STEP_MS = 10;

/** Speed of the followed point across the line of sight, m/s. */
function acrossMS({ frames }: Tracker, ms: number): number {
  const [before, after]: [number, number, number][] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  const fromMs = Math.max(frames.atMs[0]!, ms - SPEED_STEP_MS);
  const toMs = Math.min(frames.atMs.at(-1)!, ms + SPEED_STEP_MS);
  frames.pointInto(fromMs, before!);
  frames.pointInto(toMs, after!);
  const moved: Vec3 = [after![0] - before![0], after![1] - before![1], after![2] - before![2]];
  return (norm(cross(moved, after!)) / norm(after!) / (toMs - fromMs)) * MS_PER_SECOND;
}

/** As the camera sees it. */
function sunOf({ sunPath }: Tracker, ms: number): Pick<SweepRow, "sunAzimuthDeg" | "sunElevationDeg"> {
  const sun = pathSun();
  sunPath.into(ms, sun);
  return {
    sunAzimuthDeg: toAzimuthElevation(sun.direction).azimuthDeg,
    sunElevationDeg: sun.apparentElevationDeg,
  };
}

/** The sun at one T-0 and T+, ms. */
export function sunWord(tracker: Tracker, t0Ms: number, ms: number): SunRiskWord {
  if (tracker.inFrame.valueAt(t0Ms, ms) < 0) return "in-frame";
  if (tracker.flare.valueAt(t0Ms, ms) < 0) return "near-frame";
  if (tracker.flareOrHidden.valueAt(t0Ms, ms) < 0) return "hidden";
  const sun = pathSun();
  tracker.sunPath.into(t0Ms + ms, sun);
  return sun.apparentElevationDeg > -sun.semidiameterDeg ? "clear" : "down";
}
