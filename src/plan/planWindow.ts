/** The main job: every camera of a site over one window. */

import { wrap180 } from "../base/units.ts";
import type { Camera, Site, Window } from "../site/types.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";
import { daylightInputFor, daylightThrough, LOW_SUN_DEG, skyName, skyState } from "../sky/daylight.ts";
import { secondOpinion } from "../sky/secondOpinion.ts";
import { sunAt } from "../sky/sun.ts";
import { cautionsFor } from "./cautions.ts";
import { type Clock, makeClock } from "./clock.ts";
import { mediumNotes, notesFor } from "./notes.ts";
import type { CameraPlan, WindowPlan } from "./planTypes.ts";
import { type PreparedCamera, prepareCamera, type Shared, shareScene } from "./prepareCamera.ts";
import { remedyFor } from "./remedy.ts";
import { makeScene, type PlanOptions, type Scene } from "./scene.ts";
import { type SettingInput, settingFor } from "./settingFor.ts";
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
    site: { name: site.name, zone: site.zone, ...site.place },
    window: { name: window.name, opens: window.opens, closes: window.closes, zone: site.zone },
    sky: scene.skies.map(skyName),
    stepS: scene.stepS,
    middleIndex: scene.middleIndex,
    sun: scene.instants.map(({ at, sun }) => ({
      at,
      azimuthDeg: sun.azimuthDeg,
      elevationDeg: sun.airlessElevationDeg,
      apparentElevationDeg: sun.apparentElevationDeg,
    })),
    ...windowEvents(site, window),
    cameras,
    notes: siteNotes(scene, clock),
    cautions: cautionsFor(site.cameras, cameras, scene.instants[0]!.sample.semidiameterDeg),
  };
}

function planCamera({ site, skies }: Scene, prepared: PreparedCamera, clock: Clock): CameraPlan {
  const { view, light, sun, settingInput } = prepared;
  const { camera } = view;
  const solved = settingInput && settingFor(settingInput);
  const setting = solved?.setting ?? null;
  return {
    id: camera.id,
    axis: view.axis,
    fieldDeg: view.fieldDeg,
    get light() {
      return light.all();
    },
    lightAt: light.sample,
    sun,
    remedy: remedyFor(site, view, sun, prepared.series, prepared.sunOf),
    setting,
    bySky:
      skies.length === 1
        ? [{ sky: skyName(skies[0]!), setting }]
        : skies.map((sky, index) => ({ sky: skyName(sky), setting: settingUnder(settingInput, index) })),
    keep: camera.keep,
    notes: notesFor({
      site,
      ...prepared,
      clock,
      solved: solved?.solved ?? null,
      setting,
      skyCount: skies.length,
    }),
  };
}

/** The setting when only one of the skies comes. */
function settingUnder(input: SettingInput | null, skyIndex: number): CameraPlan["setting"] {
  if (input === null) return null;
  const samples = input.samples.filter((sample) => sample.skyIndex === skyIndex);
  return settingFor({ ...input, samples })?.setting ?? null;
}

/** Notes that hold for the whole sheet. */
function siteNotes(scene: Scene, clock: Clock): string[] {
  const { site, window } = scene;
  const notes = mediumNotes(site.cameras);
  if (site.structures.length > 0 || site.horizon.length > 0) {
    notes.push(
      "structures and the horizon mask are read but not yet counted: a sun said to be in the frame may be hidden, a lit body may stand in shadow",
    );
  }
  if (site.vehicle?.ascent?.kind === "file")
    notes.push("the ascent file is not yet read: image motion is not limited");
  if (Object.keys({ ...site.corrections.bySky, ...site.corrections.byCamera }).length > 0) {
    notes.push("corrections from readings are applied to body, sky and deck");
  }
  notes.push(...lampNotes(scene), ...lowHazeNotes(scene, clock), ...zoneNotes(site, window));
  for (const at of [window.opens, window.closes]) {
    const opinion = secondOpinion(site.place, at, sunAt(site.place, at, scene.air));
    if (!opinion.agrees) {
      notes.push(
        `a second library puts the sun ${opinion.apartDeg.toFixed(2)} degrees away at ${clock.at(at)} (accepted ${opinion.acceptedDeg}): check the site's place and air`,
      );
    }
  }
  return notes;
}

/** Lights that are counted in part or not at all; they matter when the sun is low or down. */
function lampNotes({ site, instants }: Scene): string[] {
  const notes: string[] = [];
  if (site.floodlightLx !== null) {
    notes.push(
      "floodlights count on the body alone, from all sides alike; deck and sky are counted without them",
    );
  }
  const lowestDeg = Math.min(...instants.map(({ sun }) => sun.airlessElevationDeg));
  if (lowestDeg < LOW_SUN_DEG && site.vehicle?.plume) {
    notes.push("the plume's light on body and deck is not yet counted");
  }
  if (lowestDeg < 0) notes.push("moonlight is not yet counted");
  return notes;
}

/**
 * Through much air the turbidity model falls below the overcast of the daylight practice, for the usual haze with the sun
 * under some 7 degrees: it is not made for that, and its haze is then too dark to be believed.
 */
function lowHazeNotes({ site, skies, instants, air }: Scene, clock: Clock): string[] {
  return skies.flatMap((sky, skyIndex) => {
    if (skyState(sky) !== "haze") return [];
    const dark = instants.filter(({ sun, sample, skies: lights }) => {
      const input = daylightInputFor(sun, sample.distanceAu, site.place.heightM, air.pressureHPa);
      return lights[skyIndex]!.upright.groundLx < daylightThrough(input, "overcast").diffuseHorizontalLx;
    });
    if (dark.length === 0) return [];
    const [first, last] = [clock.at(dark[0]!.at), clock.at(dark.at(-1)!.at)];
    return [
      `${skyName(sky)} comes out darker than overcast at T-0s between ${first} and ${last}: the turbidity model is outside its range with so low a sun and likely too dark; go by overcast or a meter there`,
    ];
  });
}

/** A zone's clock rarely stands farther from the sun's than this. */
const ZONE_OFF_HOURS = 4;

/** A longitude of the wrong sign shows here before anywhere else. */
function zoneNotes({ place, zone }: Site, { opens }: Window): string[] {
  const offHours = utcOffsetMinutes(opens, zone) / 60 - place.longitudeDeg / 15;
  const apartHours = Math.abs(wrap180(offHours * 15)) / 15;
  if (apartHours <= ZONE_OFF_HOURS) return [];
  return [
    `the clock of ${zone} stands ${apartHours.toFixed(0)} hours off the sun at longitude ${place.longitudeDeg.toFixed(2)}: check the longitude's sign, the latitude and the zone`,
  ];
}
