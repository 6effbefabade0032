/** A ranking as sheet, JSON and CSV: within the width, and the same figures in all three. */

import { describe, expect, it, vi } from "vitest";
import { progressLine } from "../../src/cli/progress.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { scrubSettings } from "../../src/plan/rank/scrub.ts";
import { PLAIN } from "../../src/show/paint.ts";
import { rankCsv, rankJson } from "../../src/show/rankData.ts";
import { rankSheet } from "../../src/show/rankSheet.ts";
import { scrubSheet } from "../../src/show/scrubSheet.ts";
import { dailyWindows } from "../../src/site/dailyWindows.ts";
import { makeRandom } from "../support/random.ts";
import { randomRankSite, randomWindow } from "../support/rankSites.ts";

const tooWide = (text: string, width: number): string[] =>
  text.split("\n").filter((line) => [...line].length > width);

describe("a ranking's outputs", () => {
  const random = makeRandom(321);
  const rankings = Array.from({ length: 8 }, (_, i) => {
    const site = {
      ...randomRankSite(random, 7),
      zone: ["UTC", "America/New_York", "Atlantic/Azores"][i % 3]!,
    };
    const run =
      i % 2 === 0
        ? dailyWindows({ from: "2027-11-04", days: 6, daily: "22:10/PT5H", shiftMs: 3_000_000 }, site.zone)
        : null;
    const windows = run?.windows ?? [1, 2, 3].map(() => randomWindow(random));
    return { site, run, ranking: rankWindows(site, windows, { sky: ["clear", "overcast"], stepS: 300 }) };
  });

  it("keep the sheet within its width, clocks that change and midnights included", () => {
    for (const { run, ranking } of rankings) {
      for (const width of [80, 130]) {
        const sheet = rankSheet(ranking, { width, paint: PLAIN, top: 20, run, strips: [] });
        expect(tooWide(sheet, width)).toEqual([]);
        expect(sheet).not.toMatch(/NaN|undefined|\[object/);
      }
    }
  });

  it("tell the same shares, times and counts in table, JSON and CSV", () => {
    for (const { run, ranking } of rankings) {
      const sheet = rankSheet(ranking, { width: 120, paint: PLAIN, top: 20, run, strips: [] });
      const json = JSON.parse(rankJson(ranking, run));
      const csv = rankCsv(ranking, run).trim().split("\r\n").slice(1);
      ranking.windows.forEach((window, i) => {
        expect(json.windows[i].share).toBeCloseTo(window.share, 4);
        expect(json.windows[i].best.at).toBe(window.best.at.toISOString());
        expect(csv[i]).toContain(`${window.best.at.toISOString()},${json.windows[i].best.share}`);
        expect(sheet).toContain(`${(window.share * 100).toFixed(1)} %`);
        expect(sheet).toContain(`${window.holdingViews}/${window.settableViews}`);
        const { views } = json.windows[i];
        for (const { wellLitShare, lostShare } of views) {
          const { dark, unlit, sun, setting } = lostShare;
          expect(wellLitShare + dark + unlit + sun + setting).toBeCloseTo(1, 3);
        }
      });
      expect(csv.length).toBe(ranking.windows.length + (run?.skipped.length ?? 0));
    }
  });

  it("put the days of a long slip into tables that fit", () => {
    const { site } = rankings[0]!;
    const { windows } = dailyWindows(
      { from: "2027-05-04", days: 23, daily: "10:00/11:00", shiftMs: 0 },
      site.zone,
    );
    const scrub = scrubSettings(site, windows[0]!, windows.slice(1), { stepS: 600 });
    const context = { site, sky: ["clear"], notes: [], cautions: [] };
    const sheet = scrubSheet(scrub, context, { width: 80, paint: PLAIN });
    expect(tooWide(sheet, 80)).toEqual([]);
    expect(sheet.match(/^id /gm)!.length).toBeGreaterThan(2);
  });
});

describe("the line of progress", () => {
  const told = (isErrorTerminal: boolean, quiet: boolean): string => {
    vi.useFakeTimers({ toFake: ["performance"] });
    let text = "";
    const world = {
      out: () => undefined,
      err: (more: string) => (text += more),
      isTerminal: true,
      isErrorTerminal,
      columns: 80,
      noColour: false,
    };
    const line = progressLine({ ...world, err: (more) => void world.err(more) }, quiet, "Ranked windows:");
    for (let done = 1; done <= 20; done++) {
      vi.advanceTimersByTime(100);
      line.tell(done, 20);
    }
    line.end();
    vi.useRealTimers();
    return text;
  };

  it("begins after a second, changes five times a second, and is taken away", () => {
    const text = told(true, false);
    expect([...text.matchAll(/(\d+) of 20/g)].map(([, done]) => Number(done))).toEqual([10, 12, 14, 16, 18]);
    expect(text.endsWith("\r\u001b[K")).toBe(true);
  });

  it("is silent away from a terminal and when asked to be", () => {
    expect(told(false, false) + told(true, true)).toBe("");
  });
});
