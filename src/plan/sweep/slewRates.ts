/** How fast a tracker's mount has to turn along the sweep, and where that is more than it can. */

import { rootBetween } from "../../base/crossings.ts";
import { lowestOfSeveral } from "../../base/lowest.ts";
import { atan2Deg, MS_PER_SECOND, wrap180 } from "../../base/units.ts";
import { type SweepFrames, TURN_LENGTH } from "../../view/sweepFrames.ts";
import { toTPlus, toTPlusSpan } from "./approach.ts";
import type { SlewRates } from "./sweepTypes.ts";
import type { TrackingCamera } from "./tracker.ts";

/** A rate is the turn over so long, about the instant. */
const RATE_STEP_MS = 20;

export interface AxisTurn {
  readonly azimuthDegS: number;
  readonly elevationDegS: number;
}

/** The axis's rates at any T+, degrees/s, as it turns over a fiftieth of a second. */
export function rateReader({ turnInto, atMs }: SweepFrames): (tPlusMs: number) => AxisTurn {
  const [before, after] = [new Float64Array(TURN_LENGTH), new Float64Array(TURN_LENGTH)];
  const [firstMs, lastMs] = [atMs[0]!, atMs.at(-1)!];
  return (tPlusMs) => {
    const fromMs = Math.max(firstMs, tPlusMs - RATE_STEP_MS / 2);
    const toMs = Math.min(lastMs, tPlusMs + RATE_STEP_MS / 2);
    turnInto(fromMs, before);
    turnInto(toMs, after);
    const perS = MS_PER_SECOND / (toMs - fromMs);
    return {
      azimuthDegS: wrap180(azimuthOf(after) - azimuthOf(before)) * perS,
      elevationDegS: (elevationOf(after) - elevationOf(before)) * perS,
    };
  };
}

const azimuthOf = (turn: Float64Array): number => atan2Deg(turn[3]!, turn[4]!);
const elevationOf = (turn: Float64Array): number => atan2Deg(turn[5]!, Math.hypot(turn[3]!, turn[4]!));

export function slewRates(frames: SweepFrames, { track }: TrackingCamera): SlewRates {
  const { azimuth, elevation } = bothSeries(frames);
  const [mostAzimuth, mostElevation] = [fastest(azimuth), fastest(elevation)];
  return {
    mostAzimuthDegS: mostAzimuth.rateDegS,
    mostAzimuthAtS: toTPlus(mostAzimuth.atMs),
    mostElevationDegS: mostElevation.rateDegS,
    mostElevationAtS: toTPlus(mostElevation.atMs),
    beyond: [...beyond(azimuth, track.mostAzimuthDegS), ...beyond(elevation, track.mostElevationDegS)],
  };
}

/** One turn's size at every knot of the frames, which stand close where the axis turns fast, and at any T+. */
interface Series {
  readonly turn: "azimuth" | "elevation";
  readonly atMs: Float64Array;
  readonly ratesDegS: Float64Array;
  readonly rateAt: (tPlusMs: number) => number;
}

function bothSeries(frames: SweepFrames): { azimuth: Series; elevation: Series } {
  const { atMs } = frames;
  const read = rateReader(frames);
  const azimuthDegS = new Float64Array(atMs.length);
  const elevationDegS = new Float64Array(atMs.length);
  for (let i = 0; i < atMs.length; i++) {
    const rates = read(atMs[i]!);
    azimuthDegS[i] = Math.abs(rates.azimuthDegS);
    elevationDegS[i] = Math.abs(rates.elevationDegS);
  }
  const rateAt =
    (turn: Series["turn"]) =>
    (ms: number): number =>
      Math.abs(read(ms)[`${turn}DegS`]);
  return {
    azimuth: { turn: "azimuth", atMs, ratesDegS: azimuthDegS, rateAt: rateAt("azimuth") },
    elevation: { turn: "elevation", atMs, ratesDegS: elevationDegS, rateAt: rateAt("elevation") },
  };
}

/** At the fastest knot, or between it and its neighbours. */
function fastest({ atMs, ratesDegS, rateAt }: Series): { atMs: number; rateDegS: number } {
  let best = 0;
  for (let i = 1; i < atMs.length; i++) if (ratesDegS[i]! > ratesDegS[best]!) best = i;
  const refined = lowestOfSeveral(
    (ms) => -rateAt(ms),
    atMs[Math.max(0, best - 1)]!,
    atMs[Math.min(atMs.length - 1, best + 1)]!,
    RATE_STEP_MS,
  );
  return -refined.value > ratesDegS[best]!
    ? { atMs: refined.atMs, rateDegS: -refined.value }
    : { atMs: atMs[best]!, rateDegS: ratesDegS[best]! };
}

/** Stretches of T+ faster than a limit. */
function beyond(
  { turn, atMs, ratesDegS, rateAt }: Series,
  limitDegS: number | null,
): SlewRates["beyond"][number][] {
  if (limitDegS === null) return [];
  const endS = atMs.at(-1)! / MS_PER_SECOND;
  const over = (ms: number): number => rateAt(ms) - limitDegS;
  const spans: SlewRates["beyond"][number][] = [];
  let fromMs: number | null = ratesDegS[0]! > limitDegS ? atMs[0]! : null;
  let neededDegS = ratesDegS[0]!;
  const close = (toMs: number): void => {
    if (fromMs !== null) spans.push({ turn, ...toTPlusSpan({ fromMs, toMs }, endS), neededDegS, limitDegS });
    fromMs = null;
    neededDegS = 0;
  };
  for (let i = 1; i < atMs.length; i++) {
    const [a, b] = [ratesDegS[i - 1]! - limitDegS, ratesDegS[i]! - limitDegS];
    if (a > 0 !== b > 0) {
      const edgeMs = rootBetween(over, atMs[i - 1]!, a, atMs[i]!, b);
      if (fromMs === null) fromMs = edgeMs;
      else close(edgeMs);
    }
    if (fromMs !== null) neededDegS = Math.max(neededDegS, ratesDegS[i]!);
  }
  close(atMs.at(-1)!);
  return spans;
}
