/** A site for a command that works with it: read, and told where a number of a table could have meant another. */

import { dirname, join } from "node:path";
import { tableNotes } from "../show/tableWords.ts";
import type { Site } from "../site/types.ts";
import { readSite } from "./files.ts";
import type { World } from "./world.ts";

/** The site in a file; decimal commas of its tables are told on stderr unless quiet. Throws PadstopError. */
export function openSite(path: string, { quiet }: { readonly quiet: boolean }, world: World): Site {
  const site = readSite(path);
  tellTables(site, quiet, world);
  return site;
}

/** Decimal commas of a site's tables, on stderr unless quiet. */
export function tellTables({ tables }: Site, isQuiet: boolean, world: World): void {
  if (!isQuiet) for (const note of tableNotes(tables)) world.err(`${note}\n`);
}

/** The site file and the tables it names: what no result may take the place of. */
export const sourcesOf = (path: string, { tables }: Site): readonly string[] => [
  path,
  ...tables.map(({ fileName }) => join(dirname(path), fileName)),
];
