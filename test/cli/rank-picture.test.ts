/** `rank --picture`: a whole SVG file beside the usual output, or none. */

import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { eachInFreshFolder } from "../support/freshFolder.ts";
import { run, SITES, TRACE } from "./run.ts";

const SITE = join(SITES, "calm-parallel.yaml");
const RANK = ["rank", SITE, "--step", "600"];
let folder = "";
eachInFreshFolder((fresh) => {
  folder = fresh;
});

it("writes the best window and changes nothing of the output", async () => {
  const shown = await run([...RANK, "-q"]);
  const drawn = await run([...RANK, "--picture", "best.svg"], { cwd: folder });
  expect(drawn.exit).toBe(0);
  expect(drawn.stdout).toBe(shown.stdout);
  expect(drawn.stderr).toMatch(/(^|\n)Wrote best\.svg\n$/);
  const svg = readFileSync(join(folder, "best.svg"), "utf8");
  expect(svg).toMatch(/^<\?xml [^>]*\?>\n<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(svg).toMatch(/<\/svg>\n$/);
  expect(svg).not.toMatch(TRACE);
  expect(svg).not.toMatch(/ style="|<script|href=/);
  expect(readdirSync(folder)).toEqual(["best.svg"]);
  const again = await run([...RANK, "--picture", "best.svg", "-q"], { cwd: folder });
  expect(again.stderr).toBe("");
  expect(readFileSync(join(folder, "best.svg"), "utf8")).toBe(svg);
});

it("draws as many windows as --strip says, and goes with JSON, CSV and -o", async () => {
  await run([...RANK, "--strip", "2", "--picture", "two.svg"], { cwd: folder });
  const two = readFileSync(join(folder, "two.svg"), "utf8");
  expect(two.match(/class="strip-frame"/g)!.length).toBe(2);
  const json = await run([...RANK, "--format", "json", "--picture", "one.svg", "-o", "rank.json"], {
    cwd: folder,
  });
  expect(json.stderr).toMatch(/Wrote one\.svg\nWrote rank\.json\n$/);
  expect(JSON.parse(readFileSync(join(folder, "rank.json"), "utf8"))).toHaveProperty("windows");
  const svg = readFileSync(join(folder, "one.svg"), "utf8");
  expect(svg.match(/class="strip-frame"/g)!.length).toBe(1);
});

it("--strip beside JSON is for the picture alone", async () => {
  const json = await run([...RANK, "--format", "json", "-q"]);
  const args = [...RANK, "--strip", "3", "--picture", "b.svg", "--format", "json", "-q"];
  const drawn = await run(args, { cwd: folder });
  expect(drawn).toMatchObject({ exit: 0, stdout: json.stdout, stderr: "" });
  // All that the site has.
  expect(readFileSync(join(folder, "b.svg"), "utf8").match(/class="strip-frame"/g)!.length).toBe(2);
});

it("is refused where -o leads to the same file by another way", async () => {
  mkdirSync(join(folder, "real"));
  symlinkSync("real", join(folder, "linked"));
  const args = [...RANK, "--picture", "real/best.svg", "-o", "linked/best.svg"];
  const ran = await run(args, { cwd: folder });
  expect(ran).toMatchObject({ exit: 2, stdout: "" });
  expect(ran.stderr).toMatch(/^E_CONFLICT {2}--picture\n/);
  expect(readdirSync(join(folder, "real"))).toEqual([]);
});

it.each(["missing/best.svg", ".", ""])("to %j is refused before anything is printed", async (target) => {
  const ran = await run([...RANK, "-q", "--picture", target], { cwd: folder });
  expect(ran).toMatchObject({ exit: 2, stdout: "" });
  expect(ran.stderr).toMatch(/^E_WRITE {2}/);
  expect(ran.stderr).not.toMatch(TRACE);
  expect(readdirSync(folder)).toEqual([]);
});

it("never replaces the site file", async () => {
  const text = readFileSync(join(SITES, "long-day.yaml"), "utf8");
  writeFileSync(join(folder, "pad.yaml"), text);
  const ran = await run(["rank", "pad.yaml", "--step", "1800", "-q", "--picture", "pad.yaml"], {
    cwd: folder,
  });
  expect(ran).toMatchObject({ exit: 2, stdout: "" });
  expect(readFileSync(join(folder, "pad.yaml"), "utf8")).toBe(text);
});

it("is not made with wrong input", async () => {
  const ran = await run([...RANK, "--sky", "clar", "--picture", "best.svg"], { cwd: folder });
  expect(ran.exit).toBe(2);
  expect(existsSync(join(folder, "best.svg"))).toBe(false);
});
