/** A camera's picture as a sheet: the picture and the exposure scale under it; as a file of its own with a head that says what it is. */

import type { Reading } from "../../plan/live/liveView.ts";
import type { Thing } from "../../site/types.ts";
import { Drawing } from "./drawing.tsx";
import { ExposureScale, SCALE_HEIGHT } from "./exposureScale.tsx";
import { framePaper } from "./framePaper.ts";
import { FramePicture } from "./framePicture.tsx";
import type { FramePictureProps } from "./frameProps.ts";
import { cut } from "./paths.ts";

export interface FrameSheetProps extends FramePictureProps {
  /** What people who do not see it are told. */
  readonly title: string;
  /** Null without a setting: tones are then by the body's own place. */
  readonly readings: readonly Reading[] | null;
  readonly keep: readonly Thing[];
  /** Lines above the picture of a file of its own. */
  readonly head?: readonly string[];
}

const MARGIN = 12;
const LINE = 14;
const LEAST_WIDTH = 320;

export function FrameSheet(props: FrameSheetProps) {
  const { title, readings, keep, head, exposure } = props;
  const paper = framePaper(props.layout);
  const isFile = head !== undefined;
  const margin = isFile ? MARGIN : 1;
  const inner = Math.max(LEAST_WIDTH, paper.width);
  const top = margin + (head?.length ?? 0) * LINE;
  const width = inner + 2 * margin;
  const height = top + paper.height + SCALE_HEIGHT + margin;
  return (
    <Drawing width={cut(width)} height={cut(height)} title={title} isFile={isFile} class="frame">
      {head?.map((line, i) => (
        <text
          key={line}
          class={i === 0 ? "strong" : "soft"}
          x={margin}
          y={margin + LINE * (i + 0.7)}
          unicode-bidi="plaintext"
        >
          {line}
        </text>
      ))}
      <g transform={`translate(${cut((width - paper.width) / 2)} ${cut(top)})`}>
        <FramePicture {...props} />
      </g>
      <g transform={`translate(${margin} ${cut(top + paper.height + 6)})`}>
        {readings !== null && (
          <ExposureScale readings={readings} keep={keep} range={exposure.range} width={inner} />
        )}
      </g>
    </Drawing>
  );
}
