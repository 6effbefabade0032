/** The window in charts: light and sun of every camera, the margin of its setting, and how the light drifts. */

import type { ComponentChildren } from "preact";
import { DriftOverview, driftFrame } from "../draw/driftChart.tsx";
import { LightStrip } from "../draw/lightStrip.tsx";
import { MarginStrip } from "../draw/marginStrip.tsx";
import { stripGeometry } from "../draw/stripSheet.tsx";
import { TimeCursor } from "../draw/timeCursor.tsx";
import type { TimeFrame } from "../draw/timeFrame.ts";
import type { WindowChartData } from "./chartsOver.ts";

export interface WindowChartsProps {
  readonly charts: WindowChartData;
  /** "settings for clear". */
  readonly settingWords: string;
}

/** One sky: the plan of the charts has no other. */
export function WindowCharts({ charts: { plan, spares }, settingWords }: WindowChartsProps) {
  const [sky] = plan.sky;
  return (
    <>
      <Chart index={0} head={`Light and sun, ${sky}`}>
        <LightStrip plan={plan} />
      </Chart>
      <Chart index={1} head={`Spare of the settings, ${sky}, ${settingWords}`}>
        <MarginStrip plan={plan} spareStops={spares} />
      </Chart>
      <Chart index={2} head={`Drift of the light on the body, ${sky}`}>
        <DriftOverview plan={plan} />
      </Chart>
    </>
  );
}

function Chart({
  index,
  head,
  children,
}: {
  readonly index: number;
  readonly head: string;
  readonly children: ComponentChildren;
}) {
  return (
    <figure class="chart">
      <figcaption>{head}</figcaption>
      <div class="chart-sheet">
        {children}
        <div id={`cursor-${index}`} />
      </div>
    </figure>
  );
}

/** Where the chosen T-0 stands in each of them, in their order. */
export const cursorFrames = ({ plan }: WindowChartData): readonly TimeFrame[] => {
  const strip = stripGeometry(plan);
  return [strip, strip, driftFrame(plan)];
};

/** A sheet of its own over a chart. */
export const CursorSheet = ({
  frame,
  atMs,
  text,
}: {
  readonly frame: TimeFrame;
  readonly atMs: number;
  readonly text: string;
}) => (
  <svg class="cursor drawing" aria-hidden="true" viewBox={`0 0 ${frame.sheetWidth} ${frame.sheetHeight}`}>
    <TimeCursor frame={frame} atMs={atMs} text={text} />
  </svg>
);
