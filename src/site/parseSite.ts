/**
 * A site file to a resolved Site, or all that is wrong with it.
 * From the text and the texts of the files it names; reads no file itself.
 */

import { cameraOrigins } from "./cameraOrigins.ts";
import { checkNames } from "./checkNames.ts";
import { TABLE_NAME } from "./fields.ts";
import {
  addUnknownKey,
  entriesOf,
  type Findings,
  newFindings,
  type Origin,
  throwFound,
  valueAt,
} from "./findings.ts";
import type { FileRefusal, FileText } from "./namedFiles.ts";
import { readCameras } from "./readCameras.ts";
import { readHorizon } from "./readHorizon.ts";
import { readMedia } from "./readMedia.ts";
import { readFloodlights, readVehicle } from "./readPadThings.ts";
import { readSiteKeys, siteHead } from "./readSiteKeys.ts";
import { readStructures } from "./readStructures.ts";
import { readCorrections, readSettings, readWindows } from "./readWindows.ts";
import { siteFile } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import type { Site } from "./types.ts";
import { readYaml } from "./yamlSource.ts";

export type { FileRefusal };

/** The texts of the files a site file names: by name, or a function that fetches them (null: there is none). */
export type SiteFiles = Readonly<Record<string, string>> | FileText;

/**
 * Reads a site file. `given` holds the texts of the files it names (see `referencedFiles`).
 * Throws a PadstopError with every problem found, in the order of the lines.
 */
export function parseSite(text: string, given: SiteFiles = {}, fileName = "site.yaml"): Site {
  const files: FileText =
    typeof given === "function"
      ? given
      : (name) => (Object.hasOwn(given, name) ? (given[name] ?? null) : null);
  const source = readYaml(text, fileName);
  const findings = newFindings();
  checkTopKeys(source, findings);
  const cameras = cameraOrigins(source, files, findings);
  checkNames(cameras, "id", findings);
  checkNames(entriesOf(source, "structures", newFindings()), "name", findings);
  checkNames(entriesOf(source, "windows", newFindings()), "name", findings);
  const site = readAll(source, cameras, files, findings);
  throwFound(findings.problems, fileName);
  return site;
}

function readAll(source: Source, origins: readonly Origin[], files: FileText, findings: Findings): Site {
  const read = readSiteKeys(source, findings);
  const windows = readWindows(source, read.keys.zone, findings);
  const full = siteHead(read, windows, source, findings);
  const { bearingOffsetDeg: _, isPlaced: __, ...head } = full;
  const vehicle = readVehicle(source, full, files, findings);
  const around = {
    head: full,
    vehicle,
    hasVehicle: source.has(["vehicle"]),
    hasPlume: source.has(["vehicle", "plume"]),
    media: readMedia(source, findings),
    structures: readStructures(source, full, findings),
  };
  const ids = origins.map(({ source: from, path }) => String(valueAt(from.value, [...path, "id"])).trim());
  return {
    ...head,
    vehicle,
    structures: around.structures.map(({ structure }) => structure),
    horizon: readHorizon(source, full, findings),
    ...readFloodlights(source, findings),
    cameras: readCameras(source, origins, around, findings),
    windows,
    corrections: readCorrections(source, ids, findings),
    settings: readSettings(source, findings),
    tables: findings.tables,
  };
}

/** Keys at the top of the file that are none. */
function checkTopKeys(source: Source, findings: Findings): void {
  const known = Object.keys(siteFile.shape);
  const top = { source, path: [] };
  for (const key of Object.keys(source.value as object)) {
    if (!known.includes(key)) addUnknownKey(top, [], key, known, findings);
  }
}

/**
 * Names of the files a site file refers to, so that a caller can load them before `parseSite`.
 * Never throws: a text that cannot be read refers to nothing, and `parseSite` says why.
 */
export function referencedFiles(text: string): string[] {
  const value = readQuietly(text);
  const paths = [["cameras-from"], ["vehicle", "ascent"], ["vehicle", "ascent", "table"]];
  const names = paths.map((path) => valueAt(value, path));
  return [
    ...new Set(names.filter((name): name is string => typeof name === "string" && TABLE_NAME.test(name))),
  ];
}

function readQuietly(text: string): unknown {
  try {
    return readYaml(text, "").value;
  } catch {
    return null;
  }
}
