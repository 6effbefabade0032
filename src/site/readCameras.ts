/** Cameras of a site file and of its camera table: defaults merged in, references resolved, cross-checks made. */

import { wrap180 } from "../base/units.ts";
import { checkDirection, directionOf } from "./cameraDirection.ts";
import { cameraDefaultsSchema, cameraSchema } from "./cameraSchema.ts";
import { type Findings, isMap, type Origin, readKeys, valueAt } from "./findings.ts";
import {
  type CameraKeys,
  isGivenAnywhere,
  type Merged,
  mergeCamera,
  originOf,
  type Surroundings,
} from "./mergeCamera.ts";
import { nearest } from "./nearest.ts";
import { FARTHEST_CAMERA_M, isAtPad, padDistanceM } from "./padDistance.ts";
import { spotOf } from "./readPadThings.ts";
import { checkOutside } from "./readStructures.ts";
import type { Source } from "./source.ts";
import type { Aim, Camera, Lens, Medium, Spot } from "./types.ts";

export function readCameras(
  source: Source,
  origins: readonly Origin[],
  around: Surroundings,
  findings: Findings,
): Camera[] {
  const defaults = { source, path: ["defaults"] };
  const defaultKeys: CameraKeys = source.has(["defaults"])
    ? readKeys(cameraDefaultsSchema, defaults, findings)
    : {};
  checkDirection(defaults, findings);
  const cameras: Camera[] = [];
  for (const own of origins) {
    const read = readKeys(cameraSchema, own, findings);
    if (!isMap(valueAt(own.source.value, own.path))) continue;
    checkDirection(own, findings);
    const merged = mergeCamera(read, own, defaultKeys, defaults);
    const camera = resolve(read.id, merged, around, findings);
    if (camera) cameras.push(camera);
  }
  return cameras;
}

function resolve(
  id: string | undefined,
  merged: Merged,
  around: Surroundings,
  findings: Findings,
): Camera | null {
  const { keys } = merged;
  const aim = directionOf(merged, around, findings);
  const medium = mediumOf(merged, around, findings);
  const lens = lensOf(merged, findings);
  requireKey(merged, "gate", 'a gate such as "35mm 4-perf", or { width, height }', findings);
  checkShutter(merged, findings);
  checkKeep(merged, around, findings);
  const at = keys.at === undefined ? null : spotOf(keys.at, around.head);
  if (at) checkSpot(at, merged, around, findings);
  if (at && aim) checkAim(at, aim, merged, findings);
  if (id === undefined || aim === null || lens === null || keys.gate === undefined) return null;
  return {
    id,
    at,
    aim,
    rollDeg: wrap180(keys.roll ?? 0),
    lens,
    gate: keys.gate,
    rateHz: keys.rate ?? null,
    shutters: keys.shutter ?? [],
    filterDensities: ascending(keys.filters ?? [0]),
    lossStops: keys.loss ?? 0,
    medium,
    keep: [...new Set(keys.keep ?? (["body"] as const))],
    weight: keys.weight ?? 1,
    track: keys.track ?? null,
    notes: keys.notes ?? null,
  };
}

/** A camera stands outside the vehicle and the structures, within reach of the pad. */
function checkSpot(at: Spot, merged: Merged, around: Surroundings, findings: Findings): void {
  const { head, vehicle, structures } = around;
  if (at.kind === "place" && !head.isPlaced) return;
  const distanceM = padDistanceM(at, head.place);
  if (distanceM > FARTHEST_CAMERA_M) {
    findings.add(originOf(merged, "at"), ["at"], "E_RANGE", {
      found: `${Math.round(distanceM / 1000)} km from the pad`,
      accepted: `up to ${FARTHEST_CAMERA_M / 1000} km`,
      next: "check the sign and order of latitude and longitude",
    });
  }
  if (isAtPad(at, head.place, vehicle)) {
    findings.add(originOf(merged, "at"), ["at"], "E_AT_PAD", {
      found: "a camera on the pad's axis",
      accepted: "a camera outside the vehicle and at least 1 m from the pad's axis",
    });
  }
  checkOutside(at, head.place, structures, originOf(merged, "at"), findings);
}

