/** The README shows what the program prints: each block behind a command in a comment is that command's output. */

import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const BLOCK = /<!-- padstop (.+?) -->\n```text\n([\s\S]*?)```/g;

function outputOf(command: string): string {
  const run = spawnSync(process.execPath, ["dist/cli/launch.js", ...command.split(" ")], {
    cwd: root,
    encoding: "utf8",
    env: { PATH: process.env["PATH"], TZ: "UTC" },
  });
  expect(run.status, run.stderr).toBe(0);
  return run.stdout;
}

test("every block of the README is what its command prints", () => {
  const readme = readFileSync(`${root}README.md`, "utf8");
  const rewritten = readme.replaceAll(
    BLOCK,
    (_, command: string) => `<!-- padstop ${command} -->\n\`\`\`text\n${outputOf(command)}\`\`\``,
  );
  expect([...readme.matchAll(BLOCK)].length).toBeGreaterThanOrEqual(1);
  if (process.env["PADSTOP_GOLDEN"] === "write") writeFileSync(`${root}README.md`, rewritten);
  else expect(readme).toBe(rewritten);
});
