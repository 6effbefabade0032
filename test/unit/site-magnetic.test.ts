/** `bearings: magnetic`: the same site as with the declination as a number; dates, the model's years, the magnetic poles. */

import { describe, expect, it } from "vitest";
import { bearingNotes } from "../../src/plan/placeNotes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { planJson } from "../../src/show/planJson.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";
import { AXIS, brief, problemsOf, VEHICLE } from "./siteText.ts";

const WINDOW = "windows: [{ opens: 2027-07-02T11:00Z, closes: 2027-07-02T13:00Z }]\n";

/** A site with one of everything that has a bearing. */
const siteText = (bearings: string, windows = WINDOW, place = "latitude: 0, longitude: 120"): string =>
  `site: { name: Test, zone: Pacific/Auckland, ${place}, bearings: ${bearings} }
${VEHICLE.replace("base: 5", "ascent: { heading: 355, thrustToWeight: 2 }")}structures: [{ name: s, at: { bearing: 350, range: 9 }, width: 1, depth: 1, height: 1, turn: 10 }]
horizon: [[-10, 1], [5, 2]]
cameras: [{ id: A, at: { bearing: 355, range: 90 }, azimuth: 20, lens: { focal: 5 }, gate: 16mm }]
${windows}`;

const without = ({ bearings: _, ...rest }: Site) => rest;
const bearingsOf = (text: string) => parseSite(text).bearings;

describe("magnetic bearings", () => {
  it("are those of the same file with the declination as a number", () => {
    // Published with the model: 0.24 west at this place in 2027.5.
    expect(without(parseSite(siteText("magnetic")))).toEqual(without(parseSite(siteText("-0.24"))));
    const far = "latitude: -80, longitude: -120";
    expect(without(parseSite(siteText("magnetic", WINDOW, far)))).toEqual(
      without(parseSite(siteText("68.49", WINDOW, far))),
    );
  });

  it("take the date of the first window that opens, told as the site's zone has it", () => {
    const two = `windows: [{ opens: 2029-01-01T00:00Z, closes: 2029-01-01T01:00Z }, { opens: 2026-03-01T20:00Z, closes: 2026-03-01T21:00Z }]\n`;
    expect(bearingsOf(siteText("magnetic", two))).toMatchObject({ date: "2026-03-02", dateFrom: "window" });
  });

  it("take a date that is written beside, before any window's", () => {
    const read = bearingsOf(siteText("magnetic 2025-01-01"));
    expect(read).toMatchObject({ date: "2025-01-01", dateFrom: "file", declinationDeg: -0.16 });
    expect(bearingsOf(siteText("magnetic 2025-01-01", ""))).toEqual(read);
  });

  it.each([
    ["magnetic", "", "E_MISSING 1:84 site.bearings"],
    ["magnetic", "windows: []\n", "E_MISSING 1:84 site.bearings"],
    ["magnetic", WINDOW.replaceAll("2027", "2031"), "E_RANGE 1:84 site.bearings"],
    ["magnetic 2024-12-31", WINDOW, "E_RANGE 1:84 site.bearings"],
    ["magnetic 2030-01-01", WINDOW, "E_RANGE 1:84 site.bearings"],
    ["magnetic 2026-02-30", WINDOW, "E_TIME 1:84 site.bearings"],
    ["magnetic soon", WINDOW, "E_TIME 1:84 site.bearings"],
    ["grid", WINDOW, "E_TYPE 1:84 site.bearings"],
    // Only the window is wrong.
    ["magnetic", WINDOW.replace("11:00Z", "25:00Z"), "E_TIME 6:20 windows[1].opens"],
  ])("%s with %s: %s", (bearings, windows, expected) => {
    expect(brief(problemsOf(siteText(bearings, windows)))).toEqual([expected]);
  });

  it("are refused in a blackout zone, and warned of in a caution zone", () => {
    // Beside the north magnetic pole of 2025: 85.8 N, 139.3 E by NOAA/NCEI and BGS (from memory).
    const pole = problemsOf(siteText("magnetic", WINDOW, "latitude: 86, longitude: 139"));
    expect(brief(pole)).toEqual(["E_RANGE 1:85 site.bearings"]);
    expect(pole[0]?.found).toContain("blackout zone");
    // The field is 6507.5 nT in the published row at 80 N, and weaker towards Canada.
    const strong = parseSite(siteText("magnetic", WINDOW, "latitude: 80, longitude: 0"));
    const weak = parseSite(siteText("magnetic", WINDOW, "latitude: 80, longitude: -70"));
    expect([strong.bearings, weak.bearings]).toMatchObject([{ isWeak: false }, { isWeak: true }]);
    expect([bearingNotes(strong).length, bearingNotes(weak).length]).toEqual([1, 2]);
    expect(bearingNotes(strong)[0]).toContain("good to about 1 degree;");
  });
});

describe("what is said of bearings", () => {
  it("names declination, date, model and what it leaves out", () => {
    expect(bearingNotes(parseSite(siteText("magnetic")))).toEqual([
      "bearings in the site file are magnetic: declination 0.2° W on 2027-07-02, the first window, by the World Magnetic Model 2025, good to about half a degree; iron near the compass not counted",
    ]);
    expect(bearingNotes(parseSite(siteText("7.5")))).toEqual([
      "bearings in the site file are turned by its declination of 7.5° E",
    ]);
    for (const none of ["true", "0"]) expect(bearingNotes(parseSite(siteText(none)))).toEqual([]);
  });

  it("stands in a plan and its JSON", () => {
    const site = parseSite(
      `site: { name: T, zone: UTC, latitude: 45, longitude: -27, bearings: magnetic }\ncameras: [${AXIS}]\n${WINDOW}`,
    );
    const plan = planWindow(site, site.windows[0]!, { stepS: 3600 });
    expect(plan.notes.join()).toContain("World Magnetic Model 2025");
    const told = (JSON.parse(planJson(plan)) as { site: object }).site;
    expect(told).toMatchObject({ bearings: { kind: "magnetic", date: "2027-07-02", dateFrom: "window" } });
    const { bearings: _, ...rest } = site;
    const flat = planWindow({ ...rest, bearings: { kind: "true" } }, site.windows[0]!, { stepS: 3600 });
    expect(flat.site).not.toHaveProperty("bearings");
  });
});
