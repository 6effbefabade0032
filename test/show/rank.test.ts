/** A ranking as bars and strips: parts that add up, what is cut and counted, who is well lit. */

import { describe, expect, it } from "vitest";
import type { RankedWindow } from "../../src/plan/rank/rankTypes.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { type Strip, type StripCell, stripOf } from "../../src/plan/rank/strip.ts";
import { RankBars, skyParts } from "../../src/show/draw/rankBars.tsx";
import { rankStripsFile, stripRuns } from "../../src/show/draw/rankStrips.tsx";
import { sunAt } from "../../src/sky/sun.ts";
import { siteOf, standing } from "../plan/sites.ts";
import { drawingFile, expectSvg } from "../support/goldenSvg.ts";

const DAY = { name: "morning", opens: new Date("2027-04-10T07:00Z"), closes: new Date("2027-04-10T09:00Z") };
const LATE = { name: null, opens: new Date("2027-04-10T15:00Z"), closes: new Date("2027-04-10T17:30Z") };
const SITE = siteOf({
  cameras: [
    standing("E", 90, "lens: { focal: 85 }, weight: 3"),
    standing("S", 200),
    "id: A, azimuth: 275, elevation: 8, lens: { focal: 50 }",
  ],
});
const SKIES = { sky: ["clear", "overcast"] as const, skyWeights: [3, 1], stepS: 300 };
const RANKING = rankWindows(SITE, [DAY, LATE], SKIES);
const bars = (ranking: typeof RANKING): string => drawingFile(RankBars({ ranking }));

const cell = (light: StripCell["light"], isWellLit: boolean, sun: StripCell["sun"] = null): StripCell => ({
  light,
  isWellLit,
  sun,
});
const edge = (minute: number): Date => new Date(DAY.opens.getTime() + minute * 60_000);
const BY_HAND: Strip = {
  window: DAY,
  edges: [0, 30, 60, 90, 120].map(edge),
  rows: [
    {
      id: "<i>E",
      weight: 1,
      cells: [
        cell("front", true),
        cell("front", true),
        cell("front", false),
        cell("side", false, "in-frame"),
      ],
    },
    {
      id: "T",
      weight: 1,
      cells: [
        cell("back", false),
        cell("back", false, "near-frame"),
        cell("flat", true),
        cell("dusk", false),
      ],
    },
  ],
  share: [0.5, 0.5, 0.5, 0],
};
const picture = (strips: readonly Strip[], titles: readonly string[]): string =>
  rankStripsFile({ strips, titles, zone: "UTC", sky: "clear", site: "A & <B>", follows: new Set(["T"]) });

describe("bars", () => {
  it("have parts that add up to the share", () => {
    for (const window of RANKING.windows) {
      const parts = skyParts(window, RANKING.sky);
      expect(parts.reduce((sum, { part }) => sum + part, 0)).toBeCloseTo(window.share, 9);
      expect(parts[1]!.from).toBeCloseTo(parts[0]!.part, 12);
    }
    // By hand: 0.75 of 0.8 and 0.25 of 0.4.
    const window = {
      bySky: [
        { sky: "clear", share: 0.8 },
        { sky: "overcast", share: 0.4 },
      ],
    };
    expect(skyParts(window, RANKING.sky).map(({ part }) => Number(part.toFixed(9)))).toEqual([0.6, 0.1]);
  });

  it("are 30 at most, the rest is counted", () => {
    const many = Array.from(
      { length: 47 },
      (_, i): RankedWindow => ({ ...RANKING.windows[0]!, rank: i + 1 }),
    );
    const svg = bars({ ...RANKING, windows: many });
    expect(svg).toContain(">30</text>");
    expect(svg).not.toContain(">31</text>");
    expect(svg).toContain("and 17 more");
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("never call a weight that is something nothing", () => {
    const [clear, overcast] = RANKING.sky;
    const sky = [
      { ...clear!, weight: 0.996 },
      { ...overcast!, weight: 0.004 },
    ];
    expect(bars({ ...RANKING, sky })).toMatch(/part of clear, weight 99 %.*part of overcast, weight 1 %/s);
  });

  it("escape and cut names", () => {
    const name = `<script>'"${"n".repeat(300)}`;
    const svg = bars({ ...RANKING, windows: [{ ...RANKING.windows[0]!, name }] });
    expect(svg).not.toContain("<script>");
    expect(svg).toMatch(/unicode-bidi="plaintext"><title>[^<]*n{300}<\/title>[^<]*…<\/text>/);
  });

  it("are the kept ones", () => {
    expectSvg("rank-bars", bars(RANKING));
  });
});

describe("strips of ranked windows", () => {
  it("part where the verdict changes within a class, with a capital where it is well lit", () => {
    const minuteOf = (ms: number): number => (ms - DAY.opens.getTime()) / 60_000;
    const runs = stripRuns(
      BY_HAND.rows[0]!.cells,
      BY_HAND.edges.map((at) => at.getTime()),
    );
    expect(
      runs.map(({ light, letter, fromMs, toMs }) => [light, letter, minuteOf(fromMs), minuteOf(toMs)]),
    ).toEqual([
      ["front", "F", 0, 60],
      ["front", "f", 60, 90],
      ["side", "s", 90, 120],
    ]);
  });

  it("are one file, escaped, with no NaN, whatever the number of cameras", () => {
    const svg = picture([BY_HAND, BY_HAND], ["one", `<script>${"t".repeat(400)}`]);
    expect(svg).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>\n<svg /);
    expect(svg).not.toMatch(/<script>|<i>|<B>|NaN|undefined|Infinity| style="/);
    expect(svg).toContain("follows the vehicle");
    for (const count of [1, 300]) {
      const rows = Array.from({ length: count }, (_, i) => ({ ...BY_HAND.rows[i % 2]!, id: `C${i}` }));
      expect(picture([{ ...BY_HAND, rows }], ["many"])).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it("show a crossing of the sun shorter than a stretch", () => {
    // A long lens on where the sun stands 3.5 minutes into the eighth quarter of an hour: it has passed before the middle.
    const { azimuthDeg, apparentElevationDeg } = sunAt(SITE.place, new Date("2027-04-10T16:48:30Z"));
    const long = `id: L, azimuth: ${azimuthDeg}, elevation: ${apparentElevationDeg}, lens: { focal: 2400 }`;
    const site = siteOf({ cameras: [long] });
    const [ranked] = rankWindows(site, [LATE], SKIES).windows;
    const { inFrame } = ranked!.views[0]!;
    expect(inFrame.length).toBe(1);
    expect(inFrame[0]!.from.getTime()).toBeGreaterThan(Date.parse("2027-04-10T16:45:00Z"));
    expect(inFrame[0]!.to.getTime()).toBeLessThan(Date.parse("2027-04-10T16:52:30Z"));
    const strip = stripOf(site, ranked!, "clear", 10);
    const met = strip.rows[0]!.cells.map(({ sun }) => sun === "in-frame");
    expect(met).toEqual(met.map((_, i) => i === 7));
    expect(picture([strip], ["late"]).includes("sun in the frame")).toBe(true);
  });

  it("are the kept ones", () => {
    expectSvg("rank-strips", picture([BY_HAND, { ...BY_HAND, window: DAY }], ["morning", "again"]));
  });
});
