/**
 * What a camera's gate sees that no T-0 changes, in mm on the gate (x right, y up): ground, structures, vehicle and plume at
 * scale, the border of the flare margin. The picture reaches a little beyond the gate. A camera known only by its axis sees
 * sky and ground alone.
 */

import { fromHorizon, horizonAxes, toEarthFixed, toHorizon } from "../../base/earthFixed.ts";
import { fromAzimuthElevation, subtract, type Vec3 } from "../../base/vector.ts";
import type { Vehicle } from "../../site/types.ts";
import { isSkylineOf } from "../../view/hiders.ts";
import { silhouetteOf } from "../../view/hull.ts";
import { type Point2, type Prism, roundPrism, VEHICLE_NAME } from "../../view/prism.ts";
import type { SiteAscent } from "../../view/siteAscent.ts";
import type { Skyline } from "../../view/skyline.ts";
import type { LiveCamera, LiveWindow } from "../live/liveWindow.ts";
import { flareBorder, reachOf } from "./flareBorder.ts";
import { belowLevel, onPicture, type Reach } from "./gatePolygons.ts";
import { type SkyCell, skyCells } from "./skyCells.ts";

interface SeenStructure {
  readonly name: string;
  readonly solidity: number;
  readonly outline: readonly Point2[];
  /** Stands before the vehicle. */
  readonly isNearer: boolean;
}

export interface FrameLayout {
  readonly gate: { readonly widthMm: number; readonly heightMm: number };
  readonly reach: Reach;
  /** Quarter turns to the left that bring the world's up to the top. */
  readonly quarters: number;
  readonly sky: readonly SkyCell[];
  /** Below the level of the camera; empty where the picture is all sky. */
  readonly ground: readonly Point2[];
  /** Land above the level, piece by piece; none for a camera that the pad's skyline is not known for. */
  readonly land: readonly (readonly Point2[])[];
  readonly structures: readonly SeenStructure[];
  /** Empty where it does not show. */
  readonly vehicle: readonly Point2[];
  /** From the foot down to the deck, at T+0. */
  readonly plume: readonly Point2[];
  /** When the whole plume has come out; null without an ascent or plume, and for a tracker. */
  readonly risen: Risen | null;
  /** Where a sun begins to make flare. */
  readonly flare: readonly Point2[];
}

interface Risen {
  readonly tPlusS: number;
  readonly vehicle: readonly Point2[];
  readonly plume: readonly Point2[];
}

export function frameLayoutOf({ scene }: LiveWindow, { view, rule, sweep }: LiveCamera): FrameLayout {
  const { site, obstacles, ascent } = scene;
  const { frame, camera } = view;
  const reach = reachOf(frame, rule);
  const outline = outlineMaker(site.place, view, reach);
  const { vehicle } = site;
  const seen = view.placeGiven ? obstacles.hiding.filter(({ name }) => name !== VEHICLE_NAME) : [];
  const awayM = (prism: Prism): number =>
    Math.hypot(prism.middle[0] - outline.fromM[0], prism.middle[1] - outline.fromM[1]);
  const vehicleAwayM = Math.hypot(outline.fromM[0], outline.fromM[1]);
  const stands = vehicle !== null && view.placeGiven;
  return {
    gate: { widthMm: camera.gate.widthMm, heightMm: camera.gate.heightMm },
    reach,
    quarters: quartersOf(frame.right[2], frame.up[2]),
    sky: skyCells(frame, reach),
    ground: belowLevel(frame, reach),
    land:
      obstacles.skyline === null || !view.placeGiven || !isSkylineOf(outline.fromM)
        ? []
        : landOf(obstacles.skyline, view, reach),
    structures: [...seen]
      .sort((a, b) => awayM(b) - awayM(a))
      .map((prism) => ({
        name: prism.name,
        solidity: prism.solidity,
        outline: outline.of(prism),
        isNearer: awayM(prism) < vehicleAwayM,
      }))
      .filter((one) => one.outline.length > 0),
    vehicle: stands ? outline.of(bodyPrism(vehicle, [0, 0, 0])) : [],
    plume: stands ? outline.of(plumePrism(vehicle, [0, 0, 0])) : [],
    risen: stands && sweep === null && ascent !== null ? risenOf(vehicle, ascent, outline.of) : null,
    flare: flareBorder(frame, rule, reach),
  };
}

