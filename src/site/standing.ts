/** Whether a spot lies inside a structure, in the pad's frame of metres east, north and up. Says nothing of what hides what. */

import { horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import type { Place } from "../base/place.ts";
import { atan2Deg, cosDeg, sinDeg, wrap360 } from "../base/units.ts";
import { subtract, type Vec3 } from "../base/vector.ts";
import type { Spot, Structure } from "./types.ts";

/** A spot less deep than this stands on the wall or the roof, not inside. */
const WALL_M = 0.001;

/** The shortest way out of a structure. */
export interface WayOut {
  readonly metres: number;
  /** A number is the true azimuth of a level way, degrees. */
  readonly towards: "up" | "down" | number;
}

/** Metres east, north and up of the pad datum, in the pad's tangent plane. Exact (IOGP Guidance Note 7-2, method 9837). */
export function spotFromPadM(spot: Spot, pad: Place): Vec3 {
  if (spot.kind === "bearing") {
    return [spot.rangeM * sinDeg(spot.bearingDeg), spot.rangeM * cosDeg(spot.bearingDeg), spot.upM];
  }
  return toHorizon(horizonAxes(pad), subtract(toEarthFixed(spot.place), toEarthFixed(pad)));
}

/**
 * How a spot inside a structure gets out; null when it is outside, up to 1 mm within the border, or the size is not known.
 * Never down out of a structure that stands on the ground.
 */
export function wayOutOf(structure: Structure, spot: Spot, pad: Place): WayOut | null {
  const [east, north, up] = subtract(spotFromPadM(spot, pad), spotFromPadM(structure.at, pad));
  const { baseM, heightM } = structure;
  const ways: WayOut[] = [
    { metres: baseM + heightM - up, towards: "up" },
    { metres: up - baseM, towards: "down" },
    ...levelWays(structure, east, north),
  ];
  if (ways.length < 3 || ways.some(({ metres }) => metres <= WALL_M)) return null;
  return ways
    .filter(({ towards }) => towards !== "down" || baseM > 0)
    .reduce((best, way) => (way.metres < best.metres ? way : best));
}

/** The level ways to the outline, negative where a point lies beyond it; none when the size is not known. */
function levelWays(structure: Structure, east: number, north: number): WayOut[] {
  const { shape, widthM, depthM, diameterM, turnDeg } = structure;
  if (shape === "cylinder") {
    if (diameterM === null) return [];
    return [{ metres: diameterM / 2 - Math.hypot(east, north), towards: wrap360(atan2Deg(east, north)) }];
  }
  if (widthM === null || depthM === null) return [];
  const alongM = east * sinDeg(turnDeg) + north * cosDeg(turnDeg);
  const acrossM = east * cosDeg(turnDeg) - north * sinDeg(turnDeg);
  return [
    { metres: widthM / 2 - Math.abs(alongM), towards: wrap360(turnDeg + (alongM < 0 ? 180 : 0)) },
    { metres: depthM / 2 - Math.abs(acrossM), towards: wrap360(turnDeg + (acrossM < 0 ? 270 : 90)) },
  ];
}
