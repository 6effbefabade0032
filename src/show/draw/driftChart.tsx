/** How the light on the body changes over a window: EV at ISO 100 of every camera, those that change most and least by name. */

import type { ChartPlan } from "../../plan/live/chartPlan.ts";
import { safeText } from "../../site/sourcePlaces.ts";
import { isValue } from "./cameraDriftData.ts";
import { curvePath } from "./curves.ts";
import { Drawing } from "./drawing.tsx";
import { DRIFT_DASHES, extentOf, StopAxis, stopScale } from "./driftMarks.tsx";
import { FittedName } from "./fittedName.tsx";
import { spreadLabels } from "./labelRoom.ts";
import { cut, type Point } from "./paths.ts";
import { TimeAxis } from "./timeAxis.tsx";
import { type TimeFrame, windowSpan, xOf } from "./timeFrame.ts";

/** Of one sky. */
type DriftPlan = Pick<ChartPlan, "window" | "cameras" | "sun" | "sky">;

interface DriftOverviewProps {
  readonly plan: DriftPlan;
}

const SHEET_PX = 900;
const LEFT_PX = 44;
const NAMES_PX = 190;
const TOP_PX = 24;
const HEIGHT_PX = 220;
const AXIS_PX = 20;
const LABEL_GAP_PX = 13;
/** Named from either end of the order. */
const NAMED = 2;

/** Where the drift overview's time runs. */
export const driftFrame = ({ window }: Pick<ChartPlan, "window">): TimeFrame => ({
  left: LEFT_PX,
  top: TOP_PX,
  width: SHEET_PX - LEFT_PX - NAMES_PX,
  height: HEIGHT_PX,
  sheetWidth: SHEET_PX,
  sheetHeight: TOP_PX + HEIGHT_PX + AXIS_PX,
  ...windowSpan(window),
});

/** One camera's EV over the window. */
export interface EvDrift {
  readonly id: string;
  /** At each T-0; null where the model gives none. */
  readonly ev: readonly (number | null)[];
  /** Most less least; null without a value. */
  readonly changeStops: number | null;
  /** Named as one of those that change "most" or "least". */
  readonly named: "most" | "least" | null;
}

export function evDrifts({ cameras, sun }: DriftPlan): EvDrift[] {
  const drifts = cameras.map((camera) => {
    const ev = sun.map((_, i) => {
      const value = camera.lightAt(i).ev;
      return isValue(value) ? value : null;
    });
    const values = ev.filter((value) => value !== null);
    const { low, high } = extentOf(values);
    return { id: camera.id, ev, changeStops: values.length === 0 ? null : high - low };
  });
  const order = drifts
    .map((_, i) => i)
    .filter((i) => drifts[i]!.changeStops !== null)
    .sort((a, b) => drifts[b]!.changeStops! - drifts[a]!.changeStops! || a - b);
  const most = new Set(order.slice(0, NAMED));
  const least = new Set(order.slice(NAMED).slice(-NAMED));
  return drifts.map((drift, i) => ({
    ...drift,
    named: most.has(i) ? "most" : least.has(i) ? "least" : null,
  }));
}

export function DriftOverview({ plan }: DriftOverviewProps) {
  const frame = driftFrame(plan);
  const drifts = evDrifts(plan);
  const values = drifts.flatMap(({ ev }) => ev.filter((value) => value !== null));
  const { low, high } = extentOf(values);
  const scale = stopScale(low, high, frame);
  const pointsOf = ({ ev }: EvDrift): (Point | null)[] =>
    ev.map((value, i) => (value === null ? null : [xOf(frame, plan.sun[i]!.at.getTime()), scale(value)]));
  const named = drifts.filter((drift) => drift.named !== null);
  return (
    <Drawing
      width={SHEET_PX}
      height={frame.sheetHeight}
      title={`EV at ISO 100 on the body by T-0, sky ${plan.sky[0]}`}
      class="drift"
    >
      <Heads frame={frame} hasValues={values.length > 0} />
      <StopAxis frame={frame} scale={scale} />
      {drifts
        .filter((drift) => drift.named === null)
        .map((drift) => (
          <path class="drift-line" d={curvePath(pointsOf(drift))}>
            <title>{safeText(drift.id)}</title>
          </path>
        ))}
      <DriftNames named={named} points={named.map(pointsOf)} frame={frame} />
      <TimeAxis frame={frame} zone={plan.window.zone} side="bottom" />
    </Drawing>
  );
}

/** What the axes count, or that there is nothing to count. */
const Heads = ({ frame, hasValues }: { readonly frame: TimeFrame; readonly hasValues: boolean }) => (
  <>
    <text class="soft small" x="2" y={frame.top - 9}>
      EV at ISO 100, incident on the body
    </text>
    {hasValues ? (
      <text class="soft small end" x={SHEET_PX - 4} y={frame.top - 9}>
        change over the window, stops
      </text>
    ) : (
      <text class="soft mid" x={frame.left + frame.width / 2} y={frame.top + frame.height / 2}>
        no EV at any T-0
      </text>
    )}
  </>
);

interface DriftNamesProps {
  readonly named: readonly EvDrift[];
  readonly points: readonly (readonly (Point | null)[])[];
  readonly frame: TimeFrame;
}

/** The named curves, each with a dash of its own, and their names beside their ends. */
function DriftNames({ named, points, frame }: DriftNamesProps) {
  const { left, width, top, height, sheetWidth } = frame;
  const right = left + width;
  const ends = points.map((curve) => curve.findLast((point) => point !== null) ?? ([right, top] as Point));
  const places = spreadLabels(
    ends.map(([, y]) => y),
    LABEL_GAP_PX,
    top + 4,
    top + height - 4,
  );
  return (
    <>
      {named.map(({ id, changeStops, named: which }, i) => {
        const [endX, endY] = ends[i]!;
        const y = cut(places[i]!);
        return (
          <>
            <path class="drift-named" stroke-dasharray={DRIFT_DASHES[i]} d={curvePath(points[i]!)} />
            <path
              class="drift-lead"
              d={`M${endX} ${cut(endY)}L${right + 3} ${cut(endY)}L${right + 10} ${y}`}
            />
            <path class="drift-named" stroke-dasharray={DRIFT_DASHES[i]} d={`M${right + 10} ${y}h22`} />
            <text class="strong" x={right + 37} y={cut(y + 3.5)} unicode-bidi="plaintext">
              <FittedName name={id} roomPx={sheetWidth - right - 94} fontPx={10} />
            </text>
            <text class="soft small end" x={sheetWidth - 4} y={cut(y + 3.5)}>
              {`${which} ${changeStops!.toFixed(1)}`}
            </text>
          </>
        );
      })}
    </>
  );
}
