/** One T-0: the sun and the moon over the pad, the shade on the body, the light of each sky. Computed once for all cameras. */

import { horizonAxes } from "../base/earthFixed.ts";
import type { Air } from "../base/place.ts";
import type { Vec3 } from "../base/vector.ts";
import { type UprightLight, uprightLight } from "../light/body.ts";
import type { Site } from "../site/types.ts";
import {
  type DaylightInput,
  daylightInputFor,
  daylightThrough,
  isSunGone,
  type Sky,
  skyState,
} from "../sky/daylight.ts";
import { type GeneralSky, generalSkyOf, skyLuminanceOf, zenithShares } from "../sky/generalSky.ts";
import { moonlightThrough, type SeenMoon } from "../sky/moonlight.ts";
import { type MoonTrack, makeMoonTrack } from "../sky/moonTrack.ts";
import { apparentEnu, type SeenDirection, seenFrom } from "../sky/sun.ts";
import type { SunSample, SunTrack } from "../sky/sunTrack.ts";
import type { Illuminances } from "../sky/turbidSky.ts";
import { type BodyShade, bodyShadeAt } from "../view/bodyShade.ts";
import type { Obstacles } from "./obstacles.ts";

/** The light of one sky at one T-0. */
export interface SkyLight extends Illuminances {
  readonly sky: Sky;
  /** The sun shines. */
  readonly hasBeam: boolean;
  /** Counted with the sun gone; null before. */
  readonly moon: Illuminances | null;
  /** On the body, before floodlights, shade and corrections: sun or, with the sun gone, moon; and sky. */
  readonly upright: UprightLight;
  /** Sky luminance in cd/m2 towards a unit vector (east, north, up of the pad). */
  readonly luminanceOf: (direction: Vec3) => number;
}

/** One T-0. */
export interface Instant {
  readonly ms: number;
  readonly at: Date;
  readonly sample: SunSample;
  /** The sun over the pad. */
  readonly sun: SeenDirection;
  /** With no part of the sun up; null before. */
  readonly moon: SeenMoon | null;
  /** Null while all of the body stands in the sun, or all of the sun is down. */
  readonly shade: BodyShade | null;
  /** In the order of the skies asked for. */
  readonly skies: readonly SkyLight[];
}

/** One sky, ready to be asked for its light at many suns. */
export interface ReadySky {
  readonly sky: Sky;
  readonly general: GeneralSky;
  readonly zenithShareAt: (sunElevationDeg: number) => number;
}

export const readySkies = (skies: readonly Sky[]): ReadySky[] =>
  skies.map((sky) => {
    const general = generalSkyOf(skyState(sky));
    return { sky, general, zenithShareAt: zenithShares(general) };
  });

/** A function that gives the sun and the light of each sky at any instant of a track. */
export function instantMaker(
  site: Site,
  skies: readonly ReadySky[],
  air: Air,
  track: SunTrack,
  obstacles: Obstacles,
): (ms: number) => Instant {
  const axes = horizonAxes(site.place);
  const moonTrack = makeMoonTrack(site.place, new Date(track.fromMs), new Date(track.toMs));
  return (ms) => {
    const sample = track.at(ms);
    const sun = seenFrom(axes, sample.fixed, air);
    const input = daylightInputFor(sun, sample.distanceAu, site.place.heightM, air.pressureHPa);
    const enu = apparentEnu(sun);
    const moon = isSunGone(input) ? seenMoon(moonTrack, ms, (fixed) => seenFrom(axes, fixed, air)) : null;
    return {
      ms,
      at: new Date(ms),
      sample,
      sun,
      moon,
      shade: shadeAt(obstacles, enu),
      skies: skies.map((one) => skyLight(site, one, input, moon, enu)),
    };
  };
}

export function seenMoon(track: MoonTrack, ms: number, seen: (fixed: Vec3) => SeenDirection): SeenMoon {
  const { fixed, phaseAngleDeg, parallaxDeg, litShare } = track.at(ms);
  const { azimuthDeg, airlessElevationDeg, apparentElevationDeg } = seen(fixed);
  return { azimuthDeg, airlessElevationDeg, apparentElevationDeg, phaseAngleDeg, parallaxDeg, litShare };
}

/** Sine of the elevation of its centre at which the disc is down. */
const DISC_DOWN_SINE = -0.00466;

/** The shade by the apparent sun over the pad; none with all of the disc down. */
export const shadeAt = ({ shaders }: Obstacles, sunEnu: Vec3): BodyShade | null =>
  shaders === null || sunEnu[2] <= DISC_DOWN_SINE ? null : bodyShadeAt(shaders, sunEnu);

const NO_MOON: Illuminances = { directNormalLx: 0, diffuseHorizontalLx: 0 };

function skyLight(
  site: Site,
  { sky, zenithShareAt }: ReadySky,
  input: DaylightInput,
  moon: SeenMoon | null,
  sunEnu: Vec3,
): SkyLight {
  const { directNormalLx, diffuseHorizontalLx } = daylightThrough(input, sky);
  const moonlight = moon === null ? null : moonlightThrough(moon, input, sky);
  const { groundReflectance } = site;
  const skyLx = diffuseHorizontalLx + (moonlight ?? NO_MOON).diffuseHorizontalLx;
  const sunElevationDeg = input.apparentElevationDeg;
  const common = { diffuseHorizontalLx: skyLx, groundReflectance, floodlightLx: 0 };
  const upright = uprightLight(
    moon === null || moonlight === null
      ? { ...common, directNormalLx, sunElevationDeg }
      : {
          ...common,
          directNormalLx: moonlight.directNormalLx,
          sunElevationDeg: moon.apparentElevationDeg,
        },
  );
  return {
    directNormalLx,
    diffuseHorizontalLx,
    sky,
    hasBeam: directNormalLx > 0,
    moon: moonlight,
    upright,
    luminanceOf: skyLuminanceOf(skyState(sky), zenithShareAt, sunEnu, sunElevationDeg, skyLx),
  };
}
