/** Builds once before the tests: the golden cases run the program as it is shipped. */

import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

export function setup(): void {
  const root = fileURLToPath(new URL("..", import.meta.url));
  for (const args of [["node_modules/typescript/bin/tsc", "-b"], ["scripts/bundle.mjs"]]) {
    execFileSync(process.execPath, args, { cwd: root, stdio: "inherit" });
  }
}
