/** The sheet of a sweep: within the width, rounded so that nothing looks better than it is. */

import { describe, expect, it } from "vitest";
import { changeNotes } from "../../src/plan/sweep/sweepNotes.ts";
import type { SweepPlan, SweepRow, TrackerSweep } from "../../src/plan/sweep/sweepTypes.ts";
import { COLOURED, PLAIN } from "../../src/show/paint.ts";
import { sweepSheet } from "../../src/show/sweepSheet.ts";
import { makeSecondsClock, tPlusSpansText } from "../../src/show/sweepTimes.ts";
import {
  BEYOND,
  CHANGE,
  CLEAR,
  CROSSED,
  day,
  NIGHT,
  planOf,
  rowsEvery,
  settingOf,
  trackerOf,
} from "../support/sweepPlans.ts";

const sheetOf = (plan: SweepPlan, width = 80, strips: readonly string[] = []): string =>
  sweepSheet(plan, { width, paint: PLAIN, strips });
/** Folded lines joined again, for words that stand over a line's end. */
const flowing = (text: string): string => text.replace(/\n +/g, " ");
const tooWide = (text: string, width: number): string[] =>
  text.split("\n").filter((line) => [...line].length > width);

const crossedRows = (tPlusS: number): Partial<SweepRow> => ({
  fromEdgeDeg: Math.abs(tPlusS - 35) / 5 - 0.4,
  sun: Math.abs(tPlusS - 35) <= 2 ? "in-frame" : Math.abs(tPlusS - 35) < 25 ? "near-frame" : "clear",
});
const T1 = trackerOf("T1", {
  sun: CROSSED,
  change: CHANGE,
  timeline: { at: day("18:25:00"), sky: "clear", rows: rowsEvery(1, 150, crossedRows) },
});
const PLANS: readonly SweepPlan[] = [
  planOf([trackerOf("T0")], { sky: ["clear"] }),
  planOf([T1]),
  planOf([NIGHT]),
  planOf([BEYOND]),
  planOf([trackerOf("T0"), NIGHT, T1, BEYOND]),
];

