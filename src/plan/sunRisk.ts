/** The sun in and near one camera's frame over a window. */

import { type Interval, joined, minimumNear, spansWithout } from "../base/crossings.ts";
import { horizonAxes } from "../base/earthFixed.ts";
import { angleBetweenDeg } from "../base/vector.ts";
import type { Settings } from "../site/types.ts";
import { type Frame, fromEdgeDeg } from "../view/frame.ts";
import { hoodCutoffDeg } from "../view/hood.ts";
import {
  aboveHorizonMeasure,
  type CameraSun,
  inFrameMeasure,
  inHoodMeasure,
  seenBy,
  sunIntervals,
} from "../view/sunInFrame.ts";
import type { CameraView } from "./cameraView.ts";
import type { TimeSpan } from "./clock.ts";
import { behindWithin, type CameraHides, hiddenBy, hiddenWithin } from "./hiddenSun.ts";
import type { Instant } from "./instants.ts";

/** `hidden`: only ever in or near the frame while it stands behind something opaque. */
export type SunRiskWord = "in-frame" | "near-frame" | "hidden" | "clear" | "down";

/** When a sun outside the gate makes flare: near the edge, and reaching the glass. */
export interface FlareRule {
  /** From the gate's edge. */
  readonly marginDeg: number;
  /** From the axis, the hood's limit; null when no hood is given, which keeps no sun out. */
  readonly cutoffDeg: number | null;
}

export interface SunRisk {
  readonly risk: SunRiskWord;
  /** And not hidden. */
  readonly inFrame: readonly TimeSpan[];
  /** Outside the gate but within the flare margin, and not hidden. */
  readonly nearFrame: readonly TimeSpan[];
  /** In or near the frame but safely hidden, with the site's margin. */
  readonly hidden: readonly HiddenSpan[];
  /** While it is in or near the frame: any part of the disc behind something, a lattice too. */
  readonly behind: readonly BehindSpan[];
  /** While any of the disc is up; null when it is down throughout. */
  readonly closest: { readonly at: Date; readonly fromEdgeDeg: number; readonly offAxisDeg: number } | null;
  readonly flare: FlareRule;
}

export interface HiddenSpan extends TimeSpan {
  /** What hides it, in the order of the site file. */
  readonly by: readonly string[];
}

export interface BehindSpan extends TimeSpan {
  readonly by: string;
  readonly solidity: number;
}

/** One camera's sun at every T-0 of the window, in the order of the instants. */
export interface SunSeries {
  readonly timesMs: readonly number[];
  readonly fromEdgeDeg: readonly number[];
  readonly offAxisDeg: readonly number[];
}

export function flareRule(view: CameraView, settings: Settings): FlareRule {
  const { hood } = view.camera.lens;
  return { marginDeg: settings.flareMarginDeg, cutoffDeg: hood === null ? null : hoodCutoffDeg(hood) };
}

/** Degrees by which the sun misses the zone of flare (frame included) and the frame; below zero inside. */
export interface SunMeasures {
  flare: number;
  inFrame: number;
}

/** Both measures of one sun, into `measures`. */
export function measureSun(frame: Frame, rule: FlareRule, sun: CameraSun, measures: SunMeasures): void {
  const { marginDeg, cutoffDeg } = rule;
  const limbDeg = fromEdgeDeg(frame, sun.direction) - sun.semidiameterDeg;
  const below = aboveHorizonMeasure(sun);
  const near = Math.max(limbDeg - marginDeg, below);
  measures.inFrame = Math.max(limbDeg, below);
  measures.flare =
    cutoffDeg === null
      ? near
      : Math.min(measures.inFrame, Math.max(near, inHoodMeasure(frame, sun, cutoffDeg)));
}

/** Below zero while the sun makes flare or stands in the frame. */
export function flareMeasure(frame: Frame, rule: FlareRule): (sun: CameraSun) => number {
  const measures: SunMeasures = { flare: 0, inFrame: 0 };
  return (sun) => {
    measureSun(frame, rule, sun, measures);
    return measures.flare;
  };
}

