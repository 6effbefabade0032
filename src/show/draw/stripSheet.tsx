/** The sheet of a strip over a window: a row per camera, round clock times above and below, sunrise and sunset, a key. */

import type { ComponentChildren } from "preact";
import { clamp } from "../../base/units.ts";
import { makeClock } from "../../plan/clock.ts";
import type { ChartPlan } from "../../plan/live/chartPlan.ts";
import { Drawing } from "./drawing.tsx";
import { textWidthPx } from "./fitText.ts";
import { FittedName } from "./fittedName.tsx";
import { Legend, type LegendItem, legendHeight } from "./legend.tsx";
import { cut } from "./paths.ts";
import { FollowMark } from "./stripMarks.tsx";
import { type SunEventMark, sunEventMarks } from "./sunEventMarks.ts";
import { TimeAxis } from "./timeAxis.tsx";
import { placedIn, type TimeFrame, windowSpan, xOf } from "./timeFrame.ts";

/** What a strip takes of a plan. */
export type StripPlan = Omit<ChartPlan, "sky">;

/** Where the rows stand; both strips of a plan share it, so that one cursor serves them. */
export interface StripGeometry extends TimeFrame {
  /** From row to row. */
  readonly rowPx: number;
}

const SHEET_PX = 900;
const RIGHT_PX = 22;
const MOST_NAME_PX = 118;
const LEAST_NAME_PX = 30;
/** For the mark of a camera that follows the vehicle. */
const MARK_PX = 12;
/** Lane of the chosen T-0, of each line of sun events, of clock times. */
const CURSOR_PX = 12;
const EVENT_PX = 12;
const AXIS_PX = 18;
const LEGEND_GAP_PX = 8;
const MOST_ROW_PX = 16;
const LEAST_ROW_PX = 9;
/** Up to this height of all rows together they keep their full size. */
const ROWS_PX = 480;
const NAME_FONT_PX = 10;
const SMALL_FONT_PX = 8.5;

export const rowHeightPx = (rows: number): number =>
  clamp(Math.floor(ROWS_PX / Math.max(1, rows)), LEAST_ROW_PX, MOST_ROW_PX);

/** The blank between rows is part of a row's height. */
const cellHeightPx = (rowPx: number): number => rowPx - (rowPx >= 12 ? 2 : 1);

export const nameColumnPx = (names: readonly string[], fontPx: number): number =>
  Math.max(
    LEAST_NAME_PX,
    Math.min(MOST_NAME_PX, Math.max(0, ...names.map((name) => textWidthPx(name, fontPx)))),
  );

/** Of both strips of a plan, without the key below. */
export const stripGeometry = (plan: StripPlan): StripGeometry => geometryWith(sunEventMarks(plan), plan);

function geometryWith(events: readonly SunEventMark[], plan: StripPlan): StripGeometry {
  const rowPx = rowHeightPx(plan.cameras.length);
  const names = nameColumnPx(
    plan.cameras.map(({ id }) => id),
    NAME_FONT_PX,
  );
  const left = Math.ceil(names) + MARK_PX + 8;
  const lanes = Math.max(0, ...events.map(({ lane }) => lane + 1));
  const top = CURSOR_PX + lanes * EVENT_PX + AXIS_PX;
  const height = Math.max(1, plan.cameras.length) * rowPx;
  return {
    left,
    top,
    width: SHEET_PX - left - RIGHT_PX,
    height,
    sheetWidth: SHEET_PX,
    sheetHeight: top + height + AXIS_PX,
    ...windowSpan(plan.window),
    rowPx,
  };
}

/** Where the cell of a row stands. */
export interface RowPlace {
  readonly frame: StripGeometry;
  readonly y: number;
  readonly height: number;
}

interface StripSheetProps {
  readonly plan: StripPlan;
  readonly title: string;
  readonly name: string;
  readonly legend: readonly LegendItem[];
  readonly row: (cameraIndex: number, place: RowPlace) => ComponentChildren;
}

