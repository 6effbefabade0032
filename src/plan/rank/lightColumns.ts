/** The light of one sky at every T-0 of a window, as columns of numbers. */

import { type BodyIllumination, directVerticalLx, fillLx, totalHorizontalLx } from "../../light/body.ts";
import type { Site } from "../../site/types.ts";
import { daylightInputFor, daylightThrough } from "../../sky/daylight.ts";
import { skyScaleCdM2 } from "../../sky/generalSky.ts";
import type { ReadySky } from "../scene.ts";
import type { SunColumns } from "./sunColumns.ts";

/** On the facets of an upright body, lx, as in `UprightLight`; and what scales the sky's luminance. */
export interface LightColumns {
  readonly directLx: Float64Array;
  readonly fillLx: Float64Array;
  readonly groundLx: Float64Array;
  /** Scale of the standard sky; empty when no camera keeps sky or plume. */
  readonly skyCdM2: Float64Array;
}

export function makeLightColumns(most: number, needsSky: boolean): LightColumns {
  const column = (): Float64Array => new Float64Array(most);
  return {
    directLx: column(),
    fillLx: column(),
    groundLx: column(),
    skyCdM2: new Float64Array(needsSky ? most : 0),
  };
}

/** Before floodlights and corrections. */
export function fillLightColumns(
  columns: LightColumns,
  site: Site,
  pressureHPa: number,
  sun: SunColumns,
  { sky, general, zenithShareAt }: ReadySky,
): void {
  const hasSky = columns.skyCdM2.length > 0;
  // One object for all T-0s, as there are half a million in a year.
  const input = { ...daylightInputFor(NO_SUN, 1, site.place.heightM, pressureHPa) };
  const falling = { ...DARKNESS, groundReflectance: site.groundReflectance };
  for (let i = 0; i < sun.count; i++) {
    const sunElevationDeg = sun.apparentElevationDeg[i]!;
    input.airlessElevationDeg = sun.airlessElevationDeg[i]!;
    input.apparentElevationDeg = sunElevationDeg;
    input.orbitalFactor = 1 / (sun.distanceAu[i]! * sun.distanceAu[i]!);
    const { directNormalLx, diffuseHorizontalLx } = daylightThrough(input, sky);
    falling.directNormalLx = directNormalLx;
    falling.diffuseHorizontalLx = diffuseHorizontalLx;
    falling.sunElevationDeg = sunElevationDeg;
    columns.directLx[i] = directVerticalLx(falling);
    columns.fillLx[i] = fillLx(falling);
    columns.groundLx[i] = totalHorizontalLx(falling);
    if (!hasSky) continue;
    const heldUp = Math.max(0, sun.up[i]!);
    columns.skyCdM2[i] = skyScaleCdM2(general, zenithShareAt, heldUp, sunElevationDeg, diffuseHorizontalLx);
  }
}

const NO_SUN = { airlessElevationDeg: 0, apparentElevationDeg: 0 } as const;
const DARKNESS: BodyIllumination = {
  directNormalLx: 0,
  diffuseHorizontalLx: 0,
  sunElevationDeg: 0,
  groundReflectance: 0,
  floodlightLx: 0,
};
