/** The arrow at a picture's edge towards a sun that does not show. */

import { clamp } from "../../base/units.ts";
import { edgeWords } from "../sweepSunText.ts";
import { type Anchor, type Box, textBox } from "./boxes.ts";
import { type FramePaper, turned } from "./framePaper.ts";
import type { PaperProps } from "./frameProps.ts";
import { FRAME_LABEL_PX } from "./frameStyle.tsx";
import { closedPath, type Point } from "./paths.ts";

export interface SunArrow {
  readonly path: string;
  readonly words: string;
  readonly anchor: Anchor;
  /** Of the words, on their base line. */
  readonly at: Point;
  readonly box: Box;
}

/** How far inside the picture's edge the arrow ends, its length and its half width, px. */
const INSET_PX = 3;
const LENGTH_PX = 13;
const HALF_PX = 5;
/** Words keep this far from the picture's upper and lower edge, px. */
const TEXT_INSET_PX = [11, 4] as const;

/** Null while the disc shows, and with the sun down. */
export function arrowToSun({ tones, paper, fromEdgeDeg }: PaperProps): SunArrow | null {
  const { isUp, disc, towards } = tones.sun;
  if (!isUp || disc.length > 0) return null;
  const [x, up] = turned(towards, paper.quarters);
  const y = -up;
  const tip = onEdge(paper.width, paper.height, [x, y]);
  const back = (px: number, aside: number): Point => [
    tip[0] - x * px - y * aside,
    tip[1] - y * px + x * aside,
  ];
  const words = `sun ${edgeWords({ fromEdgeDeg })}`;
  const anchor = x > 0.3 ? "end" : x < -0.3 ? "start" : "middle";
  const at = insideAt(back(LENGTH_PX + 4, 0), words, anchor, paper);
  return {
    path: closedPath([tip, back(LENGTH_PX, HALF_PX), back(LENGTH_PX, -HALF_PX)]),
    words,
    anchor,
    at,
    box: textBox(words, at, FRAME_LABEL_PX, anchor),
  };
}

/** Where words near a place stand inside the picture, on their base line. */
function insideAt([x, y]: Point, words: string, anchor: Anchor, paper: FramePaper): Point {
  const { x: left, width } = textBox(words, [x, y], FRAME_LABEL_PX, anchor);
  const [above, below] = TEXT_INSET_PX;
  const heldLeft = held(left, INSET_PX, paper.width - INSET_PX - width);
  return [x + heldLeft - left, held(y + 3, above, paper.height - below)];
}

/** A slit has no inside to stand in: words stand about its middle. */
const held = (at: number, low: number, high: number): number =>
  high < low ? (low + high) / 2 : clamp(at, low, high);

/** Where a ray from the middle meets the picture's edge. */
function onEdge(width: number, height: number, [x, y]: Point): Point {
  const times = Math.min(
    Math.abs(x) > 0 ? Math.max(0, width / 2 - INSET_PX) / Math.abs(x) : Number.POSITIVE_INFINITY,
    Math.abs(y) > 0 ? Math.max(0, height / 2 - INSET_PX) / Math.abs(y) : Number.POSITIVE_INFINITY,
  );
  return [width / 2 + x * times, height / 2 + y * times];
}
