/** The completion scripts: bash for real, the others as kept text; names of a site file never run as anything. */

import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { putStarter, quoted, type Ran, run, runShell, SITES } from "./run.ts";

/** Names that would do harm in a shell that takes them for anything but text: each could leave a file behind. */
const HOSTILE = [
  "$(touch ran1)",
  "`touch ran2`",
  "; touch ran3",
  "it's",
  'say "a"',
  "b\\c $HOME",
  "!! x",
  "* ?",
  "~root",
  "d:e=f,g",
  "<h>|&",
  "#i",
  "é ü",
];
const BREAKS = " \t\n\"'@><=;|&(:";

const folder = mkdtempSync(join(tmpdir(), "padstop-completion-"));

beforeAll(async () => {
  putStarter(folder);
  mkdirSync(join(folder, "more"));
  const cameras = HOSTILE.map(
    (id) => `  - { id: ${JSON.stringify(id)}, azimuth: 1, lens: { focal: 50 }, gate: full-frame }`,
  );
  const windows = HOSTILE.map((name, i) => {
    const day = String(i + 1).padStart(2, "0");
    return `  - { name: ${JSON.stringify(name)}, opens: 2027-04-${day}T12:00, closes: 2027-04-${day}T13:00 }`;
  });
  const site = "site: { name: x, zone: UTC, latitude: 1, longitude: 2 }\n";
  const text = `${site}cameras:\n${cameras.join("\n")}\nwindows:\n${windows.join("\n")}\n`;
  for (const name of ["$(touch ran4) it's.yaml", "plain.yaml"]) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, "notes.txt"), "");
  const script = await run(["completion", "bash"]);
  writeFileSync(join(folder, "completion.bash"), script.stdout);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What is offered for a line with the cursor at its end. */
async function offered(line: string): Promise<string[]> {
  const ran = await inBash(`printf '%s\\n' "\${COMPREPLY[@]}"`, line);
  expect(ran.stderr).toBe("");
  return ran.stdout.split("\n").filter((word) => word !== "");
}

/** Which completions of its own bash is asked for, and what is offered beside them. */
async function leftToBash(line: string): Promise<string[]> {
  const before = 'compopt() { asked+=("$*"); }';
  const ran = await inBash(`printf '%s\\n' "\${asked[@]}" "\${COMPREPLY[@]}"`, line, before);
  expect(ran.stderr).toBe("");
  return ran.stdout.split("\n").filter((word) => word !== "");
}

function inBash(after: string, line: string, before = ":"): Promise<Ran> {
  const cursor = `COMP_WORDBREAKS=$' \\t\\n"\\'@><=;|&(:' COMP_LINE=${quoted(line)}; COMP_POINT=\${#COMP_LINE}`;
  const script = `PATH=$PWD/bin:$PATH; source ./completion.bash; ${before}; ${cursor}; _padstop; ${after}`;
  return runShell(script, folder);
}

