/** The key of a chart: a sample of each mark and what it means, in lines as long as the chart is wide. */

import type { ComponentChildren } from "preact";
import { textWidthPx } from "./fitText.ts";
import { cut } from "./paths.ts";

export interface LegendItem {
  readonly text: string;
  /** Drawn in a box of 20 x 12 at the origin; null for a word alone. */
  readonly sample: ComponentChildren;
}

const SAMPLE_PX = 20;
const SAMPLE_GAP_PX = 5;
const ITEM_GAP_PX = 16;
const LINE_PX = 17;
const FONT_PX = 10;

interface Placed {
  readonly x: number;
  readonly line: number;
  readonly textX: number;
}

function placed(items: readonly LegendItem[], width: number): Placed[] {
  let x = 0;
  let line = 0;
  return items.map(({ text, sample }) => {
    const textX = sample === null ? 0 : SAMPLE_PX + SAMPLE_GAP_PX;
    const item = textX + textWidthPx(text, FONT_PX);
    if (x > 0 && x + item > width) {
      x = 0;
      line += 1;
    }
    const place = { x: cut(x), line, textX };
    x += item + ITEM_GAP_PX;
    return place;
  });
}

export const legendHeight = (items: readonly LegendItem[], width: number): number =>
  items.length === 0 ? 0 : (placed(items, width).at(-1)!.line + 1) * LINE_PX;

interface LegendProps {
  readonly items: readonly LegendItem[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

export const Legend = ({ items, x, y, width }: LegendProps) => (
  <g>
    {placed(items, width).map((place, i) => (
      <g transform={`translate(${cut(x + place.x)} ${cut(y + place.line * LINE_PX)})`}>
        {items[i]!.sample}
        <text class="soft" x={place.textX} y="9.5">
          {items[i]!.text}
        </text>
      </g>
    ))}
  </g>
);
