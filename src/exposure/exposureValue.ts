/**
 * Exposure values, luminance and illuminance (ISO 2720:1974 with K 12.5 and C 250; APEX as in ASA PH2.5-1960).
 * EV is at ISO 100 wherever nothing else is said.
 */

import { METER_C_LX_S, METER_K_CD_S_M2 } from "../base/constants.ts";
import { requireNumber } from "../base/problem.ts";

const REFERENCE_SPEED_ISO = 100;

/** EV at ISO 100 of a luminance (cd/m2, reflected-light equation) or an illuminance (lx, incident light, flat receptor). Both above 0; throws PadstopError otherwise. */
export function exposureValue(light: { luminanceCdM2: number } | { illuminanceLx: number }): number {
  if ("luminanceCdM2" in light) {
    requireNumber("luminanceCdM2", light.luminanceCdM2, 1e-12, 1e15, "cd/m2");
    return Math.log2((light.luminanceCdM2 * REFERENCE_SPEED_ISO) / METER_K_CD_S_M2);
  }
  requireNumber("illuminanceLx", light.illuminanceLx, 1e-12, 1e15, "lx");
  return evOfIlluminance(light.illuminanceLx);
}

/** EV at ISO 100 of an illuminance known to be above 0 (`exposureValue` without its checks, for the many). */
export const evOfIlluminance = (illuminanceLx: number): number =>
  Math.log2((illuminanceLx * REFERENCE_SPEED_ISO) / METER_C_LX_S);

/** Luminance (cd/m2) that reads an EV at ISO 100. */
export const luminanceOfEv = (ev: number): number => (METER_K_CD_S_M2 / REFERENCE_SPEED_ISO) * 2 ** ev;
/** Illuminance (lx) that reads an EV at ISO 100. */
export const illuminanceOfEv = (ev: number): number => (METER_C_LX_S / REFERENCE_SPEED_ISO) * 2 ** ev;

/** EV of a setting, log2(N^2 / t), exact f-number and seconds. */
export const settingEv = (stop: number, exposureS: number): number => Math.log2((stop * stop) / exposureS);

/** What a setting holds against the light. */
export interface ExposureParts {
  /** Exact f-number. */
  readonly stop: number;
  readonly exposureS: number;
  readonly speedIso: number;
  /** Filter, window and glass together, stops. */
  readonly lossStops: number;
}

/** Luminance (cd/m2) that a setting renders as the mid-tone: K N^2 2^loss / (t S). */
export function midToneLuminance(parts: ExposureParts): number {
  return (
    (METER_K_CD_S_M2 * parts.stop * parts.stop * 2 ** parts.lossStops) / (parts.exposureS * parts.speedIso)
  );
}

/** Reflectance that K and C together call the mid-tone, pi K / C = 0.157. */
export const MID_TONE_REFLECTANCE = (Math.PI * METER_K_CD_S_M2) / METER_C_LX_S;

/** Luminance that belongs at the mid-tone when a thing under an illuminance is metered by incident light: E K / C, whatever its reflectance. */
export const incidentMidTone = (illuminanceLx: number): number =>
  (illuminanceLx * MID_TONE_REFLECTANCE) / Math.PI;
