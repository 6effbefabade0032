/** The program: arguments in, exit code out. Started by `launch.ts`, packed into one file by the build. */

import { EXIT } from "./context.ts";
import { run } from "./program.ts";
import { processWorld } from "./world.ts";

/** Set when stdout cannot take the result. */
const failure: { code: number | null } = { code: null };

// A reader that stops early (head, a closed pager) is no error; a full disk is, and told in words.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE" || failure.code !== null) return;
  failure.code = EXIT.wrongInput;
  process.stderr.write(`E_WRITE  stdout\n  found ${error.message}\n  Next: make room or write elsewhere.\n`);
  process.exitCode = failure.code;
});
// Where nobody can be told, the exit code still says it.
process.stderr.on("error", () => undefined);

/** Settles when the command is done; never rejects. */
export const finished: Promise<void> = run(process.argv.slice(2), processWorld()).then((code) => {
  process.exitCode = failure.code ?? code;
});
