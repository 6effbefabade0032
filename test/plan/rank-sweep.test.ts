/** A tracker in a ranking: what it loses to the sun along its sweep, as `sweepTracker` has it, and nothing else. */

import { describe, expect, it } from "vitest";
import { SUN_CAUTION } from "../../src/plan/cautions.ts";
import type { TimeSpan } from "../../src/plan/clock.ts";
import type { Ranking, RankOptions } from "../../src/plan/rank/rankTypes.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { stripOf } from "../../src/plan/rank/strip.ts";
import { sweepTracker } from "../../src/plan/sweep/sweepTracker.ts";
import type { Site, Window } from "../../src/site/types.ts";
import { siteOf } from "./sites.ts";

const windowOf = (name: string, from: string, to: string): Window => ({
  name,
  opens: new Date(`2027-03-20T${from}Z`),
  closes: new Date(`2027-03-20T${to}Z`),
});
/** The noon sun stands 45 degrees high in the south; by the early morning it has not got there yet. */
const NOON = windowOf("noon", "11:20", "13:20");
const EARLY = windowOf("early", "08:40", "09:20");

const BODY = "height: 40, diameter: 3, base: 5, reflectance: 0.75";
const SOUTHWARD = "ascent: { heading: 180, thrustToWeight: 1.4, burn: 150 }";
/** South of the pad: looks north at T+0, the sun behind it, and turns over to the south as the vehicle passes above. */
const UNDER =
  "at: { bearing: 175, range: 2500, up: 2 }, lens: { focal: 400, stops: [5.6, 8, 11, 16, 22, 32] }";
const TRACKER = `id: T, ${UNDER}, track: { part: middle }`;
const FIXED = `id: F, ${UNDER}, aim: { up: 25 }`;
const site = (ascent: string | null, cameras: readonly string[]): Site =>
  siteOf({
    vehicle: ascent === null ? BODY : `${BODY}, ${ascent}`,
    cameras,
    more: "settings: { best: 0.7 }",
  });
const SWEPT = site(SOUTHWARD, [TRACKER]);
const BARE = site(null, [TRACKER]);

const STEP_S = 60;
const rank = (one: Site, windows: readonly Window[], options: RankOptions = {}): Ranking =>
  rankWindows(one, windows, { stepS: STEP_S, ...options });
const holds = (spans: readonly TimeSpan[], ms: number): boolean =>
  spans.some(({ from, to }) => from.getTime() <= ms && ms <= to.getTime());
const t0sOf = ({ opens, closes }: Window): number[] =>
  Array.from(
    { length: (closes.getTime() - opens.getTime()) / (STEP_S * 1000) + 1 },
    (_, i) => opens.getTime() + i * STEP_S * 1000,
  );

const SWEEP = sweepTracker(SWEPT, "T", NOON).sun;
const MET = [...SWEEP.inFrame, ...SWEEP.nearFrame];

