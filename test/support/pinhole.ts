/**
 * A pinhole camera by polar angles on the sky, written without the program's vectors: position angle and distance from the axis,
 * the roll taken off the position angle, and the border searched point by point.
 */

import type { View } from "../../src/view/frame.ts";

const RAD = Math.PI / 180;

/** Angles in the camera: off the axis, and clockwise from the picture's top as seen from behind. */
export function polarInView(
  view: View,
  azimuthDeg: number,
  elevationDeg: number,
): { offAxisRad: number; fromTopRad: number } {
  const turnRad = (azimuthDeg - view.azimuthDeg) * RAD;
  const elevationRad = elevationDeg * RAD;
  const axisRad = view.elevationDeg * RAD;
  const across = Math.cos(elevationRad) * Math.sin(turnRad);
  const upward =
    Math.sin(elevationRad) * Math.cos(axisRad) -
    Math.cos(elevationRad) * Math.sin(axisRad) * Math.cos(turnRad);
  const ahead =
    Math.sin(elevationRad) * Math.sin(axisRad) +
    Math.cos(elevationRad) * Math.cos(axisRad) * Math.cos(turnRad);
  return {
    offAxisRad: Math.atan2(Math.hypot(across, upward), ahead),
    // Turned clockwise, the camera sees everything turned counter-clockwise.
    fromTopRad: Math.atan2(across, upward) - view.rollDeg * RAD,
  };
}

/** Millimetres on the gate; null from 90 degrees off the axis on. */
export function pinholeMm(
  view: View,
  azimuthDeg: number,
  elevationDeg: number,
): { xMm: number; yMm: number } | null {
  const { offAxisRad, fromTopRad } = polarInView(view, azimuthDeg, elevationDeg);
  if (offAxisRad >= Math.PI / 2) return null;
  const radiusMm = view.focalMm * Math.tan(offAxisRad);
  return { xMm: radiusMm * Math.sin(fromTopRad), yMm: radiusMm * Math.cos(fromTopRad) };
}

/** Smallest angle in degrees to the border, found by walking along it; positive outside. */
export function bruteFromEdgeDeg(view: View, azimuthDeg: number, elevationDeg: number): number {
  const { offAxisRad, fromTopRad } = polarInView(view, azimuthDeg, elevationDeg);
  const halfX = view.gateWidthMm / 2;
  const halfY = view.gateHeightMm / 2;
  /** Haversine of the angle between the direction and the gate point (x, y). */
  const angleTo = (x: number, y: number): number => {
    const pointRad = Math.atan2(Math.hypot(x, y), view.focalMm);
    const along = Math.sin((offAxisRad - pointRad) / 2) ** 2;
    const around = Math.sin((fromTopRad - Math.atan2(x, y)) / 2) ** 2;
    const share = along + Math.sin(offAxisRad) * Math.sin(pointRad) * around;
    return 2 * Math.atan2(Math.sqrt(share), Math.sqrt(Math.max(0, 1 - share)));
  };
  const sides = [
    (t: number) => angleTo(halfX * t, halfY),
    (t: number) => angleTo(halfX * t, -halfY),
    (t: number) => angleTo(halfX, halfY * t),
    (t: number) => angleTo(-halfX, halfY * t),
  ];
  const nearestRad = Math.min(...sides.map(smallestOn));
  const point = pinholeMm(view, azimuthDeg, elevationDeg);
  const inside = point !== null && Math.abs(point.xMm) <= halfX && Math.abs(point.yMm) <= halfY;
  return ((inside ? -1 : 1) * nearestRad) / RAD;
}

/** Smallest value of `f` on -1..1: 400 samples, then a golden search around the best. */
function smallestOn(f: (t: number) => number): number {
  const steps = 400;
  let best = 0;
  let bestValue = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    const value = f(-1 + (2 * i) / steps);
    if (value < bestValue) {
      bestValue = value;
      best = i;
    }
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = Math.max(-1, -1 + (2 * (best - 1)) / steps);
  let high = Math.min(1, -1 + (2 * (best + 1)) / steps);
  for (let i = 0; i < 60; i++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (f(a) <= f(b)) high = b;
    else low = a;
  }
  return Math.min(bestValue, f((low + high) / 2), f(low), f(high));
}
