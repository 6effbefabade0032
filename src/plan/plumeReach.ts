/**
 * How much of the plume's light falls on what a camera sees, lx per cd/m2 of the plume.
 *
 * A camera that keeps the plume takes its picture after ignition: body and deck stand in the plume's light then, and the
 * setting is for that moment. A camera that does not is set for the moment before.
 */

import {
  makePlumeLamp,
  type PlumeLamp,
  plumeOnBodyLxPerCdM2,
  plumeOnDeckLxPerCdM2,
} from "../light/plumeLamp.ts";
import type { Stretch } from "../light/shadedBody.ts";
import type { Vehicle } from "../site/types.ts";

export interface PlumeReach {
  /** Farthest from the fire and nearest to it on the stretch of the body that is seen, and averaged over it. */
  readonly bodyDark: number;
  readonly bodyBright: number;
  readonly bodyMean: number;
  /** On the deck one body's height out from the axis, and at the edge of the fire. */
  readonly deckDark: number;
  readonly deckBright: number;
}

/** Luminance of body and deck for each cd/m2 of the plume. */
export interface PlumeGain {
  readonly bodyDark: number;
  readonly bodyBright: number;
  readonly deckDark: number;
  readonly deckBright: number;
}

/** Matt surfaces. */
export function plumeGainOf(reach: PlumeReach, bodyReflectance: number, deckReflectance: number): PlumeGain {
  const [bodyPerLx, deckPerLx] = [bodyReflectance / Math.PI, deckReflectance / Math.PI];
  return {
    bodyDark: bodyPerLx * reach.bodyDark,
    bodyBright: bodyPerLx * reach.bodyBright,
    deckDark: deckPerLx * reach.deckDark,
    deckBright: deckPerLx * reach.deckBright,
  };
}

/** Points along the body for the average. */
const POINTS = 32;

/** `stretch` in metres above the pad datum. Null without a plume of known length and width. */
export function plumeReachOf(vehicle: Vehicle, { fromM, toM }: Stretch): PlumeReach | null {
  const lamp = makePlumeLamp(vehicle);
  if (lamp === null) return null;
  const bodyAt = (share: number): number =>
    plumeOnBodyLxPerCdM2(lamp, fromM + share * (toM - fromM) - vehicle.baseM);
  const along = Array.from({ length: POINTS }, (_, i) => bodyAt((i + 0.5) / POINTS));
  const ends = [bodyAt(0), bodyAt(1), ...along];
  const deck = [edgeOfFireM(lamp), vehicle.heightM].map((outM) => plumeOnDeckLxPerCdM2(lamp, outM));
  return {
    bodyDark: Math.min(...ends),
    bodyBright: Math.max(...ends),
    bodyMean: along.reduce((sum, one) => sum + one, 0) / POINTS,
    deckDark: Math.min(...deck),
    deckBright: Math.max(...deck),
  };
}

const edgeOfFireM = ({ radiusM, bodyRadiusM }: PlumeLamp): number => Math.max(radiusM, bodyRadiusM);
