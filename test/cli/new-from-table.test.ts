/** `new --from`: a site file for the cameras of a table, checked first, which plans at once and replaces nothing. */

import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { eachInFreshFolder } from "../support/freshFolder.ts";
import { run, SITES } from "./run.ts";

let folder = "";
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
const read = (name: string): string => readFileSync(join(folder, name), "utf8");
const inFolder = (...args: string[]) => run(args, { cwd: folder });
eachInFreshFolder((fresh) => {
  folder = fresh;
});

const WHOLE = `Camera;Bearing (°);Range (m);Aim up;Focal (mm);Gate;Stops;Shutter time (s);Film
P1;143,5;400;20;85;35mm 4-perf;2,8 4 5,6 8 11 16;1/500 1/1000;"Dunlin ""new"""
P2;200;900;20;135;35mm 4-perf;4 5,6 8 11 16;1/500 1/1000;slow
`;

it("plans at once, with the table's cameras and media", async () => {
  write("cameras.csv", WHOLE);
  const made = await inFolder("new", "Gannet Ledge", "--from", "cameras.csv");
  expect(made).toMatchObject({ exit: 0, stdout: "" });
  expect(made.stderr.split("\n")).toEqual([
    "cameras.csv: decimal commas, 143,5 is read as 143.5.",
    'Fill in: place, zone, vehicle, window; speed and kind of Dunlin "new", slow.',
    "Wrote gannet-ledge.yaml. Next: padstop plan gannet-ledge.yaml",
    "",
  ]);
  expect(read("gannet-ledge.yaml")).toContain('\ncameras-from: "cameras.csv"\n');
  expect(read("gannet-ledge.yaml")).toContain('  "Dunlin \\"new\\"": { speed: 200, kind: negative }\n');
  const planned = await inFolder("plan", "gannet-ledge.yaml", "--step", "900", "--fail-on", "unset", "-q");
  expect(planned).toMatchObject({ exit: 0, stderr: "" });
  expect(planned.stdout).toMatch(/^P2 /m);
});

it("on stdout is the text alone: what it has to tell goes to stderr", async () => {
  write("cameras.csv", WHOLE);
  const shown = await inFolder("new", "Gannet Ledge", "--from", "cameras.csv", "-o", "-");
  expect(shown.exit).toBe(0);
  expect(shown.stderr.split("\n")).toEqual([
    "cameras.csv: decimal commas, 143,5 is read as 143.5.",
    'Fill in: place, zone, vehicle, window; speed and kind of Dunlin "new", slow.',
    "",
  ]);
  expect(readdirSync(folder)).toEqual(["cameras.csv"]);
  await inFolder("new", "Gannet Ledge", "--from", "cameras.csv", "-q");
  expect(shown.stdout).toBe(read("gannet-ledge.yaml"));
});

it("says which cameras get no setting yet, and why; nothing when quiet", async () => {
  write(
    "cameras.csv",
    "id,azimuth,lens.focal,gate,stops\nA1,1,50,16mm,4 5.6\nA2,1,50,16mm,4\nA3,1,50,16mm,\n",
  );
  const { stderr } = await inFolder("new", "Gannet Ledge", "--from", "cameras.csv");
  expect(stderr).toContain("No setting yet for A1, A2: no shutter, no medium.\n");
  expect(stderr).toContain("No setting yet for A3: no lens stops, no shutter, no medium.\n");
  expect(await inFolder("new", "Other", "--from", "cameras.csv", "-q")).toMatchObject({
    exit: 0,
    stderr: "",
  });
});

it("puts a stand-in for the pad among cameras that have coordinates", async () => {
  for (const [name, rows] of [
    ["two", "A,-31.25,179.9,1,50,16mm\nB,-31.15,-179.9,1,50,16mm\n"],
    ["one", "A,-31.25,179.9,1,50,16mm\n"],
  ] as const) {
    write(`${name}.csv`, `id,lat,lon,azimuth,focal,gate\n${rows}`);
    const made = await inFolder("new", name, "--from", `${name}.csv`);
    expect(made.stderr).toContain("place (a stand-in near the cameras)");
    expect((await inFolder("check", `${name}.yaml`)).exit).toBe(0);
  }
  expect(read("two.yaml")).toMatch(/latitude: -31.2 [^\n]*\n {2}longitude: -?180 /);
  expect(read("one.yaml")).toMatch(/latitude: -31.24 [^\n]*\n {2}longitude: 179.9 /);
});

it("names a table below the new file's folder from there", async () => {
  mkdirSync(join(folder, "pads", "tables"), { recursive: true });
  write("pads/tables/c.csv", WHOLE);
  const made = await inFolder("new", "G", "--from", "pads/tables/c.csv", "-o", "pads/g.yaml");
  expect(made.exit).toBe(0);
  expect(read("pads/g.yaml")).toContain('\ncameras-from: "tables/c.csv"\n');
  expect((await inFolder("check", "pads/g.yaml")).exit).toBe(0);
});

it("writes nothing for a wrong table, a link that leads out, or over a file that is there", async () => {
  write("wrong.csv", "id,azimuth,lens.focal\nA,1,50\n");
  const wrong = await inFolder("new", "G", "--from", "wrong.csv");
  expect(wrong.exit).toBe(2);
  expect(wrong.stderr).toMatch(/^wrong.csv:2:1 {2}E_MISSING {2}cameras\[A\].gate\n/);
  symlinkSync(join(SITES, "long-day-ascent.csv"), join(folder, "link.csv"));
  expect((await inFolder("new", "G", "--from", "link.csv")).stderr).toMatch(
    /^E_FILE {2}--from\n.*leads out of it/,
  );
  expect(existsSync(join(folder, "g.yaml"))).toBe(false);
  write("cameras.csv", WHOLE);
  write("g.yaml", "kept");
  expect((await inFolder("new", "G", "--from", "cameras.csv")).stderr).toMatch(/E_WRITE/);
  expect(read("g.yaml")).toBe("kept");
  expect(readdirSync(folder).sort()).toEqual(["cameras.csv", "g.yaml", "link.csv", "wrong.csv"]);
});
