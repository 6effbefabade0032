/** Where a camera looks: aim, azimuth and elevation, or the part of the vehicle it tracks; exactly one of them. */

import { wrap360 } from "../base/units.ts";
import { type Findings, isGiven, type Origin } from "./findings.ts";
import {
  DIRECTION_KEYS,
  isGivenAnywhere,
  type Merged,
  originOf,
  ownDirection,
  type Surroundings,
} from "./mergeCamera.ts";
import { placeOf } from "./readPadThings.ts";
import { trackedUpM } from "./trackedPoint.ts";
import type { Aim, Track } from "./types.ts";

const ACCEPTED = "one of aim, azimuth (and elevation) or track";

/** Two directions in one map. */
export function checkDirection(origin: Origin, findings: Findings): void {
  const given = DIRECTION_KEYS.filter((key) => isGiven(origin, key));
  const [first, second] = given;
  if (first !== undefined && second !== undefined) {
    findings.add(origin, [second], "E_CONFLICT", { found: `${first} and ${second}`, accepted: ACCEPTED });
  } else if (first !== undefined && first !== "azimuth" && isGiven(origin, "elevation")) {
    findings.add(origin, ["elevation"], "E_CONFLICT", {
      found: `${first} and elevation`,
      accepted: ACCEPTED,
    });
  }
}

/** The direction of a merged camera; null with a finding when there is none, or what it needs is missing. */
export function directionOf(merged: Merged, around: Surroundings, findings: Findings): Aim | null {
  const { keys, own, defaults } = merged;
  const isWritten = ownDirection(own) || ownDirection(defaults);
  if (!isWritten) {
    findings.add(own, ["aim"], "E_MISSING", {
      accepted: ACCEPTED,
      next: "add azimuth, or at and aim: { up: 30 }",
    });
    return null;
  }
  if (keys.azimuth !== undefined) {
    const azimuthDeg = wrap360(keys.azimuth + around.head.bearingOffsetDeg);
    return { kind: "axis", azimuthDeg, elevationDeg: keys.elevation ?? 0 };
  }
  if (keys.aim === undefined && keys.track === undefined) return null;
  requirePlace(merged, findings);
  if (keys.track !== undefined) return trackAim(keys.track, merged, around, findings);
  if (keys.aim === undefined) return null;
  return keys.aim.kind === "place" ? placeOf(keys.aim, around.head) : { kind: "vehicle", upM: keys.aim.up };
}

function requirePlace(merged: Merged, findings: Findings): void {
  if (isGivenAnywhere(merged, "at")) return;
  const what = merged.keys.track === undefined ? "aim" : "track";
  const accepted = `where the camera stands, as it has ${what}: { bearing, range }, { latitude, longitude }, { utm } or { mgrs }`;
  const next = what === "aim" ? "give at, or azimuth and elevation in place of aim" : null;
  findings.add(merged.own, ["at"], "E_MISSING", { accepted, next });
}

/** At T-0 a tracker looks at its part of the vehicle on the pad. */
function trackAim(track: Track, merged: Merged, around: Surroundings, findings: Findings): Aim | null {
  const { vehicle, hasVehicle } = around;
  const origin = originOf(merged, "track");
  if (!hasVehicle) {
    findings.add(origin, ["track"], "E_CONFLICT", {
      found: "track",
      accepted: "track only when vehicle is given",
    });
  }
  if (vehicle === null) return null;
  if (track.kind === "up" && track.upM > vehicle.heightM) {
    const accepted = `0 to ${vehicle.heightM} m, the vehicle's height`;
    findings.add(origin, ["track", "up"], "E_RANGE", { found: `${track.upM} m`, accepted });
  }
  return { kind: "vehicle", upM: vehicle.baseM + trackedUpM(track, vehicle) };
}
