/**
 * A tracker's frame along the ascent: where it points at every T+, and a bound on how fast it turns.
 *
 * The mount turns in azimuth and elevation, so that the picture's horizon stays level (or rolled by the camera's roll);
 * straight overhead it would have to turn round in no time. A mount that cannot follow is not modelled: see
 * `slewRates.ts`.
 */

import type { Knots } from "../base/alongKnots.ts";
import type { Place } from "../base/place.ts";
import { atan2Deg, cosDeg, DEG_PER_RAD, MS_PER_SECOND, sinDeg } from "../base/units.ts";
import { toAzimuthElevation } from "../base/vector.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../sky/sunTrack.ts";
import { type AscentPath, bodyAxisInto } from "./ascentPath.ts";
import { type Frame, makeFrame } from "./frame.ts";
import { carryTo } from "./sightLine.ts";

export interface SweptGate {
  readonly rollDeg: number;
  readonly focalMm: number;
  readonly gateWidthMm: number;
  readonly gateHeightMm: number;
  /** The followed point's place in the picture: share of the gate's height above its middle. */
  readonly offsetShare: number;
}

/** What is followed. */
export interface TrackedTarget {
  readonly pad: Place;
  readonly path: AscentPath;
  /** The vehicle's foot on the pad above the pad datum, and the followed point above the foot, metres. */
  readonly footUpM: number;
  readonly alongM: number;
}

/** Right, axis and up of a frame, (east, north, up) of the camera: nine numbers. */
export type Turn = Float64Array;

export interface SweepFrames extends Knots {
  /** The gate itself: x to the right, y along the axis, z up; the same at every T+. */
  readonly frame: Frame;
  readonly gate: SweptGate;
  /** The turn at every knot, nine numbers each. */
  readonly turns: Float64Array;
  /** The turn at any T+, ms. */
  turnInto(tPlusMs: number, turn: Turn, offset?: number): void;
  /** From the camera to the followed point, metres (east, north, up of the camera). */
  pointInto(tPlusMs: number, pointM: [number, number, number]): void;
}

/** Knots stand no farther apart than this, or as the frame turns by so much between them. */
const LONGEST_STEP_MS = 1000;
const STEP_TURN_DEG = 0.25;
const SHORTEST_STEP_MS = 1;
/** A curved way between two knots is longer than the straight one. */
const CURVED = 1.05;

/** The frames of a camera at `place` from `fromS` to `toS` after T-0. Throws PadstopError for a gate out of range. */
export function makeSweepFrames(
  gate: SweptGate,
  place: Place,
  target: TrackedTarget,
  fromS: number,
  toS: number,
): SweepFrames {
  const frame = makeFrame({ azimuthDeg: 0, elevationDeg: 0, ...gate, rollDeg: 0 });
  const pointInto = pointMaker(place, target);
  const orient = orienter(gate);
  const pointM: [number, number, number] = [0, 0, 0];
  const turnInto = (tPlusMs: number, turn: Turn, offset = 0): void => {
    pointInto(tPlusMs, pointM);
    orient(pointM, turn, offset);
  };
  return {
    frame,
    gate,
    turnInto,
    pointInto,
    ...knotsOf(turnInto, fromS * MS_PER_SECOND, toS * MS_PER_SECOND),
  };
}

/** The followed point seen from the camera. */
function pointMaker(place: Place, { pad, path, footUpM, alongM }: TrackedTarget): SweepFrames["pointInto"] {
  const carry = carryTo(pad, place);
  const origin = carry([0, 0, footUpM]);
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((unitEnu) => {
    const moved = carry([unitEnu[0], unitEnu[1], unitEnu[2] + footUpM]);
    return [moved[0] - origin[0], moved[1] - origin[1], moved[2] - origin[2]] as const;
  });
  const [toEast, toNorth, toUp] = [columns[0]!, columns[1]!, columns[2]!];
  const way: [number, number, number] = [0, 0, 0];
  const axis: [number, number, number] = [0, 0, 1];
  return (tPlusMs, pointM) => {
    const tPlusS = tPlusMs / MS_PER_SECOND;
    path.positionInto(tPlusS, way);
    bodyAxisInto(path, tPlusS, axis);
    const east = way[0] + alongM * axis[0];
    const north = way[1] + alongM * axis[1];
    const up = way[2] + alongM * axis[2];
    for (let k = 0; k < 3; k++) {
      pointM[k] = origin[k]! + toEast[k]! * east + toNorth[k]! * north + toUp[k]! * up;
    }
  };
}

/** Where the axis of such a gate points when it follows a point, metres (east, north, up) from the camera. */
export function axisThrough(
  gate: SweptGate,
  pointM: readonly [number, number, number],
): { azimuthDeg: number; elevationDeg: number } {
  const turn = new Float64Array(TURN_LENGTH);
  orienter(gate)(pointM, turn, 0);
  return toAzimuthElevation([turn[3]!, turn[4]!, turn[5]!]);
}

/**
 * Turns a frame so that a direction (of any length) falls on its place in the picture. With the point at the angle delta
 * from the axis towards the picture's top, rolled by r, the point lies (sin delta sin r, cos delta, sin delta cos r) from
 * the level frame (right, axis, up); its elevation and azimuth give those of the axis.
 */