/** By where the zenith lies on the picture; straight up and down there is no telling. */
function quartersOf(right: number, up: number): number {
  if (Math.hypot(right, up) < 1e-6) return 0;
  return (Math.round((2 * Math.atan2(right, up)) / Math.PI) + 4) % 4;
}

interface OutlineMaker {
  /** The camera in the pad's frame, metres. */
  readonly fromM: Vec3;
  readonly of: (prism: Prism | null) => Point2[];
}

function outlineMaker(
  pad: LiveWindow["scene"]["site"]["place"],
  view: LiveCamera["view"],
  reach: Reach,
): OutlineMaker {
  const padAxes = horizonAxes(pad);
  const axes = horizonAxes(view.place);
  const fromM = toHorizon(padAxes, subtract(toEarthFixed(view.place), toEarthFixed(pad)));
  const turned = (enu: Vec3): Vec3 => toHorizon(axes, fromHorizon(padAxes, enu));
  return {
    fromM,
    of: (prism) => {
      const silhouette = prism && silhouetteOf(prism, fromM, turned);
      if (silhouette === null) return [];
      return onPicture(
        view.frame,
        silhouette.sides.map(({ from }) => from),
        reach,
      );
    },
  };
}

/** The body after it has moved by so many metres east, north and up, still upright. */
function bodyPrism({ baseM, heightM, diameterM }: Vehicle, [east, north, up]: Vec3): Prism {
  const footM = baseM + up;
  return roundPrism(
    { name: VEHICLE_NAME, solidity: 1, footM, topM: footM + heightM },
    [east, north],
    diameterM / 2,
  );
}

/** As much of the plume as stands above the deck; null when none does, and without its size. */
function plumePrism({ baseM, plume }: Vehicle, [east, north, up]: Vec3): Prism | null {
  if (plume === null || plume.lengthM === null || plume.widthM === null) return null;
  const topM = baseM + up;
  const footM = Math.max(0, topM - plume.lengthM);
  if (topM <= footM) return null;
  return roundPrism({ name: "plume", solidity: 1, footM, topM }, [east, north], plume.widthM / 2);
}

/** T+ is looked for in steps so short, up to so late, s. */
const STEP_S = 0.1;
const LATEST_S = 30;

function risenOf(vehicle: Vehicle, { path }: SiteAscent, outline: OutlineMaker["of"]): Risen | null {
  const lengthM = vehicle.plume?.lengthM ?? null;
  if (lengthM === null || plumePrism(vehicle, [0, 0, lengthM]) === null) return null;
  const moved: [number, number, number] = [0, 0, 0];
  for (let tPlusS = 0; tPlusS <= Math.min(LATEST_S, path.toS); tPlusS += STEP_S) {
    path.positionInto(tPlusS, moved);
    if (vehicle.baseM + moved[2] < lengthM) continue;
    const risen = {
      tPlusS,
      vehicle: outline(bodyPrism(vehicle, moved)),
      plume: outline(plumePrism(vehicle, moved)),
    };
    return risen.vehicle.length + risen.plume.length > 0 ? risen : null;
  }
  return null;
}

/** Azimuths from one piece of land to the next, degrees. */
const PIECE_DEG = 1;

function landOf(skyline: Skyline, { frame, axis }: LiveCamera["view"], reach: Reach): Point2[][] {
  const pieces = 180 / PIECE_DEG;
  return Array.from({ length: pieces }, (_, i) => {
    const fromDeg = axis.azimuthDeg - 90 + i * PIECE_DEG;
    const toDeg = fromDeg + PIECE_DEG;
    const [left, right] = [skyline.elevationDeg(fromDeg), skyline.elevationDeg(toDeg)];
    if (left === 0 && right === 0) return [];
    const corners = [
      fromAzimuthElevation(fromDeg, 0),
      fromAzimuthElevation(toDeg, 0),
      fromAzimuthElevation(toDeg, right),
      fromAzimuthElevation(fromDeg, left),
    ];
    return onPicture(frame, corners, reach);
  }).filter((piece) => piece.length > 0);
}
