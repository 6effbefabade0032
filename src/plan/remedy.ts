/** The smallest change that clears a sun-in-frame or near-frame warning: another T-0, another aim, a hood. */

import { intervalsOutside } from "../base/crossings.ts";
import { RAD_PER_DEG, wrap180 } from "../base/units.ts";
import { add, angleBetweenDeg, scale, toAzimuthElevation, unit, type Vec3 } from "../base/vector.ts";
import type { Site } from "../site/types.ts";
import { type Frame, fieldDeg, makeFrame } from "../view/frame.ts";
import { hoodLengthInDiameters, longestHoodInDiameters } from "../view/hood.ts";
import { type CameraSun, sunIntervals } from "../view/sunInFrame.ts";
import { type CameraView, isInGate, toVehicleAxis } from "./cameraView.ts";
import { type FlareRule, flareMeasure, type SunRisk, type SunSeries, type TimeSpan, toTimeSpan } from "./sunRisk.ts";

export interface AimChange {
  /** Turn of the axis, degrees; azimuth positive to the right, elevation positive upward. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** Angle between the old axis and the new. */
  readonly angleDeg: number;
}

export interface Remedy {
  /** T-0s inside the window with the sun neither in nor near the frame. */
  readonly clearTimes: readonly TimeSpan[];
  /** Smallest aim change that clears the whole window and keeps what is in the gate of the body; null when none does. */
  readonly aim: AimChange | null;
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
  return {
    clearTimes: intervalsOutside(flared, fromMs, toMs).map(toTimeSpan),
    aim: aimChange(site, view, risk.flare, series, sunOf),
    hoodDiameters: risk.risk === "near-frame" ? endingHood(view, risk, sunOf) : null,
  };
}

/** Directions and sizes of aim changes that are tried before the smallest is refined. */
const AIM_DIRECTIONS = 24;
const AIM_SIZES = 24;
const AIM_REFINEMENTS = 6;
/** Added to the smallest change that just clears, so that a hand can set it, degrees. */
const AIM_MARGIN_DEG = 0.1;

function aimChange(
  site: Site,
  view: CameraView,
  rule: FlareRule,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
): AimChange | null {
  const path = sunPath(series, sunOf);
  const subjects = subjectsInGate(site, view);
  const isClear = (frame: Frame): boolean => path.every((sun) => flareMeasure(frame, rule)(sun) >= 0);
  const keeps = (frame: Frame): boolean => subjects.every((direction) => isInGate(frame, direction));
  const largestDeg = fieldDeg(Math.hypot(view.frame.view.gateWidthMm, view.frame.view.gateHeightMm), view.frame.view.focalMm);
  let best: { sizeDeg: number; frame: Frame } | null = null;
  for (let d = 0; d < AIM_DIRECTIONS; d++) {
    const turn = (2 * Math.PI * d) / AIM_DIRECTIONS;
    for (let s = 1; s <= AIM_SIZES; s++) {
      const sizeDeg = (largestDeg * s) / AIM_SIZES;
      if (best !== null && sizeDeg >= best.sizeDeg + largestDeg / AIM_SIZES) break;
      const frame = turnedFrame(view.frame, turn, sizeDeg);
      if (!keeps(frame)) break;
      if (!isClear(frame)) continue;
      const refined = refine(view.frame, turn, sizeDeg - largestDeg / AIM_SIZES, sizeDeg, isClear);
      if (keeps(refined.frame) && (best === null || refined.sizeDeg < best.sizeDeg)) best = refined;
      break;
    }
  }
  return best && verified(view, rule, series, sunOf, best.frame);
}

function refine(
  frame: Frame,
  turn: number,
  blockedDeg: number,
  clearDeg: number,
  isClear: (frame: Frame) => boolean,
): { sizeDeg: number; frame: Frame } {
  let low = blockedDeg;
  let high = clearDeg;
  for (let i = 0; i < AIM_REFINEMENTS; i++) {
    const middle = (low + high) / 2;
    if (isClear(turnedFrame(frame, turn, middle))) high = middle;
    else low = middle;
  }
  const sizeDeg = high + AIM_MARGIN_DEG;
  return { sizeDeg, frame: turnedFrame(frame, turn, sizeDeg) };
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
  };
}

/** The frame with its axis turned by `sizeDeg` towards a direction in the picture (radians from its right side), roll kept. */
function turnedFrame(frame: Frame, turnRad: number, sizeDeg: number): Frame {
  const sizeRad = sizeDeg * RAD_PER_DEG;
  const across = add(scale(frame.right, Math.cos(turnRad)), scale(frame.up, Math.sin(turnRad)));
  const axis = unit(add(scale(frame.axis, Math.cos(sizeRad)), scale(across, Math.sin(sizeRad))));
  return makeFrame({ ...frame.view, ...toAzimuthElevation(axis) });
}

/** Sun positions worth testing: no farther apart than this along the path, and only those that a turn could bring near. */
const PATH_SPACING_DEG = 0.5;
const PATH_REACH_DEG = 60;

function sunPath(series: SunSeries, sunOf: (ms: number) => CameraSun): CameraSun[] {
  const path: CameraSun[] = [];
  const last = series.timesMs.length - 1;
  series.timesMs.forEach((ms, i) => {
    if (series.fromEdgeDeg[i]! > PATH_REACH_DEG) return;
    const sun = sunOf(ms);
    const before = path.at(-1);
    const isEnd = i === 0 || i === last;
    if (isEnd || before === undefined || angleBetweenDeg(before.direction, sun.direction) >= PATH_SPACING_DEG) {
      path.push(sun);
    }
  });
  return path.length > 0 ? path : [sunOf(series.timesMs[0]!)];
}

/** Share of the visible body given up at an end that the gate cuts off already. */
const CUT_END_SHARE = 0.1;

/** What must stay in the gate: the ends of the visible body (a little less of an end that is cut off); without a body, the point aimed at. */
function subjectsInGate(site: Site, view: CameraView): Vec3[] {
  const visible = view.body?.visible;
  if (!visible || !site.vehicle) return [view.frame.axis];
  const toAxis = toVehicleAxis(site, view.place);
  const { baseM, heightM } = site.vehicle;
  const givenUpM = CUT_END_SHARE * (visible.toM - visible.fromM);
  return [
    toAxis(visible.fromM > baseM ? visible.fromM + givenUpM : visible.fromM),
    toAxis(visible.toM < baseM + heightM ? visible.toM - givenUpM : visible.toM),
  ];
}

/** Length in diameters of the hood that keeps the nearest sun off the glass, when it leaves the picture's corners clear. */
function endingHood(view: CameraView, risk: SunRisk, sunOf: (ms: number) => CameraSun): number | null {
  if (risk.closest === null) return null;
  const { focalMm, gateWidthMm, gateHeightMm } = view.frame.view;
  const offAxisDeg = risk.closest.offAxisDeg - sunOf(risk.closest.at.getTime()).semidiameterDeg;
  const halfDiagonalDeg = fieldDeg(Math.hypot(gateWidthMm, gateHeightMm), focalMm) / 2;
  if (offAxisDeg <= halfDiagonalDeg) return null;
  const needed = hoodLengthInDiameters(offAxisDeg);
  const longest = longestHoodInDiameters(view.camera.lens.hood?.diameterMm ?? null, pupilMm(view), halfDiagonalDeg);
  return longest !== null && needed <= longest ? needed : null;
}

/** Widest entrance pupil the lens can have, mm; 0 when its stops are not known. */
function pupilMm(view: CameraView): number {
  const { stops, focalMm } = view.camera.lens;
  return stops.length === 0 ? 0 : focalMm / Math.min(...stops);
}
