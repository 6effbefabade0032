/** The program: arguments in, exit code out. Started by `launch.ts`, packed into one file by the build. */

import { run } from "./program.ts";
import { processWorld } from "./world.ts";

// A reader that stops early (head, a closed pager) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

/** Settles when the command is done; never rejects. */
export const finished: Promise<void> = run(process.argv.slice(2), processWorld()).then((code) => {
  process.exitCode = code;
});
