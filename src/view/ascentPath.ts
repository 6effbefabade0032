/** The way of the vehicle's foot after T-0 as a smooth path, and what a flight looks like from the ground below it. */

import { fromEarthFixed, fromHorizon, horizonAxes, toEarthFixed } from "../base/earthFixed.ts";
import {
  intervalOf,
  type MonotoneCubic,
  makeMonotoneCubic,
  slopeIn,
  steepestIn,
  valueIn,
} from "../base/monotoneCubic.ts";
import type { Place } from "../base/place.ts";
import { refuse, requireNumber } from "../base/problem.ts";
import { atan2Deg, smoothStep } from "../base/units.ts";
import { add, dot, norm, scale, subtract } from "../base/vector.ts";
import type { AscentPoint } from "../site/types.ts";
import { requirePlace } from "../sky/ephemeris.ts";
import { groundDistanceM } from "./downrange.ts";

/** East, north, up; written to. */
export type Triple = [number, number, number];

/**
 * Metres and metres per second in the pad's tangent plane, by seconds after T-0. Before `fromS` the vehicle stands where
 * the path begins, after `toS` it is held where it ends. Both calls are quick and leave nothing behind.
 */
export interface AscentPath {
  readonly fromS: number;
  readonly toS: number;
  positionInto(tPlusS: number, out: Triple): void;
  velocityInto(tPlusS: number, out: Triple): void;
  /** A speed in m/s that is not passed between two times. */
  boundMS(fromS: number, toS: number): number;
}

/** Times and places that a table may hold, either side of zero. */
const MOST_S = 100_000;
const MOST_M = 100_000_000;

/** Throws PadstopError: E_TYPE for no list, E_EMPTY under two points, E_RANGE for what is no finite number, E_ORDER for times that do not ascend. */
export function makeAscentPath(points: readonly AscentPoint[]): AscentPath {
  requirePoints(points);
  const knots = Float64Array.from(points, ({ tPlusS }) => tPlusS);
  const east = makeMonotoneCubic(
    knots,
    Float64Array.from(points, ({ eastM }) => eastM),
  );
  const north = makeMonotoneCubic(
    knots,
    Float64Array.from(points, ({ northM }) => northM),
  );
  const up = makeMonotoneCubic(
    knots,
    Float64Array.from(points, ({ upM }) => upM),
  );
  return pathOf(east, north, up);
}

function requirePoints(points: readonly AscentPoint[]): void {
  if (!Array.isArray(points)) refuse("E_TYPE", "ascent", typeof points, "a list of points");
  if (points.length < 2) refuse("E_EMPTY", "ascent", `${points.length} points`, "two points or more");
  points.forEach((point, i) => {
    if (typeof point !== "object" || point === null)
      refuse("E_TYPE", `ascent[${i}]`, point, "{ tPlusS, eastM, northM, upM }");
    // The key is put together only where it is told: tables are long.
    if (!isWithin(point.tPlusS, MOST_S))
      requireNumber(`ascent[${i}].tPlusS`, point.tPlusS, -MOST_S, MOST_S, "s");
    for (const key of ["eastM", "northM", "upM"] as const)
      if (!isWithin(point[key], MOST_M))
        requireNumber(`ascent[${i}].${key}`, point[key], -MOST_M, MOST_M, "m");
    const beforeS = i === 0 ? null : points[i - 1]!.tPlusS;
    if (beforeS !== null && point.tPlusS <= beforeS)
      refuse("E_ORDER", `ascent[${i}].tPlusS`, point.tPlusS, `later than the row before, above ${beforeS} s`);
  });
}

const isWithin = (value: number, most: number): boolean =>
  typeof value === "number" && Math.abs(value) <= most;

