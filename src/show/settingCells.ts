/** A setting as the cells of a table with a row per sky. */

import { stopName } from "../exposure/scales.ts";
import { isClipped } from "../exposure/solver.ts";
import type { Clock } from "../plan/clock.ts";
import type { Setting } from "../plan/planTypes.ts";
import { spareText } from "../plan/stopsText.ts";
import { percentText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { shutterText } from "./settingText.ts";
import { tPlusText } from "./sweepTimes.ts";
import type { Column } from "./textTable.ts";

export const SETTING_COLUMNS: readonly Column[] = [
  { head: "sky" },
  { head: "stop" },
  { head: "shutter" },
  { head: "filter" },
  { head: "holds", align: "right" },
  { head: "spare", align: "right" },
];

/** The cells of `SETTING_COLUMNS`. */
export function settingCells(sky: string, setting: Setting | null, paint: Paint): string[] {
  if (setting === null) return [sky, "none", "", "", "", ""];
  const spare = spareText(setting.spareStops);
  return [
    sky,
    stopName(setting.stop),
    shutterText(setting),
    setting.filterDensity > 0 ? `ND${setting.filterDensity}` : "-",
    percentText(setting.holds),
    isClipped(setting.spareStops) ? paint.alarm(spare) : spare,
  ];
}

/** "body over 18:25 T+62.0 s, haze": where a setting has its smallest margin. */
export function worstWords(setting: Setting | null, clock: Clock, namesSky: boolean): string {
  if (setting === null) return "see notes";
  const { thing, end, at, tPlusS, sky } = setting.worst;
  const tPlus = tPlusS === undefined ? "" : ` ${tPlusText(tPlusS)}`;
  return `${thing} ${end} ${clock.at(at)}${tPlus}${namesSky ? `, ${sky}` : ""}`;
}
