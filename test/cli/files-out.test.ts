/** Output files are written whole or not at all, `new` takes nothing away, and a reader may leave early. */

import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { eachInFreshFolder } from "../support/freshFolder.ts";
import { run, runShell, SITES, TRACE } from "./run.ts";

const SITE = join(SITES, "calm-parallel.yaml");
let folder = "";
eachInFreshFolder((fresh) => {
  folder = fresh;
});

it("-o writes what stdout would have had, a word on stderr, and nothing else", async () => {
  const args = ["plan", SITE, "--step", "900", "--window", "equinox noon"];
  const shown = await run(args);
  const written = await run([...args, "-o", "plan.txt"], { cwd: folder });
  expect(written).toMatchObject({ exit: 0, stdout: "", stderr: "Wrote plan.txt\n" });
  expect(readFileSync(join(folder, "plan.txt"), "utf8")).toBe(shown.stdout);
  expect(readdirSync(folder)).toEqual(["plan.txt"]);
  const quiet = await run([...args, "-q", "-o", "plan.txt"], { cwd: folder });
  expect(quiet).toMatchObject({ exit: 0, stdout: "", stderr: "" });
});

it.each([
  ["a folder that is not there", "missing/plan.txt"],
  ["a folder itself", "."],
  ["a folder of that name", "taken"],
  ["a file in place of a folder", "file/plan.txt"],
  ["an empty name", ""],
  ["a name too long", `${"n".repeat(300)}.txt`],
])("-o to %s is refused and leaves nothing", async (_, target) => {
  mkdirSync(join(folder, "taken"));
  writeFileSync(join(folder, "file"), "kept");
  const ran = await run(["ev", "-o", target], { cwd: folder });
  expect(ran.exit).toBe(2);
  expect(ran.stdout).toBe("");
  expect(ran.stderr).toMatch(/^E_WRITE {2}/);
  expect(ran.stderr).not.toMatch(TRACE);
  expect(readdirSync(folder).sort()).toEqual(["file", "taken"]);
  expect(readdirSync(join(folder, "taken"))).toEqual([]);
  expect(readFileSync(join(folder, "file"), "utf8")).toBe("kept");
});

// Root may write anywhere; then there is nothing to refuse.
if (process.getuid?.() !== 0) {
  it("-o into a folder without permission is refused", async () => {
    chmodSync(folder, 0o500);
    const ran = await run(["ev", "-o", "ev.txt"], { cwd: folder });
    chmodSync(folder, 0o700);
    expect(ran.exit).toBe(2);
    expect(ran.stderr).toContain("no permission");
    expect(readdirSync(folder)).toEqual([]);
  });
}

it("-o after wrong input leaves the old file as it was", async () => {
  writeFileSync(join(folder, "plan.txt"), "yesterday's");
  const ran = await run(["plan", SITE, "--sky", "clar", "-o", "plan.txt"], { cwd: folder });
  expect(ran.exit).toBe(2);
  expect(readFileSync(join(folder, "plan.txt"), "utf8")).toBe("yesterday's");
});

it("-o never replaces the site file it reads", async () => {
  const text = readFileSync(SITE, "utf8");
  writeFileSync(join(folder, "pad.yaml"), text);
  const ran = await run(["plan", "pad.yaml", "--step", "900", "-o", "./pad.yaml"], { cwd: folder });
  expect(ran.exit).toBe(2);
  expect(readFileSync(join(folder, "pad.yaml"), "utf8")).toBe(text);
});

it.each([["plan", "--format", "csv"], ["record"]])(
  "%s -o never replaces a table that the site file names",
  async (...command) => {
    for (const name of ["long-day.yaml", "long-day-ascent.csv"])
      copyFileSync(join(SITES, name), join(folder, name));
    const table = readFileSync(join(folder, "long-day-ascent.csv"), "utf8");
    const [name, ...options] = command;
    const args = [name!, "long-day.yaml", ...options, "--step", "3600", "-o", "./long-day-ascent.csv"];
    const ran = await run(args, { cwd: folder });
    expect(ran).toMatchObject({ exit: 2, stdout: "" });
    expect(ran.stderr).toMatch(/^E_WRITE {2}\.\/long-day-ascent\.csv\n {2}found a file that was read;/);
    expect(readFileSync(join(folder, "long-day-ascent.csv"), "utf8")).toBe(table);
  },
);

