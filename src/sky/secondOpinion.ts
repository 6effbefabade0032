/** The apparent position of the sun asked of a second library (suncalc), so that a wrong sun cannot pass unseen. */

import { getPosition } from "suncalc";
import type { Place } from "../base/place.ts";
import { cosDeg, wrap180 } from "../base/units.ts";
import type { SunPosition } from "./sun.ts";

/** Two refraction models part below this elevation. */
const LOW_SUN_DEG = 5;
const ACCEPTED_DEG = 0.1;
const ACCEPTED_LOW_SUN_DEG = 0.3;
/** Below the horizon a lift by refraction means nothing, and libraries part by all of it. */
const ACCEPTED_SUN_DOWN_DEG = 0.7;

export interface SecondOpinion {
  readonly at: Date;
  /** Angle between the two apparent directions, degrees. */
  readonly apartDeg: number;
  /** What is accepted at this elevation, degrees. */
  readonly acceptedDeg: number;
  readonly agrees: boolean;
}

/** Compares `sun` (ours, apparent) with suncalc at the same place and instant. */
export function secondOpinion(place: Place, at: Date, sun: SunPosition): SecondOpinion {
  const theirs = getPosition(at, place.latitudeDeg, place.longitudeDeg);
  const acrossDeg = wrap180(theirs.azimuth - sun.azimuthDeg) * cosDeg(sun.apparentElevationDeg);
  const apartDeg = Math.hypot(acrossDeg, theirs.altitude - sun.apparentElevationDeg);
  const acceptedDeg = acceptedAt(sun.apparentElevationDeg);
  return { at, apartDeg, acceptedDeg, agrees: apartDeg <= acceptedDeg };
}

function acceptedAt(apparentElevationDeg: number): number {
  if (apparentElevationDeg > LOW_SUN_DEG) return ACCEPTED_DEG;
  return apparentElevationDeg > 0 ? ACCEPTED_LOW_SUN_DEG : ACCEPTED_SUN_DOWN_DEG;
}
