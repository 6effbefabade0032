#!/usr/bin/env node
/** The program: arguments in, exit code out. */

import { run } from "./program.ts";
import { processWorld } from "./world.ts";

// A reader that stops early (head, a closed pager) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

process.exitCode = await run(process.argv.slice(2), processWorld());
