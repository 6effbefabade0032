/**
 * The air between a camera and a vehicle far off: what it takes of the vehicle's light, and what it puts before it.
 *
 * The daylight's own air (standard atmosphere, extinction of the clear practice) and haze in a layer, along a straight
 * line over a round Earth. One extinction for all colours: blue loses more, red less. Clouds are not counted.
 */

import {
  CLEAR_EXTINCTION_PER_AIR_MASS,
  MEAN_EARTH_RADIUS_M,
  STANDARD_PRESSURE_HPA,
} from "../base/constants.ts";
import { sinDeg } from "../base/units.ts";
import { hazeExcess } from "./aloft.ts";
import { type Sky, skyState } from "./daylight.ts";
import { AIR_TOP_M, airShareAbove, airSharePerM, HAZE_SCALE_HEIGHT_M } from "./thinAir.ts";

/** The air of a site under one sky, ready to be looked through. */
export interface SightAir {
  /** Extinction of all the air above sea level, straight up; and of the haze above the ground. */
  readonly airDepth: number;
  readonly hazeDepth: number;
  /** Where the haze lies. */
  readonly groundHeightM: number;
}

/** Sun at which the haze is told from the clear sky: high enough for both models. */
const HAZE_SUN_DEG = 30;

/**
 * The air over a ground of a given height and pressure. Under bright cloud and overcast that of a clear sky: for a line that
 * stays below the clouds.
 */
export function sightAir(sky: Sky, groundHeightM: number, groundPressureHPa: number): SightAir {
  const groundShare = airShareAbove(groundHeightM);
  const overSeaLevel = groundPressureHPa / STANDARD_PRESSURE_HPA / groundShare;
  const ground = {
    airlessElevationDeg: HAZE_SUN_DEG,
    apparentElevationDeg: HAZE_SUN_DEG,
    orbitalFactor: 1,
    pressureHPa: groundPressureHPa,
    heightM: groundHeightM,
  };
  const excess = skyState(sky) === "haze" ? hazeExcess(ground, sky) : 0;
  return {
    // A haze thinner than the clear sky is thinner at every height.
    airDepth: CLEAR_EXTINCTION_PER_AIR_MASS * overSeaLevel + Math.min(0, excess) / groundShare,
    hazeDepth: Math.max(0, excess),
    groundHeightM,
  };
}

/** A line of sight, straight. */
export interface SightOut {
  /** Above the ellipsoid. */
  readonly cameraHeightM: number;
  /** At the camera, -90..90. */
  readonly elevationDeg: number;
  /** To the vehicle, 0 or more. */
  readonly rangeM: number;
}

export interface AirBetween {
  /** Share of the vehicle's light that arrives, 0..1. */
  readonly transmittance: number;
  /** Share of the luminance of the sky on that line that lies before the vehicle, 0..1 (light scattered once, the same all along). */
  readonly skyShare: number;
}

export function airBetween(line: SightOut, air: SightAir): AirBetween {
  const endM = throughAirM(line);
  const rangeM = Math.min(line.rangeM, endM);
  const before = depthAlong(line, air, 0, rangeM);
  const all = before + depthAlong(line, air, rangeM, endM);
  return {
    transmittance: Math.exp(-before),
    // 1 - exp(-x) of both, exact for little air.
    skyShare: all > 0 ? Math.expm1(-before) / Math.expm1(-all) : 0,
  };
}

/** Length of the line until it leaves the air for good; 0 when it never meets it. */
function throughAirM({ cameraHeightM, elevationDeg }: SightOut): number {
  const cameraM = MEAN_EARTH_RADIUS_M + cameraHeightM;
  const upM = cameraM * sinDeg(elevationDeg);
  const square =
    upM * upM + (AIR_TOP_M - cameraHeightM) * (2 * MEAN_EARTH_RADIUS_M + AIR_TOP_M + cameraHeightM);
  return square > 0 ? Math.max(0, Math.sqrt(square) - upM) : 0;
}

/** Points and weights of Gauss and Legendre on 0..1, squared so that they crowd at the near end, where the air is. */
const POINTS = 16;
const AT = new Float64Array(POINTS);
const WEIGHT = new Float64Array(POINTS);
fillPoints();

/** Roots of the Legendre polynomial by Newton's method (Abramowitz & Stegun 25.4.29 and 8.5.3). */
function fillPoints(): void {
  for (let i = 0; i < POINTS; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (POINTS + 0.5));
    let slope = 1;
    for (let turn = 0; turn < 20; turn++) {
      let [before, value] = [1, x];
      for (let n = 2; n <= POINTS; n++)
        [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
      slope = (POINTS * (x * value - before)) / (x * x - 1);
      x -= value / slope;
    }
    const t = (1 + x) / 2;
    AT[i] = t * t;
    WEIGHT[i] = (2 * t) / ((1 - x * x) * slope * slope);
  }
}

/** Extinction between two distances along a line. */
function depthAlong(
  { cameraHeightM, elevationDeg }: SightOut,
  air: SightAir,
  fromM: number,
  toM: number,
): number {
  const lengthM = toM - fromM;
  if (lengthM <= 0) return 0;
  const cameraM = MEAN_EARTH_RADIUS_M + cameraHeightM;
  const sine = sinDeg(elevationDeg);
  const hazePerM = air.hazeDepth / HAZE_SCALE_HEIGHT_M;
  let sum = 0;
  for (let i = 0; i < POINTS; i++) {
    const s = fromM + lengthM * AT[i]!;
    // Law of cosines in the triangle of Earth's centre, camera and point, less its radius without the loss of digits.
    const rise = s * (s + 2 * cameraM * sine);
    const heightM = cameraHeightM + rise / (Math.sqrt(cameraM * cameraM + rise) + cameraM);
    let perM = air.airDepth * airSharePerM(heightM);
    if (hazePerM > 0) perM += hazePerM * hazeShareAt(heightM - air.groundHeightM);
    sum += WEIGHT[i]! * perM;
  }
  return lengthM * sum;
}

/** Under a ground some way up it is held, as the air is. */
const HAZE_FLOOR_M = -500;
const hazeShareAt = (aboveM: number): number =>
  Math.exp(-Math.max(HAZE_FLOOR_M, aboveM) / HAZE_SCALE_HEIGHT_M);
