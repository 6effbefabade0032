/** A site for a command that works with it: read, and told where a number of a table could have meant another. */

import { tableNotes } from "../show/tableWords.ts";
import type { Site } from "../site/types.ts";
import { readSite } from "./files.ts";
import type { World } from "./world.ts";

/** The site in a file; decimal commas of its tables are told on stderr unless quiet. Throws PadstopError. */
export function openSite(path: string, { quiet }: { readonly quiet: boolean }, world: World): Site {
  const site = readSite(path);
  if (!quiet) for (const note of tableNotes(site.tables)) world.err(`${note}\n`);
  return site;
}
