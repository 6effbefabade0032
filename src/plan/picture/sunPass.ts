/** The sun's way through the neighbourhood of a tracker's frame about its nearest, for one T-0. */

import { atan2Deg, MS_PER_SECOND, mix } from "../../base/units.ts";
import { type PathSun, pathSun } from "../../sky/sunPath.ts";
import { halfDiagonalDeg } from "../../view/frame.ts";
import { intoFrame, TURN_LENGTH } from "../../view/sweepFrames.ts";
import type { Tracker } from "../sweep/tracker.ts";
import type { PassPoint, SunPass } from "./sweepPathTypes.ts";

/** Round distances from the axis that a close-up may reach to. */
const WITHIN_DEG = [0.2, 0.5, 1, 2, 3, 5, 10, 20, 30, 45, 60, 90] as const;
/** Farther off than this, and than the frame's corner, a close-up would show a dot for a frame. */
const FARTHEST_DEG = 36;
/** So much more than the frame's corner, or the sun's nearest, is shown. */
const MORE = 1.25;
const STEPS = 40;

/** Null where the sun stays farther off than a close-up shows. */
export function sunPass(
  tracker: Tracker,
  t0Ms: number,
  nearestMs: number,
  nearestDeg: number,
): SunPass | null {
  const { frames, sunPath } = tracker;
  const cornerDeg = halfDiagonalDeg(frames.frame.view);
  if (nearestDeg > Math.max(FARTHEST_DEG, cornerDeg)) return null;
  const withinDeg = WITHIN_DEG.find((within) => within >= MORE * Math.max(cornerDeg, nearestDeg));
  if (withinDeg === undefined) return null;
  const fromMs = endOfPass(tracker, t0Ms, nearestMs, withinDeg, -1);
  const toMs = endOfPass(tracker, t0Ms, nearestMs, withinDeg, 1);
  const sun = pathSun();
  const pointAt = passReader(tracker, sun);
  const times = [
    ...Array.from({ length: STEPS }, (_, i) => mix(fromMs, nearestMs, i / STEPS)),
    ...Array.from({ length: STEPS + 1 }, (_, i) => mix(nearestMs, toMs, i / STEPS)),
  ];
  sunPath.into(t0Ms + nearestMs, sun);
  const { semidiameterDeg } = sun;
  const points = times.flatMap((tPlusMs) => pointAt(t0Ms, tPlusMs) ?? []);
  return points.length < 2 ? null : { withinDeg, semidiameterDeg, points };
}

/** Where it first is farther off than `withinDeg`, from the nearest on (side 1) or back (-1); the sweep's end if nowhere. */
function endOfPass(
  { frames: { atMs }, offAxis }: Tracker,
  t0Ms: number,
  nearestMs: number,
  withinDeg: number,
  side: 1 | -1,
): number {
  let [insideMs, insideDeg] = [nearestMs, offAxis.valueAt(t0Ms, nearestMs)];
  let i = atMs.findIndex((ms) => ms > nearestMs);
  if (i === -1) i = atMs.length;
  if (side === -1) i -= 1;
  for (; i >= 0 && i < atMs.length; i += side) {
    const valueDeg = offAxis.valueAtKnot(t0Ms, i);
    if (valueDeg > withinDeg)
      return mix(insideMs, atMs[i]!, (withinDeg - insideDeg) / (valueDeg - insideDeg));
    [insideMs, insideDeg] = [atMs[i]!, valueDeg];
  }
  return insideMs;
}

/** Null while the sun is down. */
function passReader(
  { frames, sunPath }: Tracker,
  sun: PathSun,
): (t0Ms: number, tPlusMs: number) => PassPoint | null {
  const turn = new Float64Array(TURN_LENGTH);
  const inFrame: [number, number, number] = [0, 0, 0];
  return (t0Ms, tPlusMs) => {
    sunPath.into(t0Ms + tPlusMs, sun);
    if (sun.apparentElevationDeg < -sun.semidiameterDeg) return null;
    frames.turnInto(tPlusMs, turn);
    intoFrame(turn, 0, sun.direction, inFrame);
    const [right, ahead, up] = inFrame;
    const across = Math.hypot(right, up);
    const degPerUnit = across === 0 ? 0 : atan2Deg(across, ahead) / across;
    return { tPlusS: tPlusMs / MS_PER_SECOND, rightDeg: right * degPerUnit, upDeg: up * degPerUnit };
  };
}