export function StripSheet({ plan, title, name, legend, row }: StripSheetProps) {
  const events = sunEventMarks(plan);
  const frame = geometryWith(events, plan);
  const { left, top, width, height, rowPx, sheetWidth, sheetHeight } = frame;
  const key = legendHeight(legend, sheetWidth - left);
  const { zone } = plan.window;
  const rows = plan.cameras.map(({ id, sweep }) => ({ id, follows: sweep !== null }));
  return (
    <Drawing width={sheetWidth} height={sheetHeight + LEGEND_GAP_PX + key} title={title} class={name}>
      <TimeAxis frame={frame} zone={zone} side="top" />
      <StripRows rows={rows} frame={frame} row={row} />
      {rows.length === 0 && (
        <text class="soft mid" x={left + width / 2} y={top + rowPx / 2 + 3}>
          no cameras
        </text>
      )}
      <rect class="strip-frame" x={left} y={top} width={width} height={height} />
      <EventMarks events={events} frame={frame} />
      <TimeAxis frame={frame} zone={zone} side="bottom" />
      <Legend items={legend} x={left} y={sheetHeight + LEGEND_GAP_PX} width={sheetWidth - left} />
    </Drawing>
  );
}

interface StripRowsProps {
  readonly rows: readonly { readonly id: string; readonly follows: boolean }[];
  readonly frame: StripGeometry;
  readonly row: (index: number, place: RowPlace) => ComponentChildren;
}

/** Names, and what each row holds. */
export function StripRows({ rows, frame, row }: StripRowsProps) {
  const { top, rowPx } = frame;
  const height = cellHeightPx(rowPx);
  return (
    <>
      {rows.map(({ id, follows }, i) => (
        <g>
          <RowName name={id} follows={follows} frame={frame} middle={top + i * rowPx + rowPx / 2} />
          {row(i, { frame, y: cut(top + i * rowPx + (rowPx - height) / 2), height })}
        </g>
      ))}
    </>
  );
}

interface RowNameProps {
  readonly name: string;
  readonly follows: boolean;
  readonly frame: StripGeometry;
  readonly middle: number;
}

function RowName({ name, follows, frame: { left, rowPx }, middle }: RowNameProps) {
  const isSmall = rowPx < 12;
  const fontPx = isSmall ? SMALL_FONT_PX : NAME_FONT_PX;
  return (
    <>
      <text
        class={isSmall ? "end small" : "end"}
        x={left - MARK_PX - 2}
        y={cut(middle + 3.3)}
        unicode-bidi="plaintext"
      >
        <FittedName name={name} roomPx={left - MARK_PX - 6} fontPx={fontPx} />
      </text>
      {follows && <FollowMark x={left - 4} y={middle} />}
    </>
  );
}

/** Sunrise and sunset through all rows, their times above. */
function EventMarks({ events, frame }: { events: readonly SunEventMark[]; frame: StripGeometry }) {
  const { top, height } = frame;
  const laneTop = (lane: number): number => CURSOR_PX + lane * EVENT_PX;
  return (
    <>
      {events.map(({ ms, lane, text }) => {
        const x = xOf(frame, ms);
        const d = `M${x} ${top}V${top + height}`;
        return (
          <>
            <path class="casing" d={d} />
            <path class="strip-event" d={d} />
            <path class="thin" d={`M${x} ${laneTop(lane) + EVENT_PX - 1}V${top - AXIS_PX}`} />
            <text class="small mid" x={placedIn(frame, x, text, SMALL_FONT_PX)} y={laneTop(lane) + 9}>
              {text}
            </text>
          </>
        );
      })}
    </>
  );
}

/** The clock of a window's axis. */
export const stripClock = ({ window }: StripPlan): ReturnType<typeof makeClock> =>
  makeClock(window.zone, window.opens, window.closes);
