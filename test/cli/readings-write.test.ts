/** `readings --write` as users run it: the site file changed in place, whole or not at all. */

import {
  chmodSync,
  copyFileSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { PadstopError } from "../../src/base/problem.ts";
import { openToChange, replaceSource } from "../../src/cli/files.ts";
import { eachInFreshFolder } from "../support/freshFolder.ts";
import { run, SITES } from "./run.ts";

let folder = "";
const READINGS = `time,sky,what,azimuth,value (klx)
2027-04-17T13:10,clear,incident,180,50
2027-04-17T13:40,clear,incident,180,51
2027-04-17T14:10,clear,incident,180,50
2027-04-17T14:20,clear,incident,180,52
2027-04-17T14:40,clear,incident,180,50
`;
eachInFreshFolder((fresh) => {
  folder = fresh;
  copyFileSync(join(SITES, "skerry-vane.yaml"), join(folder, "pad.yaml"));
  writeFileSync(join(folder, "r.csv"), READINGS);
});
const bytes = (): string => readFileSync(join(folder, "pad.yaml"), "utf8");

it("adds the correction behind all that stands there, keeps the file's rights, and plans with it", async () => {
  const before = bytes();
  chmodSync(join(folder, "pad.yaml"), 0o640);
  const ran = await run(["readings", "pad.yaml", "r.csv", "--write"], { cwd: folder });
  expect(ran).toMatchObject({
    exit: 0,
    stderr: "Wrote corrections into pad.yaml: clear -0.5 (was not given)\n",
  });
  expect(bytes()).toBe(`${before}\ncorrections:\n  sky:\n    clear: -0.5\n`);
  expect(statSync(join(folder, "pad.yaml")).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder).sort()).toEqual(["pad.yaml", "r.csv"]);
  const plan = await run(["plan", "pad.yaml", "--step", "900"], { cwd: folder });
  expect(plan.stdout.replace(/\s+/g, " ")).toContain("applied to body, sky and deck: clear -0.5 stops");
});

it("a second time says the same and changes nothing: the model is taken without the corrections", async () => {
  await run(["readings", "pad.yaml", "r.csv", "--write"], { cwd: folder });
  const once = bytes();
  const again = await run(["readings", "pad.yaml", "r.csv", "--write"], { cwd: folder });
  expect(again).toMatchObject({ exit: 0, stderr: "pad.yaml says so already\n" });
  expect(bytes()).toBe(once);
});

it("through a link writes the file it leads to", async () => {
  symlinkSync("pad.yaml", join(folder, "link.yaml"));
  await run(["readings", "link.yaml", "r.csv", "--write"], { cwd: folder });
  expect(lstatSync(join(folder, "link.yaml")).isSymbolicLink()).toBe(true);
  expect(bytes()).toContain("clear: -0.5");
});

it.each([
  ["nothing follows from the readings", ["--write"], READINGS.split("\n").slice(0, 3).join("\n"), 0],
  ["--write is not given", [], READINGS, 0],
  ["-o leads nowhere", ["--write", "-o", "missing/out.txt"], READINGS, 2],
  ["-o is the table itself", ["--write", "-o", "r.csv"], READINGS, 2],
  ["-o is the site file", ["--write", "-o", "pad.yaml"], READINGS, 2],
  ["a row is wrong", ["--write"], `${READINGS}2027-04-17,clear,incident,180,50\n`, 2],
])("when %s, leaves the file as it was", async (_, more, readings, exit) => {
  const before = bytes();
  writeFileSync(join(folder, "r.csv"), readings);
  const ran = await run(["readings", "pad.yaml", "r.csv", ...more], { cwd: folder });
  expect(ran.exit).toBe(exit);
  expect(bytes()).toBe(before);
  expect(readFileSync(join(folder, "r.csv"), "utf8")).toBe(readings);
  expect(readdirSync(folder).sort()).toEqual(["pad.yaml", "r.csv"]);
});

it("a file that changed between reading and writing is refused and kept", () => {
  const path = join(folder, "pad.yaml");
  const opened = openToChange(path);
  writeFileSync(path, `${opened.text}# a line more\n`);
  expect(() => replaceSource(path, opened.bytes, "gone")).toThrow(PadstopError);
  expect(bytes()).toBe(`${opened.text}# a line more\n`);
  expect(readdirSync(folder).sort()).toEqual(["pad.yaml", "r.csv"]);
});
