/**
 * The frame: what the gate sees through a rectilinear lens (a pinhole; no distortion, focused at infinity).
 *
 * x runs to the right and y up as the camera sees them, in mm on the gate with the picture upright. Roll is positive
 * when the camera turns clockwise seen from behind it.
 */

import { SUN_SEMIDIAMETER_ARCSEC_AT_1_AU } from "../base/constants.ts";
import type { Direction } from "../base/place.ts";
import { requireNumber } from "../base/problem.ts";
import { atan2Deg, cosDeg, sinDeg } from "../base/units.ts";
import {
  add,
  angleBetweenDeg,
  cross,
  dot,
  fromAzimuthElevation,
  scale,
  unit,
  type Vec3,
} from "../base/vector.ts";
import { fromOutlineDeg, outlineOf, type Side } from "./outline.ts";

export interface View {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly rollDeg: number;
  readonly focalMm: number;
  readonly gateWidthMm: number;
  readonly gateHeightMm: number;
}

export interface Located {
  /** From the optical axis. */
  readonly offAxisDeg: number;
  /** On the gate; null for a direction behind the camera. */
  readonly xMm: number | null;
  readonly yMm: number | null;
  /** Smallest angle from the direction to the frame's border, positive outside. */
  readonly fromEdgeDeg: number;
  readonly centreInFrame: boolean;
  /** Any part of a disc of the given semidiameter lies in the frame. */
  readonly discInFrame: boolean;
}

/** A camera's three directions, (east, north, up): along the axis, to the picture's right, to its top. */
export interface Orientation {
  readonly view: View;
  readonly axis: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
}

/** A view prepared for many directions. */
export interface Frame extends Orientation {
  readonly sides: readonly Side[];
}

/** Throws PadstopError for a view out of range. */
export function makeFrame(view: View): Frame {
  requireNumber("azimuthDeg", view.azimuthDeg, -360, 720, "degrees");
  requireNumber("elevationDeg", view.elevationDeg, -90, 90, "degrees");
  requireNumber("rollDeg", view.rollDeg, -360, 360, "degrees");
  requireNumber("focalMm", view.focalMm, 0.1, 100_000, "mm");
  requireNumber("gateWidthMm", view.gateWidthMm, 0.01, 10_000, "mm");
  requireNumber("gateHeightMm", view.gateHeightMm, 0.01, 10_000, "mm");
  const { axis, right, up } = orient(view);
  return { view, axis, right, up, sides: sidesOf(view, axis, right, up) };
}

/** The directions of a view that is known to be in range. */
export function orient(view: View): Orientation {
  const axis = fromAzimuthElevation(view.azimuthDeg, view.elevationDeg);
  const levelRight: Vec3 = [cosDeg(view.azimuthDeg), -sinDeg(view.azimuthDeg), 0];
  const levelUp = cross(levelRight, axis);
  const turned = { c: cosDeg(view.rollDeg), s: sinDeg(view.rollDeg) };
  // A camera turned clockwise carries its right side down and its upper side to the right.
  const right = add(scale(levelRight, turned.c), scale(levelUp, -turned.s));
  const up = add(scale(levelRight, turned.s), scale(levelUp, turned.c));
  return { view, axis, right, up };
}

function sidesOf(view: View, axis: Vec3, right: Vec3, up: Vec3): Side[] {
  const corner = (x: number, y: number): Vec3 =>
    unit(
      add(
        scale(axis, view.focalMm),
        add(scale(right, (x * view.gateWidthMm) / 2), scale(up, (y * view.gateHeightMm) / 2)),
      ),
    );
  return outlineOf([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], axis);
}

/** Smallest angle in degrees from a unit direction to the frame's border, positive outside the frame. */
export const fromEdgeDeg = (frame: Frame, direction: Vec3): number => fromOutlineDeg(frame.sides, direction);

/** Where a unit direction falls on the gate, mm; null when it is behind the camera. */
export function onGateMm(frame: Orientation, direction: Vec3): { xMm: number; yMm: number } | null {
  const ahead = dot(direction, frame.axis);
  if (ahead <= 0) return null;
  return {
    xMm: (frame.view.focalMm * dot(direction, frame.right)) / ahead,
    yMm: (frame.view.focalMm * dot(direction, frame.up)) / ahead,
  };
}

/** The direction of a point on the gate (the inverse of `onGateMm`). */
export function throughGate(frame: Orientation, xMm: number, yMm: number): Vec3 {
  return unit(add(scale(frame.axis, frame.view.focalMm), add(scale(frame.right, xMm), scale(frame.up, yMm))));
}

/**
 * Where a direction lies in a view: angles in degrees, gate coordinates in mm.
 * `semidiameterDeg` (0..5) is the disc's radius, the sun's at 1 au when left out. Throws PadstopError out of range.
 */
export function locateInFrame(
  view: View,
  direction: Direction,
  semidiameterDeg: number = SUN_SEMIDIAMETER_ARCSEC_AT_1_AU / 3600,
): Located {
  requireNumber("azimuthDeg", direction.azimuthDeg, -360, 720, "degrees");
  requireNumber("elevationDeg", direction.elevationDeg, -90, 90, "degrees");
  requireNumber("semidiameterDeg", semidiameterDeg, 0, 5, "degrees");
  const frame = makeFrame(view);
  const pointing = fromAzimuthElevation(direction.azimuthDeg, direction.elevationDeg);
  const edgeDeg = fromEdgeDeg(frame, pointing);
  const point = onGateMm(frame, pointing);
  return {
    offAxisDeg: angleBetweenDeg(frame.axis, pointing),
    xMm: point === null ? null : point.xMm,
    yMm: point === null ? null : point.yMm,
    fromEdgeDeg: edgeDeg,
    centreInFrame: edgeDeg <= 0,
    discInFrame: edgeDeg < semidiameterDeg,
  };
}

/** Full angle of view across a side of the gate: 2 atan(side / 2 focal), degrees (rectilinear lens). */
export const fieldDeg = (sideMm: number, focalMm: number): number => 2 * atan2Deg(sideMm / 2, focalMm);

/** From the axis to a corner of the gate, degrees. */
export const halfDiagonalDeg = ({ gateWidthMm, gateHeightMm, focalMm }: View): number =>
  fieldDeg(Math.hypot(gateWidthMm, gateHeightMm), focalMm) / 2;

/** Width or height in metres that a side of the gate covers at a distance along the axis: side x range / focal. */
export const coverageM = (sideMm: number, focalMm: number, rangeM: number): number =>
  (sideMm * rangeM) / focalMm;
