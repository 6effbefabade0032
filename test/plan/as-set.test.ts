/** The form of settings: out, filled in, and back; what was set against what was planned. */

import { describe, expect, it } from "vitest";
import { planWindow } from "../../src/plan/planWindow.ts";
import { judgeAsSet } from "../../src/plan/readings/asSet.ts";
import type { AsSetCamera, AsSetReport } from "../../src/plan/readings/formTypes.ts";
import { FORM_COLUMNS } from "../../src/plan/readings/formTypes.ts";
import { recordCsv } from "../../src/show/recordCsv.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site } from "../../src/site/types.ts";
import { demoSite } from "../support/demoSites.ts";
import { problemsFrom } from "../support/problemsFrom.ts";
import { brief } from "../unit/siteText.ts";
import { siteOf, standing } from "./sites.ts";

const SITE = siteOf({ cameras: [standing("S", 180), standing("N", 0), standing("=E", 90)] });
const WINDOW = chooseWindow(SITE, "2027-03-20T11:00/13:00");
const HEADER = FORM_COLUMNS.join(",");

const judge = (rows: readonly string[], site: Site = SITE): AsSetReport =>
  judgeAsSet(site, WINDOW, [HEADER, ...rows].join("\n"), "form.csv", { stepS: 600 });
const S = (set: string): AsSetCamera => judge([`S,clear,8,160 deg 1/216 s,0.00463,0,${set},,,`]).cameras[0]!;

/** The planned columns copied into the set ones. */
const filledIn = (form: string): string =>
  form
    .trimEnd()
    .split("\r\n")
    .map((line, i) => {
      const cells = line.split(",");
      const [stop = "", shutter = "", , filter = ""] = cells.slice(2);
      return i === 0 ? line : [...cells.slice(0, 6), stop, shutter, filter, ...cells.slice(9)].join(",");
    })
    .join("\r\n");

describe("a form filled in as planned", () => {
  it.each(["skerry-vane", "calm-parallel", "long-day"])(
    "of %s is off by nothing and has the margins of the plan",
    (name) => {
      const site = demoSite(name);
      const window = site.windows[0]!;
      const plan = planWindow(site, window, { sky: ["clear", "haze"], stepS: 900 });
      const report = judgeAsSet(site, window, filledIn(recordCsv(plan)), "form.csv", { stepS: 900 });
      expect(report.sky).toEqual(["clear", "haze"]);
      expect(report.missing).toEqual([]);
      let compared = 0;
      for (const [i, { brighterStops, set, planned, notes }] of report.cameras.entries()) {
        const { setting } = plan.cameras[i]!;
        expect(set === null).toBe(setting === null);
        if (setting === null) continue;
        expect(brighterStops).toBe(0);
        expect(set!.spareStops).toBeCloseTo(setting.spareStops, 9);
        expect(set).toMatchObject({ holds: setting.holds, worst: setting.worst });
        expect(planned).toEqual(set);
        expect(notes).toEqual([]);
        compared++;
      }
      expect(compared).toBeGreaterThan(5);
    },
  );

  it("keeps an id that a spreadsheet would take for a formula", () => {
    const plan = planWindow(SITE, WINDOW, { stepS: 600 });
    const form = filledIn(recordCsv(plan));
    expect(form).toContain("'=E");
    expect(judgeAsSet(SITE, WINDOW, form, "form.csv").cameras[2]).toMatchObject({
      id: "=E",
      brighterStops: 0,
    });
  });
});

