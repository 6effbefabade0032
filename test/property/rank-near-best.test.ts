/** T-0s near the best share, against asking every view at every second. */

import { expect, test } from "vitest";
import { standardAir } from "../../src/base/standardAir.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { lossAt, rankViewOf } from "../../src/plan/rank/wellLit.ts";
import { instantMaker, readySkies } from "../../src/plan/scene.ts";
import { sitePlume } from "../../src/plan/things.ts";
import type { Site } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { makeRandom } from "../support/random.ts";
import { randomRankSite } from "../support/rankSites.ts";

/** Weighted share of well-lit views, second by second. */
function shareEachSecond(site: Site, opens: Date, closes: Date, skies: readonly Sky[]): number[] {
  const track = makeSunTrack(site.place, opens, closes);
  const instantAt = instantMaker(site, readySkies(skies), site.air ?? standardAir(site.place.heightM), track);
  const views = site.cameras.map((camera) => rankViewOf(site, camera));
  const plume = sitePlume(site);
  const weightSum = site.cameras.reduce((sum, { weight }) => sum + weight, 0);
  const shares: number[] = [];
  for (let ms = opens.getTime(); ms <= closes.getTime(); ms += 1000) {
    const instant = instantAt(ms);
    let share = 0;
    for (const view of views) {
      const held = skies.filter((_, i) => lossAt(site, view, instant, i, plume) === null).length;
      share += (view.camera.weight * held) / skies.length;
    }
    shares.push(share / weightSum);
  }
  return shares;
}

test("ends lie where the share falls, to a second or two, in ten windows of 90 minutes", () => {
  const random = makeRandom(95);
  let edges = 0;
  for (let i = 0; i < 10; i++) {
    const site = randomRankSite(random, 6);
    const skies: Sky[] = i % 2 === 0 ? ["clear"] : ["clear", "overcast"];
    // Late enough in the site's own day for sides to change and the light to go.
    const noonMs = Date.UTC(2027, 5, 12) - (site.place.longitudeDeg / 15 - 12) * 3_600_000;
    const opens = new Date(Math.round((noonMs + random.between(-6, 5) * 3_600_000) / 1000) * 1000);
    const closes = new Date(opens.getTime() + 5_400_000);
    const ranked = rankWindows(site, [{ name: null, opens, closes }], { sky: skies, stepS: 60 }).windows[0]!;
    const shares = shareEachSecond(site, opens, closes, skies);
    const least = ranked.best.share * site.settings.nearBestShare - 1e-9;
    expect(ranked.best.share).toBeLessThanOrEqual(Math.max(...shares) + 1e-9);
    if (ranked.best.share === 0) continue;
    const isInside = (ms: number): boolean =>
      ranked.nearBest.some(({ from, to }) => ms >= from.getTime() && ms <= to.getTime());
    const wrong = shares.filter((share, s) => {
      const ms = opens.getTime() + s * 1000;
      const neighbours = [-2, -1, 1, 2].map((by) => shares[s + by] ?? share);
      // Within two seconds of a change either answer is right.
      if (neighbours.some((one) => one >= least !== share >= least)) return false;
      return share >= least !== isInside(ms);
    });
    expect(wrong.length, `${i}: ${JSON.stringify(ranked.nearBest)}`).toBe(0);
    for (let s = 1; s < shares.length; s++) if (shares[s]! >= least !== shares[s - 1]! >= least) edges++;
  }
  process.stdout.write(`  ${edges} ends of near-best stretches\n`);
  expect(edges).toBeGreaterThan(8);
});
