/**
 * Clear sky of a given turbidity as illuminance: irradiance by Ineichen & Perez 2002, times the luminous efficacies
 * of Perez et al. 1990. Means; a real hazy sky can be a stop off either way near the sun.
 */

import { EXTRATERRESTRIAL_IRRADIANCE_W_M2 } from "../base/constants.ts";
import { RAD_PER_DEG, sinDeg } from "../base/units.ts";

export interface Illuminances {
  /** On a plane facing the sun, lx. */
  readonly directNormalLx: number;
  /** Of the sky alone on the horizontal, lx. */
  readonly diffuseHorizontalLx: number;
}

/** Water in the column that the efficacies are taken for, cm. */
const PRECIPITABLE_WATER_CM = 2;

export interface TurbidSkyInput {
  /** Above 0. */
  readonly sunElevationDeg: number;
  /** Air mass, already scaled to the pressure. */
  readonly absoluteAirMass: number;
  readonly linkeTurbidity: number;
  readonly heightM: number;
  /** 1 / (distance in au) squared. */
  readonly orbitalFactor: number;
}

export function turbidSky(input: TurbidSkyInput): Illuminances {
  const parts = turbidSkyParts(input);
  return {
    directNormalLx: parts.directNormalWM2 * parts.directLmW,
    diffuseHorizontalLx: parts.diffuseWM2 * parts.diffuseLmW,
  };
}

/** How a turbid sky's light is put together. */
export interface TurbidSkyParts {
  readonly extraterrestrialWM2: number;
  /** The two height factors, exp(-H/8000) and exp(-H/1250). */
  readonly fh1: number;
  readonly fh2: number;
  readonly globalWM2: number;
  readonly directNormalWM2: number;
  readonly diffuseWM2: number;
  readonly directLmW: number;
  readonly diffuseLmW: number;
}

export function turbidSkyParts(input: TurbidSkyInput): TurbidSkyParts {
  const irradiance = irradianceIneichenPerez2002(input);
  if (irradiance.diffuseWM2 <= 0)
    return partsOf(irradiance, { diffuseWM2: 0, directNormalWM2: 0 }, { directLmW: 0, diffuseLmW: 0 });
  const efficacy = efficacyPerez1990(
    irradiance.directNormalWM2,
    irradiance.diffuseWM2,
    90 - input.sunElevationDeg,
    (input.absoluteAirMass * irradiance.diffuseWM2) / irradiance.extraterrestrialWM2,
  );
  return partsOf(irradiance, irradiance, efficacy);
}

/** Written out: copying objects whole is slow, and this is done for every T-0 of a year. */
const partsOf = (
  { extraterrestrialWM2, fh1, fh2, globalWM2 }: Irradiances,
  { directNormalWM2, diffuseWM2 }: Pick<Irradiances, "directNormalWM2" | "diffuseWM2">,
  { directLmW, diffuseLmW }: Pick<TurbidSkyParts, "directLmW" | "diffuseLmW">,
): TurbidSkyParts => ({
  extraterrestrialWM2,
  fh1,
  fh2,
  globalWM2,
  directNormalWM2,
  diffuseWM2,
  directLmW,
  diffuseLmW,
});

type Irradiances = Omit<TurbidSkyParts, "directLmW" | "diffuseLmW">;

/** Ineichen & Perez 2002, Solar Energy 73(3) 151-157. */
function irradianceIneichenPerez2002(input: TurbidSkyInput): Irradiances {
  const { absoluteAirMass: m, linkeTurbidity: turbidity, heightM } = input;
  const i0 = EXTRATERRESTRIAL_IRRADIANCE_W_M2 * input.orbitalFactor;
  const sine = sinDeg(input.sunElevationDeg);
  const fh1 = Math.exp(-heightM / 8000);
  const fh2 = Math.exp(-heightM / 1250);
  const globalWM2 =
    (5.09e-5 * heightM + 0.868) *
    i0 *
    sine *
    Math.exp(-(3.92e-5 * heightM + 0.0387) * m * (fh1 + fh2 * (turbidity - 1)));
  const beamWM2 = i0 * (0.664 + 0.163 / fh1) * Math.exp(-0.09 * m * (turbidity - 1));
  const ceilingWM2 = (globalWM2 * (1 - (0.1 - 0.2 * Math.exp(-turbidity)) / (0.1 + 0.882 / fh1))) / sine;
  const directNormalWM2 = Math.min(beamWM2, ceilingWM2);
  return {
    extraterrestrialWM2: i0,
    fh1,
    fh2,
    globalWM2,
    directNormalWM2,
    diffuseWM2: globalWM2 - directNormalWM2 * sine,
  };
}

/** Perez et al. 1990, Solar Energy 44(5) 271-289, Table 4: a, b, c, d per clearness bin. */
const CLEARNESS_BIN_FROM = [1, 1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2] as const;
const DIFFUSE_COEFFICIENTS = [
  [97.24, -0.46, 12.0, -8.91],
  [107.22, 1.15, 0.59, -3.95],
  [104.97, 2.96, -5.53, -8.77],
  [102.39, 5.59, -13.95, -13.9],
  [100.71, 5.94, -22.75, -23.74],
  [106.42, 3.83, -36.15, -28.83],
  [141.88, 1.9, -53.24, -14.03],
  [152.23, 0.35, -45.27, -7.98],
] as const;
const DIRECT_COEFFICIENTS = [
  [57.2, -4.55, -2.98, 117.12],
  [98.99, -3.46, -1.21, 12.38],
  [109.83, -4.9, -1.71, -8.81],
  [110.34, -5.84, -1.99, -4.56],
  [106.36, -3.97, -1.75, -6.16],
  [107.19, -1.25, -1.51, -26.73],
  [105.75, 0.77, -1.26, -34.44],
  [101.18, 1.58, -1.1, -8.29],
] as const;

/** Luminous efficacies in lm/W; `brightness` is Perez's Delta. */
export function efficacyPerez1990(
  directNormalWM2: number,
  diffuseWM2: number,
  zenithDeg: number,
  brightness: number,
): { directLmW: number; diffuseLmW: number } {
  const zRad = zenithDeg * RAD_PER_DEG;
  const kappa = 1.041 * zRad ** 3;
  const clearness = ((diffuseWM2 + directNormalWM2) / diffuseWM2 + kappa) / (1 + kappa);
  const bin = CLEARNESS_BIN_FROM.findLastIndex((from) => clearness >= from);
  const [a, b, c, d] = DIFFUSE_COEFFICIENTS[Math.max(0, bin)]!;
  const [e, f, g, h] = DIRECT_COEFFICIENTS[Math.max(0, bin)]!;
  return {
    diffuseLmW: a + b * PRECIPITABLE_WATER_CM + c * Math.cos(zRad) + d * Math.log(brightness),
    directLmW: Math.max(0, e + f * PRECIPITABLE_WATER_CM + g * Math.exp(5.73 * zRad - 5) + h * brightness),
  };
}
