/**
 * Moonlight as beam and sky. Its sum on the horizontal under a clear sky is that of the natural-illuminance polynomials;
 * beam and sky share it as they share sunlight from the same elevation, and a sky state lets through what it lets through
 * of that. Counted while no part of the sun is up: before, it is less than a thousandth of the light.
 */

import { sinDeg } from "../base/units.ts";
import { type DaylightInput, daylightThrough, type Sky } from "./daylight.ts";
import { moonIlluminanceLx } from "./moon.ts";
import type { MoonSample } from "./moonTrack.ts";
import type { SeenDirection } from "./sun.ts";
import type { Illuminances } from "./turbidSky.ts";

/** Lower than this the moon gives less than a hundredth of the night sky's light. */
const MOON_GONE_DEG = -6;

const NO_LIGHT: Illuminances = { directNormalLx: 0, diffuseHorizontalLx: 0 };

/** What the moon's light at a place depends on. */
export interface MoonSky {
  readonly airlessElevationDeg: number;
  readonly apparentElevationDeg: number;
  readonly phaseAngleDeg: number;
  readonly parallaxDeg: number;
}

/** The moon as seen from a place, with what its light depends on. */
export type SeenMoon = SeenDirection & Pick<MoonSample, "phaseAngleDeg" | "parallaxDeg" | "litShare">;

/** Beam facing the moon and its light in the sky on the horizontal, lx. */
export function moonlightThrough(
  moon: MoonSky,
  air: Pick<DaylightInput, "pressureHPa" | "heightM">,
  sky: Sky,
): Illuminances {
  if (moon.apparentElevationDeg < MOON_GONE_DEG) return NO_LIGHT;
  const input: DaylightInput = {
    airlessElevationDeg: moon.airlessElevationDeg,
    apparentElevationDeg: moon.apparentElevationDeg,
    orbitalFactor: 1,
    pressureHPa: air.pressureHPa,
    heightM: air.heightM,
  };
  const sine = Math.max(0, sinDeg(moon.apparentElevationDeg));
  const asClearSun = daylightThrough(input, "clear");
  const asSun = sky === "clear" ? asClearSun : daylightThrough(input, sky);
  const totalLx = moonIlluminanceLx(moon.airlessElevationDeg, moon.phaseAngleDeg, moon.parallaxDeg);
  const scale = totalLx / (asClearSun.directNormalLx * sine + asClearSun.diffuseHorizontalLx);
  return {
    directNormalLx: scale * asSun.directNormalLx,
    diffuseHorizontalLx: scale * asSun.diffuseHorizontalLx,
  };
}
