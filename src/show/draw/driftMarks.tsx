/** Marks of the charts of exposure over T-0: their axis of stops, dashes, looks. */

import type { Palette } from "./palette.ts";
import { cut } from "./paths.ts";
import { linear, type Scale } from "./scales.ts";
import type { TimeFrame } from "./timeFrame.ts";

/** By place in the order of drawing; the first is a full line. */
export const DRIFT_DASHES: readonly (string | undefined)[] = [undefined, "7 3", "2 2.5", "9 2.5 2 2.5"];

export const driftStyle = ({ ink, soft, faint, alarm }: Palette): string => `
.drift-line{fill:none;stroke:${soft};stroke-width:.6;stroke-linecap:round}
.drift-named{fill:none;stroke:${ink};stroke-width:1.5;stroke-linejoin:round}
.drift-lead{fill:none;stroke:${soft};stroke-width:.5}
.drift-grid{fill:none;stroke:${faint};stroke-width:.5}
.drift-band{fill:${faint};opacity:.55}.drift-band-edge{fill:none;stroke:${ink};stroke-width:1}
.drift-limit{fill:none;stroke:${alarm};stroke-width:2.2}.drift-limit-text{fill:${alarm};font-weight:600}
.drift-beyond{fill:none;stroke:${alarm};stroke-width:.6;opacity:.6}
.drift-place{fill:none;stroke:${soft};stroke-width:.7;stroke-dasharray:1 2}
`;

/** Least stops an axis shows. */
const LEAST_SPAN_STOPS = 2;
const PAD_SHARE = 0.06;

/** Least and most of any number of values; infinities the wrong way round for none. */
export function extentOf(values: readonly number[]): { readonly low: number; readonly high: number } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { low, high };
}

/** Stops, bright at the top, to y; for no finite values an axis from 0 to 2. */
export function stopScale(low: number, high: number, frame: Pick<TimeFrame, "top" | "height">): StopScale {
  const isGiven = Number.isFinite(low) && Number.isFinite(high);
  const middle = isGiven ? (low + high) / 2 : LEAST_SPAN_STOPS / 2;
  const span = isGiven ? Math.max(LEAST_SPAN_STOPS, (high - low) * (1 + 2 * PAD_SHARE)) : LEAST_SPAN_STOPS;
  const ends = [middle - span / 2, middle + span / 2] as const;
  return Object.assign(linear(ends, [frame.top + frame.height, frame.top]), { low: ends[0], high: ends[1] });
}

export interface StopScale extends Scale {
  readonly low: number;
  readonly high: number;
}

/** From tick to tick, at least. */
const TICK_ROOM_PX = 26;

/** Round stops at the left with a light grid. */
export function StopAxis({ frame, scale }: { readonly frame: TimeFrame; readonly scale: StopScale }) {
  const { left, top, width, height } = frame;
  const ticks = scale
    .ticks(Math.max(2, Math.floor(height / TICK_ROOM_PX)))
    .filter((stops) => stops >= scale.low && stops <= scale.high);
  const digits = ticks.every(Number.isInteger) ? 0 : 1;
  return (
    <g>
      {ticks.map((stops) => {
        const y = cut(scale(stops));
        return (
          <>
            <path class="drift-grid" d={`M${left} ${y}h${width}`} />
            <text class="soft small end" x={left - 5} y={cut(y + 3)}>
              {signed(stops, digits)}
            </text>
          </>
        );
      })}
      <path class="line" d={`M${left} ${top}v${height}`} />
    </g>
  );
}

/** A real minus sign; no "-0". */
const signed = (stops: number, digits: number): string => (stops + 0).toFixed(digits).replace(/^-/, "\u2212");
