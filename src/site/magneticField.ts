/**
 * The Earth's main magnetic field by the World Magnetic Model 2025 (NOAA/NCEI and BGS, December 2024), valid 2025.0 to 2030.0.
 * By magvar, the only file that knows that package. Leaves out the crust, magnetic storms, and iron near a compass.
 */

import { calculateMagneticField } from "magvar";
import type { Place } from "../base/place.ts";

export interface MagneticField {
  /** Magnetic north from true north, east positive, to 0.01 degree. */
  readonly declinationDeg: number;
  /** Horizontal intensity: what turns a compass. */
  readonly horizontalNT: number;
}

/** Instants from (included) and to (excluded) which the model is made. */
export const FIELD_FROM: Readonly<Date> = new Date(Date.UTC(2025, 0, 1));
export const FIELD_TO: Readonly<Date> = new Date(Date.UTC(2030, 0, 1));

/** Below this a compass is not to be relied on: the model's blackout zones; below the other its caution zones (as documented with it). */
export const BLACKOUT_NT = 2000;
export const CAUTION_NT = 6000;

/** The field at a place; null outside the model's years. */
export function magneticField(place: Place, at: Date): MagneticField | null {
  if (!(at.getTime() >= FIELD_FROM.getTime() && at.getTime() < FIELD_TO.getTime())) return null;
  const { latitudeDeg, longitudeDeg, heightM } = place;
  const field = calculateMagneticField(decimalYear(at), latitudeDeg, longitudeDeg, heightM / 1000);
  return { declinationDeg: field.declination, horizontalNT: field.h };
}

/**
 * Standard error of a declination, degrees: sqrt(0.26^2 + (5417 / H)^2), H in nT (report of the World Magnetic Model 2025,
 * its error model; from memory).
 */
export const declinationErrorDeg = (horizontalNT: number): number => Math.hypot(0.26, 5417 / horizontalNT);

function decimalYear(at: Date): number {
  const year = at.getUTCFullYear();
  const [from, to] = [Date.UTC(year, 0, 1), Date.UTC(year + 1, 0, 1)];
  return year + (at.getTime() - from) / (to - from);
}