describe("stops off, by hand", () => {
  it.each([
    ["a stop opened", "5.6,160 deg,0", 1],
    ["half the opening", "8,80 deg,0", -1],
    ["a density of 0.6: 0.6 / log10 2", "8,160 deg,0.6", -0.6 / Math.log10(2)],
    [
      "a time for an angle: 1/216 was 160 deg at 96 frames/s, 1/500 is what it says",
      "f/8,1/500,none",
      Math.log2(216 / 500),
    ],
    ["seconds and milliseconds", "8,2 ms,0", Math.log2(216 * 0.002)],
  ])("%s", (_, set, stops) => {
    expect(S(set).brighterStops).toBeCloseTo(stops, 9);
  });

  it("move the margins by as much: highlights come nearer when brighter", () => {
    const { set, planned } = S("5.6,160 deg,0");
    expect(set!.fromPlaceStops - planned!.fromPlaceStops).toBeCloseTo(1, 9);
  });

  it("at a T-0 that came are those of that T-0 alone", () => {
    const form = [HEADER, "S,clear,8,160 deg,,0,8,160 deg,0,,,"].join("\n");
    const t0 = new Date(Date.UTC(2027, 2, 20, 11, 30));
    const report = judgeAsSet(SITE, WINDOW, form, "form.csv", { t0 });
    const whole = judgeAsSet(SITE, WINDOW, form, "form.csv");
    expect(report.t0).toEqual(t0);
    expect([0, 1]).toContain(report.cameras[0]!.set!.holds);
    expect(report.cameras[0]!.set!.spareStops).toBeGreaterThanOrEqual(whole.cameras[0]!.set!.spareStops);
  });
});

describe("what is missing or unusual is named and the rest judged", () => {
  it("rows, empty rows, a filter and a shutter that the file has not", () => {
    const report = judge(["S,clear,8,160 deg,,0,8,1/125,2,JK,07:40,windy", "N,clear,8,160 deg,,0,,,,,,"]);
    expect(report).toMatchObject({ missing: ["=E"], notFilledIn: ["N"] });
    const [camera] = report.cameras;
    expect(camera).toMatchObject({ setBy: "JK", setAt: "07:40", note: "windy" });
    expect(camera!.notes).toEqual([
      "shutter 1/125 is none of the site file's for this camera",
      "filter 2 is not in the kit of the site file (0, 0.6, 0.9); if a factor of 2 was meant it is 0.3",
    ]);
    expect(camera!.set).not.toBeNull();
  });
});

const headsOf = (rows: readonly string[]): string[] => brief(problemsFrom(() => judge(rows)));

describe("faults of a form", () => {
  it.each([
    ["an unknown camera", "X,clear,,,,,8,160 deg,0,,,", "E_NAME 2:1 camera"],
    ["no camera", ",clear,,,,,8,160 deg,0,,,", "E_MISSING 2:1 camera"],
    ["a stop not on the lens", "S,clear,,,,,6.3,160 deg,0,,,", "E_CHOICE 2:13 set_stop"],
    ["no stop at all", "S,clear,,,,,wide,160 deg,0,,,", "E_TYPE 2:13 set_stop"],
    ["a time that may be an angle", "S,clear,,,,,8,160,0,,,", "E_UNIT 2:15 set_shutter"],
    ["a time that a spreadsheet made a date of", "S,clear,,,,,8,30-Jan,0,,,", "E_UNIT 2:15 set_shutter"],
    ["an angle over a whole turn", "S,clear,,,,,8,400 deg,0,,,", "E_RANGE 2:15 set_shutter"],
    [
      "an angle with another rate's time",
      "S,clear,,,,,8,160 deg 1/100 s,0,,,",
      "E_CONFLICT 2:15 set_shutter",
    ],
    ["a factor for a density", "S,clear,,,,,8,160 deg,ND64,,,", "E_RANGE 2:23 set_filter"],
    ["a row filled in in part", "S,clear,,,,,8,,0,,,", "E_MISSING 2:1 set_shutter"],
    ["an unknown sky", "S,foggy,,,,,8,160 deg,0,,,", "E_CHOICE 2:3 sky"],
    ["a planned cell that was damaged", "S,clear,8,3-Jan,,0,8,160 deg,0,,,", "E_UNIT 2:11 planned_shutter"],
  ])("%s", (_, row, head) => {
    expect(headsOf([row])).toEqual([head]);
  });

  it("a camera twice names the first line", () => {
    expect(headsOf(["S,clear,,,,,8,160 deg,0,,,", "S,clear,,,,,8,160 deg,0,,,"])).toEqual([
      "E_DUPLICATE 3:1 camera",
    ]);
  });
});
