/**
 * Light that a matt cylinder sends to a camera: the vehicle's body, standing upright.
 *
 * Direct sun in closed form; sky and ground as two uniform halves. Leaves out gloss, frost, lettering and what the
 * structures around throw back; a glossy strip can be stops brighter than any facet here.
 */

import { requireNumber } from "../base/problem.ts";
import { cosDeg, RAD_PER_DEG, sinDeg, wrap180 } from "../base/units.ts";

/**
 * Mean over the visible half of max(0, cos) sunlight on a cylinder, seen across its axis, for a phase of 0..180
 * degrees: F = ((pi - phi) cos phi + sin phi) / 4. Pi/4 with the sun behind the camera, 0 with it behind the body.
 * (Half the integral of cos psi cos(psi - phi); the Lambert-sphere phase law has the same shape.)
 */
export function cylinderMean(phaseDeg: number): number {
  const phaseRad = Math.abs(wrap180(phaseDeg)) * RAD_PER_DEG;
  return ((Math.PI - phaseRad) * Math.cos(phaseRad) + Math.sin(phaseRad)) / 4;
}

/** Brightest visible facet: cosine of its angle to the sun in the plane across the axis; 1 up to a phase of 90, then sin. */
export const cylinderPeak = (phaseDeg: number): number => {
  const phase = Math.abs(wrap180(phaseDeg));
  return phase <= 90 ? 1 : Math.max(0, sinDeg(phase));
};

/** Lit share of the visible width: (1 + cos phi) / 2. */
export const cylinderLitShare = (phaseDeg: number): number => (1 + cosDeg(phaseDeg)) / 2;

/** Light that falls on an upright body. */
export interface BodyIllumination {
  /** Facing the sun, lx. */
  readonly directNormalLx: number;
  /** Apparent. */
  readonly sunElevationDeg: number;
  /** Sky alone on the horizontal, lx. */
  readonly diffuseHorizontalLx: number;
  readonly groundReflectance: number;
  /** Floodlight on the body, lx. */
  readonly floodlightLx: number;
}

/** Sun on a vertical plane turned to it, lx: until the whole disc is down, as `directNormalLx` is that of what is up. */
export const directVerticalLx = (light: BodyIllumination): number =>
  light.directNormalLx * cosDeg(light.sunElevationDeg);

/** Sun and sky on the horizontal, lx. */
export const totalHorizontalLx = (light: BodyIllumination): number =>
  light.directNormalLx * Math.max(0, sinDeg(light.sunElevationDeg)) + light.diffuseHorizontalLx;

/** On any vertical facet without direct sun, lx: half the sky, half of what the ground throws back, the floodlights. */
export const fillLx = (light: BodyIllumination): number =>
  light.diffuseHorizontalLx / 2 +
  (light.groundReflectance * totalHorizontalLx(light)) / 2 +
  light.floodlightLx;

/** What falls on the facets of an upright body, lx; the same for every camera. */
export interface UprightLight {
  /** Sun on a vertical plane turned to it. */
  readonly directLx: number;
  /** On any vertical facet without direct sun. */
  readonly fillLx: number;
  /** Sun and sky on the ground before it. */
  readonly groundLx: number;
}

export const uprightLight = (light: BodyIllumination): UprightLight => ({
  directLx: directVerticalLx(light),
  fillLx: fillLx(light),
  groundLx: totalHorizontalLx(light),
});

/** How the visible half of a body takes direct light, as shares of what a facet turned to it gets. */
export interface Facets {
  /** Averaged over the visible half. */
  readonly mean: number;
  readonly brightest: number;
  /** Sunlit share of the visible width. */
  readonly lit: number;
  /** Share of the direct light on what the camera sees that shade leaves, 0..1; of the whole sunlit half when it sees none of that. */
  readonly kept: number;
}

/** A body with nothing in its sun. */
export const openFacets = (phaseDeg: number): Facets => ({
  mean: cylinderMean(phaseDeg),
  brightest: cylinderPeak(phaseDeg),
  lit: cylinderLitShare(phaseDeg),
  kept: 1,
});

/** Luminances of the visible half of the body, cd/m2. */
export interface BodySpan {
  readonly meanCdM2: number;
  readonly brightestCdM2: number;
  readonly darkestCdM2: number;
  /** Mean illuminance over the visible half, lx: what an incident meter carried along it would average. */
  readonly meanLx: number;
  readonly litShare: number;
}

/**
 * The visible half of a matt cylinder of diffuse reflectance 0..1. The darkest visible facet has no direct sun: at any
 * phase the visible half reaches facets turned 90 degrees or more from it.
 */
export function spanUnder(light: UprightLight, reflectance: number, facets: Facets): BodySpan {
  const { directLx, fillLx } = light;
  const perLx = reflectance / Math.PI;
  const meanLx = directLx * facets.mean + fillLx;
  return {
    meanLx,
    meanCdM2: perLx * meanLx,
    brightestCdM2: perLx * (directLx * facets.brightest + fillLx),
    darkestCdM2: perLx * fillLx,
    litShare: directLx > 0 ? facets.lit : 0,
  };
}

/** `spanUnder` for light given as it falls on plane and horizontal. */
export const bodySpan = (light: BodyIllumination, reflectance: number, phaseDeg: number): BodySpan =>
  spanUnder(uprightLight(light), reflectance, openFacets(phaseDeg));

/**
 * Mean luminance (cd/m2) of the visible half of an upright matt cylinder, and the sunlit share of its visible width.
 * Azimuths in degrees, both from the body outward; illuminances in lx, 0 or more; reflectances 0..1. With the sun at
 * or below the horizon there is no direct part. Throws PadstopError out of range.
 */
export function bodyLuminance(input: {
  reflectance: number;
  sunAzimuthDeg: number;
  sunElevationDeg: number;
  observerAzimuthDeg: number;
  directNormalLx: number;
  diffuseHorizontalLx: number;
  groundReflectance: number;
}): { meanCdM2: number; litShare: number } {
  requireNumber("reflectance", input.reflectance, 0, 1, "");
  requireNumber("groundReflectance", input.groundReflectance, 0, 1, "");
  requireNumber("sunElevationDeg", input.sunElevationDeg, -90, 90, "degrees");
  requireNumber("sunAzimuthDeg", input.sunAzimuthDeg, -360, 720, "degrees");
  requireNumber("observerAzimuthDeg", input.observerAzimuthDeg, -360, 720, "degrees");
  requireNumber("directNormalLx", input.directNormalLx, 0, 1e9, "lx");
  requireNumber("diffuseHorizontalLx", input.diffuseHorizontalLx, 0, 1e9, "lx");
  const phaseDeg = Math.abs(wrap180(input.sunAzimuthDeg - input.observerAzimuthDeg));
  const directNormalLx = input.sunElevationDeg > 0 ? input.directNormalLx : 0;
  const { meanCdM2, litShare } = bodySpan(
    { ...input, directNormalLx, floodlightLx: 0 },
    input.reflectance,
    phaseDeg,
  );
  return { meanCdM2, litShare };
}
