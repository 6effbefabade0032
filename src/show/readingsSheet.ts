/** Meter readings against the model as text: row by row, by sky, by camera, what follows. */

import { evOfIlluminance, exposureValue } from "../exposure/exposureValue.ts";
import type {
  CameraVerdict,
  ComparedReading,
  ReadingsReport,
  ReadingVerdict,
  SkyVerdict,
} from "../plan/readings/readingTypes.ts";
import { isIncident } from "../plan/readings/readingValue.ts";
import { shortText } from "../site/sourcePlaces.ts";
import { skyName } from "../sky/daylight.ts";
import { clockText, dayText, yearText } from "./dateText.ts";
import { azimuthText, elevationText, lightText, stopsText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { cutText, fittedTable, folded } from "./textTable.ts";

/** Longer tables are for the other formats: here then only rows that are not used, up to as many. */
const MOST_ROWS = 200;
const MOST_NAME = 20;
const MOST_WORDS = 200;

export function readingsSheet(report: ReadingsReport, { width, paint }: SheetOptions): string {
  const { skies, cameras, notes } = report;
  return [
    `${paint.strong(`${report.site.name}: meter readings against the model`)}\n${folded(headText(report), width, "  ")}`,
    rowsText(report, width, paint),
    `${paint.strong("BY SKY")}\n${folded(BY_SKY, width, "")}\n\n${skyTable(skies, width)}`,
    ...(cameras.length === 0
      ? []
      : [`${paint.strong("BY CAMERA")}\n${folded(BY_CAMERA, width, "")}\n\n${cameraTable(cameras, width)}`]),
    `${paint.strong("SUGGESTED")}\n${suggestedText(report, width)}`,
    ...(notes.length === 0
      ? []
      : [`${paint.strong("NOTES")}\n${notes.map((note) => folded(`- ${note}`, width, "  ")).join("\n")}`]),
  ]
    .map((section) => `${section}\n`)
    .join("\n");
}

const BY_SKY =
  "Stops: reading over model, positive is brighter. Spread: median absolute deviation x 1.4826. Error: standard error of the median, 1.2533 spread / square root of the used readings.";
const BY_CAMERA = "What is left of each camera's readings over the median of their sky.";

function headText({ readings, site }: ReadingsReport): string {
  const count = (use: ComparedReading["use"]): number => readings.filter((one) => one.use === use).length;
  const times = readings.map(({ at }) => at.getTime());
  const ends = [times.reduce((a, b) => Math.min(a, b)), times.reduce((a, b) => Math.max(a, b))];
  const years = [...new Set(ends.map((ms) => yearText(new Date(ms), site.zone)))];
  return `${readings.length} reading${readings.length === 1 ? "" : "s"} of ${years.join(" to ")} (${site.zone}): ${count("used")} used, ${count("outlier")} outlier${count("outlier") === 1 ? "" : "s"}, ${count("shown")} shown only`;
}

const RIGHT = { align: "right" } as const;
const ROW_COLUMNS = [
  { head: "line", ...RIGHT },
  { head: "time" },
  { head: "sun", ...RIGHT },
  { head: "sky" },
  { head: "what" },
  { head: "from" },
  { head: "reading", ...RIGHT },
  { head: "model", ...RIGHT },
  { head: "stops", ...RIGHT },
  { head: "used" },
];

function rowsText({ readings, site }: ReadingsReport, width: number, paint: Paint): string {
  const isLong = readings.length > MOST_ROWS;
  const all = isLong ? readings.filter(({ use }) => use !== "used") : readings;
  const shown = all.slice(0, MOST_ROWS);
  const lines: string[] = [];
  if (isLong) {
    const left = all.length - shown.length;
    const more = left > 0 ? `, ${left} more of those left out` : "";
    lines.push(folded(`Rows that are not used${more}; all rows: --format csv or json.`, width, ""), "");
  }
  if (shown.length > 0) lines.push(rowTable(shown, site.zone, width, paint));
  const reasons = shown.filter(({ why }) => why !== null);
  const byWhy = new Map<string, number[]>();
  for (const { why, line } of reasons) byWhy.set(why!, [...(byWhy.get(why!) ?? []), line]);
  for (const [why, at] of byWhy) {
    lines.push(folded(`line${at.length === 1 ? "" : "s"} ${at.join(", ")}: ${why}`, width, "  "));
  }
  for (const { line, note } of reasons.filter(({ note }) => note !== "")) {
    lines.push(folded(`line ${line} notes: ${shortText(note, MOST_WORDS)}`, width, "  "));
  }
  return lines.join("\n").trimEnd();
}

/** A date once, where it changes. */
function rowTable(readings: readonly ComparedReading[], zone: string, width: number, paint: Paint): string {
  let date = "";
  const rows = readings.map((reading) => {
    const own = dayText(reading.at, zone);
    const time = own === date ? clockText(reading.at, zone) : `${own}\n${clockText(reading.at, zone)}`;
    date = own;
    return [
      String(reading.line),
      time,
      `${elevationText(reading.sunElevationDeg, 0)}°`,
      skyName(reading.sky),
      reading.what,
      fromText(reading),
      lightIn(reading, reading.light, true),
      lightIn(reading, reading.modelLight, false),
      stopsText(reading.stops),
      useText(reading, paint),
    ];
  });
  return fittedTable(ROW_COLUMNS, rows, width).trimEnd();
}

const useText = ({ use }: ComparedReading, paint: Paint): string =>
  use === "used" ? "yes" : use === "outlier" ? paint.alarm("OUTLIER") : "no";

function fromText({ camera, azimuthDeg, elevationDeg }: ComparedReading): string {
  if (camera !== null) return cutText(camera, MOST_NAME);
  if (azimuthDeg === null) return "-";
  const up = elevationDeg === null ? "" : ` ${elevationText(elevationDeg, 0)}`;
  return `${azimuthText((azimuthDeg + 360) % 360, 0)}°${up}`;
}

/** In the unit the reading came in; the model's beside it needs none. */
function lightIn({ unit, what }: ComparedReading, light: number, hasUnit: boolean): string {
  if (unit !== "EV") return `${lightText(light)}${hasUnit ? ` ${unit}` : ""}`;
  const ev = isIncident(what) ? evOfIlluminance(light) : exposureValue({ luminanceCdM2: light });
  return `${hasUnit ? "EV " : ""}${ev.toFixed(1)}`;
}

const VERDICT_COLUMNS = [
  { head: "readings", ...RIGHT },
  { head: "used", ...RIGHT },
  { head: "outliers", ...RIGHT },
  { head: "median", ...RIGHT },
  { head: "spread", ...RIGHT },
  { head: "error", ...RIGHT },
  { head: "in file", ...RIGHT },
  { head: "suggested", ...RIGHT },
];

const skyTable = (skies: readonly SkyVerdict[], width: number): string =>
  verdictTable(
    "sky",
    skies.map((one) => [one.sky, one] as const),
    width,
  );

const cameraTable = (cameras: readonly CameraVerdict[], width: number): string =>
  verdictTable(
    "camera",
    cameras.map((one) => [cutText(one.id, MOST_NAME), one] as const),
    width,
  );

function verdictTable(
  head: string,
  verdicts: readonly (readonly [string, ReadingVerdict])[],
  width: number,
): string {
  const rows = verdicts.map(([name, verdict]) => [name, ...verdictCells(verdict)]);
  const table = fittedTable([{ head }, ...VERDICT_COLUMNS], rows, width).trimEnd();
  const whys = verdicts.flatMap(([name, { why }]) =>
    why === null ? [] : [folded(`${name}: ${why}`, width, "  ")],
  );
  return [table, ...whys].join("\n");
}

/** A spread is never told as none, an error never as smaller than it is. */
function verdictCells(verdict: ReadingVerdict): string[] {
  const { medianStops, spreadStops, errorStops, inFileStops, suggestedStops } = verdict;
  return [
    String(verdict.readings),
    String(verdict.used),
    String(verdict.outliers),
    medianStops === null ? "-" : stopsText(medianStops),
    spreadStops === null || verdict.used < 2 ? "-" : upText(spreadStops),
    errorStops === null ? "-" : `±${upText(errorStops)}`,
    inFileStops === null ? "-" : stopsText(inFileStops),
    suggestedStops === null ? "-" : stopsText(suggestedStops),
  ];
}

const upText = (stops: number): string => (Math.ceil(stops * 10 - 1e-6) / 10).toFixed(1);

function suggestedText({ suggested, skies, cameras }: ReadingsReport, width: number): string {
  const bySky = Object.entries(suggested.bySky);
  const byCamera = Object.entries(suggested.byCamera);
  if (bySky.length + byCamera.length === 0) return "No correction follows from these readings.";
  const errors = new Map<string, number | null>(skies.map(({ sky, errorStops }) => [sky, errorStops]));
  const cameraErrors = new Map<string, number | null>(cameras.map(({ id, errorStops }) => [id, errorStops]));
  const line = (name: string, stops: number, error: number | null | undefined): string =>
    `  ${name}: ${stopsText(stops)}${error === null || error === undefined ? "" : ` ±${upText(error)}`} stops`;
  return [
    folded(
      "For `corrections` of the site file, stops that are added to the model's light; --write puts them there.",
      width,
      "",
    ),
    ...bySky.map(([state, stops]) => line(state, stops, errors.get(state))),
    ...byCamera.map(([id, stops]) => line(`camera ${cutText(id, MOST_NAME)}`, stops, cameraErrors.get(id))),
  ].join("\n");
}
