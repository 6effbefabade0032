/** The views of a ranked window: how often each is well lit, what it loses, what a single setting has to spare. */

import { type Clock, makeClock } from "../plan/clock.ts";
import type { Ranking, ViewScore } from "../plan/rank/rankTypes.ts";
import { spareText } from "../plan/stopsText.ts";
import { windowRangeText } from "./dateText.ts";
import { partText } from "./numbers.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, cutText, fittedTable, folded } from "./textTable.ts";

const VIEW_COLUMNS: readonly Column[] = [
  { head: "id" },
  { head: "weight", align: "right" },
  { head: "well lit", align: "right" },
  { head: "lost to" },
  { head: "drift", align: "right" },
  { head: "spare", align: "right" },
  { head: "sun" },
];

/** The views of the best window. */
export function viewsText({ windows, site, viewCount }: Ranking, { paint, width }: SheetOptions): string {
  const best = windows[0]!;
  const clock = makeClock(site.zone, best.opens, best.closes);
  const rows = best.views.map((view) => [
    paint.strong(cutText(view.id, LONGEST_ID)),
    String(view.weight),
    partText(view.wellLitShare),
    folded(lossWords(view), LOSS_WIDTH, ""),
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

const LONGEST_ID = 16;
/** Columns for what a view is lost to. */
const LOSS_WIDTH = 18;
/** Columns that the other cells of a view take, and the least left for the sun's. */
const BESIDE_SUN = 56;
const SUN_WIDTH = 24;

const LOSS_WORDS = { dark: "dark", unlit: "unlit", sun: "sun", setting: "no setting" } as const;

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
