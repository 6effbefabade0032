/** Where the sun can make flare for a view, told from the sun over the pad without asking the camera's own. */

import { fromHorizon, type HorizonAxes, toHorizon } from "../../base/earthFixed.ts";
import type { Air } from "../../base/place.ts";
import { asinDeg, cosDeg, RAD_PER_DEG } from "../../base/units.ts";
import { angleBetweenDeg, type Vec3 } from "../../base/vector.ts";
import { refractionDeg } from "../../sky/atmosphere.ts";
import { semidiameterDeg } from "../../sky/ephemeris.ts";
import type { LiftedDirection } from "../../sky/sun.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../../sky/sunTrack.ts";
import { halfDiagonalDeg } from "../../view/frame.ts";
import type { Run, SunColumns } from "./sunColumns.ts";
import type { RankView } from "./wellLit.ts";

/** A cone about the axis, in the pad's horizon, that holds every direction from which the sun makes flare. */
export interface FlareCone {
  readonly east: number;
  readonly north: number;
  readonly up: number;
  /** From the axis; the way of the sun between two looks still to be added. */
  readonly radiusDeg: number;
  /** The pad's horizon in the camera's: what turns a direction. */
  readonly turn: { readonly east: Vec3; readonly north: Vec3; readonly up: Vec3 };
  /** The sun over the pad, so turned, lies no farther from the sun that the camera sees: other air, another vertical. */
  readonly slackDeg: number;
  /** Of the camera's vertical against the pad's. */
  readonly tiltDeg: number;
}

/** On the slope of the lift, taken over a short way. */
const SLOPE_MARGIN = 1.2;
/** The sun's disc is never larger. */
const DISC_DEG = 0.28;
/** A direction is lifted most here, and the lift changes fastest just above: below it the lift fades. */
const MOST_LIFTED_DEG = -1;
const JUST_ABOVE_DEG = MOST_LIFTED_DEG + 0.05;

export function flareConeOf(
  { view, axes }: RankView,
  padAxes: HorizonAxes,
  padAir: Air,
  marginDeg: number,
): FlareCone {
  const turn = {
    east: toHorizon(axes, padAxes.east),
    north: toHorizon(axes, padAxes.north),
    up: toHorizon(axes, padAxes.up),
  };
  const [east, north, up] = toHorizon(padAxes, fromHorizon(axes, view.frame.axis));
  const tiltDeg = angleBetweenDeg(axes.up, padAxes.up);
  const padLiftDeg = refractionDeg(MOST_LIFTED_DEG, padAir);
  const liftSlope = (padLiftDeg - refractionDeg(JUST_ABOVE_DEG, padAir)) / (JUST_ABOVE_DEG - MOST_LIFTED_DEG);
  // Another lift at the same elevation; the same lift at another elevation and toward another zenith.
  const slackDeg =
    Math.abs(padLiftDeg - refractionDeg(MOST_LIFTED_DEG, view.air)) +
    tiltDeg * (SLOPE_MARGIN * liftSlope + padLiftDeg * RAD_PER_DEG) +
    1e-6;
  return {
    east,
    north,
    up,
    radiusDeg: halfDiagonalDeg(view.frame.view) + marginDeg + DISC_DEG + slackDeg,
    turn,
    slackDeg,
    tiltDeg,
  };
}

/** A sun seen by a camera, to be written over. */
export interface TurnedSun extends LiftedDirection {
  semidiameterDeg: number;
}

/** The sun over the pad in the camera's horizon. */
export function turnSun({ turn }: FlareCone, sun: SunColumns, index: number, turned: TurnedSun): void {
  const e = sun.east[index]!;
  const n = sun.north[index]!;
  const u = sun.up[index]!;
  const { direction } = turned;
  direction[0] = e * turn.east[0] + n * turn.north[0] + u * turn.up[0];
  direction[1] = e * turn.east[1] + n * turn.north[1] + u * turn.up[1];
  direction[2] = e * turn.east[2] + n * turn.north[2] + u * turn.up[2];
  turned.apparentElevationDeg = asinDeg(direction[2]);
  turned.semidiameterDeg = semidiameterDeg(sun.distanceAu[index]!);
}

/** No part of the disc is seen when its centre is lower than this, airless. */
const DOWN_DEG = 2;
/** T-0s from one look to the next. */
const STRIDE = 16;

/** Stretches of T-0s that hold all those with the sun up and in the cone: strides that cannot be told to miss it. */
export function runsInCone(cone: FlareCone, sun: SunColumns): Run[] {
  const { count, east, north, up, airlessElevationDeg } = sun;
  const strideDeg = STRIDE * sun.longestStepMs * SUN_MAX_RATE_DEG_PER_MS;
  const leastCosine = cosDeg(Math.min(180, cone.radiusDeg + strideDeg));
  const lowestDeg = -(DOWN_DEG + cone.tiltDeg + strideDeg);
  const runs: Run[] = [];
  let from = -1;
  for (let start = 0; start < count; start += STRIDE) {
    const isNear =
      airlessElevationDeg[start]! > lowestDeg &&
      cone.east * east[start]! + cone.north * north[start]! + cone.up * up[start]! >= leastCosine;
    if (isNear && from < 0) from = start;
    if (isNear || from < 0) continue;
    runs.push({ from, to: start });
    from = -1;
  }
  if (from >= 0) runs.push({ from, to: count });
  return runs;
}
