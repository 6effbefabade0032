/** Which cameras a page shows, and in what order. */

import type { SunRiskWord } from "../../plan/sunRisk.ts";
import type { LiveRow } from "./liveRow.ts";

export const ORDERS = ["file", "risk", "spare"] as const;
export type RowOrder = (typeof ORDERS)[number];
export const SHOWN = ["all", "sun", "clipped", "unset", "blocked", "trackers"] as const;
export type RowFilter = (typeof SHOWN)[number];

export const ORDER_WORDS: Readonly<Record<RowOrder, string>> = {
  file: "site file",
  risk: "sun risk over the window",
  spare: "spare now, least first",
};
export const FILTER_WORDS: Readonly<Record<RowFilter, string>> = {
  all: "all cameras",
  sun: "sun in, near or hidden in the frame",
  clipped: "clipped at this T-0",
  unset: "without a setting",
  blocked: "vehicle hidden by a structure",
  trackers: "trackers",
};

const RISK_ORDER: readonly SunRiskWord[] = ["in-frame", "near-frame", "hidden", "clear", "down"];

interface OrderedRow {
  readonly row: LiveRow;
  readonly isTracker: boolean;
}

/** Rows that pass, in order; equal ones keep the order of the site file. */
export function shownRows(
  rows: readonly OrderedRow[],
  order: RowOrder,
  filter: RowFilter,
  idPart: string,
): readonly LiveRow[] {
  const wanted = idPart.trim().toLowerCase();
  const kept = rows
    .filter((one) => passes(one, filter) && one.row.id.toLowerCase().includes(wanted))
    .map(({ row }) => row);
  if (order === "risk") kept.sort((a, b) => RISK_ORDER.indexOf(a.risk) - RISK_ORDER.indexOf(b.risk));
  if (order === "spare") kept.sort((a, b) => spareRank(a) - spareRank(b));
  return kept;
}

function passes({ row, isTracker }: OrderedRow, filter: RowFilter): boolean {
  if (filter === "sun") return row.risk === "in-frame" || row.risk === "near-frame" || row.risk === "hidden";
  if (filter === "clipped") return row.isClipped;
  if (filter === "blocked") return row.blockedBy !== null;
  if (filter === "unset") return row.spareStops === null;
  return filter === "trackers" ? isTracker : true;
}

/** Those without a setting last; infinity minus infinity is no order. */
const spareRank = ({ spareStops }: LiveRow): number => spareStops ?? Number.MAX_VALUE;
