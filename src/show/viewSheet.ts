/** One camera through the window as text. */

import { stopName } from "../exposure/scales.ts";
import type { ExplainPart } from "../plan/explainLine.ts";
import type { Setting } from "../plan/planTypes.ts";
import type { Optics, ViewPlan } from "../plan/viewCamera.ts";
import { clockText, dateText, offsetText } from "./dateText.ts";
import {
  azimuthText,
  degreesText,
  elevationText,
  lightText,
  percentText,
  rangeText,
  spareText,
  stopsText,
} from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { roundedByName } from "./planJson.ts";
import { bulleted, type SheetOptions } from "./planSheet.ts";
import { remedyLines } from "./remedyText.ts";
import { fittedTable, folded } from "./textTable.ts";

export function viewSheet(view: ViewPlan, options: SheetOptions): string {
  const { plan } = view;
  const camera = plan.cameras[0]!;
  const { zone } = plan.site;
  const { paint, width } = options;
  const remedies = remedyLines(camera, zone, paint).map((line) => folded(line, width, "  "));
  const sections = [
    titleText(view, options),
    throughWindow(view, width),
    settingsText(view, options),
    remedies.length === 0 ? "" : [paint.strong("SUN IN OR NEAR THE FRAME"), ...remedies].join("\n"),
    view.explained === null ? "" : explainText(view.explained, zone, options),
    bulleted("NOTES", [...camera.notes, ...plan.notes], options),
    bulleted("CAUTIONS", plan.cautions, options),
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

function titleText({ plan, optics }: ViewPlan, { paint, width }: SheetOptions): string {
  const { opens, closes, zone } = plan.window;
  const camera = plan.cameras[0]!;
  const { horizontal, vertical } = camera.fieldDeg;
  const lines = [
    `${dateText(opens, zone)}, T-0 from ${clockText(opens, zone)} to ${clockText(closes, zone)} (${zone}, ${offsetText(opens, zone)})`,
    `axis ${azimuthText(camera.axis.azimuthDeg)}° ${elevationText(camera.axis.elevationDeg)}°, vehicle at ${rangeText(camera.axis.rangeM)}`,
    `${optics.focalMm} mm on ${optics.gate.widthMm} x ${optics.gate.heightMm} mm: ${horizontal.toFixed(1)}° x ${vertical.toFixed(1)}°${coverageWords(optics)}`,
  ];
  return [
    paint.strong(`${camera.id} at ${plan.site.name}`),
    ...lines.map((line) => folded(line, width, "  ")),
  ].join("\n");
}

function coverageWords({ coverage, vehicleInGate }: Optics): string {
  if (coverage === null) return "";
  const seen =
    vehicleInGate === null
      ? "no part of the vehicle"
      : `the vehicle from ${vehicleInGate.fromM.toFixed(0)} to ${vehicleInGate.toM.toFixed(0)} m above its foot`;
  return `, ${coverage.widthM.toPrecision(3)} x ${coverage.heightM.toPrecision(3)} m there; sees ${seen}`;
}

/** Rows of the table: enough to see the light move, not every T-0. */
const MOST_ROWS = 13;

function throughWindow(view: ViewPlan, width: number): string {
  const { plan, sunOnGate } = view;
  const { zone } = plan.site;
  const camera = plan.cameras[0]!;
  const rows = shownIndexes(plan.sun.length, plan.middleIndex).map((i) => {
    const light = camera.lightAt(i);
    const gate = sunOnGate[i]!;
    return [
      clockText(light.at, zone),
      azimuthText(plan.sun[i]!.azimuthDeg),
      elevationText(plan.sun[i]!.apparentElevationDeg),
      light.light,
      degreesText(light.phaseDeg, 0),
      percentText(light.litShare),
      lightText(light.bodyMeanCdM2),
      light.ev === null ? "-" : light.ev.toFixed(1),
      light.tableEv === null ? "-" : String(light.tableEv),
      degreesText(light.fromEdgeDeg),
      gate.xMm === null
        ? "behind"
        : isOnSheet(gate.xMm, gate.yMm!)
          ? `${gate.xMm.toFixed(0)},${gate.yMm!.toFixed(0)}`
          : "far",
    ];
  });
  const right = { align: "right" as const };
  const table = fittedTable(
    [
      { head: "T-0" },
      { head: "sun az", ...right },
      { head: "el", ...right },
      { head: "light" },
      { head: "phase", ...right },
      { head: "lit", ...right },
      { head: "cd/m2", ...right },
      { head: "EV", ...right },
      { head: "guide", ...right },
      { head: "edge°", ...right },
      { head: "sun mm", ...right },
    ],
    rows,
    width,
  ).trimEnd();
  const key = `Under ${plan.sky[0]!}: mean luminance and EV of the body; sun's angle outside the frame's edge, and where it falls on the gate's plane (right, up; mm).`;
  return `${table}\n${folded(key, width, "")}`;
}

/** Farther than this from the axis a point on the gate's plane says nothing. */
const FAR_MM = 999;
const isOnSheet = (xMm: number, yMm: number): boolean => Math.abs(xMm) <= FAR_MM && Math.abs(yMm) <= FAR_MM;

function shownIndexes(count: number, middle: number): number[] {
  const step = Math.max(1, Math.ceil((count - 1) / (MOST_ROWS - 1)));
  const indexes = new Set<number>([middle, count - 1]);
  for (let i = 0; i < count; i += step) indexes.add(i);
  return [...indexes].sort((a, b) => a - b);
}

function settingsText({ plan, optics }: ViewPlan, { paint, width }: SheetOptions): string {
  const camera = plan.cameras[0]!;
  const { zone } = plan.site;
  const rows = camera.bySky.map(({ sky, setting }) => settingRow(sky, setting, zone, paint, false));
  if (plan.sky.length > 1) rows.push(settingRow("one for all", camera.setting, zone, paint, true));
  const table = fittedTable(
    [
      { head: "sky" },
      { head: "stop" },
      { head: "shutter" },
      { head: "filter" },
      { head: "holds", align: "right" },
      { head: "spare", align: "right" },
      { head: "place", align: "right" },
      { head: "worst" },
    ],
    rows,
    width,
  ).trimEnd();
  const key =
    "Spare: smallest margin in stops, met at the worst. Place: the body's mean against where incident metering puts it.";
  return [
    paint.strong("SETTING"),
    table,
    folded(key, width, ""),
    ...opticsLines(optics).map((line) => folded(line, width, "  ")),
  ].join("\n");
}

function settingRow(
  sky: string,
  setting: Setting | null,
  zone: string,
  paint: Paint,
  namesSky: boolean,
): string[] {
  if (setting === null) return [sky, "none", "", "", "", "", "", "see notes"];
  const spare = spareText(setting.spareStops);
  return [
    sky,
    stopName(setting.stop),
    setting.shutterName,
    setting.filterDensity > 0 ? `ND${setting.filterDensity}` : "-",
    percentText(setting.holds),
    setting.spareStops < 0 ? paint.alarm(spare) : spare,
    stopsText(setting.fromPlaceStops),
    `${setting.worst.thing} ${setting.worst.end} ${clockText(setting.worst.at, zone)}${namesSky ? `, ${setting.worst.sky}` : ""}`,
  ];
}

function opticsLines(optics: Optics): string[] {
  const lines: string[] = [];
  if (optics.hyperfocalM !== null) {
    const far = optics.sharp?.farM ?? null;
    const sharp =
      optics.sharp === null
        ? ""
        : `; focused at the vehicle, sharp from ${rangeText(optics.sharp.nearM)} to ${far === null ? "infinity" : rangeText(far)}`;
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
  zone: string,
  { paint, width }: SheetOptions,
): string {
  const parts = explained.parts.map(({ title, lines }) => {
    const texts = lines.map(({ text, source }) =>
      folded(`  ${text}${source === null ? "" : ` [${source}]`}`, width, "      "),
    );
    return [paint.strong(title), ...texts].join("\n");
  });
  return [paint.strong(`HOW IT CAME ABOUT, T-0 ${clockText(explained.at, zone)}`), ...parts].join("\n");
}

/** The view as JSON: the camera's row of the plan, its optics, the sun on the gate, the explanation. */
export function viewJson(view: ViewPlan): string {
  const { plan, ...rest } = view;
  const { cameras, middleIndex: _, ...window } = plan;
  return `${JSON.stringify({ ...window, camera: cameras[0], ...rest }, roundedByName, 1)}\n`;
}
