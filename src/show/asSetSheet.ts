/** What was set on each camera and what it does, as text, JSON and CSV. */

import { isClipped } from "../exposure/solver.ts";
import { makeClock } from "../plan/clock.ts";
import type { AsSetCamera, AsSetReport } from "../plan/readings/formTypes.ts";
import { spareText } from "../plan/stopsText.ts";
import { shortText } from "../site/sourcePlaces.ts";
import { csvText } from "./csvText.ts";
import { shortDateText, windowRangeText } from "./dateText.ts";
import { percentText, stopsText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { roundedByName } from "./planJson.ts";
import { worstWords } from "./settingCells.ts";
import { settingName } from "./settingText.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, cutText, fittedTable, folded, tableWidth } from "./textTable.ts";

const MOST_NAME = 20;
/** People's own words come from a file: cut, and made safe for a terminal. */
const MOST_WORDS = 300;
const COLUMNS: readonly Column[] = [
  { head: "camera" },
  { head: "planned" },
  { head: "spare", align: "right" },
  { head: "set" },
  { head: "off", align: "right" },
  { head: "holds", align: "right" },
  { head: "spare", align: "right" },
  { head: "worst" },
];

export function asSetSheet(report: AsSetReport, { width, paint }: SheetOptions): string {
  const { cameras, missing, notFilledIn } = report;
  const rows = cameras.filter(({ set }) => set !== null).map((camera) => row(report, camera, paint));
  const notes = [
    ...absentNotes(missing, "no row in the form"),
    ...absentNotes(notFilledIn, "not filled in"),
    ...cameras.filter(({ id }) => !missing.includes(id) && !notFilledIn.includes(id)).flatMap(cameraNotes),
  ];
  return [
    `${paint.strong(`${report.site.name}: as set`)}\n${folded(headText(report), width, "  ")}`,
    rows.length === 0 ? "No camera is filled in." : rowsText(rows, width),
    ...(notes.length === 0
      ? []
      : [`${paint.strong("NOTES")}\n${notes.map((note) => folded(`- ${note}`, width, "  ")).join("\n")}`]),
  ]
    .map((section) => `${section}\n`)
    .join("\n");
}

/** On a narrow sheet the worst stands below what was set. */
function rowsText(rows: readonly (readonly string[])[], width: number): string {
  if (tableWidth(COLUMNS, rows, 1) <= width) return fittedTable(COLUMNS, rows, width).trimEnd();
  const narrow = rows.map((cells) =>
    cells.slice(0, -1).map((cell, i) => (i === SET_COLUMN ? `${cell}\n${cells.at(-1)}` : cell)),
  );
  return fittedTable(COLUMNS.slice(0, -1), narrow, width).trimEnd();
}

const SET_COLUMN = COLUMNS.findIndex(({ head }) => head === "set");

function headText({ window, t0, sky, cameras }: AsSetReport): string {
  const set = cameras.filter((camera) => camera.set !== null);
  const clipped = set.filter((camera) => isClipped(camera.set!.spareStops)).length;
  const changed = set.filter(({ brighterStops }) => brighterStops !== null && isOff(brighterStops)).length;
  const clock = makeClock(window.zone, window.opens, window.closes);
  const when =
    t0 === null
      ? `T-0 from ${windowRangeText(window, window.zone)}`
      : `T-0 ${shortDateText(t0, window.zone)} ${clock.at(t0)}`;
  return `${when} (${window.zone}), sky ${sky.join(", ")}: ${set.length} of ${cameras.length} cameras set, ${changed} not as planned, ${clipped} clipped. Off: stops the picture is brighter (+) or darker (-) than planned.`;
}

/** Less is rounding of a name. */
const isOff = (stops: number): boolean => Math.abs(stops) >= 0.05;

function row(
  { window, sky }: AsSetReport,
  { id, planned, set, brighterStops }: AsSetCamera,
  paint: Paint,
): string[] {
  const clock = makeClock(window.zone, window.opens, window.closes);
  const spare = spareText(set!.spareStops);
  const off =
    brighterStops === null ? "-" : isOff(brighterStops) ? paint.warn(stopsText(brighterStops)) : "0.0";
  return [
    cutText(id, MOST_NAME),
    planned === null ? "none" : settingName(planned),
    planned === null ? "-" : spareText(planned.spareStops),
    planned !== null && settingName(planned) === settingName(set!) ? "as planned" : settingName(set!),
    off,
    percentText(set!.holds),
    isClipped(set!.spareStops) ? paint.alarm(spare) : spare,
    worstWords(set, clock, sky.length > 1),
  ];
}

const absentNotes = (ids: readonly string[], what: string): string[] =>
  ids.length === 0 ? [] : [`${what}: ${ids.map((id) => cutText(id, MOST_NAME)).join(", ")}`];

function cameraNotes({ id, notes, setBy, setAt, note }: AsSetCamera): string[] {
  const by = [setBy === null ? null : `by ${setBy}`, setAt === null ? null : `at ${setAt}`].filter(
    (part) => part !== null,
  );
  const own = [...notes, ...(by.length > 0 ? [`set ${by.join(" ")}`] : []), ...(note === null ? [] : [note])];
  const said = own.map((words) => shortText(words, MOST_WORDS));
  return said.length === 0 ? [] : [`${cutText(id, MOST_NAME)}: ${said.join("; ")}`];
}

export const asSetJson = (report: AsSetReport): string => `${JSON.stringify(report, roundedByName, 1)}\n`;

const SETTING_FIELDS = [
  "stop",
  "shutterS",
  "shutterAngleDeg",
  "filterDensity",
  "holds",
  "spareStops",
] as const;
const FIELDS = [
  "camera",
  ...SETTING_FIELDS.map((field) => plannedField(field)),
  ...SETTING_FIELDS,
  "brighterStops",
  "worstThing",
  "worstUtc",
  "worstEnd",
  "setBy",
  "setAt",
  "note",
  "notes",
];

function plannedField(field: string): string {
  return `planned${field[0]!.toUpperCase()}${field.slice(1)}`;
}

export const asSetCsv = ({ cameras }: AsSetReport): string =>
  csvText(
    FIELDS,
    cameras.map(({ id, planned, set, brighterStops, setBy, setAt, note, notes }) => ({
      camera: id,
      ...Object.fromEntries(
        SETTING_FIELDS.map((field) => [plannedField(field), roundedByName(field, planned?.[field] ?? null)]),
      ),
      ...Object.fromEntries(
        SETTING_FIELDS.map((field) => [field, roundedByName(field, set?.[field] ?? null)]),
      ),
      brighterStops: roundedByName("brighterStops", brighterStops),
      worstThing: set?.worst.thing ?? null,
      worstUtc: set?.worst.at.toISOString() ?? null,
      worstEnd: set?.worst.end ?? null,
      setBy,
      setAt,
      note,
      notes: notes.join("; "),
    })),
  );
