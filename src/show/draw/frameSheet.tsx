/** A camera's picture as a sheet: the picture and the exposure scale under it; as a file of its own with a head that says what it is. */

import type { Reading } from "../../plan/live/liveView.ts";
import { safeText } from "../../site/sourcePlaces.ts";
import type { Thing } from "../../site/types.ts";
import { Drawing } from "./drawing.tsx";
import { ExposureScale, SCALE_HEIGHT } from "./exposureScale.tsx";
import { foldedText, STRONG_TIMES } from "./fitText.ts";
import { framePaper } from "./framePaper.ts";
import { FramePicture } from "./framePicture.tsx";
import type { FramePictureProps } from "./frameProps.ts";
import { cut } from "./paths.ts";

interface FrameSheetProps extends FramePictureProps {
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
const HEAD_GAP = 4;
const FONT_PX = 10;
const LEAST_WIDTH = 320;
/** A gate of a slit camera is a line on paper: the words beside it need this much, px. */
const LEAST_HEIGHT = 30;

/** So many lines at most that one of the head is folded to. */
const MOST_FOLDS = 3;

interface HeadLine {
  readonly text: string;
  /** Where it is cut. */
  readonly whole: string | null;
  readonly isFirst: boolean;
}

/** A line of the head, folded to the sheet's width. */
function headLines(line: string, isFirst: boolean, roomPx: number): HeadLine[] {
  const folds = foldedText(line, roomPx, FONT_PX * (isFirst ? STRONG_TIMES : 1), MOST_FOLDS);
  const whole = safeText(line);
  const isCut = folds.join(" ") !== whole;
  return folds.map((text) => ({ text, whole: isCut ? whole : null, isFirst }));
}

export function FrameSheet(props: FrameSheetProps) {
  const { title, readings, keep, head, exposure } = props;
  const paper = framePaper(props.layout);
  const isFile = head !== undefined;
  const margin = isFile ? MARGIN : 1;
  const inner = Math.max(LEAST_WIDTH, paper.width);
  const tall = Math.max(LEAST_HEIGHT, paper.height);
  const lines = (head ?? []).flatMap((line, i) => headLines(line, i === 0, inner));
  const top = margin + (lines.length > 0 ? lines.length * LINE + HEAD_GAP : 0);
  const width = inner + 2 * margin;
  const height = top + tall + SCALE_HEIGHT + margin;
  return (
    <Drawing width={cut(width)} height={cut(height)} title={title} isFile={isFile} class="frame">
      {lines.map(({ text, whole, isFirst }, i) => (
        <text
          key={i}
          class={isFirst ? "strong" : "soft"}
          x={margin}
          y={cut(margin + LINE * (i + 0.7))}
          unicode-bidi="plaintext"
        >
          {whole !== null && <title>{whole}</title>}
          {text}
        </text>
      ))}
      <g transform={`translate(${cut((width - paper.width) / 2)} ${cut(top + (tall - paper.height) / 2)})`}>
        <FramePicture {...props} />
      </g>
      <g transform={`translate(${margin} ${cut(top + tall + 6)})`}>
        {readings !== null && (
          <ExposureScale readings={readings} keep={keep} range={exposure.range} width={inner} />
        )}
      </g>
    </Drawing>
  );
}
