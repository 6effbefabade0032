/** What every worker finds ready: the program as it is shipped, and the browser unpacked. */

import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import browser from "@sparticuz/chromium";

export async function setup(): Promise<void> {
  const root = fileURLToPath(new URL("..", import.meta.url));
  for (const args of [["node_modules/typescript/bin/tsc", "-b"], ["scripts/bundle.mjs"]]) {
    execFileSync(process.execPath, args, { cwd: root, stdio: "inherit" });
  }
  // It is taken for unpacked as soon as its file is there: one worker would start what another still writes.
  await browser.executablePath();
}
