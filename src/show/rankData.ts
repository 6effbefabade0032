/** A ranking as JSON and CSV: every window, figures cut to what can be defended, times in UTC with Z. */

import type { TimeSpan } from "../plan/clock.ts";
import type { RankedWindow, Ranking, ViewScore } from "../plan/rank/rankTypes.ts";
import type { DailyWindows } from "../site/dailyWindows.ts";
import { csvText } from "./csvText.ts";
import { roundedByName } from "./planJson.ts";
import { runNotes } from "./runNotes.ts";

/** `run`: the run of days that the windows came from; null when they were named. */
export function rankJson(ranking: Ranking, run: DailyWindows | null): string {
  const notes = [...(run === null ? [] : runNotes(run, ranking.site.zone)), ...ranking.notes];
  return `${JSON.stringify({ ...ranking, skippedDays: run?.skipped ?? [], notes }, roundedByName, 1)}\n`;
}

const FIELDS = [
  "rank",
  "name",
  "opensUtc",
  "closesUtc",
  "share",
  "wellLitViews",
  "bestUtc",
  "bestShare",
  "worstUtc",
  "worstShare",
  "nearBestUtc",
  "holdingViews",
  "settableViews",
  "driftStops",
  "inFrameViews",
  "nearFrameViews",
  "inFrameUtc",
  "nearFrameUtc",
  "duskShare",
  "nightShare",
  "notRanked",
] as const;

/** A row per window, best first; then one for each day that has none, with the reason. */
export function rankCsv({ windows }: Ranking, run: DailyWindows | null): string {
  const rows = windows.map(rowOf);
  const skipped = (run?.skipped ?? []).map(({ date, found }) => ({ name: date, notRanked: found }));
  return csvText(FIELDS, [...rows, ...skipped]);
}

function rowOf(window: RankedWindow): Readonly<Record<string, unknown>> {
  const values: Partial<Record<(typeof FIELDS)[number], unknown>> = {
    ...window,
    opensUtc: window.opens.toISOString(),
    closesUtc: window.closes.toISOString(),
    bestUtc: window.best.at.toISOString(),
    bestShare: window.best.share,
    worstUtc: window.worst.at.toISOString(),
    worstShare: window.worst.share,
    nearBestUtc: spansText(window.nearBest),
    inFrameUtc: warnings(window.views, "inFrame"),
    nearFrameUtc: warnings(window.views, "nearFrame"),
  };
  return Object.fromEntries(FIELDS.map((field) => [field, roundedByName(field, values[field] ?? null)]));
}

const spansText = (spans: readonly TimeSpan[]): string =>
  spans.map(({ from, to }) => `${from.toISOString()}/${to.toISOString()}`).join("; ");

/** "P04 from/to; from/to, L1 from/to". */
const warnings = (views: readonly ViewScore[], kind: "inFrame" | "nearFrame"): string =>
  views
    .filter((view) => view[kind].length > 0)
    .map((view) => `${view.id} ${spansText(view[kind])}`)
    .join(", ");
