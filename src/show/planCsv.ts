/** A plan as CSV: the sheet's rows, one per camera and sky, and one per camera for all skies together. */

import type { CameraPlan, Setting, WindowPlan } from "../plan/planTypes.ts";
import { csvText } from "./csvText.ts";
import { roundedByName } from "./planJson.ts";
import { atThreeInstants } from "./settingsTable.ts";

const FIELDS = [
  "id",
  "sky",
  "azimuthDeg",
  "elevationDeg",
  "rangeM",
  "horizontalFieldDeg",
  "verticalFieldDeg",
  "lightOpening",
  "lightMiddle",
  "lightClose",
  "evOpening",
  "evMiddle",
  "evClose",
  "guideEvOpening",
  "guideEvMiddle",
  "guideEvClose",
  "sunRisk",
  "inFrameUtc",
  "nearFrameUtc",
  "closestUtc",
  "closestFromEdgeDeg",
  "stop",
  "shutterS",
  "shutterName",
  "filterDensity",
  "holds",
  "spareStops",
  "worstThing",
  "worstUtc",
  "notes",
] as const;

export function planCsv(plan: WindowPlan): string {
  const rows = plan.cameras.flatMap((camera) => [
    ...camera.bySky.map(({ sky, setting }, index) => row(plan, camera, sky, setting, index)),
    ...(plan.sky.length > 1 ? [row(plan, camera, "all", camera.setting, 0)] : []),
  ]);
  return csvText(FIELDS, rows);
}

function row(
  plan: WindowPlan,
  camera: CameraPlan,
  sky: string,
  setting: Setting | null,
  skyIndex: number,
): Readonly<Record<string, unknown>> {
  const [opening, middle, close] = atThreeInstants(plan, camera, skyIndex);
  const values: Readonly<Record<(typeof FIELDS)[number], unknown>> = {
    id: camera.id,
    sky,
    azimuthDeg: camera.axis.azimuthDeg,
    elevationDeg: camera.axis.elevationDeg,
    rangeM: camera.axis.rangeM,
    horizontalFieldDeg: camera.fieldDeg.horizontal,
    verticalFieldDeg: camera.fieldDeg.vertical,
    lightOpening: opening!.light,
    lightMiddle: middle!.light,
    lightClose: close!.light,
    evOpening: opening!.ev,
    evMiddle: middle!.ev,
    evClose: close!.ev,
    guideEvOpening: opening!.tableEv,
    guideEvMiddle: middle!.tableEv,
    guideEvClose: close!.tableEv,
    sunRisk: camera.sun.risk,
    inFrameUtc: spans(camera.sun.inFrame),
    nearFrameUtc: spans(camera.sun.nearFrame),
    closestUtc: camera.sun.closest?.at.toISOString() ?? null,
    closestFromEdgeDeg: camera.sun.closest?.fromEdgeDeg ?? null,
    stop: setting?.stop ?? null,
    shutterS: setting?.shutterS ?? null,
    shutterName: setting?.shutterName ?? null,
    filterDensity: setting?.filterDensity ?? null,
    holds: setting?.holds ?? null,
    spareStops: setting?.spareStops ?? null,
    worstThing: setting?.worst.thing ?? null,
    worstUtc: setting?.worst.at.toISOString() ?? null,
    notes: camera.notes.join("; "),
  };
  return Object.fromEntries(FIELDS.map((field) => [field, roundedByName(csvKey(field), values[field])]));
}

/** The rounding rule of a column whose name carries an instant behind the unit. */
const csvKey = (field: string): string => (/^(guideEv|ev)/.test(field) ? "ev" : field);

const spans = (list: CameraPlan["sun"]["inFrame"]): string =>
  list.map(({ from, to }) => `${from.toISOString()}/${to.toISOString()}`).join(" ");
