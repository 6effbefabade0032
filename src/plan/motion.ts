/** How fast the vehicle crosses the picture of a fixed camera: constant acceleration from rest, straight up. */

import { STANDARD_GRAVITY_M_S2 } from "../base/constants.ts";
import { mix } from "../base/units.ts";
import { norm } from "../base/vector.ts";
import { motionBlurMm } from "../exposure/sharpness.ts";
import type { Site } from "../site/types.ts";
import { pointOn, stretchInGate } from "../view/lineInGate.ts";
import type { CameraView } from "./cameraView.ts";

export interface ImageMotion {
  /** Fastest movement on the image, mm/s, while the vehicle's foot is in the gate. */
  readonly imageMmS: number;
  /** Of the vehicle, and its part across the line of sight. */
  readonly speedMS: number;
  readonly acrossMS: number;
  readonly rangeM: number;
}

/** The climb is followed this far, metres. */
const HIGHEST_CLIMB_M = 5000;
/** Climbs tried along the stretch in the gate; the movement grows or has one broad top there. */
const CLIMB_STEPS = 12;

/**
 * The fastest the vehicle's foot moves on the image while it is in the gate, or null when the ascent, the place or
 * the foot in the gate is not known. Thrust is held: mass burned in the first seconds adds some per cent.
 */
export function imageMotion(site: Site, view: CameraView): ImageMotion | null {
  const { vehicle } = site;
  if (vehicle?.ascent?.kind !== "parameters" || !view.placeGiven) return null;
  const accelerationMS2 = (vehicle.ascent.thrustToWeight - 1) * STANDARD_GRAVITY_M_S2;
  const { baseM } = vehicle;
  const stretch = stretchInGate(view.frame, view.vehicleAxis, baseM, baseM + HIGHEST_CLIMB_M);
  if (stretch === null) return null;
  let fastest: ImageMotion | null = null;
  for (let i = 0; i <= CLIMB_STEPS; i++) {
    const footM = mix(stretch.from, stretch.to, i / CLIMB_STEPS);
    const toFoot = pointOn(view.vehicleAxis, footM);
    const rangeM = norm(toFoot);
    const speedMS = Math.sqrt(2 * accelerationMS2 * (footM - baseM));
    const acrossMS = speedMS * (Math.hypot(toFoot[0], toFoot[1]) / rangeM);
    const imageMmS = motionBlurMm(acrossMS, 1, view.camera.lens.focalMm, rangeM);
    if (fastest === null || imageMmS > fastest.imageMmS) fastest = { imageMmS, speedMS, acrossMS, rangeM };
  }
  return fastest;
}
