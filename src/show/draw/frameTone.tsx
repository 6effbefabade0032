/** Parts of a picture filled with the tone of their exposure; one path for all parts of one tone keeps a page small. */

import type { Point2 } from "../../view/prism.ts";
import type { FramePaper } from "./framePaper.ts";
import type { PictureExposure } from "./frameProps.ts";
import type { Point } from "./paths.ts";
import { simplified } from "./simplified.ts";
import { toneOf } from "./tone.ts";

export interface TonedPart {
  readonly outline: readonly Point2[];
  readonly luminanceCdM2: number;
}

/** A closed path through places on the gate, tenths of a px from corner to corner: a page has thousands. Empty for none. */
export const polygon = (outline: readonly Point2[], paper: FramePaper): string =>
  outline.length === 0 ? "" : `${stepped(fewer(outline.map(paper.at)))}z`;

/** The same, open. */
export const polyline = (line: readonly Point2[], paper: FramePaper): string => stepped(line.map(paper.at));

function stepped(corners: readonly Point[]): string {
  let [fromX, fromY] = [0, 0];
  return corners
    .map((at, i) => {
      const [x, y] = at.map((px) => Math.round(px * 10)) as [number, number];
      const step = `${i === 0 ? "M" : i === 1 ? "l" : " "}${short(x - fromX)} ${short(y - fromY)}`;
      [fromX, fromY] = [x, y];
      return step;
    })
    .join("");
}

/** So far a thinned outline may stray, px. */
const STRAY_PX = 0.15;
/** Outlines with straight sides keep all theirs. */
const FEW_CORNERS = 8;

/** What a rounded outline needs to look round, in the two halves between its first corner and the one farthest from it. */
function fewer(corners: readonly Point[]): readonly Point[] {
  if (corners.length <= FEW_CORNERS) return corners;
  const awayPx = (i: number): number =>
    Math.hypot(corners[i]![0] - corners[0]![0], corners[i]![1] - corners[0]![1]);
  const far = corners.reduce((best, _, i) => (awayPx(i) > awayPx(best) ? i : best), 0);
  const around = [...corners, corners[0]!];
  const halves = [around.slice(0, far + 1), around.slice(far)];
  return halves.flatMap((half) => simplified(half, STRAY_PX, offLinePx).slice(0, -1));
}

function offLinePx([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const length = Math.hypot(bx - ax, by - ay);
  return length === 0
    ? Math.hypot(x - ax, y - ay)
    : Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
}

/** Tenths as a number, without a leading nought. */
const short = (tenths: number): string => String(tenths / 10).replace(/^(-?)0\./, "$1.");

/** Fill and line alike follow the colour property, which the types of elements forget. */
const tint = (color: string): object => ({ color });

interface Props {
  readonly parts: readonly TonedPart[];
  readonly exposure: PictureExposure;
  readonly paper: FramePaper;
}

export function ToneGroups({ parts, exposure: { midToneLog2, range }, paper }: Props) {
  const paths = new Map<string, string>();
  let over = "";
  let under = "";
  for (const { outline, luminanceCdM2 } of parts) {
    const stops = luminanceCdM2 > 0 ? Math.log2(luminanceCdM2) - midToneLog2 : Number.NEGATIVE_INFINITY;
    const path = polygon(outline, paper);
    if (stops > range.overStops) over += path;
    else if (stops < -range.underStops) under += path;
    else {
      const tone = toneOf(stops, range);
      paths.set(tone, (paths.get(tone) ?? "") + path);
    }
  }
  return (
    <>
      {[...paths].map(([tone, d]) => (
        <path key={tone} class="frame-tone" {...tint(tone)} d={d} />
      ))}
      {over !== "" && <path class="frame-over" fill="url(#pattern-over)" d={over} />}
      {under !== "" && <path class="frame-under" fill="url(#pattern-under)" d={under} />}
    </>
  );
}
