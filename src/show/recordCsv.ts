/** A plan's settings as a form to fill in: a row per camera, the planned setting and empty columns for what was set. */

import type { Setting, WindowPlan } from "../plan/planTypes.ts";
import { FORM_COLUMNS, type FormColumn } from "../plan/readings/formTypes.ts";
import { csvText } from "./csvText.ts";

export const recordCsv = ({ cameras, sky }: WindowPlan): string =>
  csvText(
    FORM_COLUMNS,
    cameras.map(
      ({ id, setting }): Partial<Record<FormColumn, unknown>> => ({
        camera: id,
        sky: sky.join(" "),
        ...plannedCells(setting),
      }),
    ),
  );

/** The unit behind a time keeps a spreadsheet from making a date of 1/30; "deg" outlives a wrong table of letters. */
function plannedCells(setting: Setting | null): Partial<Record<FormColumn, unknown>> {
  if (setting === null) return {};
  const { shutterName, shutterAngleDeg, shutterS } = setting;
  const time = shutterName.endsWith(" s") ? shutterName : `${shutterName} s`;
  return {
    planned_stop: setting.stop,
    planned_shutter: shutterAngleDeg === null ? time : `${shutterAngleDeg} deg ${time}`,
    planned_shutter_s: Number(shutterS.toPrecision(7)),
    planned_filter: setting.filterDensity,
  };
}
