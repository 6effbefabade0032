/** The setting that serves each tracker's sweep, when to change it, and what the mount has to do. */

import { clamp } from "../base/units.ts";
import { type Clock, makeClock } from "../plan/clock.ts";
import type { Setting } from "../plan/planTypes.ts";
import { UNKNOWN_LOOK } from "../plan/sweep/sweepNotes.ts";
import type { SettingChange, SlewRates, SweepPlan, TrackerSweep } from "../plan/sweep/sweepTypes.ts";
import { azimuthText, elevationText, rangeText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { SETTING_COLUMNS, settingCells, worstWords } from "./settingCells.ts";
import { settingName } from "./settingText.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { tPlusName, tPlusSpansText, tPlusText } from "./sweepTimes.ts";
import { type Column, cutText, fittedTable, folded, tableWidth } from "./textTable.ts";

const LONGEST_ID = 24;
/** Left of an id where the table has no room for more. */
const SHORT_ID = 12;
const WORST: Column = { head: "worst" };
/** Least columns for what a setting meets at its worst. */
const WORST_WIDTH = 16;

export function sweepSettingsText(plan: SweepPlan, { width, paint }: SheetOptions): string {
  const clock = makeClock(plan.site.zone, plan.window.opens, plan.window.closes);
  const isAlone = plan.trackers.length === 1;
  const told = plan.trackers.flatMap((tracker) => rowsOf(plan, tracker, clock, paint));
  const idMost = width - tableWidth(SETTING_COLUMNS, cellsOf(told), 1) - WORST_WIDTH - 2;
  const named = told.map(({ id, cells }) => [
    paint.strong(cutText(id, clamp(idMost, SHORT_ID, LONGEST_ID))),
    ...cells,
  ]);
  const columns = isAlone ? SETTING_COLUMNS : [{ head: "id" }, ...SETTING_COLUMNS];
  const cells = isAlone ? cellsOf(told) : named;
  const left = Math.max(WORST_WIDTH, width - tableWidth(columns, cells, 1) - 1);
  const rows = told.map(({ worst }, i) => [...cells[i]!, folded(worst, left, "")]);
  const lines = plan.trackers.flatMap((tracker) => {
    const lead = isAlone ? "" : `${cutText(tracker.id, LONGEST_ID)}: `;
    const change = tracker.change === null ? [] : [changeWords(tracker.change)];
    return [...change, ...exposureWords(tracker, clock)].map((words) => `${lead}${words}`);
  });
  const key =
    "For every T-0 and T+ together. Holds: share of them held; spare: smallest margin in stops, met at the worst.";
  return [
    paint.strong("SETTING"),
    folded(key, width, ""),
    fittedTable([...columns, WORST], rows, width).trimEnd(),
    ...lines.map((line) => folded(line, width, "  ")),
  ].join("\n");
}

/** "EV of the body along the sweep of T-0 18:25: least 11.8 at T+30 s, most 12.6 at T+155 s". */
function exposureWords({ timeline }: TrackerSweep, clock: Clock): string[] {
  const lit = timeline.rows.flatMap(({ ev, tPlusS }) => (ev === null ? [] : [{ ev, tPlusS }]));
  if (lit.length === 0) return [];
  const least = lit.reduce((a, b) => (b.ev < a.ev ? b : a));
  const most = lit.reduce((a, b) => (b.ev > a.ev ? b : a));
  const at = ({ ev, tPlusS }: { ev: number; tPlusS: number }): string =>
    `${ev.toFixed(1)} at ${tPlusName(tPlusS)} s`;
  const range =
    least.ev.toFixed(1) === most.ev.toFixed(1)
      ? `${most.ev.toFixed(1)} throughout`
      : `least ${at(least)}, most ${at(most)}`;
  return [`EV of the body along the sweep of T-0 ${clock.at(timeline.at)}, ${timeline.sky}: ${range}`];
}

interface SettingRow {
  readonly id: string;
  readonly cells: readonly string[];
  readonly worst: string;
}

const cellsOf = (rows: readonly SettingRow[]): (readonly string[])[] => rows.map(({ cells }) => cells);

function rowsOf(plan: SweepPlan, tracker: TrackerSweep, clock: Clock, paint: Paint): SettingRow[] {
  const { id } = tracker;
  const row = (sky: string, setting: Setting | null, namesSky: boolean): SettingRow => ({
    id,
    cells: settingCells(sky, setting, paint),
    worst: worstWords(setting, clock, namesSky),
  });
  const perSky = tracker.bySky.map(({ sky, setting }) => row(sky, setting, false));
  if (plan.sky.length === 1) return perSky;
  return [...perSky, row("one for all", tracker.setting, true)];
}

/** When to change, or what is left without a setting; what can be counted on is rounded inward, a gap outward. */
function changeWords({ first, second, changeAt }: SettingChange): string {
  const lead = "no one setting holds the sweep: ";
  if (first === null && second === null) return `${lead}none holds its start, none its end`;
  if (first === null) {
    return `${lead}none holds its start; ${settingName(second!.setting)} from ${tPlusName(second!.fromS, "after")} s on`;
  }
  const early = `${settingName(first.setting)} up to ${tPlusName(first.untilS, "before")} s`;
  if (second === null) return `${lead}${early}, none holds its end`;
  const both = `${early}, ${settingName(second.setting)} from ${tPlusName(second.fromS, "after")} s`;
  return changeAt === null
    ? `${lead}${both}: neither holds between ${tPlusName(first.untilS, "before")} and ${tPlusName(second.fromS, "after")} s`
    : `${lead}${both}: change between ${tPlusName(changeAt.fromS, "after")} and ${tPlusName(changeAt.toS, "before")} s`;
}

const SLEW_COLUMNS: readonly Column[] = [
  { head: "id" },
  { head: "axis at T+0" },
  { head: "range", align: "right" },
  { head: "most in azimuth", align: "right" },
  { head: "most in elevation", align: "right" },
];
const SLEW_ID = 16;

/** Where each tracker starts, how fast it has to turn, and where its mount cannot follow. */
export function slewText({ trackers }: SweepPlan, { width, paint }: SheetOptions): string {
  const rows = trackers.map(({ id, axis, slew }) => [
    paint.strong(cutText(id, SLEW_ID)),
    `${azimuthText(axis.azimuthDeg)} ${elevationText(axis.elevationDeg)}`,
    rangeText(axis.rangeM),
    `${rateText(slew.mostAzimuthDegS)}°/s ${tPlusText(slew.mostAzimuthAtS)}`,
    `${rateText(slew.mostElevationDegS)}°/s ${tPlusText(slew.mostElevationAtS)}`,
  ]);
  const beyond = trackers.flatMap(({ id, slew }) =>
    slew.beyond.map((one) => `${cutText(id, LONGEST_ID)}: ${beyondWords(one, paint)}`),
  );
  return [
    paint.strong("SLEW"),
    fittedTable(SLEW_COLUMNS, rows, width).trimEnd(),
    ...beyond.map((line) => folded(line, width, "  ")),
  ].join("\n");
}

const beyondWords = (one: SlewRates["beyond"][number], paint: Paint): string =>
  `${paint.alarm(`the mount cannot follow ${tPlusSpansText([one])}`)}: ${one.turn} needs ${rateText(one.neededDegS)}°/s, it does ${Number(one.limitDegS.toFixed(2))}°/s; ${UNKNOWN_LOOK}`;

/** Faster than this it turns round at once, straight overhead: how fast, no one can tell. */
const AT_ONCE_DEG_S = 100;

/** Rounded up: what the mount must be able to do. */
function rateText(rateDegS: number): string {
  if (rateDegS > AT_ONCE_DEG_S) return `over ${AT_ONCE_DEG_S}`;
  const digits = rateDegS < 1 ? 2 : 1;
  return (Math.ceil(rateDegS * 10 ** digits - 1e-6) / 10 ** digits).toFixed(digits);
}
