/** Every example of a help text, and the tour of the README, run as they stand and end well. */

import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { putStarter, ROOT, runShell, SITES, TRACE } from "./run.ts";

/** The help texts as the golden cases keep them. */
const GOLDEN = join(ROOT, "test", "golden");
const HELPS = readdirSync(GOLDEN).filter((name) => /^help-(?!without)/.test(name));

/** Small for speed, and the one that has the cameras and the times of the tour. */
const demoFor = (line: string): string =>
  / (P04|T1|readings|record) /.test(line) ? "sites/skerry-vane.yaml" : "sites/calm-parallel.yaml";

/** The files of one's own that the examples name. */
const GIVEN = [
  [join(SITES, "skerry-vane.yaml"), "my-site.yaml"],
  [join(GOLDEN, "readings-afternoon", "readings.csv"), "readings.csv"],
  [join(GOLDEN, "readings-as-set", "settings.csv"), "settings.csv"],
  [join(GOLDEN, "plan-camera-table", "cameras.csv"), "cameras.csv"],
] as const;

const top = mkdtempSync(join(tmpdir(), "padstop-examples-"));
/** As if at the top of the project, but what is written goes elsewhere. */
function folderFor(name: string): string {
  const folder = join(top, name);
  putStarter(folder);
  symlinkSync(SITES, join(folder, "sites"));
  for (const [from, to] of GIVEN) copyFileSync(from, join(folder, to));
  return folder;
}
afterAll(() => rmSync(top, { recursive: true, force: true }));

const examplesIn = (help: string): string[] =>
  [...help.slice(help.indexOf("\nExample")).matchAll(/^ {2}(padstop .+)$/gm)].map(([, line]) => line!);

async function runsWell(
  folder: string,
  line: string,
  exits: readonly (number | null)[] = [0],
): Promise<void> {
  const ran = await runShell(`PATH=$PWD/bin:$PATH; ${line}`, folder);
  expect(exits, `${line}\n${ran.stderr}`).toContain(ran.exit);
  expect(ran.stdout + ran.stderr).not.toMatch(TRACE);
  const file = /(?:-o|--picture) (?!- |-$)(\S+)/.exec(line)?.[1] ?? null;
  if (file !== null) expect(readdirSync(folder), line).toContain(file);
}

describe("the example of", () => {
  const folder = folderFor("help");

  it("every command stands in its help", async () => {
    const { stdout } = await runShell("$PADSTOP --help");
    const commands = [...stdout.slice(stdout.indexOf("\nCommands:")).matchAll(/^ {2}([a-z]+) /gm)]
      .map(([, name]) => name!)
      .filter((name) => name !== "help");
    expect(HELPS.map((name) => name.slice("help-".length)).sort()).toEqual(commands.sort());
  });

  it.each(HELPS)("%s runs", async (name) => {
    const examples = examplesIn(readFileSync(join(GOLDEN, name, "stdout"), "utf8"));
    expect(examples.length).toBeGreaterThanOrEqual(1);
    for (const line of examples) await runsWell(folder, line);
  });
});

describe("the tour", () => {
  const folder = folderFor("tour");
  const readme = readFileSync(join(ROOT, "README.md"), "utf8");
  const tour = readme.slice(readme.indexOf("## The tour")).split("```")[1]!;
  const lines = [...tour.matchAll(/^npx (padstop [^#\n]+?) *(?:#.*)?$/gm)].map(([, line]) => line!);

  it("has every command", () => expect(lines.length).toBeGreaterThan(10));

  // One after the other: the first writes the file that the next ones read.
  it.sequential.each(lines)("%s", async (line) => {
    await runsWell(folder, line.replace("SITE", demoFor(line)), line.includes("--fail-on") ? [0, 1] : [0]);
  });
});
