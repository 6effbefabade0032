/**
 * What a tracker meets at one T-0 and T+ under one sky: the body as it lies in the air, in the light of its height, seen
 * through the air between; the sky behind it. Leaves out the shade of structures, and the plume's own light on the body,
 * which trails behind it once it flies.
 */

import { fromHorizon, type HorizonAxes, horizonAxes, toHorizon } from "../../base/earthFixed.ts";
import type { Air } from "../../base/place.ts";
import { asinDeg, cosDeg, MS_PER_SECOND, sinDeg } from "../../base/units.ts";
import { fromAzimuthElevation, type Vec3 } from "../../base/vector.ts";
import { evOfIlluminance, incidentMidTone } from "../../exposure/exposureValue.ts";
import { type LightClass, lightClass } from "../../light/lightClass.ts";
import {
  phaseAbout,
  type SurroundingLight,
  type TiltedBodySpan,
  tiltedBody,
} from "../../light/tiltedBody.ts";
import type { Site } from "../../site/types.ts";
import type { AirBetween } from "../../sky/airBetween.ts";
import { type AloftLight, daylightAloft } from "../../sky/aloft.ts";
import { refractionDeg } from "../../sky/atmosphere.ts";
import { sunScratch } from "../../sky/sunTrack.ts";
import { airShareAbove } from "../../sky/thinAir.ts";
import type { Instant } from "../instants.ts";
import type { PlumeGain } from "../plumeReach.ts";
import { correctionStops, type SeenThings, sitePlume } from "../things.ts";
import type { FlightPoint } from "./flightPoints.ts";
import type { SweepRoom } from "./tracker.ts";

/** One T-0 and T+ under one sky. */
export interface AloftThings extends SeenThings {
  readonly light: LightClass;
  readonly phaseDeg: number;
  readonly endOnDeg: number;
  readonly ev: number | null;
}

/** Gives what a camera meets: `skyAt` is the pad's instant of about that time. */
export function aloftMaker(
  room: SweepRoom,
  cameraId: string,
  air: Air,
  skyAt: (ms: number) => Instant,
): (point: FlightPoint, t0Ms: number, skyIndex: number) => AloftThings {
  const { site } = room;
  const plume = sitePlume(site);
  const lampAt = lampReader(room, air);
  return (point, t0Ms, skyIndex) => {
    const ms = t0Ms + point.tPlusS * MS_PER_SECOND;
    const instant = skyAt(ms);
    const { sky, luminanceOf } = instant.skies[skyIndex]!;
    const factor = 2 ** correctionStops(site, cameraId, sky);
    const lamp = lampAt(point, ms, instant, skyIndex);
    const floodlightLx = point.floodShare * (site.floodlightLx ?? 0);
    const { phaseDeg, endOnDeg, ...body } = bodyIn(site, point, lamp, factor, floodlightLx);
    const skyCdM2 = luminanceOf(point.axis) * factor;
    const groundLx = instant.skies[skyIndex]!.upright.groundLx * factor + (site.floodlightDeckLx ?? 0);
    const near: SeenThings = {
      body: lamp.isSunOn ? body : { ...body, litShare: 0 },
      skyCdM2,
      deckCdM2: (site.groundReflectance * groundLx) / Math.PI,
      // Nearby it stands before the whole sky; what is seen of it is told by `throughAir`.
      plume,
      plumeGain: null,
      ownPlume: plume,
      placeCdM2: incidentMidTone(body.meanLx),
    };
    return {
      light: lightClass(phaseDeg, lamp.isSunOn ? UP : lamp.sun, lamp.isSunOn, 1, site.settings),
      ...{ phaseDeg, endOnDeg },
      ev: body.meanLx > 0 ? evOfIlluminance(body.meanLx) : null,
      ...throughAir(near, point.between[skyIndex]!),
    };
  };
}

/** The body as it lies in its light, before the air between; `factor` is for what readings correct. */
function bodyIn(
  { vehicle }: Site,
  { bodyAxis, toCamera }: FlightPoint,
  lamp: Lamp,
  factor: number,
  floodlightLx: number,
): TiltedBodySpan {
  const view = { axis: bodyAxis, toSun: lamp.direction, toObserver: toCamera };
  const light = {
    directNormalLx: factor * lamp.directNormalLx,
    skyLx: factor * lamp.skyLx,
    belowLx: factor * lamp.belowLx,
    floodlightLx,
  };
  const span = tiltedBody(view, light, vehicle!.reflectance);
  // By moonlight too the phase is told of the sun.
  return lamp.isMoonlit ? { ...span, phaseDeg: phaseAbout({ ...view, toSun: lamp.toSun }) } : span;
}

/** What lights the body in the air: the sun or, where the moon gives more, the moon; and all around it sky and what is below. */
interface Lamp extends Pick<SurroundingLight, "directNormalLx" | "skyLx" | "belowLx"> {
  /** To sun or moon, in the horizon of the vehicle. */
  readonly direction: Vec3;
  readonly isMoonlit: boolean;
  readonly toSun: Vec3;
  readonly sun: { readonly airlessElevationDeg: number; readonly apparentElevationDeg: number };
  readonly isSunOn: boolean;
}

