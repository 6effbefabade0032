/** The sheet's main table: a row per camera, in one line where the width allows, else stacked. */

import type { CameraPlan, WindowPlan } from "../plan/planTypes.ts";
import { azimuthText, elevationText, rangeText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { lightWords, riskLines, settingLines } from "./settingText.ts";
import { type Column, textTable, visibleLength } from "./textTable.ts";

export function settingsTable(plan: WindowPlan, width: number, paint: Paint): string {
  const oneLine = textTable(
    columns(plan, true),
    plan.cameras.map((camera) => row(plan, camera, paint, true)),
  );
  if (Math.max(...oneLine.split("\n").map(visibleLength)) <= width) return oneLine;
  return textTable(
    columns(plan, false),
    plan.cameras.map((camera) => row(plan, camera, paint, false)),
    { ruled: true },
  );
}

function columns(plan: WindowPlan, inOneLine: boolean): Column[] {
  const settings = plan.sky.map((sky) => ({ head: sky }));
  const all = plan.sky.length > 1 ? [{ head: "one for all" }] : [];
  const light = inOneLine ? [{ head: "opening" }, { head: "middle" }, { head: "close" }] : [{ head: "light" }];
  const axis = inOneLine ? [{ head: "axis" }, { head: "range", align: "right" as const }] : [];
  return [{ head: "camera" }, ...axis, ...light, ...settings, ...all, { head: "sun" }];
}

function row(plan: WindowPlan, camera: CameraPlan, paint: Paint, inOneLine: boolean): string[] {
  const { zone } = plan.site;
  const axis = `${azimuthText(camera.axis.azimuthDeg)} ${elevationText(camera.axis.elevationDeg)}`;
  const range = rangeText(camera.axis.rangeM);
  const light = atThreeInstants(plan, camera).map(lightWords);
  const settings = camera.bySky.map(({ setting }) => settingLines(setting, paint));
  const all = plan.sky.length > 1 ? [settingLines(camera.setting, paint)] : [];
  const sun = riskLines(camera, zone, paint);
  if (inOneLine) {
    const cells = [...settings, ...all].map((lines) => lines.join(" "));
    return [paint.strong(camera.id), axis, range, ...light, ...cells, sun.join(" ")];
  }
  const stacked = [...settings, ...all].map((lines) => lines.join("\n"));
  return [`${paint.strong(camera.id)}\n${axis}\n${range}`, light.join("\n"), ...stacked, sun.join("\n")];
}

/** The camera's light under the first sky at the opening, the middle and the close. */
export function atThreeInstants(plan: WindowPlan, camera: CameraPlan): CameraPlan["light"] {
  const last = plan.sun.length - 1;
  return [0, plan.middleIndex, last].map((index) => camera.light[index]!);
}
