/** What a ranking must not depend on: the order of windows and cameras, and how the windows were asked for. */

import { expect, test } from "vitest";
import type { RankedWindow, Ranking } from "../../src/plan/rank/rankTypes.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { dailyWindows } from "../../src/site/dailyWindows.ts";
import type { Site, Window } from "../../src/site/types.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomRankSite, randomWindow } from "../support/rankSites.ts";

/** Many sweeps, on a busy machine. */
const SLOW_MS = 120_000;

function shuffled<One>(random: Random, ones: readonly One[]): One[] {
  const left = [...ones];
  return ones.map(() => left.splice(random.whole(0, left.length - 1), 1)[0]!);
}

/** A window's figures with its views in the order of their ids, without the rank. */
const bare = ({ rank: _, views, ...rest }: RankedWindow) => ({
  ...rest,
  views: [...views].sort((a, b) => (a.id < b.id ? -1 : 1)),
});
const inOrderOf = ({ windows, why }: Ranking) => ({ windows: windows.map(bare), why });

/** Views of trackers with an ascent that lose T-0s to the sun. */
const sweptViews = ({ cameras, vehicle }: Site, { windows }: Ranking): number => {
  const trackers = cameras.filter(({ track }) => track !== null && vehicle!.ascent !== null);
  const isSwept = (id: string): boolean => trackers.some((one) => one.id === id);
  return windows.flatMap(({ views }) => views.filter(({ id, lostShare }) => isSwept(id) && lostShare.sun > 0))
    .length;
};

test("the order of windows and cameras changes no figure, no rank and no word", { timeout: SLOW_MS }, () => {
  const random = makeRandom(31);
  let swept = 0;
  for (let i = 0; i < 12; i++) {
    const site = randomRankSite(random, 9);
    const windows = Array.from({ length: 5 }, () => randomWindow(random));
    const other: Site = { ...site, cameras: shuffled(random, site.cameras) };
    const options = { sky: ["clear", "overcast"] as const, skyWeights: [0.7, 0.3], stepS: 300 };
    const first = rankWindows(site, windows, options);
    const again = rankWindows(other, shuffled(random, windows), options);
    swept += sweptViews(site, first);
    expect(inOrderOf(again)).toEqual(inOrderOf(first));
    expect(again.windows[0]!.views.map(({ id }) => id)).toEqual(other.cameras.map(({ id }) => id));
  }
  expect(swept).toBeGreaterThan(20);
});

/** Its middle half: what was made for the longer one must not serve it. */
const within = ({ name, opens, closes }: Window): Window => {
  const quarterMs = Math.round((closes.getTime() - opens.getTime()) / 4);
  return {
    name,
    opens: new Date(opens.getTime() + quarterMs),
    closes: new Date(closes.getTime() - quarterMs),
  };
};

test("a window alone has the figures it has among others, longer and shorter, and in a run of days", () => {
  const random = makeRandom(47);
  let swept = 0;
  for (let i = 0; i < 6; i++) {
    const site = randomRankSite(random);
    const run = dailyWindows(
      { from: "2027-03-24", days: 9, daily: "05:40/08:10", shiftMs: -240_000 },
      "Europe/Oslo",
    );
    const long = randomWindow(random);
    const many: Window[] = [...run.windows, long, within(long), randomWindow(random)];
    const together = rankWindows(site, many, { stepS: 120 });
    swept += sweptViews(site, together);
    for (const window of many) {
      const alone = rankWindows(site, [window], { stepS: 120 }).windows[0]!;
      const among = together.windows.find(({ opens }) => opens.getTime() === window.opens.getTime())!;
      expect(bare(among)).toEqual(bare(alone));
    }
  }
  expect(swept).toBeGreaterThan(20);
});

test("weights twice as large change nothing; a heavy view pulls the share to its own", () => {
  const random = makeRandom(5);
  const site = randomRankSite(random, 6);
  const window = {
    ...randomWindow(random),
    opens: new Date("2027-05-03T10:00Z"),
    closes: new Date("2027-05-03T14:00Z"),
  };
  const doubled: Site = {
    ...site,
    cameras: site.cameras.map((camera) => ({ ...camera, weight: camera.weight * 2 })),
  };
  const heavy: Site = {
    ...site,
    cameras: site.cameras.map((camera, i) => ({ ...camera, weight: i === 0 ? 50 : camera.weight })),
  };
  const [one, same, pulled] = [site, doubled, heavy].map((each) => rankWindows(each, [window]).windows[0]!);
  expect(same!.share).toBeCloseTo(one!.share, 12);
  const toward = one!.views[0]!.wellLitShare;
  expect(Math.abs(pulled!.share - toward)).toBeLessThanOrEqual(Math.abs(one!.share - toward));
});
