/** The parts of a camera's drift chart: the body's band, the medium's limits, the sun along the bottom, names at the right. */

import { clamp } from "../../base/units.ts";
import { isValue, linesOf, middleOf, type Part, pointsOf } from "./cameraDriftData.ts";
import { curvePath, unbroken } from "./curves.ts";
import { spreadLabels } from "./labelRoom.ts";
import { SunCell } from "./lightMarks.tsx";
import { closedPath, cut } from "./paths.ts";
import { LEAST_SUN_PX } from "./stripMarks.tsx";
import { spanBox, type TimeFrame } from "./timeFrame.ts";

/** From the body's darkest to its brightest. */
export function BodyBand({ data, frame, scale }: Part) {
  const { bodyDarkStops, bodyBrightStops } = data;
  if (bodyDarkStops === null || bodyBrightStops === null) return null;
  const dark = pointsOf(data, bodyDarkStops, frame, scale);
  const bright = pointsOf(data, bodyBrightStops, frame, scale);
  const both = dark.map((low, i) => {
    const high = bright[i] ?? null;
    return low === null || high === null ? null : { low, high };
  });
  return (
    <>
      {unbroken(both).map((part) => {
        const outline = [...part.map(({ high }) => high), ...part.toReversed().map(({ low }) => low)];
        return <path class="drift-band" d={closedPath(outline)} />;
      })}
      <path class="drift-band-edge" d={curvePath(bright)} />
      <path class="drift-band-edge" d={curvePath(dark)} />
    </>
  );
}

const SUN_PX = 9;
const HATCH_PX = 7;

/** Light hatching where the medium no longer holds: over it one way, under it the other. */
export function Beyond({ data: { rangeStops }, frame: { left, top, width, height }, scale }: Part) {
  const overY = scale(rangeStops.over);
  const underY = scale(-rangeStops.under);
  const hatch = (fromY: number, toY: number, lean: 1 | -1): string => {
    const deep = cut(toY - fromY);
    if (deep <= 0) return "";
    const count = Math.ceil((width + deep) / HATCH_PX);
    return Array.from({ length: count }, (_, i) => {
      const x = cut(left + (lean === 1 ? -deep : 0) + i * HATCH_PX);
      return `M${x} ${cut(lean === 1 ? toY : fromY)}l${lean === 1 ? deep : -deep} ${cut(lean === 1 ? -deep : deep)}`;
    }).join("");
  };
  return <path class="drift-beyond" d={`${hatch(top, overY, 1)}${hatch(underY, top + height, -1)}`} />;
}

export function Limits({ data: { rangeStops }, frame: { left, width }, scale }: Part) {
  const [overY, underY, placeY] = [rangeStops.over, -rangeStops.under, 0].map((stops) => cut(scale(stops)));
  return (
    <>
      <path class="drift-place" d={`M${left} ${placeY}h${width}`} />
      <path class="drift-limit" d={`M${left} ${overY}h${width}M${left} ${underY}h${width}`} />
      <text class="drift-limit-text halo small" x={left + 5} y={cut(overY! - 4)}>
        over
      </text>
      <text class="drift-limit-text halo small" x={left + 5} y={cut(underY! + 10)}>
        under
      </text>
    </>
  );
}

/** Along the bottom of the frame. */
export function SunInFrame({ data: { inFrame }, frame }: Pick<Part, "data" | "frame">) {
  const { top, height } = frame;
  const boxes = inFrame.flatMap(
    (span) => spanBox(frame, span, top + height - SUN_PX, SUN_PX, LEAST_SUN_PX) ?? [],
  );
  const widest = boxes.reduce<(typeof boxes)[number] | null>(
    (best, box) => (best === null || box.width > best.width ? box : best),
    null,
  );
  return (
    <>
      {boxes.map((box) => (
        <>
          <SunCell sun="in-frame" box={box} />
          <rect class="strip-in" {...box} />
        </>
      ))}
      {widest !== null && <SunWord box={widest} frame={frame} />}
    </>
  );
}

const SUN_WORD_PX = 76;
/** Where "under" may stand. */
const UNDER_WORD_PX = 38;

function SunWord({
  box,
  frame: { left, width },
}: {
  box: { x: number; y: number; width: number };
  frame: TimeFrame;
}) {
  const middle = box.x + box.width / 2;
  const x = Math.max(
    left + UNDER_WORD_PX + SUN_WORD_PX / 2,
    Math.min(middle, left + width - SUN_WORD_PX / 2),
  );
  return (
    <text class="small mid halo" x={cut(x)} y={cut(box.y - 3)}>
      sun in frame
    </text>
  );
}

const LABEL_GAP_PX = 11;

/** Names at the right, where the curves end; an arrow where that is out of sight. */
export function CurveNames({ data, frame, scale }: Part) {
  const { left, width, top, height } = frame;
  const right = left + width;
  const curves = [
    ...(data.bodyBrightStops === null ? [] : [{ name: "body", stops: middleOf(data), dash: null }]),
    ...linesOf(data),
  ].flatMap(({ name, stops, dash }) => {
    const last = stops.findLast((value) => isValue(value));
    return last === undefined ? [] : [{ name, dash, y: scale(last) }];
  });
  const held = (y: number): number => clamp(y, top, top + height);
  const places = spreadLabels(
    curves.map(({ y }) => held(y)),
    LABEL_GAP_PX,
    top + 3,
    top + height - 3,
  );
  return (
    <>
      {curves.map(({ name, dash, y }, i) => {
        const at = cut(places[i]!);
        const arrow = y < top ? " \u2191" : y > top + height ? " \u2193" : "";
        return (
          <>
            <path class="drift-lead" d={`M${right} ${cut(held(y))}L${right + 5} ${at}`} />
            {dash === null ? (
              <rect class="drift-band" x={right + 6} y={cut(at - 3.5)} width="16" height="7" />
            ) : (
              <path class="drift-named" stroke-dasharray={dash} d={`M${right + 6} ${at}h16`} />
            )}
            <text class="small" x={right + 25} y={cut(at + 3)}>
              {`${name}${arrow}`}
            </text>
          </>
        );
      })}
    </>
  );
}
