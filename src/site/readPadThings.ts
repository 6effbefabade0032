/** Vehicle and floodlights of a site file, and the spots and files that its parts name. */

import type { ProblemCode } from "../base/problem.ts";
import { wrap360 } from "../base/units.ts";
import { type Findings, type Origin, type Read, readField, readKeys } from "./findings.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import { siteFile, vehicleKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import type { WrittenPlace, WrittenSpot } from "./spotSchema.ts";
import type { Ascent, Plume, Site, Spot, Vehicle } from "./types.ts";

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

/** Illuminances of the floodlights on the body and on the deck, lx. */
export function readFloodlights(
  source: Source,
  findings: Findings,
): Pick<Site, "floodlightLx" | "floodlightDeckLx"> {
  const read = readField(siteFile.shape.floodlights, { source, path: ["floodlights"] }, findings);
  return { floodlightLx: read?.illuminance ?? null, floodlightDeckLx: read?.deck ?? null };
}
