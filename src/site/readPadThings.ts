/** Vehicle, structures, horizon and floodlight of a site file. */

import type { ProblemCode } from "../base/problem.ts";
import { wrap360 } from "../base/units.ts";
import {
  entriesOf,
  type Findings,
  isGiven,
  type Origin,
  type Read,
  readField,
  readKeys,
} from "./findings.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import { siteFile, structureKeys, vehicleKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import type { WrittenPlace, WrittenSpot } from "./spotSchema.ts";
import type { Ascent, HorizonPoint, Plume, Spot, Structure, Vehicle } from "./types.ts";

/** Why a file that the site file names is not read. */
export interface FileRefusal {
  readonly code: ProblemCode;
  readonly found: string;
  readonly accepted: string;
  readonly next: string | null;
}

/** The text of a file the site file names, by the name it uses; null when there is none. */
export type FileText = (name: string) => string | FileRefusal | null;

/** White paint of a body: common practice, no source. */
const DEFAULT_BODY_REFLECTANCE = 0.8;

/** A spot with true bearings; a missing height is the site's. */
export function spotOf(written: WrittenSpot, head: SiteHead): Spot {
  if (written.kind === "place") return placeOf(written, head);
  const bearingDeg = wrap360(written.bearing + head.bearingOffsetDeg);
  return { kind: "bearing", bearingDeg, rangeM: written.range, upM: written.up };
}

export function placeOf(written: WrittenPlace, head: SiteHead): Extract<Spot, { kind: "place" }> {
  const heightM = written.height ?? head.place.heightM;
  return {
    kind: "place",
    place: { latitudeDeg: written.latitude, longitudeDeg: written.longitude, heightM },
  };
}

export function readVehicle(
  source: Source,
  head: SiteHead,
  files: FileText,
  findings: Findings,
): Vehicle | null {
  if (!source.has(["vehicle"])) return null;
  const origin = { source, path: ["vehicle"] };
  const read = readKeys(vehicleKeys, origin, findings);
  if (read.height === undefined || read.diameter === undefined) return null;
  return {
    name: read.name ?? null,
    heightM: read.height,
    diameterM: read.diameter,
    baseM: read.base ?? 0,
    reflectance: read.reflectance ?? DEFAULT_BODY_REFLECTANCE,
    plume: plumeOf(read),
    ascent: ascentOf(read, head, files, origin, findings),
  };
}

type VehicleRead = Read<typeof vehicleKeys.shape>;

function plumeOf({ plume }: VehicleRead): Plume | null {
  if (plume === undefined) return null;
  return {
    propellant: plume.propellant ?? null,
    luminanceCdM2: plume.luminance ?? null,
    lengthM: plume.length ?? null,
    widthM: plume.width ?? null,
  };
}

function ascentOf(
  read: VehicleRead,
  head: SiteHead,
  files: FileText,
  origin: Origin,
  findings: Findings,
): Ascent | null {
  const { ascent } = read;
  if (ascent === undefined) return null;
  if (ascent.kind === "file") {
    requireFile(ascent.fileName, files, origin, "ascent", findings);
    return ascent;
  }
  const headingDeg = ascent.heading === null ? null : wrap360(ascent.heading + head.bearingOffsetDeg);
  return { kind: "parameters", headingDeg, thrustToWeight: ascent.thrustToWeight };
}

/** The text of a file the site names; a finding when it was not handed over. */
export function requireFile(
  name: string,
  files: FileText,
  origin: Origin,
  key: string,
  findings: Findings,
): string | null {
  const content = files(name);
  if (typeof content === "string") return content;
  if (content !== null) {
    const { code, ...parts } = content;
    findings.add(origin, [key], code, parts);
    return null;
  }
  const next = "put it beside the site file, or correct the name";
  findings.add(origin, [key], "E_FILE", {
    found: `${name}, which is not there`,
    accepted: "a file that exists",
    next,
  });
  return null;
}

export function readStructures(source: Source, head: SiteHead, findings: Findings): Structure[] {
  const structures: Structure[] = [];
  for (const origin of entriesOf(source, "structures", findings)) {
    const read = readKeys(structureKeys, origin, findings);
    const shape =
      read.shape ?? (isGiven(origin, "diameter") && !isGiven(origin, "width") ? "cylinder" : "box");
    checkShapeKeys(shape, origin, findings);
    if (read.name === undefined || read.at === undefined || read.height === undefined) continue;
    structures.push({
      name: read.name,
      shape,
      at: spotOf(read.at, head),
      widthM: read.width ?? null,
      depthM: read.depth ?? null,
      turnDeg: wrap360((read.turn ?? 0) + (read.turn === undefined ? 0 : head.bearingOffsetDeg)),
      diameterM: read.diameter ?? null,
      baseM: read.base ?? 0,
      heightM: read.height,
      solidity: read.solidity ?? 1,
    });
  }
  return structures;
}

/** A box has width and depth, a cylinder a diameter; neither has the other's. */
function checkShapeKeys(shape: "box" | "cylinder", origin: Origin, findings: Findings): void {
  const needed = shape === "box" ? ["width", "depth"] : ["diameter"];
  const alien = shape === "box" ? ["diameter"] : ["width", "depth", "turn"];
  for (const key of needed) {
    if (!isGiven(origin, key))
      findings.add(origin, [key], "E_MISSING", { accepted: `a ${shape} has ${needed.join(" and ")}` });
  }
  for (const key of alien) {
    if (!isGiven(origin, key)) continue;
    findings.add(origin, [key], "E_CONFLICT", {
      found: `${key} of a ${shape}`,
      accepted: `a ${shape} has ${needed.join(" and ")}`,
    });
  }
}

/** The skyline, in the order of its true azimuths. */
export function readHorizon(source: Source, head: SiteHead, findings: Findings): HorizonPoint[] {
  const points = readField(siteFile.shape.horizon, { source, path: ["horizon"] }, findings) ?? [];
  return points
    .map(([azimuth, elevationDeg]) => ({
      azimuthDeg: wrap360(azimuth + head.bearingOffsetDeg),
      elevationDeg,
    }))
    .sort((a, b) => a.azimuthDeg - b.azimuthDeg);
}

export function readFloodlightLx(source: Source, findings: Findings): number | null {
  return (
    readField(siteFile.shape.floodlights, { source, path: ["floodlights"] }, findings)?.illuminance ?? null
  );
}
