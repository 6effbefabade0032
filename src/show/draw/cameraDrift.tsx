/** One camera over a window: what it sees against its medium's range at its setting, in stops from the mid-tone. */

import { type CameraDriftData, linesOf, type Part, pointsOf, rangeScale } from "./cameraDriftData.ts";
import { Beyond, BodyBand, CurveNames, Limits, SunInFrame } from "./cameraDriftParts.tsx";
import { curvePath } from "./curves.ts";
import { Drawing } from "./drawing.tsx";
import { StopAxis } from "./driftMarks.tsx";
import { TimeAxis } from "./timeAxis.tsx";
import type { MsSpan, TimeFrame } from "./timeFrame.ts";

interface CameraDriftProps {
  readonly data: CameraDriftData;
  readonly zone: string;
  /** Opening and closing. */
  readonly window: MsSpan;
}

const SHEET_PX = 440;
const LEFT_PX = 34;
const LABELS_PX = 68;
const TOP_PX = 16;
const HEIGHT_PX = 150;
const AXIS_PX = 20;
/** Where a camera's drift chart has its time. */
export const cameraDriftFrame = ({ fromMs, toMs }: MsSpan): TimeFrame => ({
  left: LEFT_PX,
  top: TOP_PX,
  width: SHEET_PX - LEFT_PX - LABELS_PX,
  height: HEIGHT_PX,
  sheetWidth: SHEET_PX,
  sheetHeight: TOP_PX + HEIGHT_PX + AXIS_PX,
  fromMs,
  toMs,
});

export function CameraDrift({ data, zone, window }: CameraDriftProps) {
  const frame = cameraDriftFrame(window);
  const scale = rangeScale(data, frame);
  const { left, top, width, height } = frame;
  return (
    <Drawing
      width={SHEET_PX}
      height={frame.sheetHeight}
      title={`${data.id}: stops from the mid-tone by T-0`}
      class="drift drift-camera"
    >
      <text class="soft small" x="2" y="9">
        stops from the mid-tone
      </text>
      <StopAxis frame={frame} scale={scale} />
      <svg
        x={left}
        y={top}
        width={width}
        height={height}
        viewBox={`${left} ${top} ${width} ${height}`}
        overflow="hidden"
        aria-hidden="true"
      >
        <Beyond data={data} frame={frame} scale={scale} />
        <BodyBand data={data} frame={frame} scale={scale} />
        <Curves data={data} frame={frame} scale={scale} />
        <Limits data={data} frame={frame} scale={scale} />
      </svg>
      <SunInFrame data={data} frame={frame} />
      <CurveNames data={data} frame={frame} scale={scale} />
      <TimeAxis frame={frame} zone={zone} side="bottom" />
    </Drawing>
  );
}

/** Sky, deck and plume, where they are kept. */
const Curves = ({ data, frame, scale }: Part) => (
  <>
    {linesOf(data).map(({ stops, dash }) => (
      <path class="drift-named" stroke-dasharray={dash} d={curvePath(pointsOf(data, stops, frame, scale))} />
    ))}
  </>
);
