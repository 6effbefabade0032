/** Settings over later days: which cameras someone must go out to again. */

import { isClipped } from "../exposure/solver.ts";
import { makeClock } from "../plan/clock.ts";
import type { Scrub, ScrubCamera, ScrubDay } from "../plan/rank/scrub.ts";
import { clippedText, spareText } from "../plan/stopsText.ts";
import type { SkippedDay } from "../site/dailyWindows.ts";
import type { Site, Window } from "../site/types.ts";
import { csvText } from "./csvText.ts";
import { dayText, shortDateText, windowRangeText } from "./dateText.ts";
import { roundedByName } from "./planJson.ts";
import { bulleted } from "./planSheet.ts";
import { settingLines, settingName } from "./settingText.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, fittedTable, folded, tableWidth } from "./textTable.ts";

const MARKS = { keep: "", thin: "*", change: "!", lost: "x", unset: "" } as const;

export interface ScrubContext {
  readonly site: Site;
  readonly sky: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export function scrubSheet(scrub: Scrub, context: ScrubContext, options: SheetOptions): string {
  const { paint, width } = options;
  const { site } = context;
  const { name } = scrub.first;
  const title = `${site.name}${name === null ? "" : ` · ${name}`} · the same window on ${scrub.later.length} later day${scrub.later.length === 1 ? "" : "s"}`;
  const what = `Set for ${windowRangeText(scrub.first, site.zone)}; sky ${context.sky.join(", ")}; ${site.zone}`;
  const key =
    "Spare in stops of the first day's setting on each later day. * it holds, but another setting has more; ! it clips and another holds; x no setting holds; # the sun enters the frame that day, + comes near it, though not on the first.";
  const sections = [
    `${paint.strong(title)}\n${folded(what, width, "  ")}`,
    `${paint.strong("SETTINGS OVER THE DAYS")}\n${folded(key, width, "")}\n\n${tableText(scrub, site, options)}`,
    bulleted("WHO MUST GO OUT AGAIN", goOutLines(scrub, site), options),
    bulleted("SUN ON LATER DAYS", sunLines(scrub, site), options),
    bulleted("NOTES", context.notes, options),
    bulleted("CAUTIONS", context.cautions, options),
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

/** As many days side by side as the width takes, the others in tables below. */
function tableText(scrub: Scrub, { zone }: Site, { width, paint }: SheetOptions): string {
  const { cameras, first, later } = scrub;
  const tables: string[] = [];
  for (let from = 0; from === 0 || from < later.length; ) {
    const head: Column[] = [{ head: "id" }, ...(from === 0 ? [{ head: dayHead(first, zone) }] : [])];
    const lead = cameras.map((camera) => [
      paint.strong(camera.id),
      ...(from === 0 ? [settingLines(camera.setting, paint).join("\n")] : []),
    ]);
    let to = later.length;
    const columnsTo = (end: number): Column[] => [
      ...head,
      ...later.slice(from, end).map((window) => ({ head: dayHead(window, zone), align: "right" as const })),
    ];
    const rowsTo = (end: number): string[][] =>
      cameras.map((camera, i) => [
        ...lead[i]!,
        ...camera.days.slice(from, end).map((day) => dayCell(camera, day, paint.alarm)),
      ]);
    while (to > from + 1 && tableWidth(columnsTo(to), rowsTo(to), 1) > width) to--;
    tables.push(fittedTable(columnsTo(to), rowsTo(to), width).trimEnd());
    from = to;
  }
  return tables.join("\n\n");
}

/** "Mon 19 Apr". */
const dayHead = ({ opens }: Window, zone: string): string =>
  shortDateText(opens, zone).split(" ").slice(0, 3).join(" ").replace(" ", "\n");

function dayCell(camera: ScrubCamera, day: ScrubDay, alarm: (text: string) => string): string {
  const spare = day.spareStops === null ? "-" : spareText(day.spareStops);
  const text = `${spare}${MARKS[day.word]}${newSun(camera, day)}`;
  return day.word === "change" || day.word === "lost" ? alarm(text) : text;
}

/** A warning the first day did not have. */
function newSun(camera: ScrubCamera, { sun }: ScrubDay): "#" | "+" | "" {
  if (sun.risk === "in-frame") return camera.sun.risk === "in-frame" ? "" : "#";
  const isNew = camera.sun.risk !== "in-frame" && camera.sun.risk !== "near-frame";
  return sun.risk === "near-frame" && isNew ? "+" : "";
}

/** Cameras to be set anew, with the first day of it; then those that no setting can hold, and from when. */
function goOutLines({ cameras, later }: Scrub, { zone }: Site): string[] {
  const dayName = (index: number): string => dayText(later[index]!.opens, zone);
  const changes = cameras.flatMap(({ id, setting, days }) => {
    const index = days.findIndex(({ word }) => word === "change");
    if (index === -1 || setting === null) return [];
    const day = days[index]!;
    return [
      `${id}: for ${dayName(index)} set ${settingName(day.setting!)} (${spareText(day.setting!.spareStops)}); the first day's clips by ${clippedText(day.spareStops!)} stops`,
    ];
  });
  const first = namesOf(cameras.filter(({ setting }) => setting !== null && isClipped(setting.spareStops)));
  const lost = new Map<string, ScrubCamera[]>();
  for (const camera of cameras) {
    if (camera.setting === null || isClipped(camera.setting.spareStops)) continue;
    const days = camera.days.flatMap(({ word }, i) => (word === "lost" ? [i] : []));
    if (days.length === 0) continue;
    const isToTheEnd = days.length > 1 && days.length === later.length - days[0]!;
    const when = isToTheEnd ? `from ${dayName(days[0]!)}` : `on ${days.map(dayName).join(", ")}`;
    lost.set(when, [...(lost.get(when) ?? []), camera]);
  }
  return [
    ...(changes.length > 0
      ? changes
      : ["nobody to set anew: where another setting would hold, the first day's holds too"]),
    ...(first === "" ? [] : [`on the first day already no setting holds the whole window: ${first}`]),
    ...[...lost].map(([when, ones]) => `${when} no setting holds the whole window: ${namesOf(ones)}`),
  ];
}

const namesOf = (cameras: readonly ScrubCamera[]): string => cameras.map(({ id }) => id).join(", ");

function sunLines({ cameras, later }: Scrub, { zone }: Site): string[] {
  return cameras.flatMap((camera) =>
    camera.days.flatMap((day, i) => {
      const mark = newSun(camera, day);
      if (mark === "") return [];
      const { opens, closes } = later[i]!;
      const clock = makeClock(zone, opens, closes);
      const spans = (mark === "#" ? day.sun.inFrame : day.sun.nearFrame).map((span) => clock.span(span));
      return [
        `${camera.id}: ${mark === "#" ? "in the frame" : "near the frame"} ${shortDateText(opens, zone)} ${spans.join(", ")}`,
      ];
    }),
  );
}

export function scrubJson(scrub: Scrub, context: ScrubContext, skipped: readonly SkippedDay[]): string {
  const { site, sky, notes, cautions } = context;
  const head = { site: { name: site.name, zone: site.zone, ...site.place }, sky };
  return `${JSON.stringify({ ...head, ...scrub, skippedDays: skipped, notes, cautions }, roundedByName, 1)}\n`;
}

const FIELDS = [
  "id",
  "opensUtc",
  "closesUtc",
  "word",
  "spareStops",
  "stop",
  "shutterS",
  "shutterName",
  "filterDensity",
  "ownSpareStops",
  "sunRisk",
] as const;

/** A row per camera and day; the first day's are its settings as planned. */
export function scrubCsv({ cameras, first, later }: Scrub): string {
  const rows = cameras.flatMap((camera) => {
    const own = {
      word: "set",
      spareStops: camera.setting?.spareStops ?? null,
      setting: camera.setting,
      sun: camera.sun,
    };
    return [own, ...camera.days].map((day, i) => rowOf(camera.id, i === 0 ? first : later[i - 1]!, day));
  });
  return csvText(FIELDS, rows);
}

function rowOf(
  id: string,
  window: Window,
  day: Omit<ScrubDay, "word"> & { readonly word: string },
): Readonly<Record<string, unknown>> {
  const values: Readonly<Record<(typeof FIELDS)[number], unknown>> = {
    id,
    opensUtc: window.opens.toISOString(),
    closesUtc: window.closes.toISOString(),
    word: day.word,
    spareStops: day.spareStops,
    stop: day.setting?.stop ?? null,
    shutterS: day.setting?.shutterS ?? null,
    shutterName: day.setting?.shutterName ?? null,
    filterDensity: day.setting?.filterDensity ?? null,
    ownSpareStops: day.setting?.spareStops ?? null,
    sunRisk: day.sun.risk,
  };
  return Object.fromEntries(FIELDS.map((field) => [field, roundedByName(field, values[field])]));
}
