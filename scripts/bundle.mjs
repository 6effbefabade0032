/**
 * Packs the command line into one file and keeps the bytecode of a run beside it: a start-up of a hundred small files
 * costs more than the plan itself. `src/cli/launch.ts` starts what is made here.
 */

import { rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { Script } from "node:vm";
import { build } from "esbuild";

const PACKED = "dist/padstop.cjs";
const CACHE = "dist/padstop.cache";

const built = await build({
  entryPoints: ["dist/cli/main.js"],
  bundle: true,
  platform: "node",
  format: "cjs",
  target: "node20",
  minifyWhitespace: true,
  legalComments: "none",
  logLevel: "warning",
  write: false,
});
// A function of what CommonJS hands out, as `launch.ts` calls it.
const source = `(function (require, module, exports) {${built.outputFiles[0].text}\n})`;
writeFileSync(PACKED, source);

// The cache holds what has run by then, so one plan is made, into a file that is thrown away.
const filename = resolve(PACKED);
const script = new Script(source, { filename });
const scratch = join(tmpdir(), `padstop-build-${process.pid}.txt`);
process.argv = [process.argv[0], filename, "plan", "sites/skerry-vane.yaml", "--quiet", "-o", scratch];
const module = { exports: {} };
script.runInThisContext()(createRequire(filename), module, module.exports);
await module.exports.finished;
rmSync(scratch, { force: true });
if (process.exitCode) throw new Error("the demo site could not be planned");
writeFileSync(CACHE, script.createCachedData());
