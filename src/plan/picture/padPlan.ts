/** The pad seen from above: what a plan drawing of it needs, in metres east and north of the pad datum. No text, no pixels. */

import { fromHorizon, horizonAxes, toHorizon } from "../../base/earthFixed.ts";
import type { Place } from "../../base/place.ts";
import { wrap360 } from "../../base/units.ts";
import { toAzimuthElevation } from "../../base/vector.ts";
import { spotFromPadM } from "../../site/standing.ts";
import type { Site } from "../../site/types.ts";
import type { Point2, Prism } from "../../view/prism.ts";
import { type CameraView, makeCameraView } from "../cameraView.ts";
import { obstaclesOf } from "../obstacles.ts";
import type { ShadowSolid } from "./groundShadow.ts";
import { type LevelField, levelFieldOf, turnedField } from "./levelField.ts";
import { isWithin, zoomRadiiM } from "./zooms.ts";

/** A structure or the vehicle. */
export interface PlanSolid extends ShadowSolid {
  readonly name: string;
  /** Share of the light it stops, 0..1. */
  readonly solidity: number;
  readonly isVehicle: boolean;
  readonly middle: Point2;
}

/** A camera on the plan. Azimuths are in the pad's horizon: kilometres off, true north is another direction. */
export interface PlanCamera {
  readonly id: string;
  /** `axis-only`: its place is not known. */
  readonly kind: "fixed" | "tracker" | "axis-only";
  readonly azimuthDeg: number;
  /** Level limits of the frame (a tracker's at T+0); null where it takes in all azimuths. */
  readonly field: LevelField | null;
  /** Null when the place is not known. */
  readonly stand: PlanStand | null;
}

interface PlanStand {
  readonly at: Point2;
  /** From the pad datum, degrees from true north and level metres. */
  readonly bearingDeg: number;
  readonly rangeM: number;
  /** The smallest drawing that holds it. */
  readonly drawing: number;
}

/** What follows the sun: little enough to be kept beside a page and drawn again for every T-0. */
export interface PlanGround {
  readonly solids: readonly PlanSolid[];
  /** Radii of the drawings in metres, ascending, one to three. */
  readonly radiiM: readonly number[];
}

export interface PadPlan extends PlanGround {
  readonly cameras: readonly PlanCamera[];
}

/** The plan of a site, its views made on the way. */
export const padPlanOf = (site: Site): PadPlan =>
  makePadPlan(
    site,
    site.cameras.map((camera) => makeCameraView(site, camera)),
    obstaclesOf(site).hiding,
  );

/** `prisms` are the structures in the order of the site, the vehicle after them (`obstaclesOf(site).hiding`). */
export function makePadPlan(site: Site, views: readonly CameraView[], prisms: readonly Prism[]): PadPlan {
  const solids = prisms.map((prism, i) => solidOf(prism, i >= site.structures.length, site));
  const spots = views.map(({ camera }) => (camera.at === null ? null : spotFromPadM(camera.at, site.place)));
  const ranges = spots.flatMap((spot) => (spot === null ? [] : [Math.hypot(spot[0], spot[1])]));
  const reaches = prisms.map(({ middle, reachM }) => Math.hypot(middle[0], middle[1]) + reachM);
  const radiiM = zoomRadiiM(ranges, reaches);
  const cameras = views.map((view, i) => {
    const spot = spots[i]!;
    return planCamera(site.place, view, spot === null ? null : standAt([spot[0], spot[1]], radiiM));
  });
  return { solids, radiiM, cameras };
}

const solidOf = (prism: Prism, isVehicle: boolean, site: Site): PlanSolid => ({
  name: isVehicle ? (site.vehicle?.name ?? prism.name) : prism.name,
  solidity: prism.solidity,
  isVehicle,
  footprint: prism.footprint,
  middle: prism.middle,
  footM: prism.footM,
  topM: prism.topM,
});

function standAt(at: Point2, radiiM: readonly number[]): PlanStand {
  const rangeM = Math.hypot(...at);
  return {
    at,
    rangeM,
    bearingDeg: toAzimuthElevation([at[0], at[1], 0]).azimuthDeg,
    drawing: drawingOf(rangeM, radiiM),
  };
}

/** The smallest drawing that holds what stands so far off; the number of drawings when none does. */
export function drawingOf(rangeM: number, radiiM: readonly number[]): number {
  const found = radiiM.findIndex((radiusM) => isWithin(rangeM, radiusM));
  return found < 0 ? radiiM.length : found;
}

function planCamera(pad: Place, view: CameraView, stand: PlanStand | null): PlanCamera {
  const { camera, frame, axis } = view;
  const turnDeg = northTurnDeg(pad, view.place);
  const field = levelFieldOf(frame);
  const kind = stand === null ? "axis-only" : camera.track === null ? "fixed" : "tracker";
  return {
    id: camera.id,
    kind,
    azimuthDeg: wrap360(axis.azimuthDeg + turnDeg),
    field: field && turnedField(field, turnDeg),
    stand,
  };
}

/** The azimuth at the pad of what is true north at a place: meridians run together towards the poles. */
function northTurnDeg(pad: Place, place: Place): number {
  const north = fromHorizon(horizonAxes(place), [0, 1, 0]);
  return toAzimuthElevation(toHorizon(horizonAxes(pad), north)).azimuthDeg;
}
