/** A tracker made ready for the T-0s of a window: its frames along the ascent, and the sun against them. */

import { MS_PER_SECOND } from "../../base/units.ts";
import { trackedUpM } from "../../site/trackedPoint.ts";
import type { Camera, Site, Track, Vehicle, Window } from "../../site/types.ts";
import { makeSunPath, type SunPath } from "../../sky/sunPath.ts";
import { makeSunTrack, type SunTrack } from "../../sky/sunTrack.ts";
import { fromEdgeDeg } from "../../view/frame.ts";
import type { SiteAscent } from "../../view/siteAscent.ts";
import type { CameraSun } from "../../view/sunInFrame.ts";
import { makeSweepFrames, type SweepFrames } from "../../view/sweepFrames.ts";
import { type SweepMeasure, type SweepSearch, type SweptSun, sweepSearch } from "../../view/sweepSearch.ts";
import { offAxisDeg } from "../../view/sweepSun.ts";
import { type CameraView, sweptGate } from "../cameraView.ts";
import type { CameraHides } from "../hiddenSun.ts";
import { type FlareRule, measureSun, type SunMeasures } from "../sunRisk.ts";

/** What all trackers of a site share over a window. */
export interface SweepRoom {
  readonly site: Site;
  readonly window: Window;
  readonly ascent: SiteAscent;
  /** From the opening to the end of the last T-0's sweep. */
  readonly track: SunTrack;
  readonly fromS: number;
  readonly toS: number;
}

export function sweepRoomOf(site: Site, window: Window, ascent: SiteAscent): SweepRoom {
  const { toS } = ascent.path;
  const end = new Date(window.closes.getTime() + toS * MS_PER_SECOND);
  return { site, window, ascent, track: makeSunTrack(site.place, window.opens, end), fromS: 0, toS };
}

/** A camera with something to follow. */
export type TrackingCamera = Camera & { readonly track: Track };

export const isTracking = (camera: Camera): camera is TrackingCamera => camera.track !== null;

/** The frames of a tracker: the same for every window. */
export function trackerFrames(
  site: Site,
  { path }: SiteAscent,
  camera: TrackingCamera,
  place: CameraView["place"],
): SweepFrames {
  const vehicle: Vehicle = site.vehicle!;
  const gate = sweptGate(camera, camera.track);
  const target = {
    pad: site.place,
    path,
    footUpM: vehicle.baseM,
    alongM: trackedUpM(camera.track, vehicle),
  };
  return makeSweepFrames(gate, place, target, 0, path.toS);
}

export interface Tracker {
  readonly camera: TrackingCamera;
  readonly view: CameraView;
  readonly frames: SweepFrames;
  readonly sunPath: SunPath;
  readonly flareRule: FlareRule;
  readonly hides: CameraHides;
  /** In the frame, and in or near it; a hidden sun is outside of both. */
  readonly inFrame: SweepSearch;
  readonly flare: SweepSearch;
  /** In or near the frame, hidden or not; the same as `flare` where nothing can hide the sun. */
  readonly flareOrHidden: SweepSearch;
  /** From the sun's centre to the edge, and to the axis. */
  readonly edge: SweepSearch;
  readonly offAxis: SweepSearch;
}

export function makeTracker(
  room: SweepRoom,
  camera: TrackingCamera,
  view: CameraView,
  frames: SweepFrames,
  flareRule: FlareRule,
  hides: CameraHides,
): Tracker {
  const sunPath = makeSunPath(room.track, view.place, view.air);
  const search = (measure: SweepMeasure): SweepSearch => sweepSearch(frames, sunPath, measure);
  const flare = zoneMeasure(frames, flareRule, "flare");
  const flareOrHidden = search(flare);
  return {
    camera,
    view,
    frames,
    sunPath,
    flareRule,
    hides,
    inFrame: search(unhidden(zoneMeasure(frames, flareRule, "inFrame"), hides)),
    flare: hides.hidden === null ? flareOrHidden : search(unhidden(flare, hides)),
    flareOrHidden,
    edge: search(({ inFrame }) => fromEdgeDeg(frames.frame, inFrame)),
    offAxis: search(offAxisDeg),
  };
}

/** The plan's own measures, in the frame of the sweep. */
function zoneMeasure({ frame }: SweepFrames, rule: FlareRule, zone: keyof SunMeasures): SweepMeasure {
  const measures: SunMeasures = { flare: 0, inFrame: 0 };
  return (sun) => {
    measureSun(frame, rule, framed(sun), measures);
    return measures[zone];
  };
}

/** The sun with its direction in the frame. */
const framed = ({ inFrame, apparentElevationDeg, semidiameterDeg }: SweptSun): CameraSun => ({
  direction: inFrame,
  apparentElevationDeg,
  semidiameterDeg,
});

/** What hides is asked this near to a zone: farther out the zone alone says how far off an entry is. */
const NEAR_ZONE_DEG = 1;

/** Outside while hidden. */
function unhidden(measure: SweepMeasure, { hidden }: CameraHides): SweepMeasure {
  if (hidden === null) return measure;
  return (sun) => {
    const value = measure(sun);
    return value < NEAR_ZONE_DEG ? Math.max(value, -hidden(sun)) : value;
  };
}
