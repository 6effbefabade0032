/**
 * Luminance of the sky in a direction: CIE standard general sky (ISO 15469:2004 / CIE S 011/E:2003), scaled so that
 * it gives the sky's illuminance on the horizontal.
 */

import { clamp, mix, RAD_PER_DEG } from "../base/units.ts";
import { dot, type Vec3 } from "../base/vector.ts";
import type { SkyState } from "../site/types.ts";

/** Gradation a, b and indicatrix c, d, e of a standard sky type. */
export interface GeneralSky {
  readonly type: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  /** exp(d pi / 2) and phi(0) = 1 + a exp(b): asked for with every direction. */
  readonly atRightAngle: number;
  readonly atZenith: number;
}

const gradations = [
  [4, -0.7],
  [1.1, -0.8],
  [0, -1],
  [-1, -0.55],
  [-1, -0.32],
  [-1, -0.15],
] as const;
const indicatrices = [
  [0, -1, 0],
  [2, -1.5, 0.15],
  [5, -2.5, 0.3],
  [10, -3, 0.45],
  [16, -3, 0.3],
  [24, -2.8, 0.15],
] as const;
/** Gradation group (1..6) and indicatrix (1..6) of the types 1..15. */
const codes: readonly (readonly [number, number])[] = [
  [1, 1],
  [1, 2],
  [2, 1],
  [2, 2],
  [3, 1],
  [3, 2],
  [3, 3],
  [3, 4],
  [4, 2],
  [4, 3],
  [4, 4],
  [5, 4],
  [5, 5],
  [6, 5],
  [6, 6],
];

/** The fifteen types of the standard, in order. */
export const GENERAL_SKIES: readonly GeneralSky[] = codes.map(([gradation, indicatrix], index) => {
  const [a, b] = gradations[gradation - 1]!;
  const [c, d, e] = indicatrices[indicatrix - 1]!;
  return {
    type: index + 1,
    a,
    b,
    c,
    d,
    e,
    atRightAngle: Math.exp((d * Math.PI) / 2),
    atZenith: 1 + a * Math.exp(b),
  };
});

/** Our reading of the states: clear 12 (standard clear), haze 13 (polluted), bright cloud 9 (sun obscured), overcast 1. */
const TYPE_OF_STATE: Readonly<Record<SkyState, number>> = {
  clear: 12,
  haze: 13,
  "bright-cloud": 9,
  overcast: 1,
};

export const generalSkyOf = (state: SkyState): GeneralSky => GENERAL_SKIES[TYPE_OF_STATE[state] - 1]!;

/** phi(Z) by the cosine of the zenith distance, 0..1. */
export function gradation(sky: GeneralSky, cosZenith: number): number {
  return cosZenith <= 0 ? 1 : 1 + sky.a * Math.exp(sky.b / cosZenith);
}

/** f(chi) by the cosine of the angle to the sun. */
export function indicatrix(sky: GeneralSky, cosToSun: number): number {
  if (sky.c === 0 && sky.e === 0) return 1;
  const chiRad = Math.acos(Math.min(1, Math.max(-1, cosToSun)));
  return 1 + sky.c * (Math.exp(sky.d * chiRad) - sky.atRightAngle) + sky.e * cosToSun * cosToSun;
}

/** Luminance relative to the zenith's; both directions are unit vectors (east, north, up) at or above the horizontal. */
export function relativeLuminance(sky: GeneralSky, direction: Vec3, sun: Vec3): number {
  return (
    (gradation(sky, direction[2]) * indicatrix(sky, dot(direction, sun))) /
    (sky.atZenith * indicatrix(sky, sun[2]))
  );
}

/** 12-point Gauss-Legendre nodes and weights on -1..1, the positive half (Abramowitz & Stegun, table 25.4). */
const GAUSS_12 = [
  [0.1252334085114689, 0.2491470458134028],
  [0.3678314989981802, 0.2334925365383548],
  [0.5873179542866175, 0.2031674267230659],
  [0.7699026741943047, 0.1600783285433462],
  [0.9041172563704749, 0.1069393259953184],
  [0.9815606342467192, 0.0471753363865118],
] as const;
const AZIMUTH_STEPS = 24;

