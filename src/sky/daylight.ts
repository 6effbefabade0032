/**
 * Sun and sky as illuminances under a sky state, from high sun to night (no moon here).
 *
 * Above 5 degrees the practice or the turbidity model of the state. Below, the sum on the horizontal passes
 * without a step into the natural-illuminance polynomials times what the state lets through at sunset. Means: the
 * practice itself warns that an instant may be half or twice the mean (a stop either way).
 */

import {
  CLEAR_EXTINCTION_PER_AIR_MASS,
  EXTRATERRESTRIAL_ILLUMINANCE_LX,
  NIGHT_SKY_LX,
  RISE_SET_ELEVATION_DEG,
  STANDARD_PRESSURE_HPA,
} from "../base/constants.ts";
import { refuse, requireNumber } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { clamp, sinDeg, smoothStep } from "../base/units.ts";
import { SKY_STATES, type SkyState } from "../site/types.ts";
import { airMassKastenYoung1989 } from "./atmosphere.ts";
import { type Illuminances, type TurbidSkyInput, turbidSky } from "./turbidSky.ts";
import { sunIlluminanceLx } from "./twilight.ts";

/** A sky state, or haze of a given Linke turbidity (2 very clear .. 10 thick). */
export type Sky = SkyState | { readonly state: "haze"; readonly linkeTurbidity: number };

/** Turbidity of `haze` when none is given. */
const HAZE_LINKE_TURBIDITY = 6;

export const skyState = (sky: Sky): SkyState => (typeof sky === "string" ? sky : sky.state);
/** As the user writes it: "clear", "haze", "haze:4.5". */
export const skyName = (sky: Sky): string => (typeof sky === "string" ? sky : `haze:${sky.linkeTurbidity}`);

/** Where the models for a high sun end. */
export const LOW_SUN_DEG = 5;
/** Where twilight alone rules: the disc's upper limb at the horizon. */
const SUN_GONE_DEG = RISE_SET_ELEVATION_DEG;
/** Nominal semidiameter for the share of the disc above the horizon. */
const DISC_RADIUS_DEG = 0.2666;

/**
 * Share of the clear twilight that a state lets through at sunset and below: thin veil 1/2, average cloud 1/3, dark
 * stratus 1/10 (USNO Circular 171, 1987, sky conditions; 400 lx against 40 lx at sunset in general tables).
 */
const TWILIGHT_SHARE: Readonly<Record<SkyState, number>> = {
  clear: 1,
  haze: 1 / 2,
  "bright-cloud": 1 / 3,
  overcast: 1 / 10,
};

/** What the light passes through; every part has its standard value in `daylight`. */
export interface DaylightInput {
  readonly airlessElevationDeg: number;
  readonly apparentElevationDeg: number;
  /** 1 / (distance in au) squared. */
  readonly orbitalFactor: number;
  readonly pressureHPa: number;
  readonly heightM: number;
}

/**
 * Direct sun on a plane facing it and sky light on the horizontal, lx, for a sun elevation of -90..90 degrees
 * (refraction is not added), at sea level, standard pressure, sun at 1 au. Throws PadstopError out of range.
 */
export function daylight(sunElevationDeg: number, sky: Sky): Illuminances {
  requireNumber("sunElevationDeg", sunElevationDeg, -90, 90, "degrees");
  return daylightThrough(
    {
      airlessElevationDeg: sunElevationDeg,
      apparentElevationDeg: sunElevationDeg,
      orbitalFactor: 1,
      pressureHPa: STANDARD_PRESSURE_HPA,
      heightM: 0,
    },
    requireSky(sky),
  );
}

/** `sky` when it is one; refuses others naming the states. */
export function requireSky(sky: Sky): Sky {
  const state: unknown = typeof sky === "string" ? sky : sky?.state;
  if (!SKY_STATES.includes(state as SkyState)) refuse("E_CHOICE", "sky", state, SKY_STATES.join(", "));
  if (typeof sky !== "string")
    requireNumber("linkeTurbidity", sky.linkeTurbidity, 1, 12, "(Linke turbidity)");
  return sky;
}

/** As `daylight`, with the day's distance, the site's air and height, and both elevations. */
export function daylightThrough(input: DaylightInput, sky: Sky): Illuminances {
  if (input.apparentElevationDeg >= LOW_SUN_DEG) return highSun(input, sky);
  if (isSunGone(input)) return { directNormalLx: 0, diffuseHorizontalLx: goneSunLx(input, sky) };
  const { directNormalLx, totalLx } = lowSunParts(input, sky);
  const directHorizontalLx = directNormalLx * Math.max(0, sinDeg(input.apparentElevationDeg));
  // Through very thin air the beam alone would fill the sum; a sky is never black by day.
  return {
    directNormalLx,
    diffuseHorizontalLx: Math.max(LEAST_SKY_SHARE * totalLx, totalLx - directHorizontalLx),
  };
}

/** No part of the disc is up. */
export const isSunGone = (input: Pick<DaylightInput, "apparentElevationDeg">): boolean =>
  input.apparentElevationDeg <= SUN_GONE_DEG;

/** Sky on the horizontal then, lx. What `lowSunParts` comes to: most hours of a year, so without its detour over 5 degrees. */
export const goneSunLx = (input: DaylightInput, sky: Sky): number =>
  sunIlluminanceLx(input.airlessElevationDeg) * TWILIGHT_SHARE[skyState(sky)] + NIGHT_SKY_LX;

/** Least share of the light on the horizontal that comes from the sky, with the sun below 5 degrees. */
const LEAST_SKY_SHARE = 0.1;

