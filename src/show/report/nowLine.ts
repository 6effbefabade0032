/** One line under a picture: the T-0 it shows, and where the camera stands then. */

import type { Clock } from "../../plan/clock.ts";
import { ONE_FOR_ALL } from "../../plan/settingWords.ts";
import { type Chosen, type LiveRow, t0Text } from "./liveRow.ts";

export function nowLine(row: LiveRow, chosen: Chosen, sky: string, target: string, clock: Clock): string {
  const spare = row.spareStops === null ? "" : ` · spare ${row.spare}${row.isClipped ? ", CLIPPED" : ""}`;
  const setting =
    row.spareStops === null
      ? "no setting: tones by the body alone"
      : `${target === ONE_FOR_ALL ? "" : "set for "}${target}: ${row.setting}`;
  return `T-0 ${t0Text(chosen.ms, clock)}, ${sky}: ${row.light} light, ${row.sunWords} · ${setting}${spare}`;
}
