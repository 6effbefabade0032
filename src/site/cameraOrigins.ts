/** Where the cameras of a site are written: in the file's list, and in the rows of its camera table. */

import { PadstopError } from "../base/problem.ts";
import { readCameraTable } from "./csvSource.ts";
import { entriesOf, type Findings, type Origin, readField, valueAt } from "./findings.ts";
import { type FileText, pathBeside, requireFile } from "./namedFiles.ts";
import { siteFile } from "./siteSchema.ts";
import type { Source } from "./source.ts";

const NO_CAMERA = {
  found: "no camera",
  accepted: "at least one camera, or cameras-from",
  next: "the least that works: - { id: A1, azimuth: 214, lens: { focal: 50 }, gate: full-frame }",
} as const;

/** Where the cameras are written: the list, then the rows of the table. */
export function cameraOrigins(source: Source, files: FileText, findings: Findings): Origin[] {
  const top = { source, path: [] };
  const listed = entriesOf(source, "cameras", findings);
  if (!source.has(["cameras-from"])) {
    if (isWithoutCamera(source)) findings.add(top, ["cameras"], "E_EMPTY", NO_CAMERA);
    return listed;
  }
  const name = readField(siteFile.shape["cameras-from"], { source, path: ["cameras-from"] }, findings);
  const file = name === undefined ? null : requireFile(name, files, top, ["cameras-from"], findings);
  if (name === undefined || file === null) return listed;
  try {
    const { sources, reading } = readCameraTable(file.text, pathBeside(name, top));
    findings.tables.push({ ...reading, fileName: name, encoding: file.encoding });
    if (sources.length + listed.length === 0) {
      findings.add(top, ["cameras-from"], "E_EMPTY", {
        found: "a table without rows",
        accepted: "a row per camera",
      });
    }
    return [...listed, ...sources.map((row) => ({ source: row, path: [] }))];
  } catch (error) {
    if (!(error instanceof PadstopError)) throw error;
    findings.problems.push(...error.problems);
    return listed;
  }
}

/** No list, or an empty one; a wrong value has its finding already. */
function isWithoutCamera(source: Source): boolean {
  const cameras = valueAt(source.value, ["cameras"]);
  return cameras === undefined || (Array.isArray(cameras) && cameras.length === 0);
}
