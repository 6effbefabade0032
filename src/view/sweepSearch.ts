/**
 * The sun along the sweep of a tracker for every T-0 of a window: exact T-0 and T+, found without a grid.
 *
 * The frame depends on T+ alone and the sun on T-0 + T+ alone. So for one T-0 a measure changes along T+ no faster than
 * frame and sun turn together, and its smallest value over T+ changes with T-0 no faster than the sun moves: both
 * searches pass over whatever cannot reach zero.
 */

import {
  type Along,
  belowZeroAlong,
  type Knots,
  type MinimumFinder,
  minimumFinder,
} from "../base/alongKnots.ts";
import { type Interval, intervalsBelowZero } from "../base/crossings.ts";
import { lowestOfSeveral, type Minimum } from "../base/lowest.ts";
import { MS_PER_MINUTE } from "../base/units.ts";
import { type PathSun, pathSun, type SunPath } from "../sky/sunPath.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../sky/sunTrack.ts";
import { intoFrame, type SweepFrames, TURN_LENGTH } from "./sweepFrames.ts";

/** The sun as one frame of the sweep has it, written over from asking to asking. */
export interface SweptSun extends PathSun {
  /** Unit vector in the frame: right, ahead, up of the picture; `direction` is that in the camera's horizon. */
  readonly inFrame: [number, number, number];
}

/** Degrees, below zero inside of what is asked for; changes no faster than the sun moves against the frame. */
export type SweepMeasure = (sun: SweptSun) => number;

export interface SweepSearch {
  /** The measure at one T-0 and T+ (ms), and at a knot of the frames. */
  valueAt(t0Ms: number, tPlusMs: number): number;
  valueAtKnot(t0Ms: number, index: number): number;
  /** The smallest value over T+ (ms) for one T-0. */
  lowestAt(t0Ms: number): Minimum;
  /** Its sign, with no more than its size. */
  signAt(t0Ms: number): number;
  /** Stretches of T+ (ms) below zero for one T-0. */
  tPlusAt(t0Ms: number): Interval[];
  /** T-0s from..to for which the measure is below zero at some T+. */
  t0sBetween(fromMs: number, toMs: number): Interval[];
  /** Stretches of T+ (ms) below zero for at least one T-0 from..to. */
  tPlusBetween(fromMs: number, toMs: number): Interval[];
  /** The smallest value of all T-0s from..to, with its T-0 and T+. */
  lowestBetween(fromMs: number, toMs: number): Minimum & { readonly t0Ms: number };
}

/** T-0s that the search over T-0s stands on: in such a time the sun goes 1.3 degrees, all but straight. */
const T0_STEP_MS = 5 * MS_PER_MINUTE;

export function sweepSearch(frames: SweepFrames, sunPath: SunPath, measure: SweepMeasure): SweepSearch {
  let found: MinimumFinder | null = null;
  // Only a search that is asked for needs its scratch.
  const finder = (): MinimumFinder => {
    found ??= minimumFinder(frames);
    return found;
  };
  const valueAt = valueMaker(frames, sunPath, measure);
  const along = (t0Ms: number): Along => ({
    atKnot: (i) => valueAt.knot(t0Ms, i),
    at: (tPlusMs) => valueAt.any(t0Ms, tPlusMs),
  });
  const lowestAt = (t0Ms: number): Minimum => finder().lowest(along(t0Ms));
  const signAt = (t0Ms: number): number => finder().lowestSign(along(t0Ms));
  return {
    valueAt: valueAt.any,
    valueAtKnot: valueAt.knot,
    lowestAt,
    signAt,
    tPlusAt: (t0Ms) => belowZeroAlong(frames, along(t0Ms)),
    t0sBetween: (fromMs, toMs) => intervalsBelowZero(signAt, fromMs, toMs, SUN_MAX_RATE_DEG_PER_MS),
    tPlusBetween: (fromMs, toMs) => tPlusBetween(frames, valueAt, fromMs, toMs),
    lowestBetween: (fromMs, toMs) => {
      const t0Ms = lowestT0((ms) => lowestAt(ms).value, fromMs, toMs);
      return { ...lowestAt(t0Ms), t0Ms };
    },
  };
}

/** The T-0 from..to with the lowest value. */
function lowestT0(value: (t0Ms: number) => number, fromMs: number, toMs: number): number {
  const knots = t0Knots(fromMs, toMs);
  const coarse = minimumFinder(knots).lowest({ atKnot: (i) => value(knots.atMs[i]!), at: value });
  // Two lows may lie between two of the T-0s that the search stands on.
  const refined = lowestOfSeveral(
    value,
    Math.max(fromMs, coarse.atMs - T0_STEP_MS),
    Math.min(toMs, coarse.atMs + T0_STEP_MS),
    T0_PRECISION_MS,
  );
  return refined.value < coarse.value ? refined.atMs : coarse.atMs;
}

/** In which the sun moves by 0.0001 degree. */
const T0_PRECISION_MS = 20;

interface ValueAt {
  readonly knot: (t0Ms: number, index: number) => number;
  readonly any: (t0Ms: number, tPlusMs: number) => number;
}

function valueMaker(frames: SweepFrames, sunPath: SunPath, measure: SweepMeasure): ValueAt {
  const sun: SweptSun = { ...pathSun(), inFrame: [0, 0, 0] };
  const turn = new Float64Array(TURN_LENGTH);
  const { turns, atMs } = frames;
  return {
    knot: (t0Ms, index) => {
      sunPath.into(t0Ms + atMs[index]!, sun);
      intoFrame(turns, TURN_LENGTH * index, sun.direction, sun.inFrame);
      return measure(sun);
    },
    any: (t0Ms, tPlusMs) => {
      sunPath.into(t0Ms + tPlusMs, sun);
      frames.turnInto(tPlusMs, turn);
      intoFrame(turn, 0, sun.direction, sun.inFrame);
      return measure(sun);
    },
  };
}

function t0Knots(fromMs: number, toMs: number): Knots {
  const steps = Math.max(1, Math.ceil((toMs - fromMs) / T0_STEP_MS));
  const atMs = Float64Array.from({ length: steps + 1 }, (_, i) => fromMs + ((toMs - fromMs) * i) / steps);
  return { atMs, way: atMs.map((ms) => (ms - fromMs) * SUN_MAX_RATE_DEG_PER_MS) };
}

/** With the smallest value over the T-0s at each T+ as the function along T+: it changes no faster than the one of a single T-0. */
function tPlusBetween(frames: SweepFrames, valueAt: ValueAt, fromMs: number, toMs: number): Interval[] {
  const knots = t0Knots(fromMs, toMs);
  const find = minimumFinder(knots);
  const lowest = (value: (t0Ms: number) => number): number =>
    find.lowestSign({ atKnot: (i) => value(knots.atMs[i]!), at: value });
  return belowZeroAlong(frames, {
    atKnot: (index) => lowest((t0Ms) => valueAt.knot(t0Ms, index)),
    at: (tPlusMs) => lowest((t0Ms) => valueAt.any(t0Ms, tPlusMs)),
  });
}
