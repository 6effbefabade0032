/**
 * Packs the command line into one file and keeps the bytecode of a run beside it: a start-up of a hundred small files
 * costs more than the plan itself. `src/cli/launch.ts` starts what is made here. The program of the report's page is packed
 * for browsers first, beside it.
 */

import { rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { Script } from "node:vm";
import { build } from "esbuild";

const PACKED = "dist/padstop.cjs";
const CACHE = "dist/padstop.cache";

await build({
  entryPoints: ["dist/cli/page/main.js"],
  outfile: "dist/reportPage.js",
  bundle: true,
  platform: "browser",
  format: "iife",
  target: "es2022",
  minify: true,
  legalComments: "none",
  logLevel: "warning",
});

const built = await build({
  entryPoints: ["dist/cli/main.js"],
  bundle: true,
  platform: "node",
  format: "cjs",
  target: "node20",
  minifyWhitespace: true,
  legalComments: "none",
  logLevel: "warning",
  // CommonJS has none: where a module of the command line would stand, so that it finds what is built beside the pack.
  define: { "import.meta.url": "moduleUrl" },
  write: false,
});
// A function of what CommonJS hands out, as `launch.ts` calls it.
const moduleUrl = `require("node:url").pathToFileURL(require.resolve("./cli/main.js")).href`;
const source = `(function (require, module, exports) {const moduleUrl=${moduleUrl};${built.outputFiles[0].text}\n})`;
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
