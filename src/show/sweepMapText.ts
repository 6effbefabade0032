/** A tracker's sun as a map for the terminal: T-0 across, T+ down, nothing said by colour alone. */

import { MS_PER_MINUTE } from "../base/units.ts";
import type { LightClass } from "../light/lightClass.ts";
import type { SweepMap, TPlusSpan } from "../plan/sweep/sweepTypes.ts";
import { clockLines } from "./clockTicks.ts";
import type { Paint } from "./paint.ts";
import { IN_FRAME, LETTERS, NEAR_FRAME } from "./stripText.ts";
import { tPlusName } from "./sweepTimes.ts";
import { cutText, folded } from "./textTable.ts";

/** Rows a map may have. */
const MOST_ROWS = 24;
/** Seconds from row to row. */
const ROWS_S = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300] as const;
const GAP = 2;
const LONGEST_ID = 24;

/** Round seconds from row to row for a map of no more than so many rows. */
export const roundRowS = ({ fromS, toS }: TPlusSpan, mostRows: number): number =>
  ROWS_S.find((step) => (toS - fromS) / step <= mostRows) ?? ROWS_S.at(-1)!;

/** Columns, and round seconds from row to row, for a map of this stretch of T+. */
export function mapSize({ fromS, toS }: TPlusSpan, width: number): { columns: number; rowS: number } {
  const rowS = roundRowS({ fromS, toS }, MOST_ROWS);
  const rows = Math.ceil((toS - fromS) / rowS);
  const starts = Array.from({ length: rows }, (_, i) => fromS + i * rowS);
  return { columns: width - labelWidth(starts), rowS };
}

const labelWidth = (startsS: readonly number[]): number =>
  Math.max(...startsS.map((tPlusS) => tPlusName(tPlusS).length)) + GAP;

export function sweepMapText(
  map: SweepMap,
  {
    zone,
    title,
    sky,
    width,
    paint,
  }: { zone: string; title: string; sky: string; width: number; paint: Paint },
): string {
  const labelColumn = labelWidth(map.rows.map(({ fromS }) => fromS));
  const head = `STRIP · ${cutText(map.id, LONGEST_ID)} · ${title} · ${sky}`;
  return [
    paint.strong(folded(head, width, "  ")),
    folded(legend(map), width, ""),
    "",
    ...clockLines(map, zone).map((line) => `${"".padEnd(labelColumn)}${line}`.trimEnd()),
    ...map.rows.map(
      ({ fromS, cells }) =>
        `${tPlusName(fromS).padEnd(labelColumn)}${cells.map((cell) => paintedCell(cell, paint)).join("")}`,
    ),
  ].join("\n");
}

type Cell = SweepMap["rows"][number]["cells"][number];

function paintedCell({ sun, light }: Cell, paint: Paint): string {
  if (sun === "in-frame") return paint.alarm(IN_FRAME);
  return sun === "near-frame" ? paint.warn(NEAR_FRAME) : LETTERS[light];
}

function legend({ rows, window }: SweepMap): string {
  const present = new Set(rows.flatMap(({ cells }) => cells.map(({ light }) => light)));
  const letters = (Object.keys(LETTERS) as LightClass[])
    .filter((light) => present.has(light))
    .map((light) => `${LETTERS[light]} ${light}`);
  const minutes = (window.closes.getTime() - window.opens.getTime()) / MS_PER_MINUTE;
  return `${IN_FRAME} sun in the frame, ${NEAR_FRAME} near it, at any T-0 and T+ of the cell; else the body's light in its middle: ${letters.join(", ")}. T-0 across, ${Math.round(minutes)} minutes; T+ down, each row from its time on, to ${tPlusName(rows.at(-1)!.toS)} s.`;
}
