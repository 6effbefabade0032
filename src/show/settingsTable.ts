/** The sheet's main tables: a line per camera where the width allows, else settings and light apart. */

import type { Clock } from "../plan/clock.ts";
import type { CameraPlan, WindowPlan } from "../plan/planTypes.ts";
import { azimuthText, elevationText, rangeText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { lightWords, riskTimes, riskWords, settingLines } from "./settingText.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, cutText, fittedTable, tableWidth, textTable } from "./textTable.ts";

export interface MainTables {
  /** One table with everything, or the settings alone. */
  readonly settings: string;
  /** Light and sun, when they did not fit beside the settings. */
  readonly light: string | null;
}

export function mainTables(plan: WindowPlan, clock: Clock, { width, paint }: SheetOptions): MainTables {
  const columns = [ID, ...lightColumns(), ...settingColumns(plan), { head: "sun" }];
  const rows = plan.cameras.map((camera) => [
    idText(camera, paint),
    ...lightCells(plan, camera),
    ...settingCells(plan, camera, paint, " "),
    `${riskWords(camera, paint)} ${riskTimes(camera, clock)}`.trimEnd(),
  ]);
  if (tableWidth(columns, rows) <= width) return { settings: textTable(columns, rows), light: null };
  return { settings: settingsAlone(plan, width, paint), light: lightAlone(plan, width, paint) };
}

function settingsAlone(plan: WindowPlan, width: number, paint: Paint): string {
  const columns = [ID, ...settingColumns(plan)];
  const rowsOf = (join: string): string[][] =>
    plan.cameras.map((camera) => [idText(camera, paint), ...settingCells(plan, camera, paint, join)]);
  const inOneLine = rowsOf(" ");
  return tableWidth(columns, inOneLine) <= width
    ? textTable(columns, inOneLine)
    : fittedTable(columns, rowsOf("\n"), width);
}

function lightAlone(plan: WindowPlan, width: number, paint: Paint): string {
  const columns = [ID, ...lightColumns(), { head: "sun" }];
  const rows = plan.cameras.map((camera) => [
    idText(camera, paint),
    ...lightCells(plan, camera),
    riskWords(camera, paint),
  ]);
  return fittedTable(columns, rows, width);
}

const ID: Column = { head: "id" };

const lightColumns = (): Column[] => [
  { head: "axis" },
  { head: "range", align: "right" },
  { head: "opening" },
  { head: "middle" },
  { head: "close" },
];

const settingColumns = (plan: WindowPlan): Column[] => [
  ...plan.sky.map((sky) => ({ head: sky })),
  ...(plan.sky.length > 1 ? [{ head: "one for all" }] : []),
];

function lightCells(plan: WindowPlan, camera: CameraPlan): string[] {
  return [
    `${azimuthText(camera.axis.azimuthDeg)} ${elevationText(camera.axis.elevationDeg)}`,
    rangeText(camera.axis.rangeM),
    ...atThreeInstants(plan, camera).map(lightWords),
  ];
}

function settingCells(plan: WindowPlan, camera: CameraPlan, paint: Paint, join: string): string[] {
  const settings = camera.bySky.map(({ setting }) => setting);
  if (plan.sky.length > 1) settings.push(camera.setting);
  return settings.map((setting) => settingLines(setting, paint).join(join));
}

const LONGEST_ID = 24;

const idText = ({ id }: CameraPlan, paint: Paint): string => paint.strong(cutText(id, LONGEST_ID));

/** The camera's light under one sky (the first) at the opening, the middle and the close. */
export function atThreeInstants(plan: WindowPlan, camera: CameraPlan, skyIndex = 0): CameraPlan["light"] {
  const last = plan.sun.length - 1;
  return [0, plan.middleIndex, last].map((index) => camera.lightAt(skyIndex * plan.sun.length + index));
}