/** `instants` are the scene's; the sun itself was computed once for all cameras. */
export function sunSeries(view: CameraView, instants: readonly Instant[]): SunSeries {
  const axes = horizonAxes(view.place);
  const timesMs: number[] = [];
  const edges: number[] = [];
  const offAxes: number[] = [];
  for (const { ms, sample } of instants) {
    const { direction } = seenBy(axes, sample, view.air);
    timesMs.push(ms);
    edges.push(fromEdgeDeg(view.frame, direction));
    offAxes.push(angleBetweenDeg(view.frame.axis, direction));
  }
  return { timesMs, fromEdgeDeg: edges, offAxisDeg: offAxes };
}

export function sunRisk(
  frame: Frame,
  rule: FlareRule,
  hides: CameraHides,
  sunOf: (ms: number) => CameraSun,
  series: SunSeries,
): SunRisk {
  const fromMs = series.timesMs[0]!;
  const toMs = series.timesMs.at(-1)!;
  const within = (measure: (sun: CameraSun) => number): Interval[] =>
    sunIntervals(sunOf, measure, fromMs, toMs);
  const up = within(aboveHorizonMeasure);
  const framed = within((sun) => inFrameMeasure(frame, sun));
  const flared = within(flareMeasure(frame, rule));
  const behind = behindWithin(hides, sunOf, flared);
  // Where no part of the disc is behind anything opaque it is not hidden.
  const hidden = hiddenWithin(hides, sunOf, joined(behind.filter(({ canHide }) => canHide)));
  const inFrame = spansWithout(framed, hidden);
  const nearFrame = spansWithout(spansWithout(flared, framed), hidden);
  return {
    risk: riskWord(up, inFrame, nearFrame, hidden),
    inFrame: inFrame.map(toTimeSpan),
    nearFrame: nearFrame.map(toTimeSpan),
    hidden: hidden.map((span) => ({ ...toTimeSpan(span), by: hiddenBy(hides, sunOf, span) })),
    behind: behind.map(({ by, solidity, canHide: _, ...span }) => ({ ...toTimeSpan(span), by, solidity })),
    closest: closestApproach(frame, sunOf, series, up),
    flare: rule,
  };
}

function riskWord(
  up: readonly Interval[],
  inFrame: readonly Interval[],
  near: readonly Interval[],
  hidden: readonly Interval[],
): SunRiskWord {
  if (inFrame.length > 0) return "in-frame";
  if (near.length > 0) return "near-frame";
  if (hidden.length > 0) return "hidden";
  return up.length > 0 ? "clear" : "down";
}

/** Times of the disc at an edge are told to a tenth of a second, that of a closest approach to a second. */
const EDGE_TIME_MS = 100;
const CLOSEST_TIME_MS = 1000;

const rounded = (ms: number, stepMs: number): Date => new Date(Math.round(ms / stepMs) * stepMs);

export const toTimeSpan = ({ fromMs, toMs }: Interval): TimeSpan => ({
  from: rounded(fromMs, EDGE_TIME_MS),
  to: rounded(toMs, EDGE_TIME_MS),
});

function closestApproach(
  frame: Frame,
  sunOf: (ms: number) => CameraSun,
  series: SunSeries,
  up: readonly Interval[],
): SunRisk["closest"] {
  const edge = (ms: number): number => fromEdgeDeg(frame, sunOf(ms).direction);
  let best: { atMs: number; value: number } | null = null;
  for (const { fromMs, toMs } of up) {
    const first = series.timesMs.findIndex((ms) => ms > fromMs);
    const end = series.timesMs.findIndex((ms) => ms >= toMs);
    const times = [fromMs, ...series.timesMs.slice(first, end), toMs];
    const values = [edge(fromMs), ...series.fromEdgeDeg.slice(first, end), edge(toMs)];
    const found = minimumNear(edge, times, values);
    if (best === null || found.value < best.value) best = found;
  }
  if (best === null) return null;
  const offAxisDeg = angleBetweenDeg(frame.axis, sunOf(best.atMs).direction);
  return { at: rounded(best.atMs, CLOSEST_TIME_MS), fromEdgeDeg: best.value, offAxisDeg };
}
