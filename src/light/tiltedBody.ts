/**
 * Light that a matt cylinder sends to a camera when it no longer stands upright: any axis, any sun, any observer.
 *
 * As `body.ts` for the upright one, which it equals there: direct sun in closed form, the half spaces above and below the
 * horizontal as two uniform lights. Leaves out the ends (nose and engines, which are most of what is seen end on), gloss,
 * frost, and what the vehicle's own parts throw on each other.
 */

import { atan2Deg } from "../base/units.ts";
import { angleBetweenDeg, cross, dot, norm, scale, subtract, type Vec3 } from "../base/vector.ts";
import { type BodySpan, cylinderLitShare, cylinderMean } from "./body.ts";

/** Unit vectors in one frame whose third component is up at the vehicle. */
export interface TiltedView {
  /** Foot to nose. */
  readonly axis: Vec3;
  readonly toSun: Vec3;
  readonly toObserver: Vec3;
}

/** What falls on a body in the air, lx, 0 or more. */
export interface SurroundingLight {
  /** Facing the sun. */
  readonly directNormalLx: number;
  /** Of the upper half of all directions, on the horizontal. */
  readonly skyLx: number;
  /** Of the lower half, on a horizontal plane that looks down: what ground and air below send up. */
  readonly belowLx: number;
  /** On every facet. */
  readonly floodlightLx: number;
}

export interface TiltedBodySpan extends BodySpan {
  /** From the observer to the sun, seen along the axis, 0 (sun behind the camera) to 180; 0 with either on the axis. */
  readonly phaseDeg: number;
  /** From the axis to the line of sight, 0 (seen end on) to 90 (across). */
  readonly endOnDeg: number;
}

/** A direction as near as this to the axis (its sine) has no side. */
const ALONG_AXIS = 1e-9;

/**
 * The side of a matt cylinder of diffuse reflectance 0..1 as the observer sees it. With the observer on the axis, where no
 * side is seen, it is the half towards the sun, and with both there the half from the top to the bottom facet. With the sun
 * on the axis it has no direct light (`litShare` 0).
 */
export function tiltedBody(view: TiltedView, light: SurroundingLight, reflectance: number): TiltedBodySpan {
  const { axis } = view;
  const seen = across(axis, view.toObserver);
  const sunlit = across(axis, view.toSun);
  const seenSine = norm(seen);
  const sunSine = norm(sunlit);
  const hasSide = seenSine > ALONG_AXIS;
  const hasSun = sunSine > ALONG_AXIS;
  const sunward = hasSun ? scale(sunlit, 1 / sunSine) : null;
  const facing = hasSide ? scale(seen, 1 / seenSine) : (sunward ?? levelAcross(axis));
  const side = cross(axis, facing);
  const turned = sunward === null ? 0 : dot(side, sunward);
  const facets: SeenFacets = {
    facingUp: facing[2],
    sideUp: turned < 0 ? -side[2] : side[2],
    cosPhase: sunward === null ? 1 : dot(facing, sunward),
    sinPhase: Math.abs(turned),
    directLx: hasSun ? light.directNormalLx * sunSine : 0,
  };
  const phaseDeg = hasSide && hasSun ? atan2Deg(facets.sinPhase, facets.cosPhase) : 0;
  const { meanLx, brightestLx, darkestLx } = facetLights(facets, light, phaseDeg);
  const perLx = reflectance / Math.PI;
  return {
    meanLx,
    meanCdM2: perLx * meanLx,
    brightestCdM2: perLx * brightestLx,
    darkestCdM2: perLx * darkestLx,
    litShare: facets.directLx > 0 ? cylinderLitShare(phaseDeg) : 0,
    phaseDeg,
    endOnDeg: atan2Deg(seenSine, Math.abs(dot(axis, view.toObserver))),
  };
}

