/** One camera at one T-0 under one sky: its light, its sun, and where everything stands at its setting. */

import { MS_PER_SECOND } from "../../base/units.ts";
import { angleBetweenDeg } from "../../base/vector.ts";
import { guideEv } from "../../exposure/guide.ts";
import { envelopeOf, spareAt } from "../../exposure/solver.ts";
import type { LightClass } from "../../light/lightClass.ts";
import { THINGS, type Thing } from "../../site/types.ts";
import { skyState } from "../../sky/daylight.ts";
import { pathSun } from "../../sky/sunPath.ts";
import { fromEdgeDeg } from "../../view/frame.ts";
import { type HiddenShare, sunBehind } from "../../view/hiders.ts";
import { aboveHorizonMeasure, type CameraSun } from "../../view/sunInFrame.ts";
import type { Instant } from "../instants.ts";
import { measureSun, type SunRiskWord } from "../sunRisk.ts";
import { toTPlusSpan } from "../sweep/approach.ts";
import type { TPlusSpan } from "../sweep/sweepParts.ts";
import type { Tracker } from "../sweep/tracker.ts";
import { correctionStops, type SeenThings, sampleOf, type Things, thingsAt } from "../things.ts";
import type { LiveCamera, LiveSweep, LiveWindow } from "./liveWindow.ts";

/** Where a thing stands at a setting, stops from the mid-tone. */
export interface Reading {
  readonly thing: Thing;
  readonly darkStops: number;
  readonly brightStops: number;
}

interface LiveSun {
  /** At this T-0; of a tracker along the sweep that begins with it. */
  readonly word: SunRiskWord;
  /** At T+0. */
  readonly fromEdgeDeg: number;
  readonly offAxisDeg: number;
  readonly behind: readonly HiddenShare[];
  /** Of a tracker: T+ with the sun in the frame, or near it where it is never in; empty when neither. */
  readonly tPlus: readonly TPlusSpan[];
}

export interface LiveView {
  readonly light: LightClass;
  readonly phaseDeg: number;
  readonly litShare: number;
  readonly ev: number | null;
  readonly tableEv: number | null;
  readonly sun: LiveSun;
  /** Null without a setting. At T+0 for a tracker. */
  readonly exposure: {
    readonly readings: readonly Reading[];
    /** Smallest margin of what is kept, stops. */
    readonly spareStops: number;
  } | null;
}

/** What one camera meets at a T-0. */
interface LiveThings {
  readonly things: Things;
  /** The same through the air between for a tracker. */
  readonly seen: SeenThings;
}

export function liveThings(
  { scene, plume }: LiveWindow,
  { view, sweep }: LiveCamera,
  instant: Instant,
  skyIndex: number,
): LiveThings {
  const sky = instant.skies[skyIndex]!;
  const correction = correctionStops(scene.site, view.camera.id, sky.sky);
  const things = thingsAt(scene.site, view, instant, sky, plume, correction);
  return { things, seen: sweep === null ? things : sweep.light.onPad(instant, skyIndex) };
}

/** `midToneLog2` is that of the camera's setting, null without one. */
export function liveView(
  live: LiveWindow,
  camera: LiveCamera,
  instant: Instant,
  skyIndex: number,
  midToneLog2: number | null,
): LiveView {
  const { things, seen } = liveThings(live, camera, instant, skyIndex);
  const { light, phaseDeg, body, ev } = things;
  const state = skyState(instant.skies[skyIndex]!.sky);
  return {
    light,
    phaseDeg,
    litShare: body.litShare,
    ev,
    tableEv: live.guideHoldsAt(instant) ? guideEv(state, light) : null,
    sun: liveSun(camera, instant.ms),
    exposure: midToneLog2 === null ? null : exposureAt(camera, seen, midToneLog2, things.hasVehicle),
  };
}

function exposureAt(
  { view: { camera } }: LiveCamera,
  seen: SeenThings,
  midToneLog2: number,
  hasVehicle: boolean,
): LiveView["exposure"] {
  const all = THINGS.filter((thing) => isThere(thing, seen, hasVehicle));
  const { spans } = sampleOf(seen, all, 0, 0);
  const kept = sampleOf(seen, camera.keep, 0, 0);
  return {
    readings: spans.map(({ thing, darkLog2, brightLog2 }) => ({
      thing,
      darkStops: darkLog2 - midToneLog2,
      brightStops: brightLog2 - midToneLog2,
    })),
    spareStops: spareAt(envelopeOf([kept]), camera.medium!, midToneLog2),
  };
}

const isThere = (thing: Thing, seen: SeenThings, hasVehicle: boolean): boolean =>
  (thing !== "body" || hasVehicle) && (thing !== "plume" || seen.plume !== null);

function liveSun(camera: LiveCamera, ms: number): LiveSun {
  const { view, hides, sunOf, sweep } = camera;
  const sun = sunOf(ms);
  const along = sweep === null ? { word: wordAt(camera, sun), tPlus: [] } : alongSweep(sweep, ms);
  return {
    ...along,
    fromEdgeDeg: fromEdgeDeg(view.frame, sun.direction),
    offAxisDeg: angleBetweenDeg(view.frame.axis, sun.direction),
    behind: sunBehind(hides.hiders, sun),
  };
}

/** As the plan sorts its spans: in the frame before near it, neither while hidden. */
function wordAt({ view, rule, hides }: LiveCamera, sun: CameraSun): SunRiskWord {
  if (aboveHorizonMeasure(sun) >= 0) return "down";
  const measures = { flare: 0, inFrame: 0 };
  measureSun(view.frame, rule, sun, measures);
  if (measures.flare >= 0) return "clear";
  if (hides.hidden !== null && hides.hidden(sun) < 0) return "hidden";
  return measures.inFrame < 0 ? "in-frame" : "near-frame";
}

/** The sun moves little along a sweep: down at both ends it is down. */
function isDown({ sunPath }: Tracker, endS: number, t0Ms: number): boolean {
  const sun = pathSun();
  return [0, endS].every((tPlusS) => {
    sunPath.into(t0Ms + tPlusS * MS_PER_SECOND, sun);
    return aboveHorizonMeasure(sun) >= 0;
  });
}

function alongSweep({ room, tracker }: LiveSweep, t0Ms: number): Pick<LiveSun, "word" | "tPlus"> {
  const endS = tracker.frames.atMs.at(-1)! / MS_PER_SECOND;
  const met = (search: Tracker["flare"]): readonly TPlusSpan[] =>
    search.tPlusAt(t0Ms).map((span) => toTPlusSpan(span, endS));
  const near = tracker.flare.signAt(t0Ms) < 0 ? met(tracker.flare) : [];
  if (near.length > 0) {
    const inFrame = met(tracker.inFrame);
    return inFrame.length > 0 ? { word: "in-frame", tPlus: inFrame } : { word: "near-frame", tPlus: near };
  }
  const isHidden = tracker.hides.hidden !== null && tracker.flareOrHidden.signAt(t0Ms) < 0;
  return { word: isHidden ? "hidden" : isDown(tracker, room.toS, t0Ms) ? "down" : "clear", tPlus: [] };
}