describe("the sheet of a sweep", () => {
  it.each([80, 140])("keeps within %i columns, whatever the figures", (width) => {
    for (const plan of PLANS) {
      expect(tooWide(sheetOf(plan, width), width)).toEqual([]);
      expect(sheetOf(plan, width)).not.toMatch(/NaN|undefined|null|\[object|-0\.0\b/);
    }
    const long = trackerOf("a-tracker-with-a-name-of-more-than-24-letters", {
      bySky: [{ sky: "bright-cloud", setting: settingOf(5.6, 1 / 288, { shutterAngleDeg: 172.8 }) }],
    });
    const plan = planOf([long, T1], {
      window: { ...PLANS[0]!.window, closes: new Date("2027-04-19T02:00Z") },
    });
    expect(tooWide(sheetOf(plan, width), width)).toEqual([]);
  });

  it("says what it is of", () => {
    expect(sheetOf(PLANS[1]!)).toMatch(
      /^T1 at Skerry Vane\nSunday 18 April 2027, T-0 from 17:10 to 19:40 \(UTC, UTC\)\nascent made from parameters, T\+0 to T\+150 s\n1 tracker · sky clear, haze · a T-0 every 60 s\n/,
    );
    expect(sheetOf(PLANS[4]!)).toMatch(/^Trackers at Skerry Vane\n[\s\S]*\n4 trackers · /);
  });

  it("colours what it says in words, and nothing else", () => {
    const painted = sweepSheet(PLANS[4]!, { width: 80, paint: COLOURED, strips: [] });
    expect(painted).toContain("\u001b[31mIN FRAME\u001b[39m");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape of our own colours
    expect(painted.replace(/\u001b\[\d+m/g, "")).toBe(sheetOf(PLANS[4]!));
  });

  it("tells shared notes once, and what the ascent leaves open", () => {
    const notes = sheetOf(PLANS[4]!).split("NOTES\n")[1]!;
    expect(notes.match(/smear by wind/g)).toHaveLength(1);
    expect(notes).toContain("- all trackers: smear by wind is not counted\n");
    expect(notes).toContain(
      "- the air between is that of the pad\n- ascent: burn not given: 150 s assumed\n",
    );
    expect(sheetOf(PLANS[0]!)).toContain("NOTES\n- smear by wind is not counted\n");
    const told = planOf([trackerOf("T0")], { notes: ["ascent: burn not given: 150 s assumed"] });
    expect(sheetOf(told).match(/burn not given/g)).toHaveLength(1);
    const change = trackerOf("T0", { change: CHANGE, notes: ["its own", ...changeNotes(CHANGE)] });
    for (const trackers of [[change], [change, NIGHT]]) {
      expect(sheetOf(planOf(trackers))).toMatch(/NOTES\n[\s\S]*\bits own\n/);
      expect(flowing(sheetOf(planOf(trackers))).match(/change between/g)).toHaveLength(1);
    }
    expect(sheetOf(PLANS[0]!).trimEnd()).toMatch(/CAUTIONS\n- Never look through a lens at the sun\.$/);
  });
});

describe("the sun along the sweep", () => {
  const sunOf = (plan: SweepPlan, width = 140): string =>
    sheetOf(plan, width).split("SUN ALONG THE SWEEP\n")[1]!.split("\n\n")[0]!;

  it("tells every crossing, T-0 to the second and T+ to a tenth, rounded outward", () => {
    expect(sunOf(PLANS[1]!).split("\n")).toEqual([
      "T-0s for which the sun meets the frame, and the T+ at which it does for any of them, both rounded outward. Exact for the ascent as given: a",
      "degree off is some 4 minutes of T-0, or no crossing at all.",
      "T1 (nose, 1200 mm, 1.2° x 0.86°)  IN FRAME",
      "  in frame  T-0 18:42:10-18:57:01  T+31.2-36.4 s  closest 0.02° off the axis, T-0 18:50:12 T+33.8 s",
      "  near frame  T-0 18:20:30-18:42:11  T+20.0-25.0, 31.2-40.0 s",
      "  hidden  T-0 17:20:01-17:31:09  by water tank and the skyline",
    ]);
  });

  it("tells an ascent made from parameters to the minute and the second", () => {
    const [tracker] = PLANS[1]!.trackers;
    const ascent = { ...tracker!.ascent, kind: "parameters" as const };
    const lines = sunOf({ ...PLANS[1]!, trackers: [{ ...tracker!, ascent }] }).split("\n");
    expect(lines[1]).toMatch(/^parameters: a degree off/);
    expect(lines[3]).toBe(
      "  in frame  T-0 18:42-18:58  T+31-37 s  closest 0.0° off the axis, T-0 18:50 T+34 s",
    );
  });

  it("tells how near a sun comes that is only near the frame", () => {
    const [crossing] = PLANS[1]!.trackers[0]!.sun.nearFrame;
    const sun = { ...CLEAR, risk: "near-frame" as const, nearFrame: [crossing!] };
    expect(sunOf(planOf([trackerOf("T5", { sun })]))).toContain(
      "31.2-40.0 s  closest 0.2° outside the edge, T-0 18:42:10 T+31.4 s",
    );
  });

  it("puts the parts of a crossing below each other where they do not fit side by side", () => {
    expect(sunOf(PLANS[1]!, 80)).toContain(
      "\n  in frame  T-0 18:42:10-18:57:01  T+31.2-36.4 s\n    closest 0.02° off the axis, T-0 18:50:12 T+33.8 s\n",
    );
  });

  it("names the worst tracker first", () => {
    const text = sunOf(PLANS[4]!);
    expect([...text.matchAll(/^(T\d) /gm)].map(([, id]) => id)).toEqual(["T1", "T0", "T3", "T2"]);
    expect(text).toContain(
      "T2 (30 m above the foot, 0.2 of the gate above its middle, 1200 mm, 1.2° x 0.86°)  sun down",
    );
    expect(text).toContain("  clear\n  closest 52.3° outside the edge, T-0 17:10:00 T+0.0 s");
  });

  it("never calls a sun that was hidden for less than a second hidden for one", () => {
    const hidden = [{ from: day("17:20:00.300"), to: day("17:20:00.900"), by: ["mast"] }];
    const sun = { ...CLEAR, risk: "hidden" as const, hidden };
    expect(sunOf(planOf([trackerOf("T4", { sun })]))).toMatch(
      /\) {2}hidden\n {2}hidden {2}for a moment at T-0 17:20:00 {2}by mast$/,
    );
  });

  it("gives T-0s their day and offset where the window has two of them", () => {
    const [opens, closes] = [new Date("2027-10-31T00:10Z"), new Date("2027-11-01T00:10Z")];
    const clock = makeSecondsClock("Europe/London", opens, closes);
    expect(clock.at(new Date("2027-10-31T00:59:59.7Z"))).toBe("Sun 01:00:00 UTC");
    expect(clock.span({ from: new Date("2027-10-31T00:59:59.7Z"), to: closes })).toBe(
      "Sun 01:59:59 UTC+1-Mon 00:10:00 UTC",
    );
    expect(tPlusSpansText([{ fromS: 31.200000000000003, toS: 36.400000000000006 }])).toBe("T+31.2-36.4 s");
  });
});

describe("the setting of a sweep", () => {
  const settingText = (plan: SweepPlan): string =>
    flowing(sheetOf(plan, 140).split("\nSETTING\n")[1]!.split("\n\n")[0]!);
  const changed = (change: TrackerSweep["change"]): string =>
    settingText(planOf([trackerOf("T1", { change })]));

  it("stands in a row per sky, and one for all", () => {
    const text = settingText(PLANS[1]!);
    expect(text).toMatch(/\nhaze +f\/8 +1\/500 +ND0\.6 +100 % +\+1\.1 +body over 18:25 T\+62\.0 s\n/);
    expect(text).toMatch(/\none for all .* body over 18:25 T\+62\.0 s, haze\n/);
    expect(settingText(PLANS[0]!)).not.toContain("one for all");
    expect(settingText(PLANS[2]!)).toMatch(/\nclear +none +see notes\n/);
    const bySky = [{ sky: "clear", setting: settingOf(8, 1 / 500, {}, null) }];
    expect(settingText(planOf([trackerOf("T1", { bySky })], { sky: ["clear"] }))).toMatch(
      /body over 18:25\nEV of the body along the sweep of T-0 18:25, clear: 14.0 throughout$/,
    );
  });

  it("tells when to change, rounded inward", () => {
    expect(settingText(PLANS[1]!)).toMatch(
      /\nno one setting holds the sweep: f\/8 1\/500 up to T\+62 s, f\/5\.6 1\/500 from T\+48 s: change between T\+48 and T\+62 s\nEV of the body/,
    );
    expect(settingText(PLANS[4]!)).toContain("\nT1: no one setting holds the sweep: f/8");
  });

  it("tells a gap, rounded outward, and what holds neither end", () => {
    const { first, second } = CHANGE;
    const gap = { first: { ...first!, untilS: 40.09 }, second: { ...second!, fromS: 47.91 }, changeAt: null };
    expect(changed(gap)).toMatch(
      /: f\/8 1\/500 up to T\+40 s, f\/5\.6 1\/500 from T\+48 s: neither holds between T\+40 and T\+48 s\nEV of the body/,
    );
    expect(changed({ first: null, second, changeAt: null })).toMatch(
      /: none holds its start; f\/5\.6 1\/500 from T\+48 s on\nEV/,
    );
    expect(changed({ first, second: null, changeAt: null })).toMatch(
      /: f\/8 1\/500 up to T\+62 s, none holds its end\nEV/,
    );
    expect(changed({ first: null, second: null, changeAt: null })).toMatch(
      /: none holds its start, none its end\nEV/,
    );
  });

  it("tells what the mount must do, rounded up, and where it cannot", () => {
    const slew = (plan: SweepPlan): string => sheetOf(plan).split("\nSLEW\n")[1]!.split("\n\n")[0]!;
    expect(slew(PLANS[3]!)).toMatch(
      /\nT3 +007\.3 -0\.4 +2034 m +22\.1°\/s T\+12\.3 s +4\.0°\/s T\+10\.0 s\nT3: the mount cannot follow T\+10\.0-14\.3 s: azimuth needs 22\.1°\/s, it does 20°\/s;\n {2}where it then looks, and what of the sun, is not known$/,
    );
    expect(slew(PLANS[0]!)).toMatch(/ 3\.3°\/s T\+12\.3 s +0\.30°\/s T\+10\.0 s$/);
    const painted = sweepSheet(PLANS[3]!, { width: 140, paint: COLOURED, strips: [] });
    expect(painted).toContain("\u001b[31mthe mount cannot follow T+10.0-14.3 s\u001b[39m");
  });
});
