/**
 * A window whose T-0 someone moves: all that does not depend on T-0 is made once, so that one T-0 of all cameras costs
 * milliseconds. The same models as a plan; what it tells of a T-0 is what `planWindow` tells of it.
 */

import type { PlumeLuminance } from "../../light/plume.ts";
import type { Camera, Site, Window } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { type CameraSun, cameraSunOf } from "../../view/sunInFrame.ts";
import { type CameraView, makeCameraView } from "../cameraView.ts";
import { guideHoldsIn } from "../guideHours.ts";
import { type CameraHides, cameraHidesOf } from "../hiddenSun.ts";
import type { Instant } from "../instants.ts";
import { makeScene, type Scene } from "../scene.ts";
import { type FlareRule, flareRule } from "../sunRisk.ts";
import { shareSweep } from "../sweep/prepareSweep.ts";
import { type SweepLight, sweepLightOf } from "../sweep/sweepLight.ts";
import { isTracking, makeTracker, type SweepRoom, type Tracker, trackerFrames } from "../sweep/tracker.ts";
import { sitePlume } from "../things.ts";

export interface LiveCamera {
  readonly view: CameraView;
  readonly sunOf: (ms: number) => CameraSun;
  readonly hides: CameraHides;
  readonly rule: FlareRule;
  /** Null for a fixed camera, and without an ascent to follow. */
  readonly sweep: LiveSweep | null;
}

/** A tracker along its sweep. */
export interface LiveSweep {
  readonly room: SweepRoom;
  readonly tracker: Tracker;
  readonly light: SweepLight;
}

export interface LiveWindow {
  readonly scene: Scene;
  readonly plume: PlumeLuminance | null;
  readonly guideHoldsAt: (t0: Instant) => boolean;
  /** In the order of the site. */
  readonly cameras: readonly LiveCamera[];
}

/** T-0s that nobody asks for: the scene keeps as few as it can. */
const FEWEST_STEP_S = 3600;

/** Throws PadstopError as `planWindow` does. */
export function liveWindowOf(site: Site, window: Window, skies: readonly Sky[]): LiveWindow {
  const scene = makeScene(site, window, { sky: skies, stepS: FEWEST_STEP_S });
  const shared = site.cameras.some(isTracking) ? shareSweep(scene) : null;
  const sweepOf = (camera: Camera, view: CameraView, hides: CameraHides): LiveSweep | null => {
    if (!isTracking(camera) || shared === null) return null;
    const { room, skyAt } = shared;
    const frames = trackerFrames(site, room.ascent, camera, view.place);
    const tracker = makeTracker(room, camera, view, frames, flareRule(view, site.settings), hides);
    return { room, tracker, light: sweepLightOf(room, scene, tracker, skyAt) };
  };
  return {
    scene,
    plume: sitePlume(site),
    guideHoldsAt: guideHoldsIn(scene),
    cameras: site.cameras.map((camera): LiveCamera => {
      const view = makeCameraView(site, camera);
      const hides = cameraHidesOf(site, scene.obstacles, view);
      return {
        view,
        sunOf: cameraSunOf(scene.track, view.place, view.air),
        hides,
        rule: flareRule(view, site.settings),
        sweep: sweepOf(camera, view, hides),
      };
    }),
  };
}
