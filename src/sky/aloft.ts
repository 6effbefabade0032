/**
 * Sun, sky and what is below, at a vehicle high above the ground: less air above it, the Earth's edge under its horizontal.
 *
 * At the ground it is the plan's own light. Above, each part of the air takes what it takes there, thinned by height: rough
 * for the light of sky and ground (a share of what they are below), good for the beam. Leaves out what ozone takes (some
 * 3 % of a beam at 20 to 40 km, a good part of one that grazes the Earth) and that light which has grazed the ground is red.
 */

import {
  CLEAR_EXTINCTION_PER_AIR_MASS,
  EXTRATERRESTRIAL_ILLUMINANCE_LX,
  MEAN_EARTH_RADIUS_M,
  STANDARD_PRESSURE_HPA,
} from "../base/constants.ts";
import type { Air } from "../base/place.ts";
import { acosDeg, clamp, cosDeg, mix, sinDeg } from "../base/units.ts";
import { airMassKastenYoung1989, refractionDeg } from "./atmosphere.ts";
import {
  absoluteAirMass,
  type DaylightInput,
  daylightThrough,
  discShare,
  hazeInput,
  type Sky,
  skyState,
} from "./daylight.ts";
import { earthShadowHeightM } from "./earthShadow.ts";
import { airShareAbove, HAZE_SCALE_HEIGHT_M } from "./thinAir.ts";
import { turbidSky } from "./turbidSky.ts";

export interface AloftInput {
  /** Sun above the horizontal of the vehicle, -90..90; the ground straight below it has the same. */
  readonly airlessElevationDeg: number;
  /** Of the vehicle above the ellipsoid; taken as on the ground when below it. */
  readonly heightM: number;
  readonly groundHeightM: number;
  /** At the ground. */
  readonly groundAir: Air;
  /** 1 / (distance in au) squared. */
  readonly orbitalFactor: number;
  readonly groundReflectance: number;
  readonly sky: Sky;
}

export interface AloftLight {
  /** Facing the sun, of the part of the disc that is up, lx. */
  readonly directNormalLx: number;
  /** From above the horizontal, on the horizontal, lx. */
  readonly skyLx: number;
  /** From below, on a horizontal plane that looks down, lx. */
  readonly belowLx: number;
  /** Some of the disc stands over the Earth's edge at this height, whatever clouds or haze leave of it. */
  readonly isSunlit: boolean;
  /** Air on the way of the beam, in vertical air masses of sea level; past the Earth's edge those of a ray that grazes it. */
  readonly airMass: number;
}

/** What a ray is bent that grazes the ground on its way out to space: 34 arc minutes in, 34 out (as `FIRST_LIGHT_DEPRESSION_DEG`). */
const GRAZING_LIFT_DEG = (2 * 34) / 60;
/** Over this height the ground's refraction passes into that of a grazing ray: where a traced edge of the shadow stands when ours is still at the ground. */
const EDGE_JOIN_M = 250;

/**
 * Light at a vehicle straight above a ground. No beam at any height under bright cloud and overcast: a vehicle over the
 * clouds would be in the sun, but how high they reach is not known, and a camera under them does not see it. The sky's
 * light falls off as the air above; from below comes what the ground throws back of the light on it, and the share of the
 * ground's sky light that the air below has taken over (a rough figure: it throws up about what it throws down).
 * With the edge of the shadow from `earthShadowHeightM`, first light; under 250 m it passes into the horizon of the ground.
 */
export function daylightAloft(input: AloftInput): AloftLight {
  const { airlessElevationDeg, groundHeightM, groundAir, groundReflectance, orbitalFactor, sky } = input;
  const groundLiftDeg = refractionDeg(airlessElevationDeg, groundAir);
  const below: DaylightInput = {
    airlessElevationDeg,
    apparentElevationDeg: airlessElevationDeg + groundLiftDeg,
    orbitalFactor,
    pressureHPa: groundAir.pressureHPa,
    heightM: groundHeightM,
  };
  const ray = rayAloft(below, groundLiftDeg, Math.max(0, input.heightM - groundHeightM));
  const airMass = (slant(ray, ray.airEnd, ray.airLowest) * groundAir.pressureHPa) / STANDARD_PRESSURE_HPA;
  const ground = daylightThrough(below, sky);
  const throughLx = ray.discShare === 0 ? 0 : beamThroughLx(below, ray, airMass, sky);
  const onGroundLx =
    ground.directNormalLx * Math.max(0, sinDeg(below.apparentElevationDeg)) + ground.diffuseHorizontalLx;
  return {
    directNormalLx: throughLx * ray.discShare,
    skyLx: ground.diffuseHorizontalLx * ray.airHere,
    belowLx: groundReflectance * onGroundLx + ground.diffuseHorizontalLx * (1 - ray.airHere),
    isSunlit: ray.discShare > 0,
    airMass,
  };
}

/** The way of the beam to the vehicle; heights over the ground. */
interface Ray {
  /** Of the sun over the vehicle's horizontal, bent by the air that is left there. */
  readonly elevationDeg: number;
  /** Where it stops: at the vehicle. A ray that would pass under the ground is taken as far as it would go to graze it. */
  readonly endM: number;
  /** Lowest point of one that comes up from under the horizontal; else the end. */
  readonly lowestM: number;
  /** Air above these, and above the vehicle, over that above the ground. */
  readonly airEnd: number;
  readonly airLowest: number;
  readonly airHere: number;
  /** Share of the disc over the Earth's edge. */
  readonly discShare: number;
}

