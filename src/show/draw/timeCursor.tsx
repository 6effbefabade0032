/** The line of the chosen T-0 on a chart over a window; small, as a page renders it again and again. */

import { cut } from "./paths.ts";
import { placedIn, TICK_PX, type TimeFrame, xOf } from "./timeFrame.ts";

const SMALL_PX = 8.5;

interface TimeCursorProps {
  /** T-0; outside the window nothing is drawn. */
  readonly atMs: number;
  /** Its clock time, as `Clock.at` gives it. */
  readonly text: string;
  readonly frame: TimeFrame;
}

/**
 * The chosen T-0: a line through the frame, its clock time in the lane at the sheet's top. The frame is `stripGeometry` of the
 * strips, `driftFrame` or `cameraDriftFrame` of the drift charts.
 */
export function TimeCursor({ atMs, text, frame }: TimeCursorProps) {
  const { fromMs, toMs, top, height } = frame;
  if (!(atMs >= fromMs && atMs <= toMs)) return null;
  const x = xOf(frame, atMs);
  return (
    <g class="time-cursor">
      <path class="casing" d={`M${x} 11V${cut(top + height + TICK_PX)}`} />
      <path class="now" d={`M${x} 11V${cut(top + height + TICK_PX)}`} />
      <text class="now-text strong small mid" x={placedIn(frame, x, text, SMALL_PX)} y="8.5">
        {text}
      </text>
    </g>
  );
}