function orienter({ offsetShare, gateHeightMm, focalMm, rollDeg }: SweptGate) {
  const deltaDeg = atan2Deg(offsetShare * gateHeightMm, focalMm);
  const [sinRoll, cosRoll] = [sinDeg(rollDeg), cosDeg(rollDeg)];
  const aside = sinDeg(deltaDeg) * sinRoll;
  const above = sinDeg(deltaDeg) * cosRoll;
  const ahead = cosDeg(deltaDeg);
  const size = Math.hypot(above, ahead);
  const leadRad = Math.atan2(above, ahead);
  return (pointM: readonly [number, number, number], turn: Turn, at: number): void => {
    const [east, north, up] = pointM;
    const level = Math.sqrt(east * east + north * north);
    const range = Math.sqrt(level * level + up * up);
    let [sinEl, cosEl] = [up / range, level / range];
    let [sinAz, cosAz] = level > 0 ? [east / level, north / level] : [0, 1];
    if (deltaDeg !== 0) {
      const elRad = Math.asin(Math.min(1, Math.max(-1, sinEl / size))) - leadRad;
      sinEl = Math.sin(elRad);
      cosEl = Math.cos(elRad);
      const asideRad = Math.atan2(aside, ahead * cosEl - above * sinEl);
      const [sinAside, cosAside] = [Math.sin(asideRad), Math.cos(asideRad)];
      [sinAz, cosAz] = [sinAz * cosAside - cosAz * sinAside, cosAz * cosAside + sinAz * sinAside];
    }
    const levelUpEast = -sinAz * sinEl;
    const levelUpNorth = -cosAz * sinEl;
    turn[at] = cosAz * cosRoll - levelUpEast * sinRoll;
    turn[at + 1] = -sinAz * cosRoll - levelUpNorth * sinRoll;
    turn[at + 2] = -cosEl * sinRoll;
    turn[at + 3] = cosEl * sinAz;
    turn[at + 4] = cosEl * cosAz;
    turn[at + 5] = sinEl;
    turn[at + 6] = cosAz * sinRoll + levelUpEast * cosRoll;
    turn[at + 7] = -sinAz * sinRoll + levelUpNorth * cosRoll;
    turn[at + 8] = cosEl * cosRoll;
  };
}

/** Numbers of a turn. */
export const TURN_LENGTH = 9;

function knotsOf(
  turnInto: SweepFrames["turnInto"],
  fromMs: number,
  toMs: number,
): Pick<SweepFrames, "atMs" | "way" | "turns"> {
  const times: number[] = [fromMs];
  const made: Turn[] = [];
  const ways: number[] = [0];
  const at = (ms: number): Turn => {
    const turn = new Float64Array(TURN_LENGTH);
    turnInto(ms, turn);
    return turn;
  };
  const add = (a: number, turnA: Turn, b: number, turnB: Turn): void => {
    const angleDeg = turnedDeg(turnA, turnB);
    if (angleDeg > STEP_TURN_DEG && b - a > SHORTEST_STEP_MS) {
      const middle = (a + b) / 2;
      const turnMiddle = at(middle);
      add(a, turnA, middle, turnMiddle);
      add(middle, turnMiddle, b, turnB);
      return;
    }
    times.push(b);
    made.push(turnB);
    ways.push(ways.at(-1)! + CURVED * angleDeg + SUN_MAX_RATE_DEG_PER_MS * (b - a));
  };
  const steps = Math.max(1, Math.ceil((toMs - fromMs) / LONGEST_STEP_MS));
  let before = at(fromMs);
  made.push(before);
  for (let i = 1; i <= steps; i++) {
    const ms = fromMs + ((toMs - fromMs) * i) / steps;
    const next = at(ms);
    add(fromMs + ((toMs - fromMs) * (i - 1)) / steps, before, ms, next);
    before = next;
  }
  const turns = new Float64Array(TURN_LENGTH * made.length);
  for (const [i, turn] of made.entries()) turns.set(turn, TURN_LENGTH * i);
  return { atMs: Float64Array.from(times), way: Float64Array.from(ways), turns };
}

/** Angle between two turns: the squares of their differences add up to 8 sin^2 of half of it. */
function turnedDeg(a: Turn, b: Turn): number {
  let sum = 0;
  for (let i = 0; i < TURN_LENGTH; i++) sum += (a[i]! - b[i]!) ** 2;
  return 2 * Math.asin(Math.min(1, Math.sqrt(sum / 8))) * DEG_PER_RAD;
}

/** A direction (east, north, up of the camera) in the frame of a turn: right, ahead, up of the picture. */
export function intoFrame(
  turn: Float64Array,
  at: number,
  direction: readonly [number, number, number],
  turned: [number, number, number],
): void {
  const [east, north, up] = direction;
  turned[0] = turn[at]! * east + turn[at + 1]! * north + turn[at + 2]! * up;
  turned[1] = turn[at + 3]! * east + turn[at + 4]! * north + turn[at + 5]! * up;
  turned[2] = turn[at + 6]! * east + turn[at + 7]! * north + turn[at + 8]! * up;
}
