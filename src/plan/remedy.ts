/** The smallest change that clears a sun-in-frame or near-frame warning: another T-0, another aim, a hood. */

import { type Interval, intervalsOutside, minimumNear, spansWithout } from "../base/crossings.ts";
import { angleBetweenDeg } from "../base/vector.ts";
import type { Site } from "../site/types.ts";
import { type Frame, halfDiagonalDeg } from "../view/frame.ts";
import { hoodLengthInDiameters, longestHoodInDiameters } from "../view/hood.ts";
import { type CameraSun, sunIntervals } from "../view/sunInFrame.ts";
import { type AimChange, aimChange } from "./aimChange.ts";
import type { CameraView } from "./cameraView.ts";
import type { TimeSpan } from "./clock.ts";
import type { CameraHides } from "./hiddenSun.ts";
import { flareMeasure, type SunRisk, type SunSeries, toTimeSpan } from "./sunRisk.ts";

export interface Remedy {
  /** T-0s inside the window with the sun neither in nor near the frame. */
  readonly clearTimes: readonly TimeSpan[];
  /** Smallest aim change that clears the whole window and keeps what is in the gate of the body; null when none does, or when it is not known where the body stands in the gate. */
  readonly aim: AimChange | null;
  /** Why there is no aim change, in plain words; null when there is one. */
  readonly aimNote: string | null;
  /** Hood that ends the flare, as long as so many of its diameters; null when the sun is in the frame or no hood can. */
  readonly hoodDiameters: number | null;
}

const ROUNDING_MS = 200;

/** Null when there is nothing to mend. */
export function remedyFor(
  site: Site,
  view: CameraView,
  risk: SunRisk,
  series: SunSeries,
  hides: CameraHides,
  sunOf: (ms: number) => CameraSun,
): Remedy | null {
  if (risk.risk !== "in-frame" && risk.risk !== "near-frame") return null;
  const fromMs = series.timesMs[0]!;
  const toMs = series.timesMs.at(-1)!;
  const spans = sunIntervals(sunOf, flareMeasure(view.frame, risk.flare), fromMs, toMs);
  const hidden = risk.hidden.map(({ from, to }) => ({ fromMs: from.getTime(), toMs: to.getTime() }));
  // Between a span and its hidden part nothing is left but rounding.
  const flared = spansWithout(spans, hidden).filter((span) => span.toMs - span.fromMs > ROUNDING_MS);
  const aim =
    view.body === null ? null : aimChange(site, view, risk.flare, series, hides, hidden.length > 0, sunOf);
  return {
    clearTimes: intervalsOutside(flared, fromMs, toMs).map(toTimeSpan),
    aim,
    aimNote: aim === null ? noAimWords(site, view) : null,
    hoodDiameters: risk.risk === "near-frame" ? endingHood(view, series, sunOf, flared) : null,
  };
}

function noAimWords(site: Site, view: CameraView): string {
  if (view.body !== null) return "no turn clears it with the body still in the gate";
  return site.vehicle === null
    ? "not sought: the site file gives no vehicle to keep in the gate"
    : "not known where the vehicle stands in this frame";
}

/** Length in diameters of the hood that keeps the sun off the glass while it is near, when it leaves the picture's corners clear. */
function endingHood(
  view: CameraView,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
  flared: readonly Interval[],
): number | null {
  return hoodThatEnds(
    view,
    Math.min(...flared.map((span) => nearestLimbDeg(view.frame, series, sunOf, span))),
  );
}

/** Length in diameters of the hood that keeps a sun off the glass whose limb comes as near to the axis as this; null when it would stand in the picture. */
export function hoodThatEnds(view: CameraView, nearestDeg: number): number | null {
  const cornerDeg = halfDiagonalDeg(view.frame.view);
  if (nearestDeg <= cornerDeg) return null;
  const needed = hoodLengthInDiameters(nearestDeg);
  const longest = longestHoodInDiameters(view.camera.lens.hood?.diameterMm ?? null, pupilMm(view), cornerDeg);
  return longest !== null && needed <= longest ? needed : null;
}

/** Smallest angle in degrees from the axis to the sun's limb in a span of time. */
function nearestLimbDeg(
  frame: Frame,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
  { fromMs, toMs }: Interval,
): number {
  const limbDeg = (ms: number): number => {
    const { direction, semidiameterDeg } = sunOf(ms);
    return angleBetweenDeg(frame.axis, direction) - semidiameterDeg;
  };
  const times = [fromMs, ...series.timesMs.filter((ms) => ms > fromMs && ms < toMs), toMs];
  return minimumNear(limbDeg, times, times.map(limbDeg)).value;
}

/** Widest entrance pupil the lens can have, mm; 0 when its stops are not known. */
function pupilMm(view: CameraView): number {
  const { stops, focalMm } = view.camera.lens;
  return stops.length === 0 ? 0 : focalMm / Math.min(...stops);
}
