/** A ranking for the eye: the windows in order, why the first is first, its T-0s and its views. */

import { type Clock, makeClock } from "../plan/clock.ts";
import type { RankedWindow, Ranking, ViewScore } from "../plan/rank/rankTypes.ts";
import { spareText } from "../plan/stopsText.ts";
import type { DailyWindows } from "../site/dailyWindows.ts";
import { dayText, shortDateText, windowRangeText, yearText } from "./dateText.ts";
import { bulleted } from "./planSheet.ts";
import { runNotes } from "./runNotes.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, fittedTable, folded } from "./textTable.ts";

export interface RankSheetOptions extends SheetOptions {
  /** Windows listed; the others are counted. */
  readonly top: number;
  /** The run of days that the windows came from; null when they were named. */
  readonly run: DailyWindows | null;
  /** Ready drawings that go before the notes. */
  readonly strips: readonly string[];
}

/** Windows whose T-0s and sun are told in lines of their own. */
const TOLD_WINDOWS = 5;

export function rankSheet(ranking: Ranking, options: RankSheetOptions): string {
  const { paint, width, run, strips } = options;
  const told = ranking.windows.slice(0, Math.min(TOLD_WINDOWS, options.top));
  const sections = [
    titleText(ranking, options),
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
      window.best.share === 0 ? "none" : `${clock.at(window.best.at)}\n${shareText(window.best.share)}`,
      `${clock.at(window.worst.at)}\n${shareText(window.worst.share)}`,
      `${window.holdingViews}/${window.settableViews}`,
      window.driftStops.toFixed(1),
      sunCell(window, paint.alarm),
      darkCell(window),
    ];
  });
  const key =
    "Best and worst T-0 with their shares. Hold: views whose single setting holds all T-0s, of those that can be set. Drift: most change of exposure in any view, stops. Sun: views with the sun in, near the frame. Dark: T-0s in dusk, in night.";
  const more = windows.length > top ? `\n... and ${windows.length - top} more (--top ${windows.length})` : "";
  return `${paint.strong("WINDOWS")}\n${folded(key, width, "")}\n\n${fittedTable(COLUMNS, rows, width).trimEnd()}${more}`;
}

/** Longer names are cut on the sheet; every other output has them whole. */
const LONGEST_NAME = 22;

/** Name and range in lines; one year stands in the title. */
function windowWords(window: RankedWindow, zone: string, hasOneYear: boolean): string {
  const range = windowRangeText(window, zone, hasOneYear ? dayText : shortDateText);
  const lines = range.includes(" to ") ? range.replace(" to ", "\nto ") : range;
  if (window.name === null) return lines;
  const letters = [...window.name];
  const name =
    letters.length > LONGEST_NAME ? `${letters.slice(0, LONGEST_NAME - 1).join("")}…` : window.name;
  return `${name}\n${lines}`;
}

/** "83.1 %": as shares are compared, to a tenth of a per cent. */
const shareText = (share: number): string => `${(share * 100).toFixed(1)} %`;

function sunCell({ inFrameViews, nearFrameViews }: RankedWindow, alarm: (text: string) => string): string {
  const parts = [
    ...(inFrameViews > 0 ? [alarm(`${inFrameViews} IN`)] : []),
    ...(nearFrameViews > 0 ? [`${nearFrameViews} near`] : []),
  ];
  return parts.length === 0 ? "none" : parts.join("\n");
}

function darkCell({ duskShare, nightShare }: RankedWindow): string {
  const parts = [
    ...(duskShare > 0 ? [`dusk ${partText(duskShare)}`] : []),
    ...(nightShare > 0 ? [`night ${partText(nightShare)}`] : []),
  ];
  return parts.length === 0 ? "-" : parts.join("\n");
}

function whyText({ windows: [first, second], why, site }: Ranking): string {
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
    const spans = window.nearBest.map((span) => clock.spanInside(span)).filter((text) => text !== null);
    const words = window.nearBest.length === 0 ? "no view is well lit at any T-0" : spans.join(", ");
    return `${window.rank}  ${words === "" ? "less than a whole minute" : words}`;
  });
  const head = `T-0s NEAR THE BEST (at least ${Math.round(rule.nearBestShare * 100)} % of the best share)`;
  return [paint.strong(head), ...lines.map((line) => folded(line, width, "   "))].join("\n");
}

const VIEW_COLUMNS: readonly Column[] = [
  { head: "id" },
  { head: "well lit", align: "right" },
  { head: "lost to" },
  { head: "drift", align: "right" },
  { head: "spare", align: "right" },
  { head: "sun" },
];

/** The views of the best window. */
function viewsText({ windows, site, viewCount }: Ranking, { paint, width }: SheetOptions): string {
  const best = windows[0]!;
  const clock = makeClock(site.zone, best.opens, best.closes);
  const rows = best.views.map((view) => [
    paint.strong(view.id),
    partText(view.wellLitShare),
    lossWords(view),
    view.driftStops.toFixed(1),
    view.spareStops === null ? "-" : spareText(view.spareStops),
    folded(sunWords(view, clock), Math.max(SUN_WIDTH, width - BESIDE_SUN), ""),
  ]);
  const count = viewCount === 1 ? "THE VIEW" : `THE ${viewCount} VIEWS`;
  const head = `${count} OF ${best.name ?? windowRangeText(best, site.zone)}`;
  const key =
    "Well lit and lost: share of T-0s. Spare: the most a single setting for all T-0s can have, stops.";
  return `${paint.strong(head)}\n${folded(key, width, "")}\n\n${fittedTable(VIEW_COLUMNS, rows, width).trimEnd()}`;
}

/** Columns that the other cells of a view take, and the least left for the sun's. */
const BESIDE_SUN = 56;
const SUN_WIDTH = 24;

/** "43 %": a part that is neither nothing nor all never reads 0 or 100. */
const partText = (share: number): string => {
  const rounded = Math.round(share * 100);
  return `${share > 0 && share < 1 ? Math.min(99, Math.max(1, rounded)) : rounded} %`;
};

const LOSS_WORDS = { dark: "dark", unlit: "unlit side", sun: "sun", setting: "no setting" } as const;

function lossWords({ lostShare }: ViewScore): string {
  const words = (Object.keys(LOSS_WORDS) as (keyof typeof LOSS_WORDS)[])
    .filter((loss) => lostShare[loss] > 0)
    .map((loss) => `${LOSS_WORDS[loss]} ${partText(lostShare[loss])}`);
  return words.length === 0 ? "-" : words.join(", ");
}

export function sunWords(
  { inFrame, nearFrame }: Pick<ViewScore, "inFrame" | "nearFrame">,
  clock: Clock,
): string {
  const parts = [
    ...(inFrame.length > 0 ? [`IN ${inFrame.map((span) => clock.span(span)).join(", ")}`] : []),
    ...(nearFrame.length > 0 ? [`near ${nearFrame.map((span) => clock.span(span)).join(", ")}`] : []),
  ];
  return parts.join("; ");
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
