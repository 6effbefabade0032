/** Round clock times along an edge of a chart over a window. */

import { makeClock } from "../../plan/clock.ts";
import { clockTicks } from "../clockTicks.ts";
import { textWidthPx } from "./fitText.ts";
import { cut } from "./paths.ts";
import { placedIn, TICK_PX, type TimeFrame, xOf } from "./timeFrame.ts";

/** Between two clock times. */
const TICK_GAP_PX = 16;
const FONT_PX = 10;

interface TimeAxisProps {
  readonly frame: TimeFrame;
  readonly zone: string;
  readonly side: "top" | "bottom";
}

/** Round clock times along one edge of the frame, 16 units deep outside it. */
export function TimeAxis({ frame, zone, side }: TimeAxisProps) {
  const window = { opens: new Date(frame.fromMs), closes: new Date(frame.toMs) };
  const edge = side === "top" ? frame.top : cut(frame.top + frame.height);
  const out = side === "top" ? -1 : 1;
  const clock = makeClock(zone, window.opens, window.closes);
  // Where the offset changes inside the window its two ends are told differently.
  const widths = [window.opens, window.closes].map((at) => textWidthPx(clock.at(at), FONT_PX));
  const roomPx = Math.max(...widths) + TICK_GAP_PX;
  const ticks = clockTicks(window, zone, (roomPx / frame.width) * (frame.toMs - frame.fromMs));
  const textY = side === "top" ? edge - TICK_PX - 3 : edge + TICK_PX + 9;
  return (
    <g>
      <path class="line" d={`M${frame.left} ${edge}h${frame.width}`} />
      {ticks.map(({ ms, text }) => (
        <>
          <path class="line" d={`M${xOf(frame, ms)} ${edge}v${out * TICK_PX}`} />
          <text class="soft mid" x={placedIn(frame, xOf(frame, ms), text, FONT_PX)} y={cut(textY)}>
            {text}
          </text>
        </>
      ))}
    </g>
  );
}
