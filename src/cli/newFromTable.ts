/** `padstop new NAME --from TABLE`: the text of a site file that refers to a camera table, checked before anything is written. */

import { dirname, isAbsolute, relative, sep } from "node:path";
import { PadstopError, problem } from "../base/problem.ts";
import { starterNotes } from "../show/starterNotes.ts";
import { tableNotes } from "../show/tableWords.ts";
import { TABLE_NAME } from "../site/fields.ts";
import type { FileRefusal } from "../site/namedFiles.ts";
import { starterSite } from "../site/starter.ts";
import { starterFromTable } from "../site/starterFromTable.ts";
import { parseBeside, readBeside } from "./files.ts";

export interface NewFromTable {
  readonly text: string;
  /** Lines for stderr: how numbers were read, what is to be filled in, what is missing. */
  readonly notes: readonly string[];
}

/** A site file to be written at `path`, with the cameras of `table`. Throws PadstopError as `check` would. */
export function newFromTable(name: string, path: string, table: string): NewFromTable {
  const fileName = nameBeside(path, table);
  const content = readBeside(path, fileName);
  if (content === null || !("text" in content))
    throw new PadstopError([problem("E_FILE", "--from", content ?? notThere(table))]);
  const taken = starterFromTable(content.text, table.replaceAll("\\", "/"));
  const starter = { ...taken, fileName };
  const text = starterSite(name, starter);
  const site = parseBeside(path, text);
  return { text, notes: [...tableNotes(site.tables), ...starterNotes(site, starter)] };
}

const notThere = (table: string): FileRefusal => ({
  code: "E_FILE",
  found: `${table}, which is not there`,
  accepted: "a camera table",
  next: "check the name and the folder",
});

/** How the file at `path` names the table: from its own folder, which a site file may not leave. */
function nameBeside(path: string, table: string): string {
  const refuseName = (accepted: string, next: string | null): never => {
    throw new PadstopError([problem("E_FILE", "--from", { found: table, accepted, next })]);
  };
  if (!TABLE_NAME.test(table)) return refuseName("a file name that ends in .csv, .tsv or .txt", null);
  const name = relative(dirname(path), table);
  if (!isAbsolute(name) && name !== ".." && !name.startsWith(`..${sep}`)) return name.split(sep).join("/");
  return refuseName(
    "a table in the folder of the new file or below",
    `copy it there, or put the new file beside it: -o ${table.replace(/[^/\\]*$/, "NAME.yaml")}`,
  );
}
