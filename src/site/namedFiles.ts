/** The files that a site file names: their texts are handed over by the caller. */

import type { ProblemCode } from "../base/problem.ts";
import type { Findings, Origin } from "./findings.ts";
import type { TableText } from "./tableReading.ts";

/** Why a file that the site file names is not read. */
export interface FileRefusal {
  readonly code: ProblemCode;
  readonly found: string;
  readonly accepted: string;
  readonly next: string | null;
}

/** The text of a file the site file names, by the name it uses; null when there is none. */
export type FileText = (name: string) => string | TableText | FileRefusal | null;

/** The text of a file that the value at `path` below `origin` names; a finding when it was not handed over. */
export function requireFile(
  name: string,
  files: FileText,
  origin: Origin,
  path: readonly string[],
  findings: Findings,
): (Pick<TableText, "text"> & { readonly encoding: TableText["encoding"] | null }) | null {
  const content = files(name);
  if (typeof content === "string") return { text: content, encoding: null };
  if (content !== null && "text" in content) return content;
  if (content !== null) {
    const { code, ...parts } = content;
    findings.add(origin, path, code, parts);
    return null;
  }
  const next = "put it beside the site file, or correct the name";
  findings.add(origin, path, "E_FILE", {
    found: `${name}, which is not there`,
    accepted: "a file that exists",
    next,
  });
  return null;
}

/** How a file beside the one of `origin` is told in messages: from where the reader stands, as that one is. */
export function pathBeside(name: string, { source }: Origin): string {
  const { file } = source.placeOf([]);
  return `${file.slice(0, file.lastIndexOf("/") + 1)}${name}`;
}
