/** Builds once before the tests: the golden cases run the program as it is shipped. */

import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

export function setup(): void {
  const root = fileURLToPath(new URL("..", import.meta.url));
  execFileSync(process.execPath, ["node_modules/typescript/bin/tsc", "-b"], { cwd: root, stdio: "inherit" });
}