function lampReader(
  { site, track }: SweepRoom,
  air: Air,
): (point: FlightPoint, ms: number, instant: Instant, skyIndex: number) => Lamp {
  const sample = sunScratch();
  const padAxes = horizonAxes(site.place);
  return (point, ms, instant, skyIndex) => {
    const { sky } = instant.skies[skyIndex]!;
    track.into(ms, sample);
    const { direction, ...sun } = sunAt(point, sample.fixed, air, site.place.heightM);
    const daylight = daylightAloft({
      airlessElevationDeg: sun.airlessElevationDeg,
      heightM: point.heightM,
      groundHeightM: site.place.heightM,
      groundAir: air,
      orbitalFactor: 1 / (sample.distanceAu * sample.distanceAu),
      groundReflectance: site.groundReflectance,
      sky,
    });
    const night = moonAt(instant, skyIndex, point.axes, padAxes, site.groundReflectance);
    const isMoonlit = night !== null && daylight.directNormalLx < night.directNormalLx;
    return {
      direction: isMoonlit ? night.direction : direction,
      directNormalLx: isMoonlit ? night.directNormalLx : daylight.directNormalLx,
      skyLx: daylight.skyLx + (night?.skyLx ?? 0),
      belowLx: daylight.belowLx + (night?.belowLx ?? 0),
      isMoonlit,
      toSun: direction,
      sun,
      isSunOn: !isMoonlit && isSunOn(daylight, sun.apparentElevationDeg),
    };
  };
}

/** What the moon gives a body in the air: as to one on the ground. Null while it is not counted. */
function moonAt(
  instant: Instant,
  skyIndex: number,
  axes: HorizonAxes,
  padAxes: HorizonAxes,
  groundReflectance: number,
): Pick<Lamp, "direction" | "directNormalLx" | "skyLx" | "belowLx"> | null {
  const { moon } = instant;
  const light = instant.skies[skyIndex]!.moon;
  if (moon === null || light === null) return null;
  const { directNormalLx, diffuseHorizontalLx } = light;
  const enu = fromAzimuthElevation(moon.azimuthDeg, moon.apparentElevationDeg);
  return {
    direction: toHorizon(axes, fromHorizon(padAxes, enu)),
    directNormalLx,
    skyLx: diffuseHorizontalLx,
    belowLx: groundReflectance * (directNormalLx * Math.max(0, enu[2]) + diffuseHorizontalLx),
  };
}

/** A sun that stands over the horizontal, for the class of a body that it shines on from below it. */
const UP = { airlessElevationDeg: 1, apparentElevationDeg: 1 };

/** The sun on the body: up for the ground below it, or not and yet more than all other light. */
const isSunOn = ({ directNormalLx, skyLx, belowLx }: AloftLight, apparentElevationDeg: number): boolean =>
  directNormalLx > (apparentElevationDeg > 0 ? LEAST_BEAM : 1) * (skyLx + belowLx);

/** Through thick haze a trace of the sun is left by the model, not by the sky. */
const LEAST_BEAM = 1e-3;

/** The sun in the horizon of the vehicle, its direction lifted by the air above that; and how it stands over the ground below. */
function sunAt({ axes, heightM }: FlightPoint, fixed: Vec3, groundAir: Air, groundHeightM: number) {
  const enu = toHorizon(axes, fixed);
  const airlessElevationDeg = asinDeg(enu[2]);
  const share = Math.min(1, airShareAbove(heightM) / airShareAbove(groundHeightM));
  const air = { pressureHPa: groundAir.pressureHPa * share, temperatureC: groundAir.temperatureC };
  const liftedDeg = airlessElevationDeg + refractionDeg(airlessElevationDeg, air);
  const level = Math.hypot(enu[0], enu[1]);
  const stretch = level === 0 ? 0 : cosDeg(liftedDeg) / level;
  const direction: Vec3 = [enu[0] * stretch, enu[1] * stretch, sinDeg(liftedDeg)];
  // A vehicle that climbs loses no sun that still stands over the ground below it.
  const apparentElevationDeg = airlessElevationDeg + refractionDeg(airlessElevationDeg, groundAir);
  return { direction, airlessElevationDeg, apparentElevationDeg };
}

/**
 * Things as they are near by, seen through the air between: it takes its share of each, and puts its share of the sky's
 * luminance before it. Through a thin plume the rest of the sky shines.
 */
export function throughAir(things: SeenThings, { transmittance, skyShare }: AirBetween): SeenThings {
  const { body, skyCdM2, deckCdM2, ownPlume, plumeGain, placeCdM2 } = things;
  const veilCdM2 = skyCdM2 * skyShare;
  const besideCdM2 = veilCdM2 + (ownPlume?.transmittance ?? 0) * (skyCdM2 - veilCdM2);
  const seen = (luminanceCdM2: number): number => luminanceCdM2 * transmittance + veilCdM2;
  return {
    body: {
      meanLx: body.meanLx,
      meanCdM2: seen(body.meanCdM2),
      brightestCdM2: seen(body.brightestCdM2),
      darkestCdM2: seen(body.darkestCdM2),
      litShare: body.litShare,
    },
    skyCdM2,
    deckCdM2: seen(deckCdM2),
    plume: ownPlume && {
      lowCdM2: ownPlume.lowCdM2 * transmittance + besideCdM2,
      nominalCdM2: ownPlume.nominalCdM2 * transmittance + besideCdM2,
      highCdM2: ownPlume.highCdM2 * transmittance + besideCdM2,
    },
    plumeGain: plumeGain && dimmed(plumeGain, transmittance),
    ownPlume,
    placeCdM2: seen(placeCdM2),
  };
}

/** What the plume adds to body and deck comes through the same air. */
const dimmed = (
  { bodyDark, bodyBright, deckDark, deckBright }: PlumeGain,
  transmittance: number,
): PlumeGain => ({
  bodyDark: bodyDark * transmittance,
  bodyBright: bodyBright * transmittance,
  deckDark: deckDark * transmittance,
  deckBright: deckBright * transmittance,
});
