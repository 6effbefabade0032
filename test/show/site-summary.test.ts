/** What `check` says it understood. */

import { describe, expect, it } from "vitest";
import { siteViews } from "../../src/plan/siteViews.ts";
import { PLAIN } from "../../src/show/paint.ts";
import { siteSummary } from "../../src/show/siteSummary.ts";
import { parseSite } from "../../src/site/parseSite.ts";

const HEAD = "site: { name: x, zone: Europe/Oslo, latitude: 60, longitude: 10, height: 0 }\n";
const CAMERA = "cameras:\n  - { id: A, azimuth: 1, lens: { focal: 50 }, gate: full-frame }\n";

function summary(text: string, width = 80): string {
  const site = parseSite(HEAD + text);
  return siteSummary(site, siteViews(site), { width, paint: PLAIN });
}
/** Without the folds. */
const flat = (text: string): string => text.replaceAll(/\n {2}/g, " ");

describe("the summary of a site", () => {
  it("tells what was taken where the file is silent", () => {
    const text = flat(
      summary("cameras:\n  - { id: A, azimuth: 1, lens: { focal: 50 }, gate: full-frame }\n"),
    );
    expect(text).toContain("air not given, 1013 hPa and 15 °C of the standard atmosphere taken");
    expect(text).toContain("no vehicle: light only");
    expect(text).toContain("no window: plan, view and sweep ask for one with --window");
    expect(text).toContain("1 of 1 camera without a setting, light and sun only: A");
    expect(text).toContain("A (no lens stops, no shutter, no medium)");
  });

  // Oslo is two hours before UTC in summer, one in winter.
  it.each([
    ["2027-06-20T22:30", "2027-06-21T02:00", "in UTC 20:30 to Mon 21 Jun 00:00; 3 h 30 min"],
    ["2027-06-21T01:00", "2027-06-21T01:45", "in UTC Sun 20 Jun 23:00 to 23:45; 45 min"],
    ["2027-01-10T12:00", "2027-01-10T14:00", "in UTC 11:00 to 13:00; 2 h"],
    ["2027-06-21T01:00", "2027-06-21T03:00", "in UTC Sun 20 Jun 23:00 to Mon 21 Jun 01:00; 2 h"],
  ])("tells a window in UTC: %s to %s", (opens, closes, words) => {
    expect(flat(summary(`${CAMERA}windows: [{ opens: "${opens}", closes: "${closes}" }]\n`))).toContain(
      words,
    );
  });

  it("groups what is the same of 300 cameras", () => {
    const ids = Array.from({ length: 300 }, (_, i) => `C${i}`);
    const cameras = ids.map((id) => `  - { id: ${id}, azimuth: 1, lens: { focal: 50 }, gate: full-frame }\n`);
    const text = summary(`cameras:\n${cameras.join("")}`);
    const lines = text.slice(0, text.indexOf("\n\nid ")).split("\n");
    expect(lines.length).toBeLessThan(10);
    expect(flat(text)).toContain("C0, C1, C2, C3, C4, C5, C6, C7 and 292 more");
  });

  it("shows the field of view where there is room", () => {
    const cameras =
      "cameras:\n  - { id: A, azimuth: 1, lens: { focal: 18 }, gate: { width: 36, height: 24 } }\n";
    // 2 atan(18 / 18) and 2 atan(12 / 18).
    expect(summary(cameras, 120)).toContain("90.0 x 67.4°");
    expect(summary(cameras, 50)).not.toContain("67.4");
  });
});