it("-o never puts a plain file in the place of a pipe or device", async () => {
  await runShell("mkfifo pipe", folder);
  const ran = await runShell(
    "(timeout 2 cat pipe >got &) ; timeout 2 $PADSTOP ev -o pipe; echo $? >code",
    folder,
  );
  expect(ran.stderr).not.toMatch(TRACE);
  expect(statSync(join(folder, "pipe")).isFIFO()).toBe(true);
});

it("new writes a file that checks and plans at once, and never over another", async () => {
  const made = await run(["new", "Gannet Ledge"], { cwd: folder });
  expect(made).toMatchObject({ exit: 0, stdout: "" });
  expect(made.stderr).toContain("gannet-ledge.yaml");
  const path = join(folder, "gannet-ledge.yaml");
  const text = readFileSync(path, "utf8");
  const [checked, planned] = await Promise.all([
    run(["check", path], { cwd: folder }),
    run(["plan", path, "--step", "900"], { cwd: folder }),
  ]);
  expect(checked).toMatchObject({ exit: 0, stderr: "" });
  expect(planned).toMatchObject({
    exit: 0,
    stderr: "Planned the first window; also in the file: second (--window).\n",
  });
  const again = await run(["new", "Gannet Ledge"], { cwd: folder });
  expect(again.exit).toBe(2);
  expect(again.stderr).toMatch(/^E_WRITE {2}gannet-ledge\.yaml/);
  expect((await run(["new", "Other", "-o", "gannet-ledge.yaml"], { cwd: folder })).exit).toBe(2);
  expect(readFileSync(path, "utf8")).toBe(text);
  expect(readdirSync(folder)).toEqual(["gannet-ledge.yaml"]);
});

it.each([
  ["../up and away", "up-and-away.yaml"],
  ['Quote " and: colon', "quote-and-colon.yaml"],
  ["Île de la Tour", "île-de-la-tour.yaml"],
  ["$& $1 NAME", "1-name.yaml"],
])("new %s stays in its folder and checks", async (name, file) => {
  const made = await run(["new", name, "-q"], { cwd: folder });
  expect(made).toMatchObject({ exit: 0, stdout: "", stderr: "" });
  expect(readdirSync(folder)).toEqual([file]);
  const checked = await run(["check", file], { cwd: folder });
  expect(checked.stdout.split(": the file is in order")[0]).toBe(name);
});

it.each(["", " ", "...", "a\u0007b", "a\u202eb", "n".repeat(61)])(
  "new %j is refused and writes nothing",
  async (name) => {
    const made = await run(["new", name], { cwd: folder });
    expect(made.exit).toBe(2);
    expect(made.stderr).toMatch(/^E_CHARS {2}NAME/);
    expect(existsSync(folder) && readdirSync(folder)).toEqual([]);
  },
);

it.each([
  ["$PADSTOP plan $SITE --format json | head -1", 0, 1],
  ["$PADSTOP plan $SITE --step 10 --format json | true", 0, 0],
  ["$PADSTOP check no-such-file.yaml 2>&1 | true", 2, 0],
  ["$PADSTOP ev >&-", 0, 0],
])("%s ends as usual, without a stack trace", async (line, exit, lines) => {
  const ran = await runShell(line.replace("$SITE", SITE), folder);
  expect(ran.stderr).not.toMatch(TRACE);
  expect(ran.stderr).not.toContain("node:");
  expect(ran.exit).toBe(exit);
  expect(ran.stdout.split("\n").length - 1).toBe(lines);
});

it.each(["$PADSTOP ev >/dev/full", "$PADSTOP plan $SITE --step 900 2>/dev/full >/dev/null"])(
  "%s: a full disk is not exit 1, and told in words",
  async (line) => {
    const ran = await runShell(line.replace("$SITE", SITE), folder);
    expect(ran.stderr).not.toMatch(TRACE);
    expect(ran.stderr).not.toContain("node:");
    expect(ran.exit).not.toBe(1);
  },
);
