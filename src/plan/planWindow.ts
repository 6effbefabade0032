/** The main job: every camera of a site over one window. */

import type { Camera, Site, Window } from "../site/types.ts";
import { skyName } from "../sky/daylight.ts";
import { earthShadowHeightM } from "../sky/earthShadow.ts";
import { cautionsFor } from "./cautions.ts";
import { type Clock, makeClock } from "./clock.ts";
import type { Instant } from "./instants.ts";
import { notesFor } from "./notes.ts";
import type { CameraPlan, SunInstant, WindowPlan } from "./planTypes.ts";
import { type PreparedCamera, prepareCamera, type Shared, shareScene } from "./prepareCamera.ts";
import { remedyFor } from "./remedy.ts";
import { makeScene, type PlanOptions, type Scene } from "./scene.ts";
import { type SettingInput, settingFor } from "./settingFor.ts";
import { shadeSpans } from "./shadeSpans.ts";
import { thingsInTheWay } from "./sightNotes.ts";
import { siteNotes } from "./siteNotes.ts";
import { sunImageOf } from "./sunImage.ts";
import { sweepRemedy } from "./sweep/prepareSweep.ts";
import { sweepSummary } from "./sweep/sweepSummary.ts";
import { windowEvents } from "./windowEvents.ts";

/**
 * The night-before plan of `site` for `window`: light, sun risk and a setting for every camera.
 * `options.sky`: sky states (default clear); `options.stepS`: spacing of T-0s in seconds, 1..3600 (default 60).
 * Throws PadstopError for options out of range.
 */
export function planWindow(site: Site, window: Window, options: PlanOptions = {}): WindowPlan {
  const shared = shareScene(makeScene(site, window, options));
  return planPrepared(shared, (camera) => prepareCamera(shared, camera));
}

/** The plan of a scene whose cameras `prepare` makes ready, one at a time. */
export function planPrepared(shared: Shared, prepare: (camera: Camera) => PreparedCamera): WindowPlan {
  const { scene } = shared;
  const { site, window } = scene;
  const clock = makeClock(site.zone, window.opens, window.closes);
  const cameras = site.cameras.map((camera) => planCamera(scene, prepare(camera), clock));
  return {
    site: {
      name: site.name,
      zone: site.zone,
      ...site.place,
      ...(site.bearings.kind === "magnetic" ? { bearings: site.bearings } : {}),
    },
    window: { name: window.name, opens: window.opens, closes: window.closes, zone: site.zone },
    sky: scene.skies.map(skyName),
    stepS: scene.stepS,
    middleIndex: scene.middleIndex,
    sun: scene.instants.map((instant) => sunInstant(site, instant)),
    ...windowEvents(site, window),
    shade: shadeSpans(scene),
    cameras,
    notes: siteNotes(scene, clock),
    cautions: cautionsFor(cameras),
  };
}

/** What the sheet and outside programs are told of a T-0. */
function sunInstant({ vehicle }: Site, { at, sun, moon, shade }: Instant): SunInstant {
  const footM = vehicle?.baseM ?? 0;
  return {
    at,
    azimuthDeg: sun.azimuthDeg,
    elevationDeg: sun.airlessElevationDeg,
    apparentElevationDeg: sun.apparentElevationDeg,
    // Never null for the first light: refraction brings it short of the nadir.
    earthShadowKm:
      sun.apparentElevationDeg > 0 ? 0 : (earthShadowHeightM(sun.airlessElevationDeg) ?? 0) / 1000,
    moon: moon && {
      azimuthDeg: moon.azimuthDeg,
      apparentElevationDeg: moon.apparentElevationDeg,
      litShare: moon.litShare,
    },
    shadows: (shade?.shadows ?? []).map(({ by, fromM, toM, passes }) => ({
      by,
      fromM: fromM - footM,
      toM: toM - footM,
      passesShare: passes,
    })),
  };
}

/** One camera's part of a plan. */
export function planCamera(scene: Scene, prepared: PreparedCamera, clock: Clock): CameraPlan {
  const { site, skies } = scene;
  const { view, light, sun, settingInput, sweep } = prepared;
  const { camera } = view;
  const solved = settingInput && settingFor(settingInput);
  const setting = solved?.setting ?? null;
  const summary = sweep && sweepSummary(sweep, settingInput, setting);
  const inTheWay = thingsInTheWay(scene, view);
  return {
    id: camera.id,
    axis: view.axis,
    fieldDeg: view.fieldDeg,
    get light() {
      return light.all();
    },
    lightAt: light.sample,
    sun,
    inTheWay,
    sunImage: sunImageIn(scene, prepared, setting),
    moonInFrame: prepared.moonInFrame,
    remedy: remedyOf(site, prepared),
    sweep: summary,
    setting,
    bySky: settingsBySky(scene, settingInput, setting),
    keep: camera.keep,
    notes: notesFor({
      site,
      scene,
      ...prepared,
      clock,
      solved: solved?.solved ?? null,
      setting,
      summary,
      inTheWay,
      skyCount: skies.length,
    }),
  };
}

const sunImageIn = (
  { instants }: Scene,
  { sun, view }: PreparedCamera,
  setting: CameraPlan["setting"],
): CameraPlan["sunImage"] =>
  sun.inFrame.length === 0
    ? null
    : sunImageOf(view.camera, setting?.stop ?? null, instants[0]!.sample.semidiameterDeg);

const remedyOf = (site: Site, prepared: PreparedCamera): CameraPlan["remedy"] =>
  prepared.sweep === null
    ? remedyFor(site, prepared.view, prepared.sun, prepared.series, prepared.hides, prepared.sunOf)
    : sweepRemedy(prepared.sweep);

/** `setting` is that for all skies together. */
const settingsBySky = (
  { skies }: Scene,
  input: SettingInput | null,
  setting: CameraPlan["setting"],
): CameraPlan["bySky"] =>
  skies.length === 1
    ? [{ sky: skyName(skies[0]!), setting }]
    : skies.map((sky, index) => ({ sky: skyName(sky), setting: settingUnder(input, index) }));

/** The setting when only one of the skies comes. */
function settingUnder(input: SettingInput | null, skyIndex: number): CameraPlan["setting"] {
  if (input === null) return null;
  const samples = input.samples.filter((sample) => sample.skyIndex === skyIndex);
  return settingFor({ ...input, samples })?.setting ?? null;
}
