/** The demo sites, read as the command line reads them. */

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";

/** "skerry-vane" and its like, from the folder of sites, with the tables beside it. */
export function demoSite(name: string): Site {
  const pathOf = (file: string): string => fileURLToPath(new URL(`../../sites/${file}`, import.meta.url));
  return parseSite(readFileSync(pathOf(`${name}.yaml`), "utf8"), (file) =>
    readFileSync(pathOf(file), "utf8"),
  );
}