/** How the light of a sun below 5 degrees is put together. */
export interface LowSunParts {
  /** The state's beam, times the share of the disc above the horizon. */
  readonly directNormalLx: number;
  /** 1 at 5 degrees, 0 when the sun is gone. */
  readonly weight: number;
  /** Elevation at which the natural light is taken: apparent x weight + airless x (1 - weight). */
  readonly naturalElevationDeg: number;
  /** Natural illuminance under a clear sky, lx. */
  readonly naturalLx: number;
  /** Of the natural illuminance, by the state's own model at 5 degrees. */
  readonly shareAtFive: number;
  /** Of the natural illuminance, at sunset and below. */
  readonly shareAtSunset: number;
  /** On the horizontal: natural x shareAtFive^weight x shareAtSunset^(1 - weight), and the night sky. */
  readonly totalLx: number;
}

export function lowSunParts(input: DaylightInput, sky: Sky): LowSunParts {
  const h = input.apparentElevationDeg;
  const edge = highSun(
    {
      airlessElevationDeg: LOW_SUN_DEG,
      apparentElevationDeg: LOW_SUN_DEG,
      orbitalFactor: input.orbitalFactor,
      pressureHPa: input.pressureHPa,
      heightM: input.heightM,
    },
    sky,
  );
  const edgeTotalLx = edge.diffuseHorizontalLx + edge.directNormalLx * sinDeg(LOW_SUN_DEG);
  // In logarithms, so that neither end dominates: all of the state's own level at 5 degrees, none when the sun is gone.
  // Refraction is taken off the upper end with the same weight, or the blend would step where the two scales meet.
  const weight = smoothStep((h - SUN_GONE_DEG) / (LOW_SUN_DEG - SUN_GONE_DEG));
  const naturalElevationDeg = weight * h + (1 - weight) * input.airlessElevationDeg;
  const naturalLx = sunIlluminanceLx(naturalElevationDeg);
  const shareAtFive = edgeTotalLx / sunIlluminanceLx(LOW_SUN_DEG);
  const shareAtSunset = TWILIGHT_SHARE[skyState(sky)];
  const share = shareAtFive ** weight * shareAtSunset ** (1 - weight);
  return {
    directNormalLx: beamLx(input, sky) * discShare(h),
    weight,
    naturalElevationDeg,
    naturalLx,
    shareAtFive,
    shareAtSunset,
    totalLx: naturalLx * share + NIGHT_SKY_LX * (1 - weight),
  };
}

function highSun(input: DaylightInput, sky: Sky): Illuminances {
  const state = skyState(sky);
  const sine = sinDeg(input.apparentElevationDeg);
  if (state === "haze") return hazySky(input, sky);
  return { directNormalLx: beamLx(input, sky), diffuseHorizontalLx: SKY_PART_LX[state](sine) };
}

/** IES CPC 1984, J. IES 13(4) 381-392: sky on the full horizontal by sin h, lx; the partly cloudy constants from memory. */
const SKY_PART_LX: Readonly<Record<Exclude<SkyState, "haze">, (sine: number) => number>> = {
  clear: (sine) => 800 + 15_500 * Math.sqrt(sine),
  "bright-cloud": (sine) => 300 + 45_000 * sine,
  overcast: (sine) => 300 + 21_000 * sine,
};

/** Direct sun facing the disc, whole disc above the horizon. */
function beamLx(input: DaylightInput, sky: Sky): number {
  const state = skyState(sky);
  if (state === "haze") return hazySky(input, sky).directNormalLx;
  if (state !== "clear") return 0;
  return (
    EXTRATERRESTRIAL_ILLUMINANCE_LX *
    input.orbitalFactor *
    Math.exp(-CLEAR_EXTINCTION_PER_AIR_MASS * absoluteAirMass(input))
  );
}

/** The turbidity model divides by sin h; it is held at this elevation below it, where its beam is nothing already. */
const TURBID_LOWEST_DEG = 1;

const hazySky = (input: DaylightInput, sky: Sky): Illuminances => turbidSky(hazeInput(input, sky));

/** What the turbidity model is asked for under haze. */
export function hazeInput(input: DaylightInput, sky: Sky): TurbidSkyInput {
  const sunElevationDeg = Math.max(TURBID_LOWEST_DEG, input.apparentElevationDeg);
  return {
    sunElevationDeg,
    absoluteAirMass: absoluteAirMass({
      apparentElevationDeg: sunElevationDeg,
      pressureHPa: input.pressureHPa,
    }),
    linkeTurbidity: typeof sky === "string" ? HAZE_LINKE_TURBIDITY : sky.linkeTurbidity,
    heightM: input.heightM,
    orbitalFactor: input.orbitalFactor,
  };
}

/** Air mass scaled to the pressure of the place. */
export function absoluteAirMass(input: Pick<DaylightInput, "apparentElevationDeg" | "pressureHPa">): number {
  return (airMassKastenYoung1989(input.apparentElevationDeg) * input.pressureHPa) / STANDARD_PRESSURE_HPA;
}

/** Share of the disc's area above the horizon for the apparent elevation of its centre. */
export function discShare(apparentElevationDeg: number): number {
  const x = clamp(apparentElevationDeg / DISC_RADIUS_DEG, -1, 1);
  return 1 - (Math.acos(x) - x * Math.sqrt(1 - x * x)) / Math.PI;
}

/** Daylight input for a sun seen at a site of a given height. */
export function daylightInputFor(
  seen: { airlessElevationDeg: number; apparentElevationDeg: number },
  distanceAu: number,
  heightM: number,
  pressureHPa: number = standardAir(heightM).pressureHPa,
): DaylightInput {
  return {
    airlessElevationDeg: seen.airlessElevationDeg,
    apparentElevationDeg: seen.apparentElevationDeg,
    orbitalFactor: 1 / (distanceAu * distanceAu),
    pressureHPa,
    heightM,
  };
}