function rayAloft(
  { airlessElevationDeg, heightM }: DaylightInput,
  groundLiftDeg: number,
  aboveM: number,
): Ray {
  const groundShare = airShareAbove(heightM);
  const airHere = airShareAbove(heightM + aboveM) / groundShare;
  const dipDeg = acosDeg(MEAN_EARTH_RADIUS_M / (MEAN_EARTH_RADIUS_M + aboveM));
  const joined = clamp(aboveM / EDGE_JOIN_M, 0, 1);
  const edgeLiftDeg = mix(groundLiftDeg, GRAZING_LIFT_DEG, joined);
  const share = discShareAloft(airlessElevationDeg, edgeLiftDeg + dipDeg, aboveM);
  const straightDeg = airlessElevationDeg + groundLiftDeg * airHere;
  if (straightDeg >= 0) {
    const end = { endM: aboveM, lowestM: aboveM, airEnd: airHere, airLowest: airHere };
    return { elevationDeg: straightDeg, ...end, airHere, discShare: share };
  }
  // On the ground the plan holds the rim of a sun that is down at the horizontal.
  const elevationDeg = straightDeg < -dipDeg ? -mix(dipDeg, -straightDeg, joined) : straightDeg;
  const cosine = cosDeg(elevationDeg);
  const endM = Math.max(aboveM, MEAN_EARTH_RADIUS_M / cosine - MEAN_EARTH_RADIUS_M);
  const lowestM = Math.max(0, (MEAN_EARTH_RADIUS_M + endM) * cosine - MEAN_EARTH_RADIUS_M);
  return {
    elevationDeg,
    endM,
    lowestM,
    airEnd: airShareAbove(heightM + endM) / groundShare,
    airLowest: airShareAbove(heightM + lowestM) / groundShare,
    airHere,
    discShare: share,
  };
}

/** Share of the disc over the edge of the Earth, which stands `edgeDownDeg` under the vehicle's horizontal for airless rays. */
function discShareAloft(airlessElevationDeg: number, edgeDownDeg: number, aboveM: number): number {
  const edgeM = earthShadowHeightM(airlessElevationDeg);
  return edgeM === null || aboveM < edgeM ? 0 : discShare(airlessElevationDeg + edgeDownDeg);
}

/**
 * Relative air masses of a layered air on the way to the vehicle, from its amounts above the end and above the lowest
 * point of the ray (Kasten & Young 1989 each). A ray from under the horizontal comes down to its lowest point and
 * goes up again: twice the horizontal way from there, less the way from the vehicle on (Chapman 1931, Proc. Phys. Soc. 43, 483; from memory).
 */
function slant({ elevationDeg }: Ray, end: number, lowest: number): number {
  const onward = airMassKastenYoung1989(Math.abs(elevationDeg)) * end;
  return elevationDeg >= 0 ? onward : 2 * airMassKastenYoung1989(0) * lowest - onward;
}

/** Beam of the whole disc, facing it, lx. */
function beamThroughLx(below: DaylightInput, ray: Ray, airMass: number, sky: Sky): number {
  const state = skyState(sky);
  if (state !== "clear" && state !== "haze") return 0;
  let depth = CLEAR_EXTINCTION_PER_AIR_MASS * airMass;
  if (state === "haze") {
    const excess = hazeExcess(below, sky);
    depth +=
      excess *
      slant(ray, hazeShare(excess, ray.endM, ray.airEnd), hazeShare(excess, ray.lowestM, ray.airLowest));
  }
  return EXTRATERRESTRIAL_ILLUMINANCE_LX * below.orbitalFactor * Math.exp(-depth);
}

/** What haze takes more than the clear sky is in the haze; what a thin one takes less (turbidity 2), in all the air alike. */
const hazeShare = (excess: number, aboveM: number, airShare: number): number =>
  excess > 0 ? Math.exp(-aboveM / HAZE_SCALE_HEIGHT_M) : airShare;

/** All the haze at once takes no more than this, or a low sun in haze would be nothing at any height. */
const MOST_HAZE_DEPTH = 16;

/**
 * What haze takes more than the clear sky, per relative air mass of a ground, from the plan's two beams there: some 0.15
 * for a turbidity of 4, 0.35 for 6, almost the same from 5 degrees up; below 0 for a haze thinner than the clear sky.
 */
export function hazeExcess(ground: DaylightInput, sky: Sky): number {
  const held = { ...ground, apparentElevationDeg: Math.max(0, ground.apparentElevationDeg) };
  const clearLx =
    EXTRATERRESTRIAL_ILLUMINANCE_LX *
    ground.orbitalFactor *
    Math.exp(-CLEAR_EXTINCTION_PER_AIR_MASS * absoluteAirMass(held));
  const hazeLx = turbidSky(hazeInput(held, sky)).directNormalLx;
  const depth = hazeLx > 0 ? Math.min(MOST_HAZE_DEPTH, Math.log(clearLx / hazeLx)) : MOST_HAZE_DEPTH;
  return depth / airMassKastenYoung1989(held.apparentElevationDeg);
}
