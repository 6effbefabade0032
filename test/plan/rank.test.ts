/** Rankings of small invented sites: the rule, its order, its reasons, what it refuses. */

import { describe, expect, it } from "vitest";
import type { Ranking, RankOptions } from "../../src/plan/rank/rankTypes.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { stripOf } from "../../src/plan/rank/strip.ts";
import type { Site, Window } from "../../src/site/types.ts";
import { problemsFrom } from "../support/problemsFrom.ts";
import { siteOf, standing } from "./sites.ts";

const windowOf = (name: string, day: string, from: string, to: string): Window => ({
  name,
  opens: new Date(`2027-${day}T${from}Z`),
  closes: new Date(`2027-${day}T${to}Z`),
});
const MORNING = windowOf("morning", "04-10", "07:00", "09:00");
const EVENING = windowOf("evening", "04-10", "15:00", "17:00");
const NIGHT = windowOf("night", "04-10", "22:00", "23:30");
const EAST = siteOf({ cameras: [60, 90, 120].map((bearing) => standing(`E${bearing}`, bearing)) });
const rank = (site: Site, windows: readonly Window[], options: RankOptions = {}): Ranking =>
  rankWindows(site, windows, { stepS: 300, ...options });
const codeOf = (work: () => unknown): string =>
  problemsFrom(work)
    .map(({ code, key }) => `${code} ${key}`)
    .join();

