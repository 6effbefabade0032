/** A tracker of a plan: its sweep in the place of a fixed frame. */

import { intervalsOutside } from "../../base/crossings.ts";
import type { Sample } from "../../exposure/solver.ts";
import type { CameraView } from "../cameraView.ts";
import type { CameraHides } from "../hiddenSun.ts";
import type { Instant } from "../instants.ts";
import type { Remedy } from "../remedy.ts";
import { hoodThatEnds } from "../remedy.ts";
import type { Scene } from "../scene.ts";
import { flareRule, type SunRisk, toTimeSpan } from "../sunRisk.ts";
import { slewRates } from "./slewRates.ts";
import { type SweepLight, skyReader, sweepLightOf, sweepSamples } from "./sweepLight.ts";
import { sweepSun } from "./sweepRisk.ts";
import type { SlewRates, SweepSun } from "./sweepTypes.ts";
import {
  makeTracker,
  type SweepRoom,
  sweepRoomOf,
  type Tracker,
  type TrackingCamera,
  trackerFrames,
} from "./tracker.ts";

/** What the trackers of a scene share; null where the site file gives no ascent to follow. */
export interface SweepShared {
  readonly room: SweepRoom;
  readonly skyAt: (ms: number) => Instant;
}

export const shareSweep = (scene: Scene): SweepShared | null =>
  scene.ascent === null
    ? null
    : { room: sweepRoomOf(scene.site, scene.window, scene.ascent), skyAt: skyReader(scene) };

export interface PreparedSweep {
  readonly room: SweepRoom;
  readonly tracker: Tracker;
  readonly light: SweepLight;
  readonly sun: SweepSun;
  readonly slew: SlewRates;
}

export function prepareSweep(
  { room, skyAt }: SweepShared,
  scene: Scene,
  camera: TrackingCamera,
  view: CameraView,
  hides: CameraHides,
): PreparedSweep {
  const frames = trackerFrames(scene.site, room.ascent, camera, view.place);
  const tracker = makeTracker(room, camera, view, frames, flareRule(view, scene.site.settings), hides);
  return {
    room,
    tracker,
    light: sweepLightOf(room, scene, tracker, skyAt),
    sun: sweepSun(room, tracker),
    slew: slewRates(frames, camera),
  };
}

export const samplesAlong = ({ room, tracker, light }: PreparedSweep, scene: Scene): Sample[] =>
  sweepSamples(room, scene, tracker, light);

/** The sun along the sweep as a plan tells it: by T-0. */
export const sweepRisk = ({ sun, tracker }: PreparedSweep): SunRisk => ({
  risk: sun.risk,
  inFrame: sun.inFrame.map(({ from, to }) => ({ from, to })),
  nearFrame: sun.nearFrame.map(({ from, to }) => ({ from, to })),
  hidden: sun.hidden,
  behind: [],
  closest: sun.closest && {
    at: sun.closest.at,
    fromEdgeDeg: sun.closest.fromEdgeDeg,
    offAxisDeg: sun.closest.offAxisDeg,
  },
  flare: tracker.flareRule,
});

/** The T-0s that are clear, and a hood; a tracker cannot look elsewhere. */
export function sweepRemedy({ sun, tracker, room }: PreparedSweep): Remedy | null {
  if (sun.risk !== "in-frame" && sun.risk !== "near-frame") return null;
  const [fromMs, toMs] = [room.window.opens.getTime(), room.window.closes.getTime()];
  const met = [...sun.inFrame, ...sun.nearFrame]
    .map(({ from, to }) => ({ fromMs: from.getTime(), toMs: to.getTime() }))
    .sort((a, b) => a.fromMs - b.fromMs);
  return {
    clearTimes: intervalsOutside(met, fromMs, toMs).map(toTimeSpan),
    aim: null,
    aimNote: "follows the vehicle",
    hoodDiameters: sun.risk === "near-frame" ? endingHood(tracker, met) : null,
  };
}

/** The hood that keeps the sun off the glass at its nearest of all. */
function endingHood(
  { view, offAxis, sunPath }: Tracker,
  met: readonly { readonly fromMs: number; readonly toMs: number }[],
): number | null {
  const nearestDeg = Math.min(...met.map(({ fromMs, toMs }) => offAxis.lowestBetween(fromMs, toMs).value));
  return hoodThatEnds(view, nearestDeg - sunPath.semidiameterDeg);
}
