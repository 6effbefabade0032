/** A sweep as JSON and CSV: figures cut to what can be defended, times in UTC with Z. */

import type { SweepPlan, SweepRow } from "../plan/sweep/sweepTypes.ts";
import { csvText } from "./csvText.ts";
import { roundedByName } from "./planJson.ts";

export const sweepJson = (plan: SweepPlan): string => `${JSON.stringify(plan, roundedByName, 1)}\n`;

const ROW_FIELDS = [
  "tPlusS",
  "azimuthDeg",
  "elevationDeg",
  "rangeM",
  "azimuthRateDegS",
  "elevationRateDegS",
  "altitudeM",
  "speedMS",
  "flightPathDeg",
  "light",
  "phaseDeg",
  "litShare",
  "endOnDeg",
  "ev",
  "bodyMeanCdM2",
  "skyCdM2",
  "plumeCdM2",
  "vehicleMm",
  "vehicleShare",
  "blurMm",
  "sharpNearM",
  "sharpFarM",
  "sunAzimuthDeg",
  "sunElevationDeg",
  "offAxisDeg",
  "fromEdgeDeg",
  "sun",
] as const satisfies readonly (keyof SweepRow)[];

/** A row per T+ of each tracker's timeline. */
export function sweepCsv({ trackers }: SweepPlan): string {
  const rows = trackers.flatMap(({ id, timeline: { at, sky, rows: told } }) =>
    told.map((row) => ({
      id,
      t0Utc: at.toISOString(),
      sky,
      ...Object.fromEntries(ROW_FIELDS.map((field) => [field, roundedByName(field, row[field])])),
    })),
  );
  return csvText(["id", "t0Utc", "sky", ...ROW_FIELDS], rows);
}
