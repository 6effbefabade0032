/** Where things stand on the map of a sweep: T-0 across, T+ down. */

import { MS_PER_SECOND } from "../../base/units.ts";
import type { SweepCrossing, SweepMap, SweepSun, TPlusSpan } from "../../plan/sweep/sweepTypes.ts";
import { roundRowS } from "../sweepMapText.ts";
import { edgeWords, isBeside, offAxisWords, type Times, whenWords } from "../sweepSunText.ts";
import type { Box } from "./boxes.ts";
import { textWidthPx } from "./fitText.ts";
import { placeLabels } from "./labelRoom.ts";
import { cut } from "./paths.ts";
import { linear, type Scale } from "./scales.ts";
import { type TimeFrame, windowSpan } from "./timeFrame.ts";

export const MAP_WIDTH = 720;
const [LEFT, TOP, WIDTH] = [48, 48, 660];
/** Cells are as large as one tile of the sun's patterns, or two tiles tall: none of those is cut. */
const CELL_PX = 6;
const MOST_ROWS = 36;

/** Columns and seconds from row to row for `sweepMapFrom`, as many as the drawing shows well. */
export const drawnMapSize = (span: TPlusSpan): { readonly columns: number; readonly rowS: number } => ({
  columns: WIDTH / CELL_PX,
  rowS: roundRowS(span, MOST_ROWS),
});

/** The map itself on its sheet, for a sweep from..to. */
export function mapPlot({ fromS, toS }: TPlusSpan): Box {
  const rows = (toS - fromS) / roundRowS({ fromS, toS }, MOST_ROWS);
  return { x: LEFT, y: TOP, width: WIDTH, height: cut(rows * CELL_PX * (rows > MOST_ROWS / 2 ? 1 : 2)) };
}

export interface MapScales {
  readonly plot: Box;
  /** Of a T-0, ms. */
  readonly x: Scale;
  /** Of a T+, seconds. */
  readonly y: Scale;
}

export const t0Scale = ({ opens, closes }: SweepMap["window"]): Scale =>
  linear([opens.getTime(), closes.getTime()], [LEFT, LEFT + WIDTH]);

export function mapScales({ window, rows }: SweepMap): MapScales {
  const span = { fromS: rows[0]!.fromS, toS: rows.at(-1)!.toS };
  const plot = mapPlot(span);
  return { plot, x: t0Scale(window), y: linear([span.fromS, span.toS], [plot.y, plot.y + plot.height]) };
}

/** The T-0s of a map as those of any chart. */
export const mapFrame = ({ window }: SweepMap, { plot }: MapScales): TimeFrame => ({
  left: plot.x,
  top: plot.y,
  width: plot.width,
  height: plot.height,
  sheetWidth: MAP_WIDTH,
  sheetHeight: plot.y + plot.height,
  ...windowSpan(window),
});

/** T-0s and T+ of a crossing, with what is said of it where there is room. */
export interface MapCrossing {
  readonly zone: "in-frame" | "near-frame";
  readonly boxes: readonly Box[];
  readonly closest: { readonly x: number; readonly y: number };
  readonly words: string | null;
  readonly label: Box | null;
}

export const LABEL_PX = 9;
const LABEL_HEIGHT = 12;
/** A crossing of a few seconds is drawn so wide and tall that it can be seen. */
const LEAST_PX = 3;
const GAP_PX = 4;

export function mapCrossings(sun: SweepSun, scales: MapScales, times: Times): MapCrossing[] {
  const of = (zone: MapCrossing["zone"], one: SweepCrossing, words: string | null) => ({
    zone,
    boxes: one.tPlus.map((span) => crossingBox(one, span, scales)),
    closest: { x: scales.x(toSecond(one.closest.at)), y: scales.y(one.closest.tPlusS) },
    words: words === null ? null : `closest ${words}, ${whenWords(one.closest, times)}`,
  });
  const crossings = [
    ...sun.inFrame.map((one) => of("in-frame", one, offAxisWords(one.closest, times))),
    // Beside T-0s that have it in the frame it comes as near as the edge, which says nothing.
    ...sun.nearFrame.map((one) =>
      of("near-frame", one, isBeside(one, sun.inFrame) ? null : edgeWords(one.closest)),
    ),
  ];
  const labels = placeLabels(
    crossings.map((one) => labelPlaces(one, scales.plot)),
    crossings.flatMap(({ boxes }) => boxes),
    scales.plot,
  );
  return crossings.map((one, i) => ({ ...one, label: labels[i]! }));
}

const toSecond = (at: Date): number => Math.round(at.getTime() / MS_PER_SECOND) * MS_PER_SECOND;

function crossingBox({ from, to }: SweepCrossing, { fromS, toS }: TPlusSpan, { x, y, plot }: MapScales): Box {
  const [left, width] = seen(x(from.getTime()), x(to.getTime()), plot.x, plot.x + plot.width);
  const [top, height] = seen(y(fromS), y(toS), plot.y, plot.y + plot.height);
  return { x: left, y: top, width, height };
}

/** Start and size of a stretch, widened about its middle to what can be seen, within the plot. */
function seen(from: number, to: number, least: number, most: number): [start: number, size: number] {
  const size = Math.max(LEAST_PX, to - from);
  const start = (from + to - size) / 2;
  return [Math.min(most - size, Math.max(least, start)), size];
}

/** Beside, under and over the outline. */
function labelPlaces({ words, boxes, closest }: Omit<MapCrossing, "label">, plot: Box): Box[] {
  if (words === null || boxes.length === 0) return [];
  const [width, height] = [textWidthPx(words, LABEL_PX) + GAP_PX, LABEL_HEIGHT];
  const left = Math.min(...boxes.map((box) => box.x));
  const right = Math.max(...boxes.map((box) => box.x + box.width));
  const top = Math.min(...boxes.map((box) => box.y));
  const bottom = Math.max(...boxes.map((box) => box.y + box.height));
  const beside = closest.y - height / 2;
  const about = Math.min(plot.x + plot.width - width, Math.max(plot.x, closest.x - width / 2));
  return [
    { x: about, y: bottom + GAP_PX, width, height },
    { x: about, y: top - GAP_PX - height, width, height },
    { x: right + GAP_PX, y: beside, width, height },
    { x: left - GAP_PX - width, y: beside, width, height },
    { x: about, y: bottom + height + 2 * GAP_PX, width, height },
    { x: about, y: bottom + 2 * (height + GAP_PX), width, height },
  ];
}
