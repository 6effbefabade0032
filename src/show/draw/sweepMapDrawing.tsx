/** A tracker's window drawn as a map: T-0 across, T+ down, the body's light, and where the sun meets the frame. */

import { makeClock } from "../../plan/clock.ts";
import { lightRectangles, type MapRectangle, sunRectangles } from "../../plan/picture/mapRectangles.ts";
import type { SweepMap, SweepSun } from "../../plan/sweep/sweepTypes.ts";
import { makeSecondsClock, tPlusName } from "../sweepTimes.ts";
import type { Box } from "./boxes.ts";
import { Drawing } from "./drawing.tsx";
import { STRONG_TIMES, textWidthPx } from "./fitText.ts";
import { FittedName } from "./fittedName.tsx";
import { Legend, legendHeight } from "./legend.tsx";
import { LightCell, SunCell } from "./lightMarks.tsx";
import { cut } from "./paths.ts";
import { mapLegend, OUTLINE_CLASS } from "./sweepMapLegend.tsx";
import {
  MAP_WIDTH,
  type MapCrossing,
  type MapScales,
  mapCrossings,
  mapFrame,
  mapPlot,
  mapScales,
  t0Scale,
} from "./sweepMapPlan.ts";
import { TimeAxis } from "./timeAxis.tsx";
import { TICK_PX } from "./timeFrame.ts";

interface SweepMapProps {
  /** Made with `drawnMapSize`. */
  readonly map: SweepMap;
  readonly sun: SweepSun;
  readonly zone: string;
  /** The ascent is made from parameters: times are told to the minute. */
  readonly isRough: boolean;
}

/** Blank between the tracker's id and what the axes are. */
const HEAD_GAP_PX = 12;
/** From the map to its key. */
const KEY_OFF_PX = 10;

export function SweepMapDrawing({ map, sun, zone, isRough }: SweepMapProps) {
  const scales = mapScales(map);
  const { opens, closes } = map.window;
  const clock = (isRough ? makeClock : makeSecondsClock)(zone, opens, closes);
  const crossings = mapCrossings(sun, scales, { clock, isRough });
  const legend = mapLegend(map, crossings);
  const title = `Sun along the sweep of ${map.id}`;
  const { plot } = scales;
  const axes = `T-0 across (${zone}), T+ down in seconds`;
  const below = plot.y + plot.height;
  return (
    <Drawing
      width={MAP_WIDTH}
      height={cut(below + KEY_OFF_PX + legendHeight(legend, plot.width))}
      title={title}
      class="sweepmap"
    >
      <text class="text strong" x={plot.x} y={14} unicode-bidi="plaintext">
        <FittedName
          name={map.id}
          roomPx={plot.width - HEAD_GAP_PX - textWidthPx(axes, 10)}
          fontPx={10 * STRONG_TIMES}
        />
      </text>
      <text class="soft end" x={plot.x + plot.width} y={14}>
        {axes}
      </text>
      <MapCells map={map} scales={scales} />
      <rect class="line" {...plot} />
      <TimeAxis frame={mapFrame(map, scales)} zone={zone} side="top" />
      <TPlusAxis scales={scales} />
      {crossings.map((one) => (
        <Crossing {...one} />
      ))}
      <Legend items={legend} x={plot.x} y={cut(below + KEY_OFF_PX)} width={plot.width} />
    </Drawing>
  );
}

/** The light of the body, and over it the sun. */
function MapCells({ map, scales }: { readonly map: SweepMap; readonly scales: MapScales }) {
  const lit = lightRectangles(map);
  const isFirst = (run: MapRectangle<unknown>): boolean => lit.find(({ kind }) => kind === run.kind) === run;
  return (
    <g shape-rendering="crispEdges">
      {lit.map((run) => (
        <LightCell
          light={run.kind}
          box={runBox(run, map, scales)}
          letterX={isFirst(run) || isLarge(run) ? undefined : null}
        />
      ))}
      {sunRectangles(map).map((run) => (
        <SunCell sun={run.kind} box={runBox(run, map, scales)} />
      ))}
    </g>
  );
}

/** Pieces beside a slanting border need no letter of their own. */
const isLarge = ({ fromColumn, toColumn, fromRow, toRow }: MapRectangle<unknown>): boolean =>
  Math.min(toColumn - fromColumn, toRow - fromRow) >= LEAST_LETTERED_CELLS;
const LEAST_LETTERED_CELLS = 5;

function runBox(
  { fromColumn, toColumn, fromRow, toRow }: MapRectangle<unknown>,
  map: SweepMap,
  { x, y }: MapScales,
): Box {
  const left = cut(x(map.edges[fromColumn]!.getTime()));
  const top = cut(y(map.rows[fromRow]!.fromS));
  return {
    x: left,
    y: top,
    width: cut(x(map.edges[toColumn]!.getTime()) - left),
    height: cut(y(map.rows[toRow - 1]!.toS) - top),
  };
}

const T_PLUS_TICKS = 8;

const TPlusAxis = ({ scales: { y, plot } }: { scales: MapScales }) => (
  <g>
    {y.ticks(T_PLUS_TICKS).map((tPlusS) => (
      <>
        <path class="line" d={`M${plot.x} ${cut(y(tPlusS))}h${-TICK_PX}`} />
        <text class="text end" x={plot.x - TICK_PX - 3} y={cut(y(tPlusS) + 3.5)}>
          {tPlusName(tPlusS)}
        </text>
      </>
    ))}
  </g>
);

const cutBox = ({ x, y, width, height }: Box): Box => ({
  x: cut(x),
  y: cut(y),
  width: cut(width),
  height: cut(height),
});

/** The exact T-0s and T+, and what is said of the closest approach where there is room. */
function Crossing({ zone, boxes, closest, words, label }: MapCrossing) {
  return (
    <g>
      {words !== null && <title>{words}</title>}
      {boxes.map(cutBox).map((box) => (
        <>
          <rect class="casing" {...box} />
          <rect class={OUTLINE_CLASS[zone]} {...box} />
        </>
      ))}
      {words !== null && label !== null && (
        <>
          <path class={zone === "in-frame" ? "sweepmap-in" : "line"} d={crossAt(closest.x, closest.y)} />
          <rect class="sweepmap-ground" {...cutBox(label)} />
          <text class="text sweepmap-label" x={cut(label.x + 2)} y={cut(label.y + 9)}>
            {words}
          </text>
        </>
      )}
    </g>
  );
}

const crossAt = (x: number, y: number): string => `M${cut(x - 3)} ${cut(y)}h6M${cut(x)} ${cut(y - 3)}v6`;

interface SweepMapCursorProps {
  readonly atMs: number;
  readonly window: SweepMap["window"];
  /** Of the sweep. */
  readonly fromS: number;
  readonly toS: number;
}

/** The chosen T-0 over the map; nothing for one outside the window. */
export function SweepMapCursor({ atMs, window, fromS, toS }: SweepMapCursorProps) {
  if (atMs < window.opens.getTime() || atMs > window.closes.getTime()) return null;
  const { y, height } = mapPlot({ fromS, toS });
  return <path class="now" d={`M${cut(t0Scale(window)(atMs))} ${y - 3}v${cut(height + 6)}`} />;
}
