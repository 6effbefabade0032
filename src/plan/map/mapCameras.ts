/**
 * The cameras of a map: where each stands, its line of sight, and the level field of its frame.
 *
 * How far lines go: a line of sight ends at the aimed point (a tracker's: at what it follows at T+0); one given by an
 * azimuth and elevation at the distance of the vehicle, or where it comes down to the level of the pad datum before that. A
 * field ends at the level distance of the aimed point or the vehicle, whichever the line is for. Nothing is longer than
 * `MOST_REACH_M`; what is aimed at beyond that is taken for an axis.
 */

import { fromHorizon, horizonAxes, toEarthFixed, toHorizon } from "../../base/earthFixed.ts";
import { cosDeg, sinDeg } from "../../base/units.ts";
import { add, fromAzimuthElevation, scale, subtract, type Vec3 } from "../../base/vector.ts";
import type { Site } from "../../site/types.ts";
import { type CameraView, makeCameraView } from "../cameraView.ts";
import { fieldWidthDeg, type LevelField, levelFieldOf } from "../picture/levelField.ts";
import type { MapShape, MapThing } from "./mapTypes.ts";

/** As far as a site file lets a camera stand from its pad, metres. */
export const MOST_REACH_M = 200_000;
/** A camera on the pad's axis still has a field that can be seen. */
const LEAST_REACH_M = 1;
/** Corners of an arc stand no farther apart. */
const ARC_STEP_DEG = 5;

/** All cameras of a site in its order: each stands before its line and its field. */
export const mapCameras = (site: Site): MapThing[] =>
  site.cameras.flatMap((camera) => thingsOf(site, makeCameraView(site, camera)));

function thingsOf(site: Site, view: CameraView): MapThing[] {
  const { camera, axis, fieldDeg } = view;
  const cameraId = camera.id;
  const looks = { azimuthDeg: axis.azimuthDeg, elevationDeg: axis.elevationDeg, rangeM: axis.rangeM };
  const frame = { horizontalFieldDeg: fieldDeg.horizontal, verticalFieldDeg: fieldDeg.vertical };
  const figures = { ...looks, ...frame, rollDeg: camera.rollDeg, isTracker: camera.track !== null };
  const key = (kind: string): string => `${kind}/${cameraId}`;
  if (!view.placeGiven) {
    const note = "its place is not known: only an axis is given";
    return [{ key: key("camera"), kind: "camera", cameraId, shape: null, figures: { ...figures, note } }];
  }
  const atM = toEarthFixed(view.place);
  const level = levelFieldOf(view.frame);
  return [
    { key: key("camera"), kind: "camera", cameraId, shape: { kind: "point", atM }, figures },
    {
      key: key("sight-line"),
      kind: "sight line",
      cameraId,
      shape: { kind: "line", pathM: [atM, sightEndM(site, view)], isFlat: false },
      figures: { ...looks, ...(camera.track === null ? {} : { tPlusS: 0 }) },
    },
    {
      key: key("field"),
      kind: "field",
      cameraId,
      shape: fieldShape(view, level),
      figures: {
        leftAzimuthDeg: level?.leftDeg ?? null,
        rightAzimuthDeg: level?.rightDeg ?? null,
        levelFieldDeg: level === null ? 360 : fieldWidthDeg(level),
      },
    },
  ];
}

/** Where the line of sight ends, Earth-fixed metres. */
export function sightEndM(site: Site, view: CameraView): Vec3 {
  const { place, axis, camera } = view;
  const towards = fromAzimuthElevation(axis.azimuthDeg, axis.elevationDeg);
  const rangeM = axis.rangeM!;
  const mayFall = camera.aim.kind === "axis" || rangeM > MOST_REACH_M;
  const reachM = Math.min(rangeM, MOST_REACH_M, mayFall ? groundM(site, view) : rangeM);
  return add(toEarthFixed(place), fromHorizon(horizonAxes(place), scale(towards, reachM)));
}

/** Along a falling axis to the level of the pad datum; endless for one that does not come down to it. */
function groundM({ place }: Site, view: CameraView): number {
  const upM = toHorizon(horizonAxes(place), subtract(toEarthFixed(view.place), toEarthFixed(place)))[2];
  const fall = -sinDeg(view.axis.elevationDeg);
  return upM > 0 && fall > 0 ? upM / fall : Number.POSITIVE_INFINITY;
}

/** A sector, or a circle where the frame takes in all azimuths; level at the camera. */
function fieldShape({ place, axis, camera }: CameraView, field: LevelField | null): MapShape {
  const levelM = camera.aim.kind === "axis" ? axis.rangeM! : axis.rangeM! * cosDeg(axis.elevationDeg);
  const reachM = Math.min(MOST_REACH_M, Math.max(LEAST_REACH_M, levelM));
  const axes = horizonAxes(place);
  const atM = toEarthFixed(place);
  const rim = (azimuthDeg: number): Vec3 =>
    add(atM, fromHorizon(axes, scale(fromAzimuthElevation(azimuthDeg, 0), reachM)));
  const widthDeg = field === null ? 360 : fieldWidthDeg(field);
  const steps = Math.max(1, Math.ceil(widthDeg / ARC_STEP_DEG));
  const rightDeg = field?.rightDeg ?? 0;
  // Azimuths run clockwise, so from right to left is counterclockwise.
  const arc = Array.from({ length: field === null ? steps : steps + 1 }, (_, i) =>
    rim(rightDeg - (widthDeg * i) / steps),
  );
  return { kind: "area", cornersM: field === null ? arc : [atM, ...arc] };
}