/** A camera cannot look at the place where it stands. */
function checkAim(at: Spot, aim: Aim, merged: Merged, findings: Findings): void {
  if (at.kind !== "place" || aim.kind !== "place") return;
  const { latitudeDeg, longitudeDeg, heightM } = aim.place;
  const own = at.place;
  if (latitudeDeg !== own.latitudeDeg || longitudeDeg !== own.longitudeDeg || heightM !== own.heightM) return;
  findings.add(originOf(merged, "aim"), ["aim"], "E_AT_PAD", {
    found: "the camera's own place",
    accepted: "another place",
  });
}

const ascending = (values: readonly number[]): number[] => [...new Set(values)].sort((a, b) => a - b);

/** A finding when a key is written nowhere; a wrong one has its finding already. */
function requireKey(merged: Merged, key: "gate", accepted: string, findings: Findings): void {
  if (isGivenAnywhere(merged, key)) return;
  findings.add(merged.own, [key], "E_MISSING", { accepted });
}

function lensOf(merged: Merged, findings: Findings): Lens | null {
  const { lens } = merged.keys;
  if (lens?.focal === undefined) {
    if (merged.lensIsWrong) return null;
    findings.add(merged.own, ["lens", "focal"], "E_MISSING", { accepted: "a focal length, 1 to 20000 mm" });
    return null;
  }
  const hood = lens.hood ? { lengthMm: lens.hood.length, diameterMm: lens.hood.diameter } : null;
  return { focalMm: lens.focal, stops: ascending(lens.stops ?? []), lossStops: lens.loss ?? 0, hood };
}

function mediumOf(merged: Merged, { media }: Surroundings, findings: Findings): Medium | null {
  const name = merged.keys.medium;
  if (name === undefined) return null;
  const medium = media.get(name);
  if (medium !== undefined) return medium;
  const names = [...media.keys()];
  findings.add(originOf(merged, "medium"), ["medium"], "E_NAME", {
    found: name,
    accepted: names.length > 0 ? `a name under media: ${names.join(", ")}` : "a name under media",
    suggestion: nearest(name, names),
    next: `add it: media: { ${name}: { speed: 200, kind: negative } }`,
  });
  return null;
}

/** An angle needs a frame rate; a time must fit into a frame. */
function checkShutter(merged: Merged, findings: Findings): void {
  const { shutter, rate } = merged.keys;
  const origin = originOf(merged, "shutter");
  if (shutter?.some(({ kind }) => kind === "angle") && !isGivenAnywhere(merged, "rate")) {
    const next = "give rate, or a shutter time";
    findings.add(merged.own, ["rate"], "E_MISSING", {
      accepted: "a frame rate, as the shutter is an angle",
      next,
    });
  }
  if (shutter === undefined || rate === undefined) return;
  // Marked times are rounded: 1/60 at 59.94 frames/s is meant to fit.
  const longest = shutter.find((s) => s.kind === "time" && s.markedS * rate > 1.01);
  if (longest?.kind !== "time") return;
  const found = `${Number(longest.markedS.toPrecision(4))} s at ${rate} frames/s`;
  const accepted = `a time up to 1/${Number(rate.toPrecision(6))} s`;
  findings.add(origin, ["shutter"], "E_CONFLICT", { found, accepted });
}

/** Kept things must exist: the plume in the vehicle, the body where the key is written out. */
function checkKeep(merged: Merged, { hasVehicle, hasPlume }: Surroundings, findings: Findings): void {
  const keep = merged.keys.keep ?? [];
  const origin = originOf(merged, "keep");
  if (keep.includes("plume") && !hasPlume) {
    const next = "add vehicle: { plume: { propellant: kerolox } }";
    findings.add(origin, ["keep"], "E_CONFLICT", {
      found: "plume",
      accepted: "plume only when vehicle.plume is given",
      next,
    });
  } else if (keep.includes("body") && !hasVehicle) {
    findings.add(origin, ["keep"], "E_CONFLICT", {
      found: "body",
      accepted: "body only when vehicle is given",
    });
  }
}
