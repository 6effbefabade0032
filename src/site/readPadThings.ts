/** Vehicle and floodlights of a site file, and the spots that its parts name. */

import { wrap360 } from "../base/units.ts";
import { type Findings, type Read, readField, readKeys } from "./findings.ts";
import type { FileText } from "./namedFiles.ts";
import { readAscent } from "./readAscent.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import { siteFile, vehicleKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import type { WrittenPlace, WrittenSpot } from "./spotSchema.ts";
import type { Plume, Site, Spot, SpotPlace, Vehicle } from "./types.ts";

/** White paint of a body: common practice, no source. */
const DEFAULT_BODY_REFLECTANCE = 0.8;

/** A spot with true bearings; a missing height is the site's. */
export function spotOf(written: WrittenSpot, head: SiteHead): Spot {
  if (written.kind === "place") return placeOf(written, head);
  const bearingDeg = wrap360(written.bearing + head.bearingOffsetDeg);
  return { kind: "bearing", bearingDeg, rangeM: written.range, upM: written.up };
}

export function placeOf(written: WrittenPlace, head: SiteHead): SpotPlace {
  const heightM = written.height ?? head.place.heightM;
  const place = { latitudeDeg: written.latitude, longitudeDeg: written.longitude, heightM };
  const { squareM } = written;
  return squareM === null ? { kind: "place", place } : { kind: "place", place, squareM };
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
  const ascent = read.ascent === undefined ? null : readAscent(read.ascent, head, files, origin, findings);
  if (read.height === undefined || read.diameter === undefined) return null;
  return {
    name: read.name ?? null,
    heightM: read.height,
    diameterM: read.diameter,
    baseM: read.base ?? 0,
    reflectance: read.reflectance ?? DEFAULT_BODY_REFLECTANCE,
    plume: plumeOf(read),
    ascent,
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

/** Illuminances of the floodlights on the body and on the deck, lx. */
export function readFloodlights(
  source: Source,
  findings: Findings,
): Pick<Site, "floodlightLx" | "floodlightDeckLx"> {
  const read = readField(siteFile.shape.floodlights, { source, path: ["floodlights"] }, findings);
  return { floodlightLx: read?.illuminance ?? null, floodlightDeckLx: read?.deck ?? null };
}
