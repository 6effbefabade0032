/** Packs the command line into one file: a start-up of a hundred small files costs more than the plan itself. */

import { chmodSync } from "node:fs";
import { build } from "esbuild";

await build({
  entryPoints: ["dist/cli/main.js"],
  outfile: "dist/padstop.mjs",
  bundle: true,
  platform: "node",
  format: "esm",
  target: "node20",
  minifyWhitespace: true,
  legalComments: "linked",
  logLevel: "warning",
  // Some of the libraries are CommonJS and ask for Node's own modules by require.
  banner: {
    js: "import { createRequire as padstopRequire } from 'node:module'; const require = padstopRequire(import.meta.url);",
  },
});
chmodSync("dist/padstop.mjs", 0o755);