function pathOf(east: MonotoneCubic, north: MonotoneCubic, up: MonotoneCubic): AscentPath {
  const { knots } = east;
  const bounds = Float64Array.from({ length: knots.length - 1 }, (_, i) =>
    Math.hypot(steepestIn(east, i), steepestIn(north, i), steepestIn(up, i)),
  );
  let hint = 0;
  return {
    fromS: knots[0]!,
    toS: knots[knots.length - 1]!,
    positionInto: (tPlusS, out) => {
      hint = intervalOf(knots, tPlusS, hint);
      out[0] = valueIn(east, hint, tPlusS);
      out[1] = valueIn(north, hint, tPlusS);
      out[2] = valueIn(up, hint, tPlusS);
    },
    velocityInto: (tPlusS, out) => {
      hint = intervalOf(knots, tPlusS, hint);
      out[0] = slopeIn(east, hint, tPlusS);
      out[1] = slopeIn(north, hint, tPlusS);
      out[2] = slopeIn(up, hint, tPlusS);
    },
    boundMS: (fromS, toS) => {
      const last = intervalOf(knots, toS, hint);
      let most = 0;
      for (let i = Math.max(0, intervalOf(knots, fromS, hint)); i <= last && i < bounds.length; i++)
        if (bounds[i]! > most) most = bounds[i]!;
      return most;
    },
  };
}

export interface Flight {
  /** Over the ground: the Earth's turn is not in it. */
  readonly speedMS: number;
  /** Of the velocity above the horizontal below the vehicle (the ellipsoid's), -90..90; null at rest. */
  readonly flightPathDeg: number | null;
  /** Above the height of the pad. */
  readonly altitudeM: number;
  /** From the pad along the ground (the geodesic of the ellipsoid). */
  readonly groundDistanceM: number;
  readonly place: Place;
}

/** The flight at a time after T-0; `pad` is the place where the path has its zero. Throws PadstopError for a place or time out of range. */
export function flightAt(path: AscentPath, pad: Place, tPlusS: number): Flight {
  requirePlace(pad);
  requireNumber("tPlusS", tPlusS, -MOST_S, MOST_S, "s");
  const enu: Triple = [0, 0, 0];
  const axes = horizonAxes(pad);
  path.positionInto(tPlusS, enu);
  const place = fromEarthFixed(add(toEarthFixed(pad), fromHorizon(axes, enu)));
  path.velocityInto(tPlusS, enu);
  const velocity = fromHorizon(axes, enu);
  const { up } = horizonAxes(place);
  const rising = dot(velocity, up);
  const speedMS = norm(velocity);
  return {
    speedMS,
    flightPathDeg: speedMS === 0 ? null : atan2Deg(rising, norm(subtract(velocity, scale(up, rising)))),
    altitudeM: place.heightM - pad.heightM,
    groundDistanceM: groundDistanceM(pad, place),
    place,
  };
}

/** A vehicle slower than the first stands upright; from the second on it points the way it flies (common practice, no source). */
const UPRIGHT_BELOW_MS = 10;
const ALONG_FLIGHT_FROM_MS = 30;

/**
 * The body's axis from foot to nose, a unit vector in the pad's tangent plane: straight up while the vehicle is slow, then
 * along its flight, smoothly between. After the path's end the last direction is kept.
 */
export function bodyAxisInto(path: AscentPath, tPlusS: number, out: Triple): void {
  path.velocityInto(Math.min(tPlusS, path.toS), out);
  const speedMS = Math.sqrt(dot(out, out));
  const share = smoothStep((speedMS - UPRIGHT_BELOW_MS) / (ALONG_FLIGHT_FROM_MS - UPRIGHT_BELOW_MS));
  const along = share === 0 ? 0 : share / speedMS;
  out[0] *= along;
  out[1] *= along;
  out[2] = out[2] * along + 1 - share;
  const length = Math.sqrt(dot(out, out));
  // Zero only for a fall straight down at the speed half way between.
  if (length === 0) out[2] = 1;
  else for (let i = 0; i < 3; i++) out[i]! /= length;
}
