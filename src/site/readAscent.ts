/** How the vehicle leaves: the schema's ascent with a true heading and the table read. The way between its rows is the view's. */

import { PadstopError } from "../base/problem.ts";
import { wrap360 } from "../base/units.ts";
import type { WrittenAscent } from "./ascentSchema.ts";
import { type AscentFile, readAscentTable } from "./ascentTable.ts";
import type { Findings, Origin } from "./findings.ts";
import { type FileText, pathBeside, requireFile } from "./namedFiles.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import type { Ascent, AscentTable } from "./types.ts";

/** The ascent of the vehicle at `origin`; null with a finding when its table cannot be used. */
export function readAscent(
  written: WrittenAscent,
  head: SiteHead,
  files: FileText,
  origin: Origin,
  findings: Findings,
): Ascent | null {
  const { heading, ...rest } = written;
  const headingDeg = heading === null ? null : wrap360(heading + head.bearingOffsetDeg);
  if (rest.kind === "parameters") return { ...rest, headingDeg };
  const { fileName } = rest;
  const at = origin.source.has([...origin.path, "ascent", "table"]) ? ["ascent", "table"] : ["ascent"];
  const file = requireFile(fileName, files, origin, at, findings);
  const read = file === null ? null : readTable(file.text, pathBeside(fileName, origin), findings);
  if (file === null || read === null) return null;
  const { table, reading } = read;
  findings.tables.push({ ...reading, fileName, encoding: file.encoding });
  checkHeading(table, fileName, headingDeg, origin, findings);
  return { kind: "table", fileName, headingDeg, table };
}

function readTable(text: string, fileName: string, findings: Findings): AscentFile | null {
  try {
    return readAscentTable(text, fileName);
  } catch (error) {
    if (!(error instanceof PadstopError)) throw error;
    findings.problems.push(...error.problems);
    return null;
  }
}

/** A way along the ground needs its heading; east and north are directions already. */
function checkHeading(
  { kind }: AscentTable,
  fileName: string,
  headingDeg: number | null,
  origin: Origin,
  findings: Findings,
): void {
  if (kind === "downrange" && headingDeg === null) {
    findings.add(origin, ["ascent"], "E_MISSING", {
      found: `${fileName}, a table of downrange and altitude, without a heading`,
      accepted: "the heading of the flight beside the table",
      next: `write ascent: { table: ${fileName}, heading: 82 }`,
    });
  }
  if (kind === "enu" && headingDeg !== null) {
    findings.add(origin, ["ascent", "heading"], "E_CONFLICT", {
      found: `heading, and east and north in ${fileName}`,
      accepted: "heading only for a table of downrange and altitude",
      next: "leave heading out: east and north in the table are true",
    });
  }
}
