/** Parts of a picture filled with the tone of their exposure; one path for all parts of one tone keeps a page small. */

import type { Point2 } from "../../view/prism.ts";
import type { FramePaper } from "./framePaper.ts";
import type { PictureExposure } from "./frameProps.ts";
import { toneOf } from "./tone.ts";

export interface TonedPart {
  readonly outline: readonly Point2[];
  readonly luminanceCdM2: number;
}

/** Tenths of a px: a picture has thousands of corners. */
const tenths = (value: number): number => Math.round(value * 10) / 10 + 0;

/** A closed path through places on the gate; empty for none. */
export function polygon(outline: readonly Point2[], paper: FramePaper): string {
  if (outline.length === 0) return "";
  return `M${outline.map((mm) => paper.at(mm).map(tenths).join(" ")).join("L")}Z`;
}

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
    const tone = toneOf(stops, range);
    const path = polygon(outline, paper);
    paths.set(tone, (paths.get(tone) ?? "") + path);
    if (stops > range.overStops) over += path;
    else if (stops < -range.underStops) under += path;
  }
  return (
    <>
      {[...paths].map(([tone, d]) => (
        <path key={tone} class="frame-tone" fill={tone} stroke={tone} d={d} />
      ))}
      {over !== "" && <path class="frame-over" fill="url(#pattern-over)" d={over} />}
      {under !== "" && <path class="frame-under" fill="url(#pattern-under)" d={under} />}
    </>
  );
}
