/** One camera through the window: its plan, its optics, and on request how its setting came about. */

import { PadstopError, problem } from "../base/problem.ts";
import { exactStop } from "../exposure/scales.ts";
import { airyDiameterMm, depthOfField, hyperfocalM, sunImageMm } from "../exposure/sharpness.ts";
import { nearest } from "../site/nearest.ts";
import type { Camera, Site, Window } from "../site/types.ts";
import { coverageM, onGateMm } from "../view/frame.ts";
import { explainAir } from "./explainAir.ts";
import { explainLight } from "./explainLight.ts";
import type { ExplainPart } from "./explainLine.ts";
import { explainSetting } from "./explainSetting.ts";
import type { WindowPlan } from "./planTypes.ts";
import { planPrepared } from "./planWindow.ts";
import { type PreparedCamera, prepareCamera, type Shared, shareScene } from "./prepareCamera.ts";
import { makeScene, type PlanOptions } from "./scene.ts";
import { exactTimeS } from "./settingWords.ts";
import { t0InWindow } from "./t0InWindow.ts";
import { correctionStops, thingsAt } from "./things.ts";

/** What the lens does at the chosen setting; null where the setting, the range or the vehicle is missing. */
export interface Optics {
  readonly gate: { readonly name: string | null; readonly widthMm: number; readonly heightMm: number };
  readonly focalMm: number;
  readonly coverage: { readonly widthM: number; readonly heightM: number } | null;
  readonly hasVehicle: boolean;
  /** Stretch of the vehicle in the gate, metres above its foot. */
  readonly vehicleInGate: { readonly fromM: number; readonly toM: number } | null;
  readonly hyperfocalM: number | null;
  readonly sharp: { readonly nearM: number; readonly farM: number | null } | null;
  readonly airyMm: number | null;
  readonly imageMotionMm: number | null;
  readonly sunImageMm: number;
}

/** Where the sun's centre falls on the gate's plane; null behind the camera. */
export interface SunOnGate {
  readonly at: Date;
  readonly xMm: number | null;
  readonly yMm: number | null;
}

export interface ViewPlan {
  readonly plan: WindowPlan;
  readonly optics: Optics;
  readonly sunOnGate: readonly SunOnGate[];
  readonly explained: { readonly at: Date; readonly parts: readonly ExplainPart[] } | null;
}

export interface ViewOptions extends PlanOptions {
  readonly explain?: boolean;
  /** The T-0 to explain: an instant, or a time of day in the window; the middle when left out. */
  readonly at?: string;
}

/** The camera of that id. Throws PadstopError naming the ids there are. */
export function cameraOf(site: Site, id: string): Camera {
  const camera =
    site.cameras.find((one) => one.id === id) ??
    site.cameras.find((one) => one.id.toLowerCase() === id.toLowerCase());
  if (camera !== undefined) return camera;
  const ids = site.cameras.map((one) => one.id);
  throw new PadstopError([
    problem("E_NAME", "CAMERA", {
      found: JSON.stringify(id),
      accepted: ids.join(", "),
      suggestion: nearest(id, ids),
    }),
  ]);
}

/** Throws PadstopError for an unknown camera, a T-0 outside the window, or options out of range. */
export function viewCamera(site: Site, window: Window, id: string, options: ViewOptions = {}): ViewPlan {
  const camera = cameraOf(site, id);
  const alone: Site = { ...site, cameras: [camera] };
  const at = options.at === undefined ? null : t0InWindow(site, window, options.at);
  // The explained T-0 joins the window's, so that everything on the sheet knows it.
  const planOptions: PlanOptions = at === null ? options : { ...options, alsoAt: at };
  const shared = shareScene(makeScene(alone, window, planOptions));
  const prepared = prepareCamera(shared, camera);
  const plan = planPrepared(shared, () => prepared);
  return {
    plan,
    optics: opticsOf(prepared, plan, site),
    sunOnGate: shared.scene.instants.map(({ at: instantAt, ms }) => ({
      at: instantAt,
      ...(onGateMm(prepared.view.frame, prepared.sunOf(ms).direction) ?? { xMm: null, yMm: null }),
    })),
    explained: options.explain === true ? explainAt(shared, prepared, at) : null,
  };
}

function explainAt(shared: Shared, prepared: PreparedCamera, at: Date | null): ViewPlan["explained"] {
  const { scene, plume } = shared;
  const index = at === null ? scene.middleIndex : scene.instants.findIndex(({ ms }) => ms === at.getTime());
  const instant = scene.instants[index]!;
  const sky = instant.skies[0]!;
  const { view } = prepared;
  const correction = correctionStops(scene.site, view.camera.id, sky.sky);
  const things = thingsAt(scene.site, view, instant, sky, plume, correction);
  const light = explainLight({
    scene,
    view,
    instant,
    sky,
    things,
    plume,
    guideHolds: shared.guideHolds[index]!,
  });
  const { sweep } = prepared;
  if (sweep === null)
    return { at: instant.at, parts: [...light, ...explainSetting(scene, prepared, things)] };
  const seen = sweep.light.onPad(instant, 0);
  return {
    at: instant.at,
    parts: [...light, explainAir(sweep, seen), ...explainSetting(scene, prepared, seen)],
  };
}

function opticsOf({ view, motion, sunOf }: PreparedCamera, plan: WindowPlan, site: Site): Optics {
  const { camera, axis, body } = view;
  const { focalMm, stops } = camera.lens;
  const setting = plan.cameras[0]!.setting;
  const stop = setting === null ? null : exactStop(setting.stop, stops);
  const blurMm = camera.medium?.blurMm ?? null;
  const hasDepth = stop !== null && blurMm !== null;
  const footM = site.vehicle?.baseM ?? 0;
  const visible = body?.visible ?? null;
  return {
    gate: camera.gate,
    focalMm,
    coverage: axis.rangeM === null ? null : coverageOf(camera, axis.rangeM),
    hasVehicle: site.vehicle !== null,
    vehicleInGate: visible && { fromM: visible.fromM - footM, toM: visible.toM - footM },
    hyperfocalM: hasDepth ? hyperfocalM(focalMm, stop, blurMm) : null,
    sharp: hasDepth && axis.rangeM !== null ? depthOfField(focalMm, stop, blurMm, axis.rangeM) : null,
    airyMm: stop === null ? null : airyDiameterMm(stop),
    imageMotionMm: motion === null || setting === null ? null : motion.imageMmS * exactTimeS(setting),
    sunImageMm: sunImageMm(focalMm, sunOf(plan.window.opens.getTime()).semidiameterDeg),
  };
}

const coverageOf = ({ gate, lens }: Camera, rangeM: number): NonNullable<Optics["coverage"]> => ({
  widthM: coverageM(gate.widthMm, lens.focalMm, rangeM),
  heightM: coverageM(gate.heightMm, lens.focalMm, rangeM),
});