/** The line as it stands after a completion: what comes behind the last break or open quote is put in its place. */
function completed(line: string, word: string): string {
  const quote = /(?<=\s)["']$/.exec(line)?.[0] ?? "";
  const from = Math.max(...[...BREAKS].map((sign) => line.lastIndexOf(sign)));
  return line.slice(0, from + 1) + word + quote;
}

describe("in bash", () => {
  it("commands, options and choices come from the program", async () => {
    expect(await offered("padstop ")).toContain("report");
    expect(await offered("padstop pl")).toEqual(["plan"]);
    expect(await offered("padstop plan --fo")).toEqual(["--format"]);
    expect(await offered("padstop plan x.yaml --format ")).toEqual(["table", "json", "csv", "geojson"]);
    expect(await offered("padstop plan x.yaml --format=j")).toEqual(["json"]);
    expect(await offered("padstop ev --format ")).toEqual(["table", "json"]);
    expect(await offered("padstop plan --sky haze,over")).toEqual(["haze,overcast"]);
    expect(await offered("padstop plan --sky haze:4,cl")).toEqual(["4,clear"]);
    expect(await offered("padstop plan --fail-on ")).toEqual(["in-frame", "near-frame", "clipped", "unset"]);
    expect(await offered("padstop report --cards ")).toEqual(["2", "4"]);
    expect(await offered("padstop completion ")).toEqual(["bash", "zsh", "fish"]);
    expect(await offered("padstop help swe")).toEqual(["sweep"]);
    expect(await offered("padstop nonsense --")).toEqual([]);
  });

  it("an optional value is passed over, a value is never taken for the site", async () => {
    const site = join(SITES, "skerry-vane.yaml");
    expect(await offered(`padstop rank --strip 3 ${site} --form`)).toEqual(["--format"]);
    expect(await offered(`padstop sweep --sky haze ${site} `)).toEqual(["T1", "T2", "T3", "T4"]);
    expect(await offered(`padstop view -q ${site} L`)).toEqual(["L1", "L2", "L3"]);
    expect(await offered(`padstop plan ${site} --window s`)).toEqual(["second\\ try"]);
    expect(await offered(`padstop plan ${site} --window "n`)).toEqual(["night try"]);
  });

  it("files for the site: site files and folders", async () => {
    const names = await offered("padstop plan ");
    expect(names.sort()).toEqual(["$(touch ran4) it's.yaml", "bin", "more", "plain.yaml"]);
    expect(await offered("padstop plan pl")).toEqual(["plain.yaml"]);
  });

  it("any file for a table and for what is written, by bash itself; none for a name", async () => {
    for (const line of ["readings plain.yaml ", "new Somewhere --from ", "plan plain.yaml -o "])
      expect(await leftToBash(`padstop ${line}`), line).toEqual(["-o default"]);
    expect(await leftToBash("padstop new ")).toEqual([]);
  });

  it("a site file that is missing or wrong is silent", async () => {
    expect(await offered("padstop view missing.yaml ")).toEqual([]);
    expect(await offered("padstop view notes.txt ")).toEqual([]);
    const names = await run(["names", "cameras", "missing.yaml"]);
    expect(names).toMatchObject({ stdout: "", stderr: "", exit: 0 });
  });

  it.each([
    ["bare", "padstop view plain.yaml ", HOSTILE],
    ["in single quotes", "padstop view plain.yaml '", HOSTILE],
    ["in double quotes", 'padstop view plain.yaml "', HOSTILE.filter((name) => !name.includes("!"))],
    ["with a hostile file", "padstop view \\$\\(touch\\ ran4\\)\\ it\\'s.yaml ", HOSTILE],
    ["with a hostile file in quotes", "padstop view '$(touch ran4) it'\\''s.yaml' ", HOSTILE],
    ["a window", "padstop plan plain.yaml --window ", HOSTILE],
    ["a window behind =", "padstop plan plain.yaml --window=", HOSTILE],
  ])("hostile names are data: %s", async (_, line, expected) => {
    const words = await offered(line);
    const lines = words.map((word) => completed(line, word));
    // Read back by the shell itself: each must be the one word that was meant.
    const script = lines.map((one) => `set -- ${one}\nprintf '%s\\n' "\${*: -1}"\n`).join("");
    const back = await runShell(script, folder);
    expect(back.stderr).toBe("");
    expect(
      back.stdout
        .trimEnd()
        .split("\n")
        .map((word) => word.replace(/^--window=/, "")),
    ).toEqual(expected);
    expect(readdirSync(folder).filter((name) => name.startsWith("ran"))).toEqual([]);
  });

  it("what is typed runs nothing either", async () => {
    await offered("padstop view $(touch ran5) ");
    await offered("padstop view `touch ran6");
    await offered("padstop plan plain.yaml --window $(touch ran7)");
    await offered("padstop plan 'a[$(touch ran8)]' --window=");
    expect(readdirSync(folder).filter((name) => name.startsWith("ran"))).toEqual([]);
  });
});
