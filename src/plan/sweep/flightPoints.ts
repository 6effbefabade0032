/** A vehicle in flight as one tracker has it: where it is at some T+, how it lies, how far the look goes. The same for every T-0. */

import {
  fromEarthFixed,
  fromHorizon,
  type HorizonAxes,
  horizonAxes,
  toEarthFixed,
  toHorizon,
} from "../../base/earthFixed.ts";
import type { Place } from "../../base/place.ts";
import { clamp, MS_PER_SECOND } from "../../base/units.ts";
import {
  add,
  angleBetweenDeg,
  norm,
  scale,
  subtract,
  toAzimuthElevation,
  unit,
  type Vec3,
} from "../../base/vector.ts";
import { type AirBetween, airBetween, type SightAir, sightAir } from "../../sky/airBetween.ts";
import type { Sky } from "../../sky/daylight.ts";
import { bodyAxisInto, type Triple } from "../../view/ascentPath.ts";
import { carryTo } from "../../view/sightLine.ts";
import { TURN_LENGTH } from "../../view/sweepFrames.ts";
import { isInGate } from "../cameraView.ts";
import type { SweepRoom, Tracker } from "./tracker.ts";

export interface FlightPoint {
  readonly tPlusS: number;
  /** Horizon below the followed point, and its height above the ellipsoid. */
  readonly axes: HorizonAxes;
  readonly heightM: number;
  /** Foot to nose, and from the vehicle to the camera: unit vectors in that horizon. */
  readonly bodyAxis: Vec3;
  readonly toCamera: Vec3;
  /** Of the tracker's axis (the followed point may stand off it), in the camera's horizon. */
  readonly axis: Vec3;
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** To the followed point. */
  readonly rangeM: number;
  /** Angle between foot and nose as seen from the camera. */
  readonly vehicleDeg: number;
  /** In the order of the skies. */
  readonly between: readonly AirBetween[];
  /** Of the floodlights on the body, 1 on the pad, 0 from one body's height up. */
  readonly floodShare: number;
  /** The pad is in the picture. */
  readonly seesPad: boolean;
}

/** A function that gives the flight at any T+ for one tracker. */
export function flightPointMaker(
  room: SweepRoom,
  tracker: Tracker,
  skies: readonly Sky[],
  groundPressureHPa: number,
): (tPlusS: number) => FlightPoint {
  const { site } = room;
  const vehicle = site.vehicle!;
  const { frames, view } = tracker;
  const bodyAt = bodyReader(room, view.place);
  const carry = carryTo(site.place, view.place);
  const toPad = carry([0, 0, vehicle.baseM]);
  const airs = skies.map((sky): SightAir => sightAir(sky, site.place.heightM, groundPressureHPa));
  const turn = new Float64Array(TURN_LENGTH);
  const pointM: Triple = [0, 0, 0];
  return (tPlusS) => {
    const body = bodyAt(tPlusS);
    frames.pointInto(tPlusS * MS_PER_SECOND, pointM);
    frames.turnInto(tPlusS * MS_PER_SECOND, turn);
    const looks = orientationOf(turn);
    const rangeM = norm(pointM);
    const { elevationDeg } = toAzimuthElevation(pointM);
    return {
      tPlusS,
      axes: body.axes,
      heightM: body.heightM,
      bodyAxis: body.bodyAxis,
      toCamera: body.toCamera,
      axis: looks.axis,
      ...toAzimuthElevation(looks.axis),
      rangeM,
      vehicleDeg: angleBetweenDeg(carry(body.footM), carry(body.noseM)),
      between: airs.map((air) =>
        airBetween({ cameraHeightM: view.place.heightM, elevationDeg, rangeM }, air),
      ),
      floodShare: clamp(1 - body.climbM / vehicle.heightM, 0, 1),
      seesPad: isInGate({ view: view.frame.view, ...looks }, toPad),
    };
  };
}

const orientationOf = (turn: Float64Array): { right: Vec3; axis: Vec3; up: Vec3 } => ({
  right: [turn[0]!, turn[1]!, turn[2]!],
  axis: [turn[3]!, turn[4]!, turn[5]!],
  up: [turn[6]!, turn[7]!, turn[8]!],
});

interface BodyAt extends Pick<FlightPoint, "axes" | "heightM" | "bodyAxis" | "toCamera"> {
  /** In the pad's frame. */
  readonly footM: Vec3;
  readonly noseM: Vec3;
  readonly climbM: number;
}

/** The body at any T+, its middle standing for where it is. */
function bodyReader({ site, ascent }: SweepRoom, cameraPlace: Place): (tPlusS: number) => BodyAt {
  const { baseM, heightM } = site.vehicle!;
  const padAxes = horizonAxes(site.place);
  const padFixed = toEarthFixed(site.place);
  const cameraFixed = toEarthFixed(cameraPlace);
  const way: Triple = [0, 0, 0];
  const lies: Triple = [0, 0, 1];
  return (tPlusS) => {
    ascent.path.positionInto(tPlusS, way);
    bodyAxisInto(ascent.path, tPlusS, lies);
    const footM: Vec3 = [way[0], way[1], way[2] + baseM];
    const middleFixed = add(padFixed, fromHorizon(padAxes, add(footM, scale(lies, heightM / 2))));
    const place = fromEarthFixed(middleFixed);
    const axes = horizonAxes(place);
    return {
      axes,
      heightM: place.heightM,
      bodyAxis: toHorizon(axes, fromHorizon(padAxes, lies)),
      toCamera: unit(toHorizon(axes, subtract(cameraFixed, middleFixed))),
      footM,
      noseM: add(footM, scale(lies, heightM)),
      climbM: way[2],
    };
  };
}
