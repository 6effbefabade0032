/** The demo sites, the starter and the published JSON Schema. */

import { readdirSync, readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { planWindow } from "../../src/plan/planWindow.ts";
import { sweepTracker } from "../../src/plan/sweep/sweepTracker.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { siteJsonSchema } from "../../src/site/siteSchema.ts";
import { starterSite } from "../../src/site/starter.ts";

const SITES = new URL("../../sites/", import.meta.url);
const names = readdirSync(SITES).filter((name) => name.endsWith(".yaml"));
const read = (name: string): string => readFileSync(new URL(name, SITES), "utf8");
/** The files that a demo names, from beside it. */
const beside = (name: string): string => read(name);

const ajv = new Ajv2020.Ajv2020({ strict: false, allErrors: true });
const validate = ajv.compile(JSON.parse(read("site.schema.json")) as object);

describe("the demo sites", () => {
  it("are three, and Skerry Vane has 26 cameras", () => {
    expect(names).toEqual(["calm-parallel.yaml", "long-day.yaml", "skerry-vane.yaml"]);
    expect(parseSite(read("skerry-vane.yaml")).cameras).toHaveLength(26);
  });

  it.each(names)("%s parses, names its schema and satisfies it", (name) => {
    const text = read(name);
    expect(text.startsWith("# yaml-language-server: $schema=./site.schema.json\n")).toBe(true);
    const site = parseSite(text, beside, name);
    expect(site.windows.length).toBeGreaterThan(0);
    expect(
      site.cameras.every(
        ({ shutters, lens, medium }) => shutters.length > 0 && lens.stops.length > 0 && medium,
      ),
    ).toBe(true);
    expect([validate(parse(text)), validate.errors]).toEqual([true, null]);
  });
});

describe("the starter site", () => {
  it.each(["Gull Rock", 'A "quoted" $& name', "", "a: b # c"])("named %j is sound", (name) => {
    const site = parseSite(starterSite(name));
    expect(site.name).toBe(name === "" ? "New site" : name);
    expect(site.windows).toHaveLength(2);
    expect(validate(parse(starterSite(name)))).toBe(true);
  });

  it("gives every camera a setting that holds in both windows, and its tracker a sweep", () => {
    const site = parseSite(starterSite("x"));
    for (const window of site.windows) {
      const { cameras } = planWindow(site, window, { sky: ["clear"], stepS: 1800 });
      expect(cameras.map(({ setting }) => setting?.holds)).toEqual([1, 1, 1, 1]);
      expect(sweepTracker(site, "T1", window, { stepS: 1800 }).id).toBe("T1");
    }
  });

  it("is sound with its commented lines taken in", () => {
    const lit = starterSite("x").replace("# floodlights:", "floodlights:");
    expect(parseSite(lit).floodlightLx).toBe(300);
    const tabled = starterSite("x")
      .replace("  # ascent: ascent.csv", "  ascent: ascent.csv")
      .replace(/^ {2}ascent: \{.*$/m, "");
    const table = "t (s),east (m),north (m),up (m)\n0,0,0,0\n20,0,0,900\n40,200,0,4000\n";
    expect(parseSite(tabled, () => table).vehicle?.ascent).toBeTruthy();
    const turned = starterSite("x").replace("bearings: true", "bearings: -8.5");
    expect(parseSite(turned).cameras[0]!.at).toMatchObject({ bearingDeg: 131.5 });
  });
});

describe("the JSON Schema", () => {
  it("is the committed file", () => {
    expect(JSON.parse(read("site.schema.json"))).toEqual(siteJsonSchema());
  });

  it.each([
    ["an unknown key", "zebra: 1\n"],
    ["a number out of range", "settings: { comfort: 99 }\n"],
    ["a wrong word", "media: { x: { speed: 1, kind: slide } }\n"],
  ])("refuses %s", (_, extra) => {
    const text = starterSite("x")
      .replace("media:", "unused:")
      .replace(/unused:[^\n]*\n[^\n]*\n/, "");
    expect(validate(parse(text))).toBe(true);
    expect(validate(parse(text + extra))).toBe(false);
  });
});
