/** One camera of a plan up to the point where a setting is chosen: view, light, sun risk, possible settings. */

import { guideEv } from "../exposure/guide.ts";
import type { Sample } from "../exposure/solver.ts";
import type { PlumeLuminance } from "../light/plume.ts";
import type { Camera } from "../site/types.ts";
import { skyName, skyState } from "../sky/daylight.ts";
import { sunBehind } from "../view/hiders.ts";
import { type CameraSun, cameraSunOf } from "../view/sunInFrame.ts";
import { type CameraView, makeCameraView } from "./cameraView.ts";
import { type Choices, canBeSet, choicesFor } from "./choices.ts";
import type { TimeSpan } from "./clock.ts";
import { guideHolds } from "./guideHours.ts";
import { type CameraHides, cameraHidesOf } from "./hiddenSun.ts";
import { type LightTable, lightTableFor } from "./lightTable.ts";
import { moonInFrame } from "./moonInFrame.ts";
import { type ImageMotion, imageMotion } from "./motion.ts";
import type { LightSample } from "./planTypes.ts";
import type { Scene } from "./scene.ts";
import type { SettingInput } from "./settingFor.ts";
import { flareRule, type SunRisk, type SunSeries, sunRisk, sunSeries } from "./sunRisk.ts";
import {
  type PreparedSweep,
  prepareSweep,
  type SweepShared,
  samplesAlong,
  shareSweep,
  sweepRisk,
} from "./sweep/prepareSweep.ts";
import { isTracking } from "./sweep/tracker.ts";
import { correctionStops, sampleOf, sitePlume, thingsAt } from "./things.ts";

/** What all cameras of a plan share, beyond the scene. */
export interface Shared {
  readonly scene: Scene;
  readonly plume: PlumeLuminance | null;
  /** Whether the exposure guide holds, per T-0. */
  readonly guideHolds: readonly boolean[];
  /** For the trackers; null where there is nothing to follow. */
  readonly sweep: SweepShared | null;
}

export const shareScene = (scene: Scene): Shared => ({
  scene,
  plume: sitePlume(scene.site),
  guideHolds: guideHolds(scene),
  sweep: scene.site.cameras.some(isTracking) ? shareSweep(scene) : null,
});

export interface PreparedCamera {
  readonly view: CameraView;
  readonly sunOf: (ms: number) => CameraSun;
  readonly hides: CameraHides;
  readonly series: SunSeries;
  readonly sun: SunRisk;
  readonly moonInFrame: readonly TimeSpan[];
  readonly light: LightTable;
  readonly motion: ImageMotion | null;
  readonly choices: Choices;
  /** A tracker's; its sun and its setting are for the whole sweep. Null for a fixed camera, and without an ascent. */
  readonly sweep: PreparedSweep | null;
  /** Null when the camera cannot be given a setting; `choices.missing`, the missing vehicle or a note says why. */
  readonly settingInput: SettingInput | null;
}

export function prepareCamera(shared: Shared, camera: Camera): PreparedCamera {
  const { scene } = shared;
  const { site } = scene;
  const view = makeCameraView(site, camera);
  const sunOf = cameraSunOf(scene.track, view.place, view.air);
  const hides = cameraHidesOf(site, scene.obstacles, view);
  const series = sunSeries(view, scene.instants);
  const sunBehindAt = (ms: number): LightSample["sunBehind"] => sunBehind(hides.hiders, sunOf(ms));
  const { light, samples } = lightOver(shared, view, series, sunBehindAt);
  const sweep = sweepOf(shared, camera, view, hides);
  // What a tracker follows stands still in its picture.
  const motion = sweep === null ? imageMotion(scene.ascent, site, view) : null;
  const choices = choicesFor(camera, motion);
  const canSet = canBeSet(site, camera, choices);
  const kept = sweep === null || !canSet ? samples : samplesAlong(sweep, scene);
  return {
    view,
    sunOf,
    series,
    hides,
    sun:
      sweep === null
        ? sunRisk(view.frame, flareRule(view, site.settings), hides, sunOf, series)
        : sweepRisk(sweep),
    moonInFrame: moonInFrame(view, scene.moonTrack, scene.instants),
    light,
    motion,
    choices,
    sweep,
    settingInput: canSet && kept.length > 0 ? settingInputOf(shared, camera, choices, kept) : null,
  };
}

const sweepOf = (
  { scene, sweep }: Shared,
  camera: Camera,
  view: CameraView,
  hides: CameraHides,
): PreparedSweep | null =>
  isTracking(camera) && sweep !== null ? prepareSweep(sweep, scene, camera, view, hides) : null;

function settingInputOf(shared: Shared, camera: Camera, choices: Choices, samples: Sample[]): SettingInput {
  return {
    samples,
    choices: choices.choices,
    range: camera.medium!,
    comfortStops: shared.scene.site.settings.comfortStops,
    skies: shared.scene.skies,
  };
}

function lightOver(
  shared: Shared,
  view: CameraView,
  series: SunSeries,
  sunBehindAt: (ms: number) => LightSample["sunBehind"],
): { light: LightTable; samples: Sample[] } {
  const { site, skies, instants } = shared.scene;
  const table = lightTableFor(instants, skies.map(skyName), series, sunBehindAt);
  const samples: Sample[] = [];
  skies.forEach((sky, skyIndex) => {
    const state = skyState(sky);
    const correction = correctionStops(site, view.camera.id, sky);
    for (let i = 0; i < instants.length; i++) {
      const instant = instants[i]!;
      const things = thingsAt(site, view, instant, instant.skies[skyIndex]!, shared.plume, correction);
      samples.push(sampleOf(things, view.camera.keep, instant.ms, skyIndex));
      const tableEv = shared.guideHolds[i] ? guideEv(state, things.light) : null;
      table.add(skyIndex * instants.length + i, things, tableEv);
    }
  });
  return { light: table.done(), samples };
}
