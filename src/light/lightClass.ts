/** How a body is lit, in one word. */

import { wrap180 } from "../base/units.ts";
import type { Settings } from "../site/types.ts";

export const LIGHT_CLASSES = ["front", "side", "back", "shaded", "flat", "dusk", "night"] as const;
export type LightClass = (typeof LIGHT_CLASSES)[number];

/** Night begins here (end of astronomical twilight). */
export const NIGHT_ELEVATION_DEG = -18;

/**
 * front / side / back by phase while the sun's centre is up and shines; shaded when less than a share of what the camera
 * sees of the sunlit half is left in the sun; flat when it is up behind cloud; dusk until it is 18 degrees down; then
 * night. `hasBeam` is false under a sky that lets no direct sun through; `kept` is 1 with nothing in the body's sun.
 */
export function lightClass(
  phaseDeg: number,
  sun: { readonly airlessElevationDeg: number; readonly apparentElevationDeg: number },
  hasBeam: boolean,
  kept: number,
  settings: Settings,
): LightClass {
  if (sun.apparentElevationDeg <= 0) return sun.airlessElevationDeg > NIGHT_ELEVATION_DEG ? "dusk" : "night";
  if (!hasBeam) return "flat";
  if (kept < settings.shadedShare) return "shaded";
  if (phaseDeg < settings.frontBelowDeg) return "front";
  return phaseDeg > settings.backAboveDeg ? "back" : "side";
}

/** Phase on an upright body: angle, seen from above, between the ways to the camera and to the sun, 0..180 degrees. */
export const uprightPhaseDeg = (observerAzimuthDeg: number, sunAzimuthDeg: number): number =>
  Math.abs(wrap180(sunAzimuthDeg - observerAzimuthDeg));