describe("the order", () => {
  it("puts the morning first for cameras in the east, and says by how many views", () => {
    const { windows, why } = rank(EAST, [NIGHT, EVENING, MORNING]);
    expect(windows.map(({ name, rank: place }) => [place, name])).toEqual([
      [1, "morning"],
      [2, "evening"],
      [3, "night"],
    ]);
    expect(windows[0]!.share).toBe(1);
    expect(why).toMatch(
      /^3\.0 more views well lit at a T-0, on average; .*3\.0 fewer views unlit or in shadow/,
    );
  });

  it("takes less sun in the frame first where the share is the same", () => {
    // Two axes into the sunset sky that never see the lit side: one meets the sun, the other does not.
    const site = siteOf({
      cameras: ["id: A, azimuth: 275, elevation: 8, lens: { focal: 50 }", standing("B", 270)],
    });
    const late = windowOf("late", "04-10", "16:45", "17:45");
    const early = windowOf("early", "04-10", "13:45", "14:45");
    const { windows, why } = rank(site, [late, early]);
    expect(windows[0]!.share).toBe(windows[1]!.share);
    expect(windows.map(({ name }) => name)).toEqual(["early", "late"]);
    expect(windows[1]!.inFrameViews).toBe(1);
    expect(why).toMatch(/the same share .* less sun in the frame \(0\.0 % against \d/);
  });

  it("takes more spare, then the earlier date, then the name", () => {
    const nextDay = windowOf("again", "04-11", "07:00", "09:00");
    const { windows, why } = rank(EAST, [nextDay, MORNING]);
    expect(windows.map(({ name }) => name)).toEqual(["morning", "again"]);
    expect(why).toBe("the same share of well-lit views; the same sun and spare; it comes earlier");
    const twins = rank(EAST, [
      { ...MORNING, name: "b" },
      { ...MORNING, name: "a" },
    ]);
    expect(twins.windows.map(({ name }) => name)).toEqual(["a", "b"]);
    expect(twins.why).toMatch(/nothing tells them apart but the name/);
  });

  it("has no reason for one window", () => {
    expect(rank(EAST, [MORNING]).why).toBeNull();
  });
});

describe("the rule", () => {
  it("counts flat light where a setting reaches it, and none in the dark", () => {
    expect(rank(EAST, [EVENING], { sky: "overcast" }).windows[0]!.share).toBe(1);
    const dark = rank(EAST, [NIGHT], { sky: "overcast" }).windows[0]!;
    expect([dark.share, dark.best.share, dark.nearBest.length]).toEqual([0, 0, 0]);
    expect(dark.duskShare + dark.nightShare).toBe(1);
    expect(dark.views[0]!.lostShare).toEqual({ dark: 1, unlit: 0, sun: 0, setting: 0 });
  });

  it("weighs views and skies", () => {
    const site = siteOf({
      cameras: [
        standing("E", 90, "lens: { focal: 85 }, weight: 3"),
        standing("W", 270, "lens: { focal: 200 }, weight: 1"),
      ],
    });
    expect(rank(site, [MORNING]).windows[0]!.share).toBeCloseTo(0.75, 9);
    const both = rank(site, [MORNING], { sky: ["clear", "overcast"], skyWeights: [3, 1] });
    expect(both.sky).toEqual([
      { sky: "clear", weight: 0.75 },
      { sky: "overcast", weight: 0.25 },
    ]);
    expect(both.windows[0]!.share).toBeCloseTo(0.75 * 0.75 + 0.25, 9);
  });

  it("loses a view to its settings only when no setting reaches at that T-0", () => {
    const slow = "lens: { focal: 85, stops: [2.8] }, filters: [0], shutter: { angle: 160 }";
    const site = siteOf({ cameras: [standing("F", 90, slow), standing("G", 90)] });
    const { views } = rank(site, [MORNING]).windows[0]!;
    expect(views.map(({ lostShare }) => lostShare.setting)).toEqual([1, 0]);
    expect(views[0]!.holds).toBe(false);
  });

  it("judges by light and sun alone where a setting cannot be given, and says so", () => {
    const site = siteOf({
      defaults: "gate: full-frame",
      cameras: ["id: X, azimuth: 270, elevation: 2, lens: { focal: 50 }"],
    });
    const { windows, notes } = rank(site, [MORNING, EVENING]);
    expect(windows.map(({ name, share }) => [name, share])).toEqual([
      ["morning", 1],
      ["evening", 0],
    ]);
    expect(windows[0]!.views[0]).toMatchObject({ holds: null, spareStops: null });
    expect(windows[0]!.settableViews).toBe(0);
    expect(notes.join("\n")).toMatch(/^X: judged by light and sun alone/m);
  });

  it("moves with the settings of the site file, and prints them with the result", () => {
    const site = (settings: string): Site =>
      siteOf({ cameras: [standing("S", 180)], more: `settings: { ${settings} }` });
    // In the morning the sun stands about east: a camera in the south sees half of the lit side.
    const share = (settings: string): number => rank(site(settings), [MORNING]).windows[0]!.share;
    expect(share("lit: 0.1")).toBe(1);
    expect(share("lit: 0.9")).toBe(0);
    expect(share("lit: 0.1, spare: 5")).toBe(0);
    const { rule } = rank(site("lit: 0.3, spare: 0.5, best: 0.8, flare: 7, front: 50"), [MORNING]);
    expect(rule).toEqual({
      litShare: 0.3,
      spareStops: 0.5,
      nearBestShare: 0.8,
      flareMarginDeg: 7,
      frontBelowDeg: 50,
    });
  });

  it("tells a best share that is met at a single T-0, and that no other has it", () => {
    // The east is lit until noon: of a window that opens then, only the first T-0.
    const site = siteOf({
      cameras: [standing("E", 90), standing("W", 270, "lens: { focal: 200 }, weight: 0.5")],
    });
    const noon = rank(site, [windowOf("w", "06-21", "12:01", "14:00")], { stepS: 300 }).windows[0]!;
    expect([noon.best.share > 0.5, noon.best.from.getTime()]).toEqual([true, noon.opens.getTime()]);
    expect(noon.nearBest[0]!.from.getTime()).toBe(noon.opens.getTime());
    expect(noon.nearBest[0]!.to.getTime() - noon.opens.getTime()).toBeLessThan(120_000);
  });

  it("takes among T-0s of one share those without the sun in a frame", () => {
    // The west-looking camera is never well lit here; in the second half the sun stands in its frame.
    const site = siteOf({
      cameras: [standing("S", 180), "id: A, azimuth: 245, elevation: 25, lens: { focal: 50 }"],
    });
    const { best, views } = rank(site, [windowOf("w", "04-10", "13:00", "16:00")], { stepS: 60 }).windows[0]!;
    const [span] = views[1]!.inFrame;
    expect(span!.from.getTime()).toBeGreaterThan(Date.UTC(2027, 3, 10, 13));
    expect(best.at < span!.from || best.at > span!.to).toBe(true);
  });

  it("finds the best T-0 in the middle of the longest stretch with the highest share", () => {
    const site = siteOf({ cameras: [standing("E", 90), standing("S", 170)] });
    const window = windowOf("day", "06-21", "06:00", "14:00");
    const { best, worst } = rank(site, [window], { stepS: 60 }).windows[0]!;
    expect(best.share).toBe(1);
    // East is lit until 12:02, south from when the sun has passed the line through 80 degrees: both up to noon.
    expect(best.at.getTime()).toBeGreaterThan(Date.UTC(2027, 5, 21, 8));
    expect(best.at.getTime()).toBeLessThan(Date.UTC(2027, 5, 21, 12));
    expect(worst.share).toBe(0.5);
  });
});

describe("what cannot be ranked", () => {
  it.each<[string, () => unknown]>([
    ["E_EMPTY windows", () => rank(EAST, [])],
    ["E_EMPTY cameras", () => rank({ ...EAST, cameras: [] }, [MORNING])],
    [
      "E_EMPTY cameras",
      () => rank({ ...EAST, cameras: EAST.cameras.map((one) => ({ ...one, weight: 0 })) }, [MORNING]),
    ],
    ["E_EMPTY sky", () => rank(EAST, [MORNING], { sky: [] })],
    ["E_CHOICE sky", () => rank(EAST, [MORNING], { sky: "fog" as "clear" })],
    ["E_CONFLICT skyWeights", () => rank(EAST, [MORNING], { sky: ["clear", "haze"], skyWeights: [1] })],
    ["E_RANGE skyWeights", () => rank(EAST, [MORNING], { skyWeights: [0] })],
    ["E_RANGE sky", () => rank(EAST, [MORNING], { sky: Array.from({ length: 9 }, () => "clear" as const) })],
    ["E_RANGE step", () => rank(EAST, [MORNING], { stepS: 0 })],
    [
      "E_RANGE --step",
      () => rank(EAST, [{ ...MORNING, closes: new Date("2027-04-16T07:00Z") }], { stepS: 1 }),
    ],
    ["E_ORDER closes", () => rank(EAST, [{ ...MORNING, closes: MORNING.opens }])],
  ])("%s", (code, work) => {
    expect(codeOf(work)).toBe(code);
  });
});

describe("the strip", () => {
  it("shows a passage of the sun shorter than its stretch, and who is well lit", () => {
    const site = siteOf({
      cameras: [
        "id: A, azimuth: 101, elevation: 20, lens: { focal: 1000 }",
        standing("E", 90, "lens: { focal: 85 }, weight: 3"),
      ],
    });
    const ranked = rank(site, [MORNING]).windows[0]!;
    const strip = stripOf(site, ranked, "clear", 6);
    expect(strip.edges.length).toBe(7);
    expect(ranked.views[0]!.inFrame.length).toBe(1);
    expect(strip.rows[0]!.cells.filter(({ sun }) => sun === "in-frame").length).toBe(1);
    expect(strip.rows[1]!.cells.map(({ light, isWellLit }) => `${light} ${isWellLit}`)).toEqual(
      Array.from({ length: 6 }, () => "front true"),
    );
    expect(strip.share.every((share) => share === 0.75)).toBe(true);
  });
});
