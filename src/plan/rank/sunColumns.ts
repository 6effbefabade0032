/** The sun over the pad at every T-0 of a window, as columns of numbers: once per T-0, whatever the number of cameras. */

import type { HorizonAxes } from "../../base/earthFixed.ts";
import type { Air } from "../../base/place.ts";
import { isSunGone } from "../../sky/daylight.ts";
import { makeMoonTrack, moonScratch } from "../../sky/moonTrack.ts";
import { liftedScratch, liftInto } from "../../sky/sun.ts";
import { type SunTrack, sunScratch } from "../../sky/sunTrack.ts";
import type { BodyShade } from "../../view/bodyShade.ts";
import { shadeAt } from "../instants.ts";
import type { Obstacles } from "../obstacles.ts";

/** From the index `from` to before `to`. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * Room for the T-0s of the longest window, used for one window after the other: made once, so that the loops that read
 * it always meet the same object. Columns are longer than `count`; what stands behind it is of no window.
 */
export interface SunColumns {
  count: number;
  readonly timesMs: Float64Array;
  /** Apparent direction, (east, north, up) of the pad. */
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly up: Float64Array;
  /** Its azimuth as a unit vector. */
  readonly towardEast: Float64Array;
  readonly towardNorth: Float64Array;
  /** Azimuth of the direct light: the sun's or, with the sun gone, the moon's. */
  readonly lampEast: Float64Array;
  readonly lampNorth: Float64Array;
  /** The moon with the sun gone; NaN before. */
  readonly moonAirlessElevationDeg: Float64Array;
  readonly moonApparentElevationDeg: Float64Array;
  readonly moonPhaseAngleDeg: Float64Array;
  readonly moonParallaxDeg: Float64Array;
  /** Null where all of the body stands in the sun. */
  readonly shades: (BodyShade | null)[];
  readonly airlessElevationDeg: Float64Array;
  readonly apparentElevationDeg: Float64Array;
  readonly distanceAu: Float64Array;
  /** T-0s with the sun's centre above the horizontal: the others are dusk or night. */
  upRuns: readonly Run[];
  upCount: number;
  /** Longest time from one T-0 to the next. */
  longestStepMs: number;
}

export function makeSunColumns(most: number): SunColumns {
  const column = (): Float64Array => new Float64Array(most);
  return {
    count: 0,
    timesMs: column(),
    east: column(),
    north: column(),
    up: column(),
    towardEast: column(),
    towardNorth: column(),
    lampEast: column(),
    lampNorth: column(),
    moonAirlessElevationDeg: column(),
    moonApparentElevationDeg: column(),
    moonPhaseAngleDeg: column(),
    moonParallaxDeg: column(),
    shades: new Array(most).fill(null),
    airlessElevationDeg: column(),
    apparentElevationDeg: column(),
    distanceAu: column(),
    upRuns: [],
    upCount: 0,
    longestStepMs: 0,
  };
}

/** Fills the columns with a window's T-0s; what was in them is gone. */
export function fillSunColumns(
  columns: SunColumns,
  timesMs: readonly number[],
  track: SunTrack,
  axes: HorizonAxes,
  air: Air,
  obstacles: Obstacles,
): void {
  const sample = sunScratch();
  const sun = liftedScratch();
  const enu = sun.direction;
  for (let i = 0; i < timesMs.length; i++) {
    track.into(timesMs[i]!, sample);
    liftInto(axes, sample.fixed, air, sun);
    const level = Math.sqrt(enu[0] * enu[0] + enu[1] * enu[1]);
    columns.timesMs[i] = timesMs[i]!;
    columns.east[i] = enu[0];
    columns.north[i] = enu[1];
    columns.up[i] = enu[2];
    // A sun in the zenith has azimuth 0, as `atan2` says.
    columns.towardEast[i] = level === 0 ? 0 : enu[0] / level;
    columns.towardNorth[i] = level === 0 ? 1 : enu[1] / level;
    columns.airlessElevationDeg[i] = sun.airlessElevationDeg;
    columns.apparentElevationDeg[i] = sun.apparentElevationDeg;
    columns.distanceAu[i] = sample.distanceAu;
  }
  columns.count = timesMs.length;
  fillMoons(columns, track, axes, air);
  for (let i = 0; i < columns.count; i++) {
    columns.shades[i] = shadeAt(obstacles, [columns.east[i]!, columns.north[i]!, columns.up[i]!]);
  }
  columns.upRuns = runsWhere(columns.count, (i) => columns.apparentElevationDeg[i]! > 0);
  columns.upCount = columns.upRuns.reduce((sum, { from, to }) => sum + to - from, 0);
  columns.longestStepMs = 0;
  for (let i = 1; i < columns.count; i++) {
    columns.longestStepMs = Math.max(columns.longestStepMs, timesMs[i]! - timesMs[i - 1]!);
  }
}

/** The moon where no part of the sun is up, and the azimuth of the direct light everywhere. */
function fillMoons(
  columns: SunColumns,
  { place, fromMs, toMs }: SunTrack,
  axes: HorizonAxes,
  air: Air,
): void {
  const track = makeMoonTrack(place, new Date(fromMs), new Date(toMs));
  const sample = moonScratch();
  const moon = liftedScratch();
  const enu = moon.direction;
  for (let i = 0; i < columns.count; i++) {
    columns.lampEast[i] = columns.towardEast[i]!;
    columns.lampNorth[i] = columns.towardNorth[i]!;
    columns.moonApparentElevationDeg[i] = Number.NaN;
    if (!isSunGone({ apparentElevationDeg: columns.apparentElevationDeg[i]! })) continue;
    track.into(columns.timesMs[i]!, sample);
    liftInto(axes, sample.fixed, air, moon);
    const level = Math.sqrt(enu[0] * enu[0] + enu[1] * enu[1]);
    columns.lampEast[i] = level === 0 ? 0 : enu[0] / level;
    columns.lampNorth[i] = level === 0 ? 1 : enu[1] / level;
    columns.moonAirlessElevationDeg[i] = moon.airlessElevationDeg;
    columns.moonApparentElevationDeg[i] = moon.apparentElevationDeg;
    columns.moonPhaseAngleDeg[i] = sample.phaseAngleDeg;
    columns.moonParallaxDeg[i] = sample.parallaxDeg;
  }
}

/** The stretches of indices for which `holds`. */
export function runsWhere(count: number, holds: (index: number) => boolean): Run[] {
  const runs: Run[] = [];
  let from = -1;
  for (let i = 0; i < count; i++) {
    const here = holds(i);
    if (here && from < 0) from = i;
    if (!here && from >= 0) {
      runs.push({ from, to: i });
      from = -1;
    }
  }
  if (from >= 0) runs.push({ from, to: count });
  return runs;
}
