/** The luminances a camera meets at one T-0 under one sky. */

import { evOfIlluminance, incidentMidTone } from "../exposure/exposureValue.ts";
import type { Sample, ThingSpan } from "../exposure/solver.ts";
import { type BodySpan, type Facets, openFacets, spanUnder, type UprightLight } from "../light/body.ts";
import { type LightClass, lightClass, uprightPhaseDeg } from "../light/lightClass.ts";
import { type PlumeLuminance, plumeLuminance } from "../light/plume.ts";
import { shadedFacets } from "../light/shadedBody.ts";
import type { Site, Thing } from "../site/types.ts";
import { type Sky, skyState } from "../sky/daylight.ts";
import type { CameraView } from "./cameraView.ts";
import type { Instant, SkyLight } from "./instants.ts";
import type { PlumeGain } from "./plumeReach.ts";

/** Reflectance of the stand-in where the site names no vehicle: it cancels out of the EV, the only thing told of it. */
const NO_VEHICLE_REFLECTANCE = 0.8;

/** Everything that sends light to one camera at one T-0 under one sky; luminances in cd/m2. */
export interface Things {
  readonly light: LightClass;
  readonly phaseDeg: number;
  /** On the body, with floodlights and corrections, before shade. */
  readonly upright: UprightLight;
  /** How the visible half takes the direct light, shade counted. */
  readonly facets: Facets;
  /** Share of the direct light on what the camera sees that shade leaves, 0..1; 1 without a beam. */
  readonly kept: number;
  /** Before ignition; of a stand-in where the site has no vehicle. */
  readonly body: BodySpan;
  readonly hasVehicle: boolean;
  readonly skyCdM2: number;
  /** Before ignition. */
  readonly deckCdM2: number;
  /** The plume as seen, with what shines through it; null when the site has none. */
  readonly plume: PlumeEnds | null;
  /** What the plume adds to body and deck after ignition, for each cd/m2 of its own; null for a camera that does not keep it. */
  readonly plumeGain: PlumeGain | null;
  /** Its own light, without what shines through. */
  readonly ownPlume: PlumeLuminance | null;
  /** Mid-tone by incident metering of the body: after ignition where the plume is kept. */
  readonly placeCdM2: number;
  /** EV at ISO 100 for the body by incident light before ignition; null in complete darkness. */
  readonly ev: number | null;
}

/** What a camera sees of the kept things: the part of `Things` that a setting answers for. */
export type SeenThings = Pick<
  Things,
  "body" | "skyCdM2" | "deckCdM2" | "plume" | "plumeGain" | "ownPlume" | "placeCdM2"
>;

export interface PlumeEnds {
  readonly lowCdM2: number;
  readonly nominalCdM2: number;
  readonly highCdM2: number;
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
  const upright = onThisBody(sky.upright, factor, site);
  const reflectance = site.vehicle?.reflectance ?? NO_VEHICLE_REFLECTANCE;
  const phaseDeg = uprightPhaseDeg(view.observerAzimuthDeg, instant.sun.azimuthDeg);
  const facets = facetsSeen(view, instant, phaseDeg);
  const body = spanUnder(upright, reflectance, facets);
  const skyCdM2 = sky.luminanceOf(view.frame.axis) * factor;
  const { plumeReach } = view;
  const plumeMeanLx =
    plumeReach === null || bodyPlume === null ? 0 : plumeReach.bodyMean * bodyPlume.nominalCdM2;
  return {
    light: lightClass(phaseDeg, instant.sun, sky.hasBeam, facets.kept, site.settings),
    phaseDeg,
    upright,
    facets,
    kept: sky.hasBeam ? facets.kept : 1,
    body,
    hasVehicle: site.vehicle !== null,
    skyCdM2,
    deckCdM2: (site.groundReflectance * upright.groundLx) / Math.PI,
    plume: bodyPlume && seenPlume(bodyPlume, skyCdM2),
    plumeGain: view.plumeGain,
    ownPlume: bodyPlume,
    placeCdM2: incidentMidTone(body.meanLx + plumeMeanLx),
    ev: body.meanLx > 0 ? evOfIlluminance(body.meanLx) : null,
  };
}

/** With the sun gone the moon is the direct light: it lights, but nobody calls that sunlit, nor what the last rim of the sun lights. */
export function facetsSeen(
  view: Pick<CameraView, "observerAzimuthDeg" | "told">,
  { sun, moon, shade }: Instant,
  phaseDeg: number,
): Facets {
  if (moon !== null) return unlit(openFacets(uprightPhaseDeg(view.observerAzimuthDeg, moon.azimuthDeg)));
  const facets =
    shade === null
      ? openFacets(phaseDeg)
      : shadedFacets(shade, view.observerAzimuthDeg - sun.azimuthDeg, view.told);
  return sun.apparentElevationDeg > 0 ? facets : unlit(facets);
}

