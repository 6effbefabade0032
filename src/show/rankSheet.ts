/** A ranking for the eye: the windows in order, why the first is first, its T-0s and its views. */

import { type Clock, makeClock } from "../plan/clock.ts";
import type { RankedWindow, Ranking } from "../plan/rank/rankTypes.ts";
import { spareText } from "../plan/stopsText.ts";
import type { DailyWindows } from "../site/dailyWindows.ts";
import { dayText, shortDateText, windowRangeText, yearText } from "./dateText.ts";
import { partText, shareText } from "./numbers.ts";
import { bulleted } from "./planSheet.ts";
import { sunWords, viewsText } from "./rankViews.ts";
import { runNotes } from "./runNotes.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, cutText, fittedTable, folded } from "./textTable.ts";

export interface RankSheetOptions extends SheetOptions {
  /** Windows listed; the others are counted. */
  readonly top: number;
  /** The run of days that the windows came from; null when they were named. */
  readonly run: DailyWindows | null;
  /** Ready drawings that go before the notes. */
  readonly strips: readonly string[];
}

export function rankSheet(ranking: Ranking, options: RankSheetOptions): string {
  const { paint, width, run, strips } = options;
  const told = ranking.windows.slice(0, options.top);
  const sections = [
    titleText(ranking, options),
    `${paint.strong("ASK FOR")}\n${folded(askText(ranking), width, "  ")}`,
    folded(ruleText(ranking), width, ""),
    windowsText(ranking, options),
    ranking.why === null ? "" : `${paint.strong("WHY")}\n${folded(whyText(ranking), width, "  ")}`,
    bestTimesText(ranking, told, options),
    viewsText(ranking, options),
    sunText(ranking, told.slice(1), options),
    ...strips,
    bulleted("NOTES", [...(run === null ? [] : runNotes(run, ranking.site.zone)), ...ranking.notes], options),
    bulleted("CAUTIONS", ranking.cautions, options),
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? "" : "s"}`;

function titleText(
  { site, windows, viewCount, sky, stepS }: Ranking,
  { paint, width }: SheetOptions,
): string {
  const skies = sky.map(({ sky: name, weight }) =>
    sky.length === 1 ? name : `${name} ${Math.round(weight * 100)} %`,
  );
  const title = `${site.name} · ${counted(windows.length, "window")} ranked by well-lit views`;
  const years = yearsOf(windows, site.zone);
  const when = years.length > 1 ? `${years[0]} to ${years.at(-1)}` : years[0];
  const what = `${when} · ${counted(viewCount, "view")} · sky ${skies.join(", ")} · a T-0 every ${stepS} s · ${site.zone}`;
  return `${paint.strong(title)}\n${folded(what, width, "  ")}`;
}

/** The answer in a line: the best window's best T-0s. */
function askText({ windows, site, rule }: Ranking): string {
  const [first] = windows;
  const { best, views } = first!;
  if (best.share === 0) return "nothing: no view is well lit at any T-0 of these windows";
  const clock = makeClock(site.zone, first!.opens, first!.closes);
  const met = (kind: "inFrame" | "nearFrame"): string[] =>
    views
      .filter((view) => view[kind].some(({ from, to }) => from <= best.to && to >= best.from))
      .map(({ id }) => id);
  const [inFrame, near] = [met("inFrame"), met("nearFrame").filter((id) => !met("inFrame").includes(id))];
  const sun = [
    ...(inFrame.length > 0 ? [`sun IN the frame of ${inFrame.join(", ")}`] : ["no sun in any frame"]),
    ...(near.length > 0 ? [`near that of ${near.join(", ")}`] : []),
  ].join(", ");
  const name = first!.name === null ? "" : `${first!.name}, `;
  return `${name}${shortDateText(first!.opens, site.zone)}, T-0 ${stretchText(clock, best)}: ${shareText(best.share)} of the views well lit, by weight; ${sun}. At least ${Math.round(rule.nearBestShare * 100)} % of that: ${nearWords(first!, clock)}.`;
}

const nearWords = ({ nearBest }: RankedWindow, clock: Clock): string =>
  nearBest.length === 0
    ? "no view is well lit at any T-0"
    : nearBest.map((span) => stretchText(clock, span)).join(", ");

/** "08:12-08:40", or the one minute it is. */
const stretchText = (clock: Clock, span: { readonly from: Date; readonly to: Date }): string =>
  clock.spanInside(span) ?? `${clock.at(span.from)}, under a minute`;

const yearsOf = (windows: readonly RankedWindow[], zone: string): string[] =>
  [...new Set(windows.map(({ opens }) => yearText(opens, zone)))].sort();

function ruleText({ rule }: Ranking): string {
  const spare =
    rule.spareStops === 0 ? "that keeps all of it" : `with ${spareText(rule.spareStops)} stops to spare`;
  return `Well lit: sun on at least ${Math.round(rule.litShare * 100)} % of the body's visible width, or flat light; no sun in or near the frame (${rule.flareMarginDeg}°, less with a hood); a setting ${spare}. Shares are means over the T-0s, by the views' weights.`;
}

const COLUMNS: readonly Column[] = [
  { head: "", align: "right" },
  { head: "window" },
  { head: "share", align: "right" },
  { head: "best" },
  { head: "worst" },
  { head: "hold", align: "right" },
  { head: "drift", align: "right" },
  { head: "sun" },
  { head: "dark", align: "right" },
];

function windowsText({ windows, site }: Ranking, { paint, width, top }: RankSheetOptions): string {
  const hasOneYear = yearsOf(windows, site.zone).length === 1;
  const rows = windows.slice(0, top).map((window) => {
    const clock = makeClock(site.zone, window.opens, window.closes);
    return [
      `${window.rank}`,
      windowWords(window, site.zone, hasOneYear),
      shareText(window.share),
      bestCell(window, clock),
      worstCell(window, clock),
      `${window.holdingViews}/${window.settableViews}`,
      window.driftStops.toFixed(1),
      sunCell(window, paint.alarm),
      darkCell(window),
    ];
  });
  const key =
    "Best and worst T-0 with their shares. Hold: views whose single setting holds all T-0s and skies, of those that can be set. Drift: most change of exposure in any view, stops. Sun: views with the sun in, near the frame. Dark: T-0s in dusk (d), in night (n).";
  const more = windows.length > top ? `\n... and ${windows.length - top} more (--top ${windows.length})` : "";
  return `${paint.strong("WINDOWS")}\n${folded(key, width, "")}\n\n${fittedTable(COLUMNS, rows, width).trimEnd()}${more}`;
}

/** An offset stands below its time. */
const cellTime = (clock: Clock, at: Date): string => clock.at(at).replace(" UTC", "\nUTC");

function bestCell({ best }: RankedWindow, clock: Clock): string {
  return best.share === 0 ? "none" : `${cellTime(clock, best.at)}\n${shareText(best.share)}`;
}

function worstCell({ best, worst }: RankedWindow, clock: Clock): string {
  return worst.share === best.share ? "all alike" : `${cellTime(clock, worst.at)}\n${shareText(worst.share)}`;
}

const LONGEST_NAME = 22;

/** Name and range in lines; one year stands in the title. */
function windowWords(window: RankedWindow, zone: string, hasOneYear: boolean): string {
  const range = windowRangeText(window, zone, hasOneYear ? dayText : shortDateText);
  // Offsets and years make a range too long for a line.
  const lines = range.includes(" to ")
    ? range.replace(" to ", "\nto ")
    : range.includes(" UTC")
      ? range.replace("-", "\nto ")
      : hasOneYear
        ? range
        : range.replace(/(\d{4}) /, "$1\n");
  if (window.name === null) return lines;
  return `${cutText(window.name, LONGEST_NAME)}\n${lines}`;
}

function sunCell({ inFrameViews, nearFrameViews }: RankedWindow, alarm: (text: string) => string): string {
  const parts = [
    ...(inFrameViews > 0 ? [alarm(`${inFrameViews} IN`)] : []),
    ...(nearFrameViews > 0 ? [`${nearFrameViews} near`] : []),
  ];
  return parts.length === 0 ? "none" : parts.join("\n");
}

function darkCell({ duskShare, nightShare }: RankedWindow): string {
  const parts = [
    ...(duskShare > 0 ? [`d ${partText(duskShare)}`] : []),
    ...(nightShare > 0 ? [`n ${partText(nightShare)}`] : []),
  ];
  return parts.length === 0 ? "-" : parts.join("\n");
}

/** "first try before second try: ...": of a ranking that has a why. */
export function whyText({ windows: [first, second], why, site }: Ranking): string {
  const both = [first!, second!].map((window) => window.name ?? windowRangeText(window, site.zone));
  return `${both[0]} before ${both[1]}: ${why}.`;
}

function bestTimesText(
  { site, rule }: Ranking,
  windows: readonly RankedWindow[],
  { paint, width }: SheetOptions,
): string {
  const lines = windows.map((window) => {
    const clock = makeClock(site.zone, window.opens, window.closes);
    return `${window.rank}  ${nearWords(window, clock)}`;
  });
  const head = `T-0s NEAR THE BEST (at least ${Math.round(rule.nearBestShare * 100)} % of the best share)`;
  return [paint.strong(head), ...lines.map((line) => folded(line, width, "   "))].join("\n");
}

/** Sun warnings of the windows behind the first. */
function sunText(
  { site }: Ranking,
  windows: readonly RankedWindow[],
  { paint, width }: SheetOptions,
): string {
  const blocks = windows.flatMap((window) => {
    const clock = makeClock(site.zone, window.opens, window.closes);
    const warned = window.views.filter(({ inFrame, nearFrame }) => inFrame.length + nearFrame.length > 0);
    if (warned.length === 0) return [];
    const texts = warned.map((view) => `${view.id} ${sunWords(view, clock)}`);
    return [folded(`${window.rank}  ${texts.join(" · ")}`, width, "   ")];
  });
  return blocks.length === 0
    ? ""
    : [paint.strong("SUN IN OR NEAR THE FRAME, OTHER WINDOWS"), ...blocks].join("\n");
}
