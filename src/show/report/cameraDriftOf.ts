/** One camera's exposure over the window at its setting, for its chart. */

import type { Instant } from "../../plan/instants.ts";
import { liveView, type Reading } from "../../plan/live/liveView.ts";
import type { LiveWindow } from "../../plan/live/liveWindow.ts";
import type { Thing } from "../../site/types.ts";
import type { CameraDriftData } from "../draw/cameraDriftData.ts";
import { msSpan } from "../draw/timeFrame.ts";
import type { PageCamera } from "./pageData.ts";

/** Null without a setting. */
export function cameraDriftOf(
  live: LiveWindow,
  index: number,
  instants: readonly Instant[],
  skyIndex: number,
  midToneLog2: number | null,
  page: PageCamera,
): CameraDriftData | null {
  if (midToneLog2 === null) return null;
  const camera = live.cameras[index]!;
  const { keep, medium } = camera.view.camera;
  const views = instants.map((instant) => liveView(live, camera, instant, skyIndex, midToneLog2));
  const readingsOf = (thing: Thing): (Reading | null)[] =>
    views.map(({ exposure }) => exposure!.readings.find((one) => one.thing === thing) ?? null);
  const overTime = (thing: Thing, end: "darkStops" | "brightStops"): (number | null)[] | null => {
    const readings = readingsOf(thing).map((reading) => reading?.[end] ?? null);
    return readings.every((stops) => stops === null) ? null : readings;
  };
  const kept = (thing: Thing): (number | null)[] | null =>
    keep.includes(thing) ? overTime(thing, "brightStops") : null;
  return {
    id: page.id,
    timesMs: instants.map(({ ms }) => ms),
    bodyDarkStops: overTime("body", "darkStops"),
    bodyBrightStops: overTime("body", "brightStops"),
    skyStops: overTime("sky", "brightStops"),
    deckStops: kept("deck"),
    plumeStops: kept("plume"),
    rangeStops: { under: medium!.underStops, over: medium!.overStops },
    // A tracker's are T-0s with the sun somewhere along the sweep; the chart is for T+0.
    inFrame: camera.sweep === null ? page.sun.inFrame.map(msSpan) : [],
  };
}

/** T-0s of a small chart: no more than the eye tells apart. */
const MOST_T0S = 61;

/** Some of many instants, both ends among them. */
export function thinned(instants: readonly Instant[]): readonly Instant[] {
  const count = Math.min(MOST_T0S, instants.length);
  return Array.from(
    { length: count },
    (_, i) => instants[Math.round((i * (instants.length - 1)) / Math.max(1, count - 1))]!,
  );
}
