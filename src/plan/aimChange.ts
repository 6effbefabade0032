/** The smallest turn of a camera that keeps the body in the gate and the sun out of the flared zone around it. */

import { spansWithout } from "../base/crossings.ts";
import { mix, RAD_PER_DEG, wrap180 } from "../base/units.ts";
import { add, angleBetweenDeg, scale, toAzimuthElevation, unit, type Vec3 } from "../base/vector.ts";
import type { Site } from "../site/types.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../sky/sunTrack.ts";
import {
  type Frame,
  fromEdgeDeg,
  halfDiagonalDeg,
  makeFrame,
  type Orientation,
  orient,
  type View,
} from "../view/frame.ts";
import { pointOn } from "../view/lineInGate.ts";
import { type CameraSun, sunIntervals } from "../view/sunInFrame.ts";
import { type CameraView, isInGate } from "./cameraView.ts";
import { type CameraHides, hiddenWithin } from "./hiddenSun.ts";
import { type FlareRule, flareMeasure, type SunSeries } from "./sunRisk.ts";

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
export function aimChange(
  site: Site,
  view: CameraView,
  rule: FlareRule,
  series: SunSeries,
  hides: CameraHides,
  hasHidden: boolean,
  sunOf: (ms: number) => CameraSun,
): AimChange | null {
  // What hides the sun does not turn with the camera; where nothing hides it in this aim it is not sought for others.
  const hidden = hasHidden ? hides.hidden : null;
  const path = sunPath(view.frame, rule, series, sunOf).filter((sun) => hidden === null || hidden(sun) >= 0);
  const subjects = subjectsInGate(site, view);
  const keeps = (turned: Orientation): boolean => subjects.every((direction) => isInGate(turned, direction));
  const isClear = (frame: Frame): boolean => {
    const measure = flareMeasure(frame, rule);
    return path.every((sun) => measure(sun) >= 0);
  };
  const largestDeg = 2 * halfDiagonalDeg(view.frame.view);
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
    const change = verified(view, rule, series, hides, sunOf, frame);
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
  hides: CameraHides,
  sunOf: (ms: number) => CameraSun,
  frame: Frame,
): AimChange | null {
  const spans = sunIntervals(sunOf, flareMeasure(frame, rule), series.timesMs[0]!, series.timesMs.at(-1)!);
  if (spansWithout(spans, hiddenWithin(hides, sunOf, spans)).length > 0) return null;
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

/** Sun positions tested in the search are no farther apart than this along the path (the exact search has the last word). */
const MOST_PATH_SPACING_DEG = 1;
/** The flared zone around a corner of the gate is at least as round as the sun's disc. */
const LEAST_DISC_RADIUS_DEG = 0.26;
/** Only those that a turn could bring near. */
const PATH_REACH_DEG = 60;

/**
 * The nearest to the frame first, so that a bad aim is found out early. Their spacing does not follow the T-0s: a
 * remedy is the same whatever the step. A path that clips a round corner between two of them enters it by no more than
 * the margin of an aim: sagitta of a chord, d^2 / (8 R).
 */
function sunPath(
  frame: Frame,
  { marginDeg }: FlareRule,
  series: SunSeries,
  sunOf: (ms: number) => CameraSun,
): CameraSun[] {
  const roundDeg = marginDeg + LEAST_DISC_RADIUS_DEG;
  const spacingDeg = Math.min(MOST_PATH_SPACING_DEG, Math.sqrt(8 * roundDeg * AIM_MARGIN_DEG));
  const fromMs = series.timesMs[0]!;
  const toMs = series.timesMs.at(-1)!;
  const stretches = Math.ceil((toMs - fromMs) / (spacingDeg / SUN_MAX_RATE_DEG_PER_MS));
  const path: { sun: CameraSun; edgeDeg: number }[] = [];
  for (let i = 0; i <= stretches; i++) {
    const sun = sunOf(mix(fromMs, toMs, i / stretches));
    const edgeDeg = fromEdgeDeg(frame, sun.direction);
    if (edgeDeg <= PATH_REACH_DEG) path.push({ sun, edgeDeg });
  }
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
