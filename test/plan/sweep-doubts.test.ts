/** What is told of an ascent that looks like a slip, of a vehicle that cannot be seen, of the air that a plan leaves out. */

import { describe, expect, it } from "vitest";
import { planWindow } from "../../src/plan/planWindow.ts";
import { sweepTrackers } from "../../src/plan/sweep/sweepTracker.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { siteAscentOf } from "../../src/view/siteAscent.ts";

const HEAD = "t (s),east (m),north (m),up (m)\n";
const rowsOf = (fromS: number, toS: number, upM: (s: number) => number): string =>
  Array.from({ length: toS - fromS + 1 }, (_, i) => `${fromS + i},0,0,${upM(fromS + i)}\n`).join("");
const RISING = HEAD + rowsOf(0, 60, (s) => 3 * s * s);

const siteOf = (csv: string, camera = "at: { bearing: 120, range: 5 km }, track: { part: nose }"): Site =>
  parseSite(
    `site: { name: Doubt, zone: UTC, latitude: 45, longitude: 0 }
vehicle: { height: 30, diameter: 3, ascent: way.csv }
media: { film: { speed: 200, kind: negative } }
cameras:
  - { id: T, ${camera}, lens: { focal: 400, stops: [4, 8, 16] }, gate: 35mm 4-perf, medium: film, shutter: { time: 1/500 } }
windows:
  - { opens: 2027-04-18T15:00, closes: 2027-04-18T15:20 }
`,
    { "way.csv": csv },
  );

const doubtsOf = (csv: string): readonly string[] => siteAscentOf(siteOf(csv))!.assumed;

describe("an ascent table that looks like a slip", () => {
  it("is told with its clock, its units or its end, and a sound one with nothing", () => {
    expect(doubtsOf(RISING)).toEqual([]);
    expect(doubtsOf(HEAD + rowsOf(-10, 50, (s) => 3 * (s + 10) ** 2))[0]).toMatch(
      /^the table has the vehicle 300 m from its place at T\+0 already/,
    );
    expect(doubtsOf(HEAD + rowsOf(0, 60, (s) => 0.003 * s * s))[0]).toMatch(
      /^the vehicle flies 0 m\/s at the table's end: are the units right/,
    );
    expect(doubtsOf(HEAD + rowsOf(0, 12, (s) => 3 * s * s))).toEqual([
      "the table ends at T+12 s, so do sweeps",
    ]);
  });

  it("stands on the sheet of its sweep", () => {
    const site = siteOf(HEAD + rowsOf(0, 12, (s) => 3 * s * s));
    expect(sweepTrackers(site, site.windows[0]!, null).notes.join("\n")).toContain(
      "the table ends at T+12 s",
    );
  });
});

describe("a vehicle that cannot be seen", () => {
  const notesUnder = (sky: readonly Sky[], camera?: string): string => {
    const site = siteOf(RISING, camera);
    return sweepTrackers(site, site.windows[0]!, null, { sky }).trackers[0]!.notes.join("\n");
  };

  it("behind cloud is told once for each cloudy sky", () => {
    expect(notesUnder(["clear"])).not.toContain("cloud's base");
    expect(
      notesUnder(["overcast", "bright-cloud", "haze"]).match(/lost to sight at the cloud's base/g),
    ).toHaveLength(2);
  });

  it("in haze a long way off is told to hardly stand out, near by it does", () => {
    const far = "at: { bearing: 120, range: 60 km }, track: { part: nose }";
    expect(notesUnder(["haze"], far)).toMatch(/hardly stands out from the sky under haze, at/);
    expect(notesUnder(["clear"])).not.toContain("hardly stands out");
  });
});

describe("the air between a fixed camera and the body", () => {
  const notesAt = (range: string, sky: Sky): string => {
    const site = siteOf(RISING, `at: { bearing: 120, range: ${range} }, aim: { up: 15 }`);
    return planWindow(site, site.windows[0]!, { sky }).cameras[0]!.notes.join("\n");
  };

  it("has a note where it takes more than three tenths", () => {
    expect(notesAt("4 km", "haze")).toMatch(
      /the air between, not counted, takes [4-7]\d % of the body's light under haze/,
    );
    expect(notesAt("4 km", "clear")).not.toContain("the air between");
    expect(notesAt("400 m", "haze")).not.toContain("the air between");
  });
});
