/** The job of a sweep: one tracker of a site, or all, over a window. */

import { PadstopError, problem, requireNumber } from "../../base/problem.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import type { Camera, Site, Window } from "../../site/types.ts";
import { skyName } from "../../sky/daylight.ts";
import { cautionsFor } from "../cautions.ts";
import { makeClock } from "../clock.ts";
import { WHOLE_SWEEP } from "../notes.ts";
import type { CameraPlan } from "../planTypes.ts";
import { planCamera } from "../planWindow.ts";
import { prepareCamera, type Shared, shareScene } from "../prepareCamera.ts";
import { makeScene } from "../scene.ts";
import { siteNotes } from "../siteNotes.ts";
import { t0InWindow } from "../t0InWindow.ts";
import { cameraOf } from "../viewCamera.ts";
import { CANNOT_FOLLOW } from "./sweepNotes.ts";
import type { SweepOptions, SweepPlan, TrackerSweep } from "./sweepTypes.ts";
import { DEFAULT_EVERY_S, timelineRows } from "./timeline.ts";
import { isTracking } from "./tracker.ts";

/**
 * The sweep of one tracker of `site` for every T-0 of `window`: when the sun meets its frame, the setting that holds, and one
 * T-0 row by row. `options.sky`: sky states (default clear; the rows are under the first); `options.stepS`: spacing of
 * T-0s in seconds, 1..3600 (default 60); `options.at`: T-0 of the rows (default the window's middle); `options.everyS`: their
 * spacing in seconds, 0.1..600 (default 5). Throws PadstopError for an unknown camera, one that is no tracker, a site
 * without an ascent, and options out of range.
 */
export function sweepTracker(
  site: Site,
  cameraId: string,
  window: Window,
  options: SweepOptions = {},
): TrackerSweep {
  return sweepTrackers(site, window, cameraId, options).trackers[0]!;
}

/** As `sweepTracker`, for one camera or (null) for all trackers of the site. */
export function sweepTrackers(
  site: Site,
  window: Window,
  cameraId: string | null,
  options: SweepOptions = {},
): SweepPlan {
  const cameras = trackersOf(site, cameraId);
  requireAscent(site);
  const everyS = requireNumber("every", options.everyS ?? DEFAULT_EVERY_S, 0.1, 600, "s");
  const at = options.at === undefined ? null : t0InWindow(site, window, options.at);
  const alone: Site = { ...site, cameras };
  const shared = shareScene(
    makeScene(alone, window, {
      ...(options.sky === undefined ? {} : { sky: options.sky }),
      ...(options.stepS === undefined ? {} : { stepS: options.stepS }),
    }),
  );
  const { scene } = shared;
  const clock = makeClock(site.zone, window.opens, window.closes);
  const made = cameras.map((camera) => sweepOf(shared, camera, at ?? middleOf(window), everyS));
  return {
    site: { name: site.name, zone: site.zone, ...site.place },
    window: { name: window.name, opens: window.opens, closes: window.closes, zone: site.zone },
    sky: scene.skies.map(skyName),
    stepS: scene.stepS,
    trackers: made.map(({ sweep }) => sweep),
    notes: siteNotes(scene, clock),
    cautions: cautionsFor(made.map(({ plan }) => plan)),
  };
}

/** What the sheet of a sweep says outside of its notes. */
const SAID_ELSEWHERE = [WHOLE_SWEEP, CANNOT_FOLLOW];

/** To the second. */
const middleOf = ({ opens, closes }: Window): Date =>
  new Date(Math.round((opens.getTime() + closes.getTime()) / 2 / MS_PER_SECOND) * MS_PER_SECOND);

function sweepOf(
  shared: Shared,
  camera: Camera,
  at: Date,
  everyS: number,
): { sweep: TrackerSweep; plan: CameraPlan } {
  const { scene } = shared;
  const { site, window } = scene;
  const prepared = prepareCamera(shared, camera);
  const plan = planCamera(scene, prepared, makeClock(site.zone, window.opens, window.closes));
  const { room, tracker, light } = prepared.sweep!;
  const { lens, gate } = camera;
  const { axis } = plan;
  return {
    plan,
    sweep: {
      id: camera.id,
      axis: { azimuthDeg: axis.azimuthDeg, elevationDeg: axis.elevationDeg, rangeM: axis.rangeM! },
      fieldDeg: plan.fieldDeg,
      lens: { focalMm: lens.focalMm, gateWidthMm: gate.widthMm, gateHeightMm: gate.heightMm },
      keep: plan.keep,
      ...plan.sweep!,
      setting: plan.setting,
      bySky: plan.bySky,
      timeline: {
        at,
        sky: skyName(scene.skies[0]!),
        rows: timelineRows(room, tracker, light, plan.setting, scene.instantAt(at.getTime()), everyS),
      },
      notes: plan.notes.filter((note) => !SAID_ELSEWHERE.some((said) => note.startsWith(said))),
    },
  };
}

/** Throws PadstopError for a camera that is no tracker, and for a site without one. */
function trackersOf(site: Site, cameraId: string | null): readonly Camera[] {
  const trackers = site.cameras.filter(isTracking);
  const ids = trackers.map(({ id }) => id);
  if (cameraId === null) {
    if (trackers.length > 0) return trackers;
    const accepted = "a camera that follows the vehicle";
    const next = "give one track: { part: nose } in the place of aim";
    throw new PadstopError([problem("E_MISSING", "track", { found: "no tracker", accepted, next })]);
  }
  const camera = cameraOf(site, cameraId);
  if (isTracking(camera)) return [camera];
  throw new PadstopError([
    problem("E_CHOICE", "CAMERA", {
      found: `${camera.id}, a fixed camera`,
      accepted: ids.length === 0 ? "a tracker (this site has none)" : ids.join(", "),
      next: `padstop view shows ${camera.id} through the window`,
    }),
  ]);
}

function requireAscent({ vehicle }: Site): void {
  if (vehicle !== null && vehicle.ascent !== null) return;
  throw new PadstopError([
    problem("E_MISSING", "vehicle.ascent", {
      found: "no ascent",
      accepted: "the name of a .csv file, or parameters",
      next: "add ascent: { heading: 90, thrustToWeight: 1.3 } to vehicle",
    }),
  ]);
}
