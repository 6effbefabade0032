/** What a camera's drift chart is made of: its values over T-0, and where they stand on the chart. */

import { clamp } from "../../base/units.ts";
import { DRIFT_DASHES, extentOf, type StopScale, stopScale } from "./driftMarks.tsx";
import { cut, type Point } from "./paths.ts";
import { type MsSpan, type TimeFrame, xOf } from "./timeFrame.ts";

/** A value at each T-0, null where there is none. */
type StopsOverTime = readonly (number | null)[];

/** All stops are from the medium's mid-tone at the camera's setting; positive: brighter. */
export interface CameraDriftData {
  readonly id: string;
  readonly timesMs: readonly number[];
  /** Darkest and brightest of the body; null without a vehicle. */
  readonly bodyDarkStops: StopsOverTime | null;
  readonly bodyBrightStops: StopsOverTime | null;
  /** Null where it is not shown. */
  readonly skyStops: StopsOverTime | null;
  readonly deckStops: StopsOverTime | null;
  readonly plumeStops: StopsOverTime | null;
  /** How far the medium's usable range reaches under and over the mid-tone, both positive as in a site file. */
  readonly rangeStops: { readonly under: number; readonly over: number };
  /** The sun in the frame. */
  readonly inFrame: readonly MsSpan[];
}

export interface Part {
  readonly data: CameraDriftData;
  readonly frame: TimeFrame;
  readonly scale: StopScale;
}

/** Beyond the medium's range no more than this is shown, but for the blank that `stopScale` adds; what lies further is told at the edge. */
const BEYOND_STOPS = 4;
/** And at least this, so that the limits stand free. */
const MARGIN_STOPS = 1;

export function rangeScale(data: CameraDriftData, frame: TimeFrame): StopScale {
  const { under, over } = data.rangeStops;
  const all = [data.bodyDarkStops, data.bodyBrightStops, ...linesOf(data).map(({ stops }) => stops)]
    .flatMap((stops) => stops ?? [])
    .filter((value) => isValue(value));
  const extent = extentOf(all);
  const low = Math.max(-under - BEYOND_STOPS, Math.min(-under - MARGIN_STOPS, extent.low));
  const high = Math.min(over + BEYOND_STOPS, Math.max(over + MARGIN_STOPS, extent.high));
  return stopScale(low, high, frame);
}

export const isValue = (value: number | null | undefined): value is number =>
  value !== null && value !== undefined && Number.isFinite(value);

/** So far off a value is drawn at most, that no path runs to infinity. */
const FAR_PX = 2000;

export function pointsOf(
  { timesMs }: CameraDriftData,
  stops: StopsOverTime,
  frame: TimeFrame,
  scale: StopScale,
): (Point | null)[] {
  return timesMs.map((ms, i) => {
    const value = stops[i];
    return isValue(value) ? [xOf(frame, ms), cut(clamp(scale(value), -FAR_PX, FAR_PX))] : null;
  });
}

interface Line {
  readonly name: string;
  readonly stops: StopsOverTime;
  readonly dash: string | undefined;
}

/** Each has its dash wherever it stands. */
export function linesOf({ skyStops, deckStops, plumeStops }: CameraDriftData): Line[] {
  const all = [
    { name: "sky", stops: skyStops, dash: DRIFT_DASHES[1] },
    { name: "deck", stops: deckStops, dash: DRIFT_DASHES[2] },
    { name: "plume", stops: plumeStops, dash: DRIFT_DASHES[3] },
  ];
  return all.flatMap((line) => (line.stops === null ? [] : [{ ...line, stops: line.stops }]));
}

/** Half way between the body's darkest and brightest. */
export const middleOf = ({ bodyDarkStops, bodyBrightStops }: CameraDriftData): StopsOverTime =>
  (bodyBrightStops ?? []).map((bright, i) => {
    const dark = bodyDarkStops?.[i];
    return isValue(bright) && isValue(dark) ? (bright + dark) / 2 : null;
  });
