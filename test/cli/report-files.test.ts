/** `report` and `view --picture` as files: the window, T-0 and cards asked for, the same output beside them, never over the site. */

import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { eachInFreshFolder } from "../support/freshFolder.ts";
import { run, SITES } from "./run.ts";

const SITE = join(SITES, "long-day.yaml");
const QUICK = ["--sky", "clear", "--step", "1800", "-q"];
let folder = "";
eachInFreshFolder((fresh) => {
  folder = fresh;
});
const read = (name: string): string => readFileSync(join(folder, name), "utf8");

it("a report is of the window and with the cards asked for", async () => {
  const ran = await run(["report", SITE, "--window", "noon", "--cards", "4", ...QUICK, "-o", "p.html"], {
    cwd: folder,
  });
  expect(ran).toMatchObject({ exit: 0, stdout: "", stderr: "" });
  const page = read("p.html");
  expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
  expect(page).toMatch(/<title>[^<]*, noon<\/title>/);
  expect(page).toContain('<body data-cards="4">');
  // Two windows: both are ranked.
  expect(page).toContain("Windows of the site, by well-lit views");
  const piped = await run(["report", SITE, ...QUICK]);
  expect(piped.stdout).toMatch(/<title>[^<]*, midnight sun<\/title>/);
  expect(piped.stdout).toContain('<body data-cards="2">');
});

it("a report of views that all count for nothing has its windows, and no ranking of them", async () => {
  const text = readFileSync(join(SITES, "calm-parallel.yaml"), "utf8");
  const weightless = text.replaceAll(/ {2}- \{ id: /g, "  - { weight: 0, id: ");
  writeFileSync(join(folder, "pad.yaml"), weightless);
  expect(await run(["rank", "pad.yaml", "--step", "1800"], { cwd: folder })).toMatchObject({ exit: 2 });
  const ran = await run(["report", "pad.yaml", ...QUICK, "-o", "p.html"], { cwd: folder });
  expect(ran).toMatchObject({ exit: 0, stdout: "", stderr: "" });
  expect(read("p.html")).toMatch(/<title>[^<]*, equinox noon<\/title>/);
  expect(read("p.html")).not.toContain("Windows of the site, by well-lit views");
});

it("a picture of a view is of the T-0 asked for, and changes nothing of the output", async () => {
  const view = ["view", SITE, "S1", "--at", "00:30", "--sky", "clear,overcast", "--step", "1800", "-q"];
  const shown = await run(view);
  const drawn = await run([...view, "--picture", "v.svg"], { cwd: folder });
  expect(drawn).toMatchObject({ exit: 0, stdout: shown.stdout, stderr: "" });
  const svg = read("v.svg");
  expect(svg).toMatch(/^<\?xml [^>]*\?>\n<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(svg).toMatch(/What S1 sees at T-0 \w+ 00:30:00/);
  expect(svg).toContain(">one for all: ");
  expect(svg).not.toMatch(/ style="|<script|href=/);
  expect(readdirSync(folder)).toEqual(["v.svg"]);
});

it("neither takes the place of the site file", async () => {
  const text = readFileSync(join(SITES, "calm-parallel.yaml"), "utf8");
  writeFileSync(join(folder, "pad.yaml"), text);
  for (const args of [
    ["report", "pad.yaml", ...QUICK, "-o", "pad.yaml"],
    ["view", "pad.yaml", "C1", ...QUICK, "--picture", "./pad.yaml"],
  ])
    expect(await run(args, { cwd: folder })).toMatchObject({ exit: 2, stdout: "" });
  expect(read("pad.yaml")).toBe(text);
});
