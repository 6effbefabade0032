/** The smallest change that clears a sun-in-frame or near-frame warning: another T-0, another aim, a hood. */

import { type Interval, intervalsOutside, minimumNear } from "../base/crossings.ts";
import { RAD_PER_DEG, wrap180 } from "../base/units.ts";
import { add, angleBetweenDeg, scale, toAzimuthElevation, unit, type Vec3 } from "../base/vector.ts";
import type { Site } from "../site/types.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../sky/sunTrack.ts";
import { type Frame, fieldDeg, makeFrame, type Orientation, orient, type View } from "../view/frame.ts";
import { hoodLengthInDiameters, longestHoodInDiameters } from "../view/hood.ts";
import { pointOn } from "../view/lineInGate.ts";
import { type CameraSun, sunIntervals } from "../view/sunInFrame.ts";
import { type CameraView, isInGate } from "./cameraView.ts";
import type { TimeSpan } from "./clock.ts";
import { type FlareRule, flareMeasure, type SunRisk, type SunSeries, toTimeSpan } from "./sunRisk.ts";

export interface AimChange {
  /** Turn of the axis, degrees; azimuth positive to the right, elevation positive upward. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** Angle between the old axis and the new. */
  readonly angleDeg: number;
  /** The new axis. */
  readonly newAzimuthDeg: number;
  readonly newElevationDeg: number;
}

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

