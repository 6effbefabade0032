/** The luminances a camera meets at one T-0 under one sky. */

import { evOfIlluminance, incidentMidTone } from "../exposure/exposureValue.ts";
import type { Sample, ThingSpan } from "../exposure/solver.ts";
import { type BodySpan, spanUnder, type UprightLight } from "../light/body.ts";
import { type LightClass, lightClass, uprightPhaseDeg } from "../light/lightClass.ts";
import { type PlumeLuminance, plumeLuminance } from "../light/plume.ts";
import type { Site, Thing } from "../site/types.ts";
import { type Sky, skyState } from "../sky/daylight.ts";
import type { CameraView } from "./cameraView.ts";
import type { Instant, SkyLight } from "./scene.ts";

/** Reflectance of the stand-in where the site names no vehicle: it cancels out of the EV, the only thing told of it. */
const NO_VEHICLE_REFLECTANCE = 0.8;

/** Everything that sends light to one camera at one T-0 under one sky; luminances in cd/m2. */
export interface Things {
  readonly light: LightClass;
  readonly phaseDeg: number;
  /** On the body, with floodlights and corrections. */
  readonly upright: UprightLight;
  /** Of a stand-in where the site has no vehicle. */
  readonly body: BodySpan;
  readonly hasVehicle: boolean;
  readonly skyCdM2: number;
  readonly deckCdM2: number;
  /** The plume as seen, with what shines through it; null when the site has none. */
  readonly plume: {
    readonly lowCdM2: number;
    readonly nominalCdM2: number;
    readonly highCdM2: number;
  } | null;
  /** Mid-tone by incident metering of the body. */
  readonly placeCdM2: number;
  /** EV at ISO 100 for the body by incident light; null in complete darkness. */
  readonly ev: number | null;
}

/** Stops that readings add to the model for this camera under this sky. */
export function correctionStops(site: Site, cameraId: string, sky: Sky): number {
  const { bySky, byCamera } = site.corrections;
  // Own keys only: an id may be any word, "constructor" too.
  const own = Object.hasOwn(byCamera, cameraId) ? (byCamera[cameraId] ?? 0) : 0;
  return (bySky[skyState(sky)] ?? 0) + own;
}

/**
 * `bodyPlume` is the site's plume, computed once per plan; `correction` the stops that readings add for this camera
 * under this sky.
 */
export function thingsAt(
  site: Site,
  view: CameraView,
  instant: Instant,
  sky: SkyLight,
  bodyPlume: PlumeLuminance | null,
  correction: number,
): Things {
  const factor = correction === 0 ? 1 : 2 ** correction;
  const upright = onThisBody(sky.upright, factor, site.floodlightLx);
  const reflectance = site.vehicle?.reflectance ?? NO_VEHICLE_REFLECTANCE;
  const phaseDeg = uprightPhaseDeg(view.observerAzimuthDeg, instant.sun.azimuthDeg);
  const body = spanUnder(upright, reflectance, phaseDeg);
  const skyCdM2 = sky.luminanceOf(view.frame.axis) * factor;
  return {
    light: lightClass(phaseDeg, instant.sun, sky.hasBeam, site.settings),
    phaseDeg,
    upright,
    body,
    hasVehicle: site.vehicle !== null,
    skyCdM2,
    deckCdM2: (site.groundReflectance * upright.groundLx) / Math.PI,
    plume: bodyPlume && seenPlume(bodyPlume, skyCdM2),
    placeCdM2: incidentMidTone(body.meanLx),
    ev: body.meanLx > 0 ? evOfIlluminance(body.meanLx) : null,
  };
}

/** Readings correct what the sun and sky send, not the floodlights. */
function onThisBody(light: UprightLight, factor: number, floodlightLx: number | null): UprightLight {
  if (factor === 1 && floodlightLx === null) return light;
  return {
    directLx: light.directLx * factor,
    fillLx: light.fillLx * factor + (floodlightLx ?? 0),
    groundLx: light.groundLx * factor,
  };
}

/** A plume in front of the sky: its own light and the share of the sky's that it lets through. */
function seenPlume(plume: PlumeLuminance, skyCdM2: number): NonNullable<Things["plume"]> {
  const through = plume.transmittance * skyCdM2;
  return {
    lowCdM2: plume.lowCdM2 + through,
    nominalCdM2: plume.nominalCdM2 + through,
    highCdM2: plume.highCdM2 + through,
  };
}

/** The site's plume, or null. */
export const sitePlume = (site: Site): PlumeLuminance | null =>
  site.vehicle?.plume ? plumeLuminance(site.vehicle.plume) : null;

/** Darkest and brightest luminance of one thing; the plume at its nominal value. */
export function spanOf(things: Things, thing: Thing): { darkCdM2: number; brightCdM2: number } {
  if (thing === "body") return { darkCdM2: things.body.darkestCdM2, brightCdM2: things.body.brightestCdM2 };
  const one =
    thing === "sky" ? things.skyCdM2 : thing === "deck" ? things.deckCdM2 : (things.plume?.nominalCdM2 ?? 0);
  return { darkCdM2: one, brightCdM2: one };
}

/** Darker than any medium can tell from black; keeps the logarithm finite for a thing that sends no light at all. */
export const BLACK_CD_M2 = 1e-9;

const log2Of = (luminanceCdM2: number): number => Math.log2(Math.max(luminanceCdM2, BLACK_CD_M2));

/** Null for a plume without a range. */
function plumeRangeOf(plume: Things["plume"]): NonNullable<ThingSpan["plumeRange"]> | null {
  if (plume === null || plume.lowCdM2 === plume.highCdM2) return null;
  return { lowLog2: log2Of(plume.lowCdM2), highLog2: log2Of(plume.highCdM2) };
}

/** What the solver needs of the kept things. */
export function sampleOf(things: Things, keep: readonly Thing[], atMs: number, skyIndex: number): Sample {
  const spans: ThingSpan[] = [];
  for (const thing of keep) {
    const { darkCdM2, brightCdM2 } = spanOf(things, thing);
    const span: ThingSpan = { thing, darkLog2: log2Of(darkCdM2), brightLog2: log2Of(brightCdM2) };
    const range = thing === "plume" ? plumeRangeOf(things.plume) : null;
    spans.push(range === null ? span : { ...span, plumeRange: range });
  }
  return { atMs, skyIndex, spans, placeLog2: log2Of(things.placeCdM2) };
}