const unlit = ({ mean, brightest, kept }: Facets): Facets => ({ mean, brightest, lit: 0, kept });

/** Readings correct what sun, moon and sky send, not the floodlights. */
function onThisBody(
  light: UprightLight,
  factor: number,
  { floodlightLx, floodlightDeckLx }: Site,
): UprightLight {
  if (factor === 1 && floodlightLx === null && floodlightDeckLx === null) return light;
  return {
    directLx: light.directLx * factor,
    fillLx: light.fillLx * factor + (floodlightLx ?? 0),
    groundLx: light.groundLx * factor + (floodlightDeckLx ?? 0),
  };
}

/** A plume in front of the sky: its own light and the share of the sky's that it lets through. */
function seenPlume(plume: PlumeLuminance, skyCdM2: number): PlumeEnds {
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

export interface SpanCdM2 {
  readonly darkCdM2: number;
  readonly brightCdM2: number;
}

export type PlumeEnd = "low" | "nominal" | "high";

/** Darkest and brightest luminance of one thing, the plume and what it lights at its nominal value or an end of its range. */
export function spanOf(things: SeenThings, thing: Thing, end: PlumeEnd = "nominal"): SpanCdM2 {
  const { body, plumeGain, ownPlume, deckCdM2, skyCdM2, plume } = things;
  if (thing === "sky") return { darkCdM2: skyCdM2, brightCdM2: skyCdM2 };
  if (thing === "plume") {
    const seen = plume === null ? 0 : atEnd(plume, end);
    return { darkCdM2: seen, brightCdM2: seen };
  }
  const own = ownPlume === null ? 0 : atEnd(ownPlume, end);
  if (thing === "body") {
    const { darkestCdM2, brightestCdM2 } = body;
    return {
      darkCdM2: darkestCdM2 + own * (plumeGain?.bodyDark ?? 0),
      brightCdM2: brightestCdM2 + own * (plumeGain?.bodyBright ?? 0),
    };
  }
  return {
    darkCdM2: deckCdM2 + own * (plumeGain?.deckDark ?? 0),
    brightCdM2: deckCdM2 + own * (plumeGain?.deckBright ?? 0),
  };
}

function atEnd({ lowCdM2, nominalCdM2, highCdM2 }: PlumeEnds, end: PlumeEnd): number {
  if (end === "nominal") return nominalCdM2;
  return end === "low" ? lowCdM2 : highCdM2;
}

/** Darker than any medium can tell from black; keeps the logarithm finite for a thing that sends no light at all. */
export const BLACK_CD_M2 = 1e-9;

const log2Of = (luminanceCdM2: number): number => Math.log2(Math.max(luminanceCdM2, BLACK_CD_M2));

/** Whether the plume's range moves a thing: the plume itself, and what it lights. */
const hasRange = ({ plume, plumeGain }: SeenThings, thing: Thing): boolean =>
  plume !== null &&
  plume.lowCdM2 !== plume.highCdM2 &&
  (thing === "plume" || (plumeGain !== null && (thing === "body" || thing === "deck")));

/** What the solver needs of the kept things. */
export function sampleOf(things: SeenThings, keep: readonly Thing[], atMs: number, skyIndex: number): Sample {
  const spans: ThingSpan[] = [];
  for (const thing of keep) {
    const { darkCdM2, brightCdM2 } = spanOf(things, thing);
    const darkLog2 = log2Of(darkCdM2);
    const brightLog2 = darkCdM2 === brightCdM2 ? darkLog2 : log2Of(brightCdM2);
    spans.push(
      hasRange(things, thing)
        ? { thing, darkLog2, brightLog2, plumeRange: rangeOf(things, thing) }
        : { thing, darkLog2, brightLog2 },
    );
  }
  return { atMs, skyIndex, spans, placeLog2: log2Of(things.placeCdM2) };
}

function rangeOf(things: SeenThings, thing: Thing): NonNullable<ThingSpan["plumeRange"]> {
  const low = spanOf(things, thing, "low");
  const high = spanOf(things, thing, "high");
  return {
    lowDarkLog2: log2Of(low.darkCdM2),
    lowBrightLog2: log2Of(low.brightCdM2),
    highDarkLog2: log2Of(high.darkCdM2),
    highBrightLog2: log2Of(high.brightCdM2),
  };
}