/** Null when there is nothing to mend. */
export function remedyFor(
  site: Site,
  view: CameraView,
  risk: SunRisk,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
): Remedy | null {
  if (risk.risk !== "in-frame" && risk.risk !== "near-frame") return null;
  const fromMs = series.timesMs[0]!;
  const toMs = series.timesMs.at(-1)!;
  const flared = sunIntervals(sunOf, flareMeasure(view.frame, risk.flare), fromMs, toMs);
  const aim = view.body === null ? null : aimChange(site, view, risk.flare, series, sunOf);
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

/** Directions in the picture that an aim change is tried in. */
const AIM_DIRECTIONS = 16;
/** Halvings of the largest change when its size is sought: to a few hundredths of a degree for usual lenses. */
const AIM_HALVINGS = 9;
/** Added to the smallest change that just clears, so that a hand can set it, degrees. */
const AIM_MARGIN_DEG = 0.1;

/**
 * In each direction the largest turn that keeps the body in the gate is found, and when that clears the sun, the
 * smallest one that does. A turn that clears, then blocks, then clears again is taken at its larger size.
 */
function aimChange(
  site: Site,
  view: CameraView,
  rule: FlareRule,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
): AimChange | null {
  const path = sunPath(series, sunOf);
  const subjects = subjectsInGate(site, view);
  const keeps = (turned: Orientation): boolean => subjects.every((direction) => isInGate(turned, direction));
  const isClear = (frame: Frame): boolean => {
    const measure = flareMeasure(frame, rule);
    return path.every((sun) => measure(sun) >= 0);
  };
  const { gateWidthMm, gateHeightMm, focalMm } = view.frame.view;
  const largestDeg = fieldDeg(Math.hypot(gateWidthMm, gateHeightMm), focalMm);
  const found: { sizeDeg: number; frame: Frame }[] = [];
  for (let d = 0; d < AIM_DIRECTIONS; d++) {
    const turnRad = (2 * Math.PI * d) / AIM_DIRECTIONS;
    const turned = (sizeDeg: number): Frame => makeFrame(turnedView(view.frame, turnRad, sizeDeg));
    const keptDeg = largestSize(largestDeg, (sizeDeg) =>
      keeps(orient(turnedView(view.frame, turnRad, sizeDeg))),
    );
    if (keptDeg <= AIM_MARGIN_DEG || !isClear(turned(keptDeg))) continue;
    const blockedDeg = largestSize(keptDeg, (sizeDeg) => !isClear(turned(sizeDeg)));
    const sizeDeg = Math.min(keptDeg, blockedDeg + largestDeg / 2 ** AIM_HALVINGS + AIM_MARGIN_DEG);
    found.push({ sizeDeg, frame: turned(sizeDeg) });
  }
  found.sort((one, other) => one.sizeDeg - other.sizeDeg);
  for (const { frame } of found) {
    const change = verified(view, rule, series, sunOf, frame);
    if (change !== null) return change;
  }
  return null;
}

/** The largest size up to `mostDeg` at which `holds` is true, when it is true from 0 up to some size. */
function largestSize(mostDeg: number, holds: (sizeDeg: number) => boolean): number {
  if (holds(mostDeg)) return mostDeg;
  let low = 0;
  let high = mostDeg;
  for (let i = 0; i < AIM_HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The change, when the exact search finds no flare left anywhere in the window. */
function verified(
  view: CameraView,
  rule: FlareRule,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
  frame: Frame,
): AimChange | null {
  const left = sunIntervals(sunOf, flareMeasure(frame, rule), series.timesMs[0]!, series.timesMs.at(-1)!);
  if (left.length > 0) return null;
  return {
    azimuthDeg: wrap180(frame.view.azimuthDeg - view.frame.view.azimuthDeg),
    elevationDeg: frame.view.elevationDeg - view.frame.view.elevationDeg,
    angleDeg: angleBetweenDeg(frame.axis, view.frame.axis),
    newAzimuthDeg: frame.view.azimuthDeg,
    newElevationDeg: frame.view.elevationDeg,
  };
}

/** The view with its axis turned by `sizeDeg` towards a direction in the picture (radians from its right side), roll kept. */
function turnedView(frame: Frame, turnRad: number, sizeDeg: number): View {
  const sizeRad = sizeDeg * RAD_PER_DEG;
  const across = add(scale(frame.right, Math.cos(turnRad)), scale(frame.up, Math.sin(turnRad)));
  const axis = unit(add(scale(frame.axis, Math.cos(sizeRad)), scale(across, Math.sin(sizeRad))));
  return { ...frame.view, ...toAzimuthElevation(axis) };
}

/** Sun positions tested in the search: no farther apart than this along the path (the exact search has the last word). */
const PATH_SPACING_DEG = 1;
/** Only those that a turn could bring near. */
const PATH_REACH_DEG = 60;

/** The nearest to the frame first, so that a bad aim is found out early. */
function sunPath(series: SunSeries, sunOf: (ms: number) => CameraSun): CameraSun[] {
  const path: { sun: CameraSun; edgeDeg: number }[] = [];
  const last = series.timesMs.length - 1;
  const spacingMs = PATH_SPACING_DEG / SUN_MAX_RATE_DEG_PER_MS;
  let nextMs = Number.NEGATIVE_INFINITY;
  series.timesMs.forEach((ms, i) => {
    const edgeDeg = series.fromEdgeDeg[i]!;
    if (edgeDeg > PATH_REACH_DEG || (ms < nextMs && i !== last)) return;
    path.push({ sun: sunOf(ms), edgeDeg });
    nextMs = ms + spacingMs;
  });
  return path.sort((one, other) => one.edgeDeg - other.edgeDeg).map(({ sun }) => sun);
}

/** Share of the visible body given up at an end that the gate cuts off already. */
const CUT_END_SHARE = 0.1;

/** What must stay in the gate: the ends of the visible body (a little less of an end that is cut off); without a body, the point aimed at. */
function subjectsInGate(site: Site, view: CameraView): Vec3[] {
  const visible = view.body?.visible;
  if (!visible || !site.vehicle) return [view.frame.axis];
  const toAxis = (upM: number): Vec3 => pointOn(view.vehicleAxis, upM);
  const { baseM, heightM } = site.vehicle;
  const givenUpM = CUT_END_SHARE * (visible.toM - visible.fromM);
  return [
    toAxis(visible.fromM > baseM ? visible.fromM + givenUpM : visible.fromM),
    toAxis(visible.toM < baseM + heightM ? visible.toM - givenUpM : visible.toM),
  ];
}

/** Length in diameters of the hood that keeps the sun off the glass while it is near, when it leaves the picture's corners clear. */
function endingHood(
  view: CameraView,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
  flared: readonly Interval[],
): number | null {
  const { focalMm, gateWidthMm, gateHeightMm } = view.frame.view;
  const nearestDeg = Math.min(...flared.map((span) => nearestLimbDeg(view.frame, series, sunOf, span)));
  const halfDiagonalDeg = fieldDeg(Math.hypot(gateWidthMm, gateHeightMm), focalMm) / 2;
  if (nearestDeg <= halfDiagonalDeg) return null;
  const needed = hoodLengthInDiameters(nearestDeg);
  const longest = longestHoodInDiameters(
    view.camera.lens.hood?.diameterMm ?? null,
    pupilMm(view),
    halfDiagonalDeg,
  );
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
