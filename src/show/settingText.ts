/** A setting, a light and a sun risk as the words of a sheet's cells. */

import { stopName } from "../exposure/scales.ts";
import type { CameraPlan, LightSample, Setting } from "../plan/planTypes.ts";
import { wallSpan } from "../plan/wallClock.ts";
import { degreesText, percentText, spareText } from "./numbers.ts";
import type { Paint } from "./paint.ts";

/** "f/5.6", "1/288 ND0.9", "+1.1 100 %" as the lines of a cell. */
export function settingLines(setting: Setting | null, paint: Paint): string[] {
  if (setting === null) return ["none"];
  const filter = setting.filterDensity > 0 ? ` ND${setting.filterDensity}` : "";
  const margin = `${spareText(setting.spareStops)} ${percentText(setting.holds)}`;
  return [
    stopName(setting.stop),
    `${setting.shutterName}${filter}`,
    setting.spareStops < 0 ? paint.alarm(margin) : margin,
  ];
}

/** "front 14.7 (15)": light, model EV, guide EV. */
export function lightWords(sample: LightSample): string {
  const ev = sample.ev === null ? "-" : sample.ev.toFixed(1);
  return `${sample.light} ${ev} (${sample.tableEv ?? "-"})`;
}

/** "IN FRAME", "18:28-19:40" and so on, as lines. */
export function riskLines(plan: CameraPlan, zone: string, paint: Paint): string[] {
  const { sun } = plan;
  if (sun.risk === "in-frame") return [paint.alarm("IN FRAME"), ...sun.inFrame.map((span) => wallSpan(span, zone))];
  if (sun.risk === "near-frame") {
    return [paint.warn("near frame"), ...sun.nearFrame.map((span) => wallSpan(span, zone))];
  }
  if (sun.risk === "down" || sun.closest === null) return ["sun down"];
  return ["clear", `${degreesText(Math.floor(sun.closest.fromEdgeDeg), 0)}° off`];
}
