/** The legend of a sweep's map: what occurs in it, in rows. */

import { LIGHT_CLASSES, type LightClass } from "../../light/lightClass.ts";
import type { SweepMap } from "../../plan/sweep/sweepTypes.ts";
import { textWidthPx } from "./labelRoom.ts";
import { type Box, LightCell, SunCell } from "./lightMarks.tsx";
import { cut } from "./paths.ts";
import { MAP_WIDTH, type MapCrossing } from "./sweepMapPlan.ts";

const LEFT = 48;
/** From the map's bottom edge to the first row. */
const OFF_PX = 10;
const LEGEND_ROW = 16;
const SWATCH: Pick<Box, "width" | "height"> = { width: 14, height: 11 };

export interface Entry {
  readonly mark: "in-frame" | "near-frame" | "outline-in" | "outline-near" | LightClass;
  readonly text: string;
  readonly x: number;
  readonly row: number;
}

const MARK_WORDS = {
  "in-frame": "sun in the frame",
  "near-frame": "sun near the frame, at any T-0 and T+ of a cell",
  "outline-in": "exact T-0s and T+ of a crossing, with its closest approach",
  "outline-near": "the same near the frame",
} as const;

/** What occurs, in rows. */
export function legendOf(map: SweepMap, crossings: readonly MapCrossing[]): Entry[] {
  const cells = map.rows.flatMap(({ cells: row }) => row);
  const zones = (["in-frame", "near-frame"] as const).filter((zone) => cells.some(({ sun }) => sun === zone));
  const outlines = (["in-frame", "near-frame"] as const)
    .filter((zone) => crossings.some((one) => one.zone === zone))
    .map((zone) => (zone === "in-frame" ? ("outline-in" as const) : ("outline-near" as const)));
  const marks: { mark: Entry["mark"]; text: string }[] = [
    ...LIGHT_CLASSES.filter((light) => cells.some((cell) => cell.light === light)).map((light) => ({
      mark: light,
      text: light,
    })),
    ...[...zones, ...outlines].map((mark) => ({ mark, text: MARK_WORDS[mark] })),
  ];
  const entries: Entry[] = [];
  let [x, row] = [LEFT, 0];
  for (const one of marks) {
    const width = SWATCH.width + 4 + textWidthPx(one.text, 10) + 14;
    if (x + width > MAP_WIDTH && x > LEFT) [x, row] = [LEFT, row + 1];
    entries.push({ ...one, x: cut(x), row });
    x += width;
  }
  return entries;
}

export function LegendEntry({ mark, text, x, row, below }: Entry & { readonly below: number }) {
  const box: Box = { x, y: cut(below + OFF_PX + LEGEND_ROW * row), ...SWATCH };
  const isSun = mark === "in-frame" || mark === "near-frame";
  const isOutline = mark === "outline-in" || mark === "outline-near";
  return (
    <g>
      {isSun && <SunCell sun={mark} box={box} />}
      {isOutline && <rect class={mark === "outline-in" ? "sweepmap-in" : "sweepmap-near"} {...box} />}
      {!isSun && !isOutline && <LightCell light={mark} box={box} />}
      {!isOutline && <rect class="thin" {...box} />}
      <text class="soft" x={cut(x + SWATCH.width + 4)} y={cut(box.y + 9)}>
        {text}
      </text>
    </g>
  );
}

/** From the map's bottom edge to the sheet's. */
export const legendHeight = (entries: readonly Entry[]): number =>
  12 + LEGEND_ROW * (1 + Math.max(0, ...entries.map(({ row }) => row)));
