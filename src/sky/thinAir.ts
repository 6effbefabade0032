/**
 * How much of the air is left above a height: the standard atmosphere by its layers, from the ground to space.
 *
 * A mean over year and latitude: at 20 to 50 km real air is some 10 to 30 % more or less (from memory), which is
 * nothing to the light of a vehicle that has 95 % of the air below it.
 */

import {
  DRY_AIR_GAS_CONSTANT_J_KG_K,
  GEOPOTENTIAL_RADIUS_M,
  STANDARD_GRAVITY_M_S2,
  STANDARD_LAYERS,
  STANDARD_TEMPERATURE_K,
} from "../base/constants.ts";

/** Scale height of the haze: it falls off by e in this, m (Ineichen & Perez 2002, Solar Energy 73(3) 151-157, fh2). */
export const HAZE_SCALE_HEIGHT_M = 1250;

/** Held below this, as the troposphere of the plan is. */
const LOWEST_M = -500;
/** Geometric heights between which the air fades out instead: the molecules part above. */
const LAYERED_TOP_M = 84_000;
/** No air from here on, m. */
export const AIR_TOP_M = 120_000;

/** g0 / R, K/m: temperature over this is a scale height. */
const WEIGHT_K_PER_M = STANDARD_GRAVITY_M_S2 / DRY_AIR_GAS_CONSTANT_J_KG_K;

interface Layer {
  readonly footM: number;
  readonly lapseKPerM: number;
  readonly footK: number;
  /** Pressure at its foot over that at sea level. */
  readonly footShare: number;
}

/** ISO 2533:1975, 2.7: pressure over that at the layer's foot, `aboveM` geopotential metres higher. */
const shareInLayer = (footK: number, lapseKPerM: number, aboveM: number): number =>
  lapseKPerM === 0
    ? Math.exp((-WEIGHT_K_PER_M * aboveM) / footK)
    : (footK / (footK + lapseKPerM * aboveM)) ** (WEIGHT_K_PER_M / lapseKPerM);

const LAYERS: readonly Layer[] = stackedLayers();

function stackedLayers(): Layer[] {
  const layers: Layer[] = [];
  for (const [footM, lapseKPerM] of STANDARD_LAYERS) {
    const below = layers.at(-1);
    const thickM = below === undefined ? 0 : footM - below.footM;
    layers.push({
      footM,
      lapseKPerM,
      footK: below === undefined ? STANDARD_TEMPERATURE_K : below.footK + below.lapseKPerM * thickM,
      footShare:
        below === undefined ? 1 : below.footShare * shareInLayer(below.footK, below.lapseKPerM, thickM),
    });
  }
  return layers;
}

function layerAt(geopotentialM: number): Layer {
  let i = LAYERS.length - 1;
  while (i > 0 && geopotentialM < LAYERS[i]!.footM) i--;
  return LAYERS[i]!;
}

/** ISO 2533:1975, 2.3. */
const geopotentialM = (heightM: number): number =>
  (GEOPOTENTIAL_RADIUS_M * heightM) / (GEOPOTENTIAL_RADIUS_M + heightM);

/** Geometric metres in which the pressure falls by e: R T / g at that height. */
function scaleHeightM(heightM: number): number {
  const geopotential = geopotentialM(heightM);
  const { footM, footK, lapseKPerM } = layerAt(geopotential);
  const weaker = (GEOPOTENTIAL_RADIUS_M + heightM) / GEOPOTENTIAL_RADIUS_M;
  return ((footK + lapseKPerM * (geopotential - footM)) / WEIGHT_K_PER_M) * weaker * weaker;
}

function layeredShare(heightM: number): number {
  const geopotential = geopotentialM(heightM);
  const { footM, footK, lapseKPerM, footShare } = layerAt(geopotential);
  return footShare * shareInLayer(footK, lapseKPerM, geopotential - footM);
}

/** The last of the air: falls on as at the top of the layers, less what would be left at its end, so that it ends in 0. */
const FADING_SCALE_M = scaleHeightM(LAYERED_TOP_M);
const FADING_REST = Math.exp((LAYERED_TOP_M - AIR_TOP_M) / FADING_SCALE_M);
const FADING_FACTOR = layeredShare(LAYERED_TOP_M) / (1 - FADING_REST);

/**
 * Pressure at a geometric height in metres over that at sea level: the share of the air that is above. A little over 1
 * below sea level, held under -500 m; by layers up to 84 km, falling on to 0 at 120 km. Never rises with height.
 */
export function airShareAbove(heightM: number): number {
  if (heightM >= AIR_TOP_M) return 0;
  if (heightM > LAYERED_TOP_M)
    return FADING_FACTOR * (Math.exp((LAYERED_TOP_M - heightM) / FADING_SCALE_M) - FADING_REST);
  return layeredShare(Math.max(LOWEST_M, heightM));
}

/** Share of the air over sea level in each metre of height (the fall of `airShareAbove`), 1/m; held under -500 m, 0 from 120 km on. */
export function airSharePerM(heightM: number): number {
  if (heightM >= AIR_TOP_M) return 0;
  if (heightM > LAYERED_TOP_M)
    return (FADING_FACTOR * Math.exp((LAYERED_TOP_M - heightM) / FADING_SCALE_M)) / FADING_SCALE_M;
  const heldM = Math.max(LOWEST_M, heightM);
  return layeredShare(heldM) / scaleHeightM(heldM);
}