describe("a tracker whose axis at T+0 never sees the sun", () => {
  it("is well lit at every T-0 as long as there is no ascent, and the sweep meets the sun at some", () => {
    const { windows, cautions } = rank(BARE, [NOON]);
    expect(windows[0]!.views[0]).toMatchObject({ wellLitShare: 1, inFrame: [], nearFrame: [] });
    expect(cautions).not.toContain(SUN_CAUTION);
    expect([SWEEP.inFrame.length, SWEEP.nearFrame.length]).toEqual([1, 2]);
    expect(SWEEP.inFrame[0]!.closest.tPlusS).toBeGreaterThan(60);
  });

  it("loses exactly the T-0s of the sweep's spans", () => {
    const { share, views, lostViews, inFrameViews, nearFrameViews } = rank(SWEPT, [NOON]).windows[0]!;
    const t0s = t0sOf(NOON);
    const lost = t0s.filter((ms) => holds(MET, ms)).length / t0s.length;
    expect(lost).toBeGreaterThan(0.1);
    expect(lost).toBeLessThan(0.9);
    expect(views[0]!.lostShare).toEqual({ dark: 0, unlit: 0, sun: expect.closeTo(lost, 9), setting: 0 });
    expect(lostViews.sun).toBeCloseTo(lost, 9);
    expect(share).toBeCloseTo(1 - lost, 9);
    expect([inFrameViews, nearFrameViews]).toEqual([1, 0]);
  });

  it("tells the spans of the sweep, and is near its best outside of them to the second", () => {
    const { views, nearBest, best, ties } = rank(SWEPT, [NOON]).windows[0]!;
    for (const kind of ["inFrame", "nearFrame"] as const) {
      expect(views[0]![kind]).toEqual(SWEEP[kind].map(({ from, to }) => ({ from, to })));
      const sumMs = SWEEP[kind].reduce((sum, { from, to }) => sum + to.getTime() - from.getTime(), 0);
      expect(ties[`${kind}Share`]).toBeCloseTo(sumMs / (NOON.closes.getTime() - NOON.opens.getTime()), 4);
    }
    const wrong: string[] = [];
    for (let ms = NOON.opens.getTime(); ms <= NOON.closes.getTime(); ms += 1000) {
      const isEdge = holds(MET, ms - 2000) !== holds(MET, ms + 2000);
      if (!isEdge && holds(nearBest, ms) === holds(MET, ms)) wrong.push(new Date(ms).toISOString());
    }
    expect(wrong).toEqual([]);
    expect(holds(MET, best.at.getTime())).toBe(false);
  });

  it("meets the sun after the close at the T-0s before it", () => {
    // The window closes half a minute after the first T-0 that is lost; the sun is met more than a minute later.
    const first = SWEEP.nearFrame[0]!;
    const closes = new Date(first.from.getTime() + 30_000);
    const [span, ...more] = rank(SWEPT, [{ ...NOON, closes }]).windows[0]!.views[0]!.nearFrame;
    expect(first.tPlus[0]!.fromS).toBeGreaterThan(60);
    expect([span?.to, more]).toEqual([closes, []]);
    expect(Math.abs(span!.from.getTime() - first.from.getTime())).toBeLessThanOrEqual(100);
  });

  it("warns of the sun, and says what counts", () => {
    const { cautions, notes } = rank(SWEPT, [NOON]);
    expect(cautions).toContain(SUN_CAUTION);
    expect(cautions.join("\n")).toMatch(/burn shutters/);
    expect(notes.join("\n")).toMatch(/^T: tracker: the sun counts along its whole sweep/m);
    const bare = rank(BARE, [NOON]).notes.join("\n");
    expect(bare).toMatch(/^T: tracker: judged on its T-0 axis, as the site file gives no ascent/m);
    expect(bare).not.toMatch(/whole sweep/);
    expect(rank(site(SOUTHWARD, [FIXED]), [NOON]).notes.join("\n")).not.toMatch(/tracker/);
  });

  it("has its T-0s in the strip: in the frame, near it, clear", () => {
    const columns = 24;
    const ranked = rank(SWEPT, [NOON]).windows[0]!;
    const { edges, rows, share } = stripOf(SWEPT, ranked, "clear", columns);
    const touches =
      (i: number) =>
      ({ from, to }: TimeSpan): boolean =>
        from < edges[i + 1]! && to >= edges[i]!;
    const { cells } = rows[0]!;
    cells.forEach(({ sun, isWellLit, light }, i) => {
      const isIn = SWEEP.inFrame.some(touches(i));
      expect(sun).toBe(isIn ? "in-frame" : SWEEP.nearFrame.some(touches(i)) ? "near-frame" : null);
      const middleMs = (edges[i]!.getTime() + edges[i + 1]!.getTime()) / 2;
      expect([isWellLit, light, share[i]]).toEqual([
        !holds(MET, middleMs),
        "front",
        holds(MET, middleMs) ? 0 : 1,
      ]);
    });
    for (const sun of ["in-frame", "near-frame", null])
      expect(cells.filter((cell) => cell.sun === sun).length, `${sun}`).toBeGreaterThan(1);
  });

  it("leaves a fixed camera beside it alone, and puts a window without the sun first", () => {
    const both = site(SOUTHWARD, [TRACKER, FIXED]);
    const { windows, why } = rank(both, [NOON, EARLY]);
    expect(windows.map(({ name }) => name)).toEqual(["early", "noon"]);
    expect(why).toMatch(/fewer views.*sun|sun in the frame/);
    const noon = windows[1]!.views;
    expect(noon.map(({ id, lostShare }) => [id, lostShare.sun > 0])).toEqual([
      ["T", true],
      ["F", false],
    ]);
  });

  it("is held to no sweep in its light and its setting", () => {
    const [swept, bare] = [SWEPT, BARE].map((one) => rank(one, [NOON]).windows[0]!.views[0]!);
    for (const key of ["frontShare", "driftStops", "spareStops", "holds"] as const)
      expect(swept![key]).toBe(bare![key]);
  });
});
