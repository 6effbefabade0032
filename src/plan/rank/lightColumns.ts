/** The light of one sky at every T-0 of a window, as columns of numbers. */

import { type BodyIllumination, directVerticalLx, fillLx, totalHorizontalLx } from "../../light/body.ts";
import type { Site } from "../../site/types.ts";
import {
  type DaylightInput,
  daylightInputFor,
  daylightThrough,
  goneSunLx,
  isSunGone,
  type Sky,
} from "../../sky/daylight.ts";
import { skyScaleCdM2 } from "../../sky/generalSky.ts";
import { type MoonSky, moonlightThrough } from "../../sky/moonlight.ts";
import type { ReadySky } from "../instants.ts";
import type { SunColumns } from "./sunColumns.ts";

/** On the facets of an upright body, lx, as in `UprightLight`; and what scales the sky's luminance. */
export interface LightColumns {
  /** Sun facing it, and sky on the horizontal. */
  readonly directNormalLx: Float64Array;
  readonly diffuseLx: Float64Array;
  /** Elevation of the direct light, the sun's or the moon's. */
  readonly lampElevationDeg: Float64Array;
  readonly directLx: Float64Array;
  readonly fillLx: Float64Array;
  readonly groundLx: Float64Array;
  /** Scale of the standard sky; empty when no camera keeps sky or plume. */
  readonly skyCdM2: Float64Array;
}

export function makeLightColumns(most: number, needsSky: boolean): LightColumns {
  const column = (): Float64Array => new Float64Array(most);
  return {
    directNormalLx: column(),
    diffuseLx: column(),
    lampElevationDeg: column(),
    directLx: column(),
    fillLx: column(),
    groundLx: column(),
    skyCdM2: new Float64Array(needsSky ? most : 0),
  };
}

/** Before floodlights and corrections. One short loop for each step: a longer one would not be compiled as one piece. */
export function fillLightColumns(
  columns: LightColumns,
  site: Site,
  pressureHPa: number,
  sun: SunColumns,
  ready: ReadySky,
): void {
  fillDaylight(columns, site.place.heightM, pressureHPa, sun, ready.sky);
  fillUpright(columns, site.groundReflectance, sun);
  if (columns.skyCdM2.length > 0) fillSkyScale(columns, sun, ready);
}

function fillDaylight(
  columns: LightColumns,
  heightM: number,
  pressureHPa: number,
  sun: SunColumns,
  sky: Sky,
): void {
  // One object for all T-0s, as there are half a million in a year.
  const input = { ...daylightInputFor(NO_SUN, 1, heightM, pressureHPa) };
  const moon = { ...NO_MOON };
  for (let i = 0; i < sun.count; i++) {
    input.airlessElevationDeg = sun.airlessElevationDeg[i]!;
    input.apparentElevationDeg = sun.apparentElevationDeg[i]!;
    input.orbitalFactor = 1 / (sun.distanceAu[i]! * sun.distanceAu[i]!);
    columns.lampElevationDeg[i] = input.apparentElevationDeg;
    if (isSunGone(input)) {
      columns.directNormalLx[i] = 0;
      columns.diffuseLx[i] = goneSunLx(input, sky);
      addMoonlight(columns, sun, i, moon, input, sky);
      continue;
    }
    const { directNormalLx, diffuseHorizontalLx } = daylightThrough(input, sky);
    columns.directNormalLx[i] = directNormalLx;
    columns.diffuseLx[i] = diffuseHorizontalLx;
  }
}

function addMoonlight(
  columns: LightColumns,
  sun: SunColumns,
  index: number,
  moon: { -readonly [Key in keyof MoonSky]: MoonSky[Key] },
  air: DaylightInput,
  sky: Sky,
): void {
  moon.airlessElevationDeg = sun.moonAirlessElevationDeg[index]!;
  moon.apparentElevationDeg = sun.moonApparentElevationDeg[index]!;
  moon.phaseAngleDeg = sun.moonPhaseAngleDeg[index]!;
  moon.parallaxDeg = sun.moonParallaxDeg[index]!;
  columns.lampElevationDeg[index] = moon.apparentElevationDeg;
  const { directNormalLx, diffuseHorizontalLx } = moonlightThrough(moon, air, sky);
  columns.directNormalLx[index] = directNormalLx;
  columns.diffuseLx[index]! += diffuseHorizontalLx;
}

function fillUpright(columns: LightColumns, groundReflectance: number, sun: SunColumns): void {
  const falling = { ...DARKNESS, groundReflectance };
  for (let i = 0; i < sun.count; i++) {
    falling.directNormalLx = columns.directNormalLx[i]!;
    falling.diffuseHorizontalLx = columns.diffuseLx[i]!;
    falling.sunElevationDeg = columns.lampElevationDeg[i]!;
    columns.directLx[i] = directVerticalLx(falling);
    columns.fillLx[i] = fillLx(falling);
    columns.groundLx[i] = totalHorizontalLx(falling);
  }
}

function fillSkyScale(columns: LightColumns, sun: SunColumns, { general, zenithShareAt }: ReadySky): void {
  for (let i = 0; i < sun.count; i++) {
    columns.skyCdM2[i] = skyScaleCdM2(
      general,
      zenithShareAt,
      Math.max(0, sun.up[i]!),
      sun.apparentElevationDeg[i]!,
      columns.diffuseLx[i]!,
    );
  }
}

const NO_MOON: MoonSky = {
  airlessElevationDeg: 0,
  apparentElevationDeg: 0,
  phaseAngleDeg: 0,
  parallaxDeg: 1,
};
const NO_SUN = { airlessElevationDeg: 0, apparentElevationDeg: 0 } as const;
const DARKNESS: BodyIllumination = {
  directNormalLx: 0,
  diffuseHorizontalLx: 0,
  sunElevationDeg: 0,
  groundReflectance: 0,
  floodlightLx: 0,
};
