#!/usr/bin/env node
/**
 * Starts the packed program with the bytecode kept from the build: a fifth of a short run would else go into compiling
 * the same source again. A cache of another Node version is ignored by the engine; without the pack the compiled
 * files are run as they are.
 */

import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";

const packed = fileURLToPath(new URL("../padstop.cjs", import.meta.url));
const cache = fileURLToPath(new URL("../padstop.cache", import.meta.url));

type Program = (require: NodeJS.Require, module: { exports: object }, exports: object) => void;

if (existsSync(packed)) {
  const cachedData = existsSync(cache) ? readFileSync(cache) : undefined;
  const script = new Script(readFileSync(packed, "utf8"), {
    filename: packed,
    ...(cachedData && { cachedData }),
  });
  const module = { exports: {} };
  (script.runInThisContext() as Program)(createRequire(packed), module, module.exports);
} else {
  await import("./main.ts");
}
