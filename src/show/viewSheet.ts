/** One camera through the window as text. */

import { type Clock, makeClock } from "../plan/clock.ts";
import type { ExplainPart } from "../plan/explainLine.ts";
import type { Setting } from "../plan/planTypes.ts";
import type { Optics, ViewPlan } from "../plan/viewCamera.ts";
import {
  azimuthText,
  degreesText,
  elevationText,
  lightText,
  percentText,
  rangeText,
  stopsText,
} from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { roundedByName } from "./planJson.ts";
import { bulleted, shownElevationDeg, windowText } from "./planSheet.ts";
import { remedyLines } from "./remedyText.ts";
import { SETTING_COLUMNS, settingCells, worstWords } from "./settingCells.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, fittedTable, folded } from "./textTable.ts";

export function viewSheet(view: ViewPlan, options: SheetOptions): string {
  const { plan } = view;
  const camera = plan.cameras[0]!;
  const { paint, width } = options;
  const clock = makeClock(plan.site.zone, plan.window.opens, plan.window.closes);
  const remedies = remedyLines(camera, clock, paint).map((line) => folded(line, width, "  "));
  const sections = [
    titleText(view, options),
    throughWindow(view, clock, width),
    settingsText(view, clock, options),
    remedies.length === 0 ? "" : [paint.strong("SUN IN OR NEAR THE FRAME"), ...remedies].join("\n"),
    view.explained === null ? "" : explainText(view.explained, clock, options),
    bulleted("NOTES", [...camera.notes, ...plan.notes], options),
    bulleted("CAUTIONS", plan.cautions, options),
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

function titleText({ plan, optics }: ViewPlan, { paint, width }: SheetOptions): string {
  const camera = plan.cameras[0]!;
  const { horizontal, vertical } = camera.fieldDeg;
  const lines = [
    windowText(plan),
    `axis ${azimuthText(camera.axis.azimuthDeg)}° ${elevationText(camera.axis.elevationDeg)}°, target at ${rangeText(camera.axis.rangeM)}`,
    `${optics.focalMm} mm on ${optics.gate.widthMm} x ${optics.gate.heightMm} mm: ${horizontal.toFixed(1)}° x ${vertical.toFixed(1)}°${coverageWords(optics)}`,
  ];
  return [
    paint.strong(`${camera.id} at ${plan.site.name}`),
    ...lines.map((line) => folded(line, width, "  ")),
  ].join("\n");
}

function coverageWords({ coverage, vehicleInGate, hasVehicle }: Optics): string {
  if (coverage === null) return "";
  const size = `, ${coverage.widthM.toPrecision(3)} x ${coverage.heightM.toPrecision(3)} m there`;
  if (!hasVehicle) return size;
  const seen =
    vehicleInGate === null
      ? "no part of the vehicle"
      : `the vehicle from ${vehicleInGate.fromM.toFixed(0)} to ${vehicleInGate.toM.toFixed(0)} m above its foot`;
  return `${size}; sees ${seen}`;
}

/** Rows of the table: enough to see the light move, not every T-0. */
const MOST_ROWS = 13;

const THROUGH_COLUMNS: readonly Column[] = [
  { head: "T-0" },
  { head: "sun az", align: "right" },
  { head: "el", align: "right" },
  { head: "light" },
  ...["phase", "lit", "cd/m2", "EV", "guide", "edge°", "x mm", "y mm"].map((head) => ({
    head,
    align: "right" as const,
  })),
];

function throughWindow(view: ViewPlan, clock: Clock, width: number): string {
  const { plan } = view;
  const rows = shownIndexes(plan.sun.length, plan.middleIndex).map((i) => throughRow(view, i, clock));
  const table = fittedTable(THROUGH_COLUMNS, rows, width).trimEnd();
  const sweeps = plan.cameras[0]!.sweep === null ? "" : " All for T+0; padstop sweep follows the vehicle.";
  const key = `Under ${plan.sky[0]!}: mean luminance and EV of the body; the sun's angle outside the frame's edge, and where it falls on the gate's plane, right and up of the axis.${sweeps}`;
  return `${table}\n${folded(key, width, "")}`;
}

function throughRow({ plan, sunOnGate }: ViewPlan, index: number, clock: Clock): string[] {
  const light = plan.cameras[0]!.lightAt(index);
  const sun = plan.sun[index]!;
  const { xMm, yMm } = sunOnGate[index]!;
  const isUp = sun.apparentElevationDeg > -0.3;
  return [
    clock.at(light.at),
    azimuthText(sun.azimuthDeg),
    elevationText(shownElevationDeg(sun)),
    light.light,
    degreesText(light.phaseDeg, 0),
    percentText(light.litShare),
    light.bodyMeanCdM2 === null ? "-" : lightText(light.bodyMeanCdM2),
    light.ev === null ? "-" : light.ev.toFixed(1),
    light.tableEv === null ? "-" : String(light.tableEv),
    isUp ? degreesText(light.fromEdgeDeg) : "-",
    isUp ? gateText(xMm) : "-",
    isUp ? gateText(yMm) : "-",
  ];
}

/** Farther than this from the axis a point on the gate's plane says nothing. */
const FAR_MM = 999;

function gateText(mm: number | null): string {
  if (mm === null) return "behind";
  return Math.abs(mm) > FAR_MM ? "far" : degreesText(mm, 0);
}

function shownIndexes(count: number, middle: number): number[] {
  const step = Math.max(1, Math.ceil((count - 1) / (MOST_ROWS - 1)));
  const indexes = new Set<number>([middle, count - 1]);
  for (let i = 0; i < count; i += step) indexes.add(i);
  return [...indexes].sort((a, b) => a - b);
}

const COLUMNS: readonly Column[] = [...SETTING_COLUMNS, { head: "place", align: "right" }, { head: "worst" }];

function settingsText({ plan, optics }: ViewPlan, clock: Clock, { paint, width }: SheetOptions): string {
  const camera = plan.cameras[0]!;
  const rows = camera.bySky.map(({ sky, setting }) => settingRow(sky, setting, clock, paint, false));
  if (plan.sky.length > 1) rows.push(settingRow("one for all", camera.setting, clock, paint, true));
  const key =
    "Spare: smallest margin in stops, met at the worst. Place: the body's mean against where incident metering puts it.";
  return [
    paint.strong("SETTING"),
    fittedTable(COLUMNS, rows, width).trimEnd(),
    folded(key, width, ""),
    ...opticsLines(optics).map((line) => folded(line, width, "  ")),
  ].join("\n");
}

function settingRow(
  sky: string,
  setting: Setting | null,
  clock: Clock,
  paint: Paint,
  namesSky: boolean,
): string[] {
  return [
    ...settingCells(sky, setting, paint),
    setting === null ? "" : stopsText(setting.fromPlaceStops),
    worstWords(setting, clock, namesSky),
  ];
}

function opticsLines(optics: Optics): string[] {
  const lines: string[] = [];
  if (optics.hyperfocalM !== null) {
    const far = optics.sharp?.farM ?? null;
    const sharp =
      optics.sharp === null
        ? ""
        : `; focused at the target, sharp from ${rangeText(optics.sharp.nearM)} to ${far === null ? "infinity" : rangeText(far)}`;
    lines.push(`hyperfocal distance ${rangeText(optics.hyperfocalM)}${sharp}`);
  }
  const small = [
    optics.airyMm === null ? null : `diffraction disc ${optics.airyMm.toFixed(3)} mm`,
    optics.imageMotionMm === null ? null : `smear by motion ${optics.imageMotionMm.toFixed(3)} mm`,
    `sun's image ${Number(optics.sunImageMm.toPrecision(2))} mm`,
  ].filter((part) => part !== null);
  return [...lines, small.join(", ")];
}

function explainText(
  explained: { readonly at: Date; readonly parts: readonly ExplainPart[] },
  clock: Clock,
  { paint, width }: SheetOptions,
): string {
  const parts = explained.parts.map(({ title, lines }) => {
    const texts = lines.map(({ text, source }) =>
      folded(`  ${text}${source === null ? "" : ` [${source}]`}`, width, "      "),
    );
    return [paint.strong(title), ...texts].join("\n");
  });
  return [paint.strong(`HOW IT CAME ABOUT, T-0 ${clock.at(explained.at)}`), ...parts].join("\n");
}

/** The view as JSON: the camera's row of the plan, its optics, the sun on the gate, the explanation. */
export function viewJson(view: ViewPlan): string {
  const { plan, ...rest } = view;
  const { cameras, middleIndex: _, ...window } = plan;
  return `${JSON.stringify({ ...window, camera: cameras[0], ...rest }, roundedByName, 1)}\n`;
}