/** The phase alone: from the observer to the sun, seen along the axis, degrees; 0 with either on the axis. */
export function phaseAbout({ axis, toSun, toObserver }: TiltedView): number {
  const [seen, sunlit] = [across(axis, toObserver), across(axis, toSun)];
  if (norm(seen) <= ALONG_AXIS || norm(sunlit) <= ALONG_AXIS) return 0;
  return angleBetweenDeg(seen, sunlit);
}

/** Part of a direction across the axis. */
const across = (axis: Vec3, direction: Vec3): Vec3 => subtract(direction, scale(axis, dot(axis, direction)));

/** A level direction across the axis. */
function levelAcross([east, north]: Vec3): Vec3 {
  const level = Math.sqrt(east * east + north * north);
  return level > ALONG_AXIS ? [north / level, -east / level, 0] : [1, 0, 0];
}

/**
 * The visible half, in the plane across the axis: facets from -90 to 90 degrees of the facet that faces the observer,
 * counted towards the sun, which stands at the phase.
 */
interface SeenFacets {
  /** Upward component of the normals at 0 and at 90 degrees. */
  readonly facingUp: number;
  readonly sideUp: number;
  readonly cosPhase: number;
  readonly sinPhase: number;
  /** Sun on a facet turned to it. */
  readonly directLx: number;
}

/**
 * Illuminance of the facets. One whose normal rises by n (sine) sees (1 + n) / 2 of the light above and (1 - n) / 2 of
 * that below (a tilted plane under two uniform half spaces), so that along the round each of the two parts, in the sun
 * and in shadow, is a constant and one sinusoid; the mean normal of the half is pi/4 of the one that faces the observer.
 */
function facetLights(
  { facingUp, sideUp, cosPhase, sinPhase, directLx }: SeenFacets,
  { skyLx, belowLx, floodlightLx }: SurroundingLight,
  phaseDeg: number,
): { meanLx: number; brightestLx: number; darkestLx: number } {
  const evenLx = (skyLx + belowLx) / 2 + floodlightLx;
  const facingLx = ((skyLx - belowLx) / 2) * facingUp;
  const sideLx = ((skyLx - belowLx) / 2) * sideUp;
  const litFacingLx = facingLx + directLx * cosPhase;
  const litSideLx = sideLx + directLx * sinPhase;
  /** Of the lit part's sinusoid at the direction of its crest: above 0 inside the part when it is seen at all. */
  const litTowardsSun = litFacingLx * cosPhase + litSideLx * sinPhase;
  const darkTowardsSun = facingLx * cosPhase + sideLx * sinPhase;
  const farEdgeLx = -sideLx;
  const nearEdgeLx = litSideLx;
  const seamLx = facingLx * sinPhase - sideLx * cosPhase;
  let highLx = Math.max(farEdgeLx, nearEdgeLx, seamLx);
  let lowLx = Math.min(farEdgeLx, nearEdgeLx, seamLx);
  // A crest is seen when it lies within 90 degrees of the observer, in the sun within 90 of the sun; a trough is a crest turned round.
  const litSwingLx = Math.sqrt(litFacingLx * litFacingLx + litSideLx * litSideLx);
  const darkSwingLx = Math.sqrt(facingLx * facingLx + sideLx * sideLx);
  if (litFacingLx >= 0 && litTowardsSun >= 0) highLx = Math.max(highLx, litSwingLx);
  if (litFacingLx <= 0 && litTowardsSun <= 0) lowLx = Math.min(lowLx, -litSwingLx);
  if (facingLx >= 0 && darkTowardsSun <= 0) highLx = Math.max(highLx, darkSwingLx);
  if (facingLx <= 0 && darkTowardsSun >= 0) lowLx = Math.min(lowLx, -darkSwingLx);
  return {
    meanLx: directLx * cylinderMean(phaseDeg) + evenLx + (Math.PI / 4) * facingLx,
    brightestLx: evenLx + highLx,
    darkestLx: Math.max(0, evenLx + lowLx),
  };
}
