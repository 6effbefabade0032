/** A plan as CSV: the sheet's rows, one per camera and sky, and one per camera for all skies together. */

import type { CameraPlan, Setting, WindowPlan } from "../plan/planTypes.ts";
import type { SweepCrossing } from "../plan/sweep/sweepTypes.ts";
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
  "tableEvOpening",
  "tableEvMiddle",
  "tableEvClose",
  "sunRisk",
  "inFrameUtc",
  "nearFrameUtc",
  "inFrameTPlusS",
  "nearFrameTPlusS",
  "hiddenUtc",
  "hiddenBy",
  "moonInFrameUtc",
  "sunImageMm",
  "sunImageWCm2",
  "closestUtc",
  "closestFromEdgeDeg",
  "stop",
  "shutterS",
  "shutterName",
  "shutterAngleDeg",
  "filterDensity",
  "holds",
  "spareStops",
  "worstThing",
  "worstUtc",
  "worstEnd",
  "plumeDimSpareStops",
  "plumeBrightSpareStops",
  "clearUtc",
  "aimAzimuthDeg",
  "aimElevationDeg",
  "hoodDiameters",
  "notes",
] as const;

export function planCsv(plan: WindowPlan): string {
  const rows = plan.cameras.flatMap((camera) => [
    ...camera.bySky.map(({ sky, setting }, index) => row(plan, camera, sky, setting, index)),
    ...(plan.sky.length > 1 ? [row(plan, camera, "one for all", camera.setting, null)] : []),
  ]);
  return csvText(FIELDS, rows);
}

type Row = Readonly<Record<(typeof FIELDS)[number], unknown>>;

function row(
  plan: WindowPlan,
  camera: CameraPlan,
  sky: string,
  setting: Setting | null,
  skyIndex: number | null,
): Readonly<Record<string, unknown>> {
  const values: Partial<Row> = {
    id: camera.id,
    sky,
    azimuthDeg: camera.axis.azimuthDeg,
    elevationDeg: camera.axis.elevationDeg,
    rangeM: camera.axis.rangeM,
    horizontalFieldDeg: camera.fieldDeg.horizontal,
    verticalFieldDeg: camera.fieldDeg.vertical,
    ...lightFields(plan, camera, skyIndex),
    ...sunFields(camera),
    ...settingFields(setting),
    notes: camera.notes.join("; "),
  };
  return Object.fromEntries(
    FIELDS.map((field) => [field, roundedByName(csvKey(field), values[field] ?? null)]),
  );
}

/** Empty for all skies together: each has its own light. */
function lightFields(plan: WindowPlan, camera: CameraPlan, skyIndex: number | null): Partial<Row> {
  if (skyIndex === null) return {};
  const [opening, middle, close] = atThreeInstants(plan, camera, skyIndex);
  return {
    lightOpening: opening!.light,
    lightMiddle: middle!.light,
    lightClose: close!.light,
    evOpening: opening!.ev,
    evMiddle: middle!.ev,
    evClose: close!.ev,
    tableEvOpening: opening!.tableEv,
    tableEvMiddle: middle!.tableEv,
    tableEvClose: close!.tableEv,
  };
}

/** The sun of a camera as flat values, for a row of a table. */
export const sunFields = ({ sun, sunImage, moonInFrame, remedy, sweep }: CameraPlan) => ({
  sunRisk: sun.risk,
  inFrameUtc: spans(sun.inFrame),
  nearFrameUtc: spans(sun.nearFrame),
  inFrameTPlusS: sweep && crossings(sweep.sun.inFrame),
  nearFrameTPlusS: sweep && crossings(sweep.sun.nearFrame),
  hiddenUtc: spans(sun.hidden),
  hiddenBy: [...new Set(sun.hidden.flatMap(({ by }) => by))].join("; "),
  moonInFrameUtc: spans(moonInFrame),
  sunImageMm: sunImage?.diameterMm ?? null,
  sunImageWCm2: sunImage?.irradianceWCm2 ?? null,
  closestUtc: sun.closest?.at.toISOString() ?? null,
  closestFromEdgeDeg: sun.closest?.fromEdgeDeg ?? null,
  clearUtc: remedy === null ? null : spans(remedy.clearTimes),
  aimAzimuthDeg: remedy?.aim?.newAzimuthDeg ?? null,
  aimElevationDeg: remedy?.aim?.newElevationDeg ?? null,
  hoodDiameters: remedy?.hoodDiameters ?? null,
});

const settingFields = (setting: Setting | null) => ({
  stop: setting?.stop ?? null,
  shutterS: setting?.shutterS ?? null,
  shutterName: setting?.shutterName ?? null,
  shutterAngleDeg: setting?.shutterAngleDeg ?? null,
  filterDensity: setting?.filterDensity ?? null,
  holds: setting?.holds ?? null,
  spareStops: setting?.spareStops ?? null,
  worstThing: setting?.worst.thing ?? null,
  worstUtc: setting?.worst.at.toISOString() ?? null,
  worstEnd: setting?.worst.end ?? null,
  plumeDimSpareStops: setting?.plumeRange?.lowSpareStops ?? null,
  plumeBrightSpareStops: setting?.plumeRange?.highSpareStops ?? null,
});

/** The rounding rule of a column whose name carries an instant behind the unit. */
const csvKey = (field: string): string => (/^(tableEv|ev)/.test(field) ? "ev" : field);

const spans = (list: CameraPlan["sun"]["inFrame"]): string =>
  list.map(({ from, to }) => `${from.toISOString()}/${to.toISOString()}`).join(" ");

/** A tracker's T+ for each of its T-0 spans: "31.2/36.4 80/81.5" where it is met twice, with a bar between the spans. */
const crossings = (list: readonly SweepCrossing[]): string =>
  list.map(({ tPlus }) => tPlus.map(({ fromS, toS }) => `${fromS}/${toS}`).join(" ")).join(" | ");
