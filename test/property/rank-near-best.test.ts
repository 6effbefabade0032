/** T-0s near the best share, against asking every view at every second. */

import { expect, test } from "vitest";
import { standardAir } from "../../src/base/standardAir.ts";
import { instantMaker, readySkies } from "../../src/plan/instants.ts";
import { obstaclesOf } from "../../src/plan/obstacles.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { lossAt, rankViewOf } from "../../src/plan/rank/wellLit.ts";
import { sitePlume } from "../../src/plan/things.ts";
import type { Site } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { siteAscentOf } from "../../src/view/siteAscent.ts";
import { siteOf } from "../plan/sites.ts";
import { makeRandom } from "../support/random.ts";
import { isOfSweepAlone, randomRankSite } from "../support/rankSites.ts";

/** Many sweeps asked second by second, on a busy machine. */
const SLOW_MS = 120_000;

/** Weighted share of well-lit views, second by second; seconds that trackers lose to the sun on their sweep alone. */
function shareEachSecond(
  site: Site,
  opens: Date,
  closes: Date,
  skies: readonly Sky[],
): { shares: number[]; swept: number } {
  const track = makeSunTrack(site.place, opens, closes);
  const obstacles = obstaclesOf(site);
  const instantAt = instantMaker(
    site,
    readySkies(skies),
    site.air ?? standardAir(site.place.heightM),
    track,
    obstacles,
  );
  const ascent = siteAscentOf(site);
  const views = site.cameras.map((camera) => rankViewOf(site, camera, obstacles, ascent));
  const plume = sitePlume(site);
  const weightSum = site.cameras.reduce((sum, { weight }) => sum + weight, 0);
  const shares: number[] = [];
  let swept = 0;
  for (let ms = opens.getTime(); ms <= closes.getTime(); ms += 1000) {
    const instant = instantAt(ms);
    let share = 0;
    for (const view of views) {
      const losses = skies.map((_, i) => lossAt(site, view, instant, i, plume));
      const held = losses.filter((loss) => loss === null).length;
      share += (view.camera.weight * held) / skies.length;
      if (losses.includes("sun") && isOfSweepAlone(view, instant)) swept++;
    }
    shares.push(share / weightSum);
  }
  return { shares, swept };
}

/**
 * Seconds at which the ranking's answer is another than the brute force's, but for two seconds about a change and for a
 * rise that comes and goes between two T-0s: a stretch is told by the T-0s in it.
 */
function wrongSeconds(
  site: Site,
  opens: Date,
  closes: Date,
  skies: readonly Sky[],
  stepS: number,
): { wrong: number; edges: number; swept: number } {
  const ranked = rankWindows(site, [{ name: null, opens, closes }], { sky: skies, stepS }).windows[0]!;
  if (ranked.best.share === 0) return { wrong: 0, edges: 0, swept: 0 };
  const { shares, swept } = shareEachSecond(site, opens, closes, skies);
  expect(ranked.best.share).toBeLessThanOrEqual(Math.max(...shares) + 1e-9);
  const least = ranked.best.share * site.settings.nearBestShare - 1e-9;
  let wrong = 0;
  let edges = 0;
  shares.forEach((share, s) => {
    const ms = opens.getTime() + s * 1000;
    if (s > 0 && share >= least !== shares[s - 1]! >= least) edges++;
    if ([-2, -1, 1, 2].some((by) => (shares[s + by] ?? share) >= least !== share >= least)) return;
    const isInside = ranked.nearBest.some(({ from, to }) => ms >= from.getTime() && ms <= to.getTime());
    if (share >= least !== isInside && (isInside || hasStep(shares, least, s, stepS))) wrong++;
  });
  return { wrong, edges, swept };
}

/** Whether the stretch of seconds with the share about second `s` holds a T-0. */
function hasStep(shares: readonly number[], least: number, s: number, stepS: number): boolean {
  let [from, to] = [s, s];
  while (from > 0 && shares[from - 1]! >= least) from--;
  while (to < shares.length - 1 && shares[to + 1]! >= least) to++;
  return Math.floor(to / stepS) * stepS >= from;
}

test("ends lie where the share falls, to a second or two, in 20 windows of 90 minutes", {
  timeout: SLOW_MS,
}, () => {
  const random = makeRandom(6);
  let edges = 0;
  let besideStructures = 0;
  let swept = 0;
  for (let i = 0; i < 20; i++) {
    const site = randomRankSite(random, 6);
    // Late enough in the site's own day for sides to change and the light to go.
    const noonMs = Date.UTC(2027, 5, 12) - (site.place.longitudeDeg / 15 - 12) * 3_600_000;
    const opens = new Date(Math.round((noonMs + random.between(-6, 5) * 3_600_000) / 1000) * 1000);
    const closes = new Date(opens.getTime() + 5_400_000);
    const found = wrongSeconds(site, opens, closes, i % 2 === 0 ? ["clear"] : ["clear", "overcast"], 60);
    expect(found.wrong, `${i}`).toBe(0);
    edges += found.edges;
    swept += found.swept;
    if (site.structures.length > 0) besideStructures += found.edges;
  }
  process.stdout.write(
    `  ${edges} ends of near-best stretches, ${besideStructures} beside structures; ${swept} seconds lost on sweeps\n`,
  );
  expect(edges).toBeGreaterThan(8);
  expect(besideStructures).toBeGreaterThan(2);
  expect(swept).toBeGreaterThan(1000);
});

test("two views that meet the sun together between two T-0s, each of which alone could be spared", () => {
  const at = new Date("2027-06-10T15:30Z");
  const sun = sunAt({ latitudeDeg: 10, longitudeDeg: 0, heightM: 20 }, at);
  const toSun = (id: string): string =>
    `id: ${id}, azimuth: ${sun.azimuthDeg.toFixed(3)}, elevation: ${sun.apparentElevationDeg.toFixed(3)}, lens: { focal: 2000 }`;
  const site = siteOf({
    place: "latitude: 10, longitude: 0, height: 20",
    cameras: [toSun("A"), toSun("B"), "id: C, azimuth: 90, lens: { focal: 2000 }"],
    defaults: "gate: full-frame",
    more: "settings: { lit: 0, flare: 0, best: 0.6 }",
  });
  const [opens, closes] = [new Date("2027-06-10T14:00Z"), new Date("2027-06-10T17:00Z")];
  const { wrong, edges } = wrongSeconds(site, opens, closes, ["clear"], 3600);
  expect([wrong, edges]).toEqual([0, 2]);
});

test("a view that changes under one sky after the other within a step", () => {
  const random = makeRandom(7);
  let edges = 0;
  for (let i = 0; i < 6; i++) {
    const site = randomRankSite(random, 3);
    const dawnMs = Date.UTC(2027, 5, 12) - (site.place.longitudeDeg / 15 - 6) * 3_600_000;
    const opens = new Date(Math.round(dawnMs / 1000) * 1000 - 3_600_000);
    const closes = new Date(opens.getTime() + 9_000_000);
    const found = wrongSeconds(site, opens, closes, ["clear", "haze", "bright-cloud"], 300);
    expect(found.wrong, `${i}`).toBe(0);
    edges += found.edges;
  }
  expect(edges).toBeGreaterThan(3);
});
