/** Where a camera stands, where it looks, and what of the vehicle it sees. */

import type { Air, Place } from "../base/place.ts";
import { standardAir } from "../base/standardAir.ts";
import { wrap360 } from "../base/units.ts";
import { subtract, type Vec3 } from "../base/vector.ts";
import type { Stretch } from "../light/shadedBody.ts";
import type { Camera, Site, Spot, Track, Vehicle } from "../site/types.ts";
import { type Frame, fieldDeg, makeFrame, type Orientation, onGateMm } from "../view/frame.ts";
import { type Line, stretchInGate } from "../view/lineInGate.ts";
import { carryTo, lookAt, placeAtEnu, placeFrom } from "../view/sightLine.ts";
import { axisThrough, type SweptGate } from "../view/sweepFrames.ts";
import { type PlumeGain, type PlumeReach, plumeGainOf, plumeReachOf } from "./plumeReach.ts";

export interface CameraView {
  readonly camera: Camera;
  /** Where the camera stands; the site's place when the file gives only an axis. */
  readonly place: Place;
  readonly placeGiven: boolean;
  readonly air: Air;
  readonly axis: {
    readonly azimuthDeg: number;
    readonly elevationDeg: number;
    readonly rangeM: number | null;
  };
  readonly frame: Frame;
  readonly fieldDeg: { readonly horizontal: number; readonly vertical: number };
  /** From the body outward to the camera. */
  readonly observerAzimuthDeg: number;
  /** The vehicle's axis seen from here. */
  readonly vehicleAxis: Line;
  /** The body in the gate; null without a vehicle or a place. */
  readonly body: BodyInGate | null;
  /** The stretch of the body that its light is told for: what the gate sees, else all of it; metres above the pad datum. */
  readonly told: Stretch;
  /** The plume's light on what is kept; null for a camera that does not keep the plume, and where its size is not known. */
  readonly plumeReach: PlumeReach | null;
  /** The same as luminance. */
  readonly plumeGain: PlumeGain | null;
}

/** The stretch of the body's axis that falls inside the gate, metres above the pad datum; null when none does. */
export interface BodyInGate {
  readonly visible: { readonly fromM: number; readonly toM: number } | null;
}

export const placeOf = (site: Site, spot: Spot): Place =>
  spot.kind === "place" ? spot.place : placeFrom(site.place, spot.bearingDeg, spot.rangeM, spot.upM);

export function makeCameraView(site: Site, camera: Camera): CameraView {
  const place = camera.at === null ? site.place : placeOf(site, camera.at);
  const axis = axisOf(site, camera, place);
  const frame = makeFrame({
    azimuthDeg: axis.azimuthDeg,
    elevationDeg: axis.elevationDeg,
    rollDeg: camera.rollDeg,
    focalMm: camera.lens.focalMm,
    gateWidthMm: camera.gate.widthMm,
    gateHeightMm: camera.gate.heightMm,
  });
  const placeGiven = camera.at !== null;
  const toAxis = vehicleAxis(site, place);
  const body = placeGiven && site.vehicle ? bodyInGate(site.vehicle, toAxis, frame) : null;
  const told = toldStretch(site.vehicle, body);
  const { vehicle } = site;
  const plumeReach = vehicle !== null && camera.keep.includes("plume") ? plumeReachOf(vehicle, told) : null;
  return {
    camera,
    place,
    placeGiven,
    air: site.air ?? standardAir(place.heightM),
    axis,
    frame,
    fieldDeg: {
      horizontal: fieldDeg(camera.gate.widthMm, camera.lens.focalMm),
      vertical: fieldDeg(camera.gate.heightMm, camera.lens.focalMm),
    },
    observerAzimuthDeg: placeGiven ? lookAt(site.place, place).azimuthDeg : wrap360(axis.azimuthDeg + 180),
    vehicleAxis: toAxis,
    body,
    told,
    plumeReach,
    plumeGain: plumeReach && plumeGainOf(plumeReach, vehicle!.reflectance, site.groundReflectance),
  };
}

function axisOf(site: Site, camera: Camera, place: Place): CameraView["axis"] {
  const { aim } = camera;
  if (aim.kind === "vehicle") {
    const straight = lookAt(place, placeAtEnu(site.place, [0, 0, aim.upM]));
    if (camera.track === null || camera.track.offsetShare === 0) return straight;
    const pointM = carryTo(site.place, place)([0, 0, aim.upM]);
    return { ...straight, ...axisThrough(sweptGate(camera, camera.track), pointM) };
  }
  if (aim.kind === "place") return lookAt(place, aim.place);
  const middleM = site.vehicle ? site.vehicle.baseM + site.vehicle.heightM / 2 : 0;
  const rangeM = camera.at === null ? null : lookAt(place, placeAtEnu(site.place, [0, 0, middleM])).rangeM;
  return { azimuthDeg: aim.azimuthDeg, elevationDeg: aim.elevationDeg, rangeM };
}

/** The gate of a tracker, and where in it the followed point stands. */
export const sweptGate = ({ rollDeg, lens, gate }: Camera, track: Track): SweptGate => ({
  rollDeg,
  focalMm: lens.focalMm,
  gateWidthMm: gate.widthMm,
  gateHeightMm: gate.heightMm,
  offsetShare: track.offsetShare,
});

/** The vehicle's axis as seen from a camera: metres above the pad datum along it. */
function vehicleAxis(site: Site, place: Place): Line {
  const carry = carryTo(site.place, place);
  const foot = carry([0, 0, 0]);
  return { foot, step: subtract(carry([0, 0, 1]), foot) };
}

function bodyInGate(vehicle: Vehicle, axis: Line, frame: Frame): BodyInGate {
  const stretch = stretchInGate(frame, axis, vehicle.baseM, vehicle.baseM + vehicle.heightM);
  return { visible: stretch && { fromM: stretch.from, toM: stretch.to } };
}

/** Less than this of a body is no stretch to take an average over, metres. */
const LEAST_STRETCH_M = 1e-6;

function toldStretch(vehicle: Vehicle | null, body: BodyInGate | null): Stretch {
  const visible = body?.visible ?? null;
  if (visible !== null && visible.toM - visible.fromM > LEAST_STRETCH_M) return visible;
  return vehicle === null
    ? { fromM: 0, toM: 1 }
    : { fromM: vehicle.baseM, toM: vehicle.baseM + vehicle.heightM };
}

/** Whether a direction (of any length) falls on the gate. */
export function isInGate(frame: Orientation, direction: Vec3): boolean {
  const point = onGateMm(frame, direction);
  if (point === null) return false;
  const { gateWidthMm, gateHeightMm } = frame.view;
  return Math.abs(point.xMm) <= gateWidthMm / 2 && Math.abs(point.yMm) <= gateHeightMm / 2;
}