/**
 * Zenith luminance over horizontal diffuse illuminance, 1/sr, for a sun elevation in degrees: the inverse of the
 * relative luminance integrated over the sky. Gauss-Legendre in zenith distance, the trapezoid rule around; within
 * 0.5 % of a fine integration for every type.
 */
export function zenithShare(sky: GeneralSky, sunElevationDeg: number): number {
  const sunRad = Math.max(0, sunElevationDeg) * RAD_PER_DEG;
  const sun: Vec3 = [Math.cos(sunRad), 0, Math.sin(sunRad)];
  let sum = 0;
  for (const [node, weight] of GAUSS_12) {
    for (const x of [node, -node]) {
      const zenithRad = (Math.PI / 4) * (1 + x);
      const sine = Math.sin(zenithRad);
      const cosine = Math.cos(zenithRad);
      let ring = 0;
      for (let i = 0; i < AZIMUTH_STEPS; i++) {
        const azimuthRad = (Math.PI * (i + 0.5)) / AZIMUTH_STEPS;
        ring += relativeLuminance(
          sky,
          [sine * Math.cos(azimuthRad), sine * Math.sin(azimuthRad), cosine],
          sun,
        );
      }
      sum += weight * sine * cosine * (ring / AZIMUTH_STEPS);
    }
  }
  return 1 / (2 * Math.PI * (Math.PI / 4) * sum);
}

/**
 * `zenithShare` of one type for many suns: integrated at whole degrees of elevation as they are asked for, straight in
 * the logarithm between them (within 0.1 %).
 */
export function zenithShares(sky: GeneralSky): (sunElevationDeg: number) => number {
  const logAt = new Float64Array(91).fill(Number.NaN);
  const logShare = (degree: number): number => {
    if (Number.isNaN(logAt[degree])) logAt[degree] = Math.log(zenithShare(sky, degree));
    return logAt[degree]!;
  };
  return (sunElevationDeg) => {
    const held = clamp(sunElevationDeg, 0, 90);
    const below = Math.min(89, Math.floor(held));
    return Math.exp(mix(logShare(below), logShare(below + 1), held - below));
  };
}

/**
 * What the two functions of a standard sky are multiplied by for one sun and one diffuse illuminance, cd/m2. `heldUp` is
 * the sine of the sun's elevation, 0 with the sun down: then the brightest part stands at the horizon, above the sun.
 */
export const skyScaleCdM2 = (
  sky: GeneralSky,
  zenithShareAt: (sunElevationDeg: number) => number,
  heldUp: number,
  sunElevationDeg: number,
  diffuseHorizontalLx: number,
): number =>
  (diffuseHorizontalLx * zenithShareAt(sunElevationDeg)) / (sky.atZenith * indicatrix(sky, heldUp));

/** Sky luminance as a function of direction for one sun and one diffuse illuminance; directions below the horizon are taken at it. */
export function skyLuminanceOf(
  state: SkyState,
  zenithShareAt: (sunElevationDeg: number) => number,
  sun: Vec3,
  sunElevationDeg: number,
  diffuseHorizontalLx: number,
): (direction: Vec3) => number {
  const sky = generalSkyOf(state);
  const level = Math.hypot(sun[0], sun[1]);
  const held: Vec3 = sun[2] >= 0 || level === 0 ? sun : [sun[0] / level, sun[1] / level, 0];
  const scaleCdM2 = skyScaleCdM2(sky, zenithShareAt, held[2], sunElevationDeg, diffuseHorizontalLx);
  return (direction) => {
    const seen = atOrAboveHorizon(direction);
    return scaleCdM2 * gradation(sky, seen[2]) * indicatrix(sky, dot(seen, held));
  };
}

export function atOrAboveHorizon(direction: Vec3): Vec3 {
  if (direction[2] >= 0) return direction;
  const level = Math.hypot(direction[0], direction[1]);
  return level === 0 ? [1, 0, 0] : [direction[0] / level, direction[1] / level, 0];
}
