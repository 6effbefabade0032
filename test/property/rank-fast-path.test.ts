/** The ranking's tight loop against the plan's own models asked one T-0 at a time: every verdict, every sun span, every setting. */

import { expect, test } from "vitest";
import { envelopeOf, spareAt } from "../../src/exposure/solver.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { prepareCamera, shareScene } from "../../src/plan/prepareCamera.ts";
import { makeRankRoom, type RankRoom } from "../../src/plan/rank/rankRoom.ts";
import { scoreWindow, type WindowScore } from "../../src/plan/rank/scoreWindow.ts";
import { type Loss, lossAt } from "../../src/plan/rank/wellLit.ts";
import { makeScene, type Scene } from "../../src/plan/scene.ts";
import type { Site, Window } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomRankSite, randomWindow } from "../support/rankSites.ts";

const SKIES: readonly (readonly Sky[])[] = [
  ["clear"],
  ["clear", "haze", "overcast"],
  [{ state: "haze", linkeTurbidity: 3 }, "bright-cloud"],
];
const STEPS_S = [60, 60, 30, 300, 3600];

interface Case {
  readonly site: Site;
  readonly window: Window;
  readonly skies: readonly Sky[];
  readonly stepS: number;
  readonly room: RankRoom;
  readonly score: WindowScore;
  readonly scene: Scene;
}

function makeCase(random: Random): Case {
  const site = randomRankSite(random);
  const window = randomWindow(random);
  const skies = SKIES[Math.floor(random.between(0, SKIES.length))]!;
  const stepS = STEPS_S[Math.floor(random.between(0, STEPS_S.length))]!;
  const scene = makeScene(site, window, { sky: skies, stepS });
  const room = makeRankRoom(
    site,
    skies,
    skies.map(() => 1 / skies.length),
    scene.instants.length + 4,
  );
  return { site, window, skies, stepS, room, score: scoreWindow(room, window, stepS), scene };
}

const cases = (): Case[] => {
  const random = makeRandom(2_027_03);
  return Array.from({ length: 40 }, () => makeCase(random));
};
const CASES = cases();

test("2,000 random verdicts are those of the slow path, each kind of loss among them", () => {
  const random = makeRandom(77);
  const seen = new Map<Loss | "well", number>();
  for (let i = 0; i < 2000; i++) {
    const { site, room, scene, skies } = CASES[i % CASES.length]!;
    const view = room.views[Math.floor(random.between(0, room.views.length))]!;
    const index = Math.floor(random.between(0, scene.instants.length));
    const instant = scene.instants[index]!;
    skies.forEach((_, skyIndex) => {
      const loss = lossAt(site, view.rankView, instant, skyIndex, room.plume);
      const isWell = ((view.well[index]! >> skyIndex) & 1) === 1;
      expect(isWell, `${view.rankView.camera.id} ${instant.at.toISOString()} ${loss}`).toBe(loss === null);
      seen.set(loss ?? "well", (seen.get(loss ?? "well") ?? 0) + 1);
    });
  }
  process.stdout.write(`  verdicts: ${[...seen].map(([word, count]) => `${word} ${count}`).join(", ")}\n`);
  for (const word of ["dark", "unlit", "sun", "setting", "well"] as const) {
    expect(seen.get(word) ?? 0, word).toBeGreaterThan(20);
  }
});

test("shares, losses and the best T-0 are those of asking every T-0", () => {
  for (const { site, room, scene, skies, score } of CASES.slice(0, 24)) {
    const count = scene.instants.length;
    const shareAt = new Float64Array(count);
    const weightSum = site.cameras.reduce((sum, { weight }) => sum + weight, 0);
    room.views.forEach((view) => {
      const lost = { dark: 0, unlit: 0, sun: 0, setting: 0 };
      scene.instants.forEach((instant, i) => {
        skies.forEach((_, skyIndex) => {
          const loss = lossAt(site, view.rankView, instant, skyIndex, room.plume);
          if (loss === null) shareAt[i]! += view.rankView.camera.weight / weightSum / skies.length;
          else lost[loss] += 1 / skies.length / count;
        });
      });
      const { lostShare, wellLitShare } = score.views.find(({ id }) => id === view.rankView.camera.id)!;
      for (const loss of ["dark", "unlit", "sun", "setting"] as const) {
        expect(lostShare[loss]).toBeCloseTo(lost[loss], 9);
      }
      expect(wellLitShare).toBeCloseTo(1 - lost.dark - lost.unlit - lost.sun - lost.setting, 9);
    });
    expect(score.share).toBeCloseTo(shareAt.reduce((a, b) => a + b, 0) / count, 9);
    expect(score.best.share).toBeCloseTo(Math.max(...shareAt), 9);
    expect(score.worst.share).toBeCloseTo(Math.min(...shareAt), 9);
    // Every T-0 of the stretch has the share, and none with the share has less sun in and near the frames.
    const sunAtOf = (ms: number, kind: "inFrame" | "nearFrame"): number =>
      score.views.reduce(
        (sum, view) =>
          view[kind].some(({ from, to }) => from.getTime() <= ms && ms <= to.getTime())
            ? sum + view.weight
            : sum,
        0,
      );
    const inStretch = scene.instants.filter(({ at }) => at >= score.best.from && at <= score.best.to);
    expect(inStretch.map(({ at }) => at.getTime())).toContain(score.best.at.getTime());
    for (const { ms } of inStretch) {
      const index = scene.instants.findIndex((instant) => instant.ms === ms);
      expect(shareAt[index]).toBeCloseTo(score.best.share, 9);
    }
    const least = Math.min(
      ...scene.instants.flatMap(({ ms }, i) =>
        Math.abs(shareAt[i]! - score.best.share) < 1e-9 ? [sunAtOf(ms, "inFrame")] : [],
      ),
    );
    expect(sunAtOf(score.best.at.getTime(), "inFrame")).toBe(least);
    skies.forEach((_, s) => {
      const alone = room.views.reduce((sum, view) => {
        const well = scene.instants.filter((_instant, i) => (view.well[i]! >> s) & 1).length;
        return sum + (view.rankView.camera.weight * well) / count / weightSum;
      }, 0);
      expect(score.bySky[s]!.share).toBeCloseTo(alone, 9);
    });
    const nearLeast = score.best.share * site.settings.nearBestShare;
    scene.instants.forEach(({ ms }, i) => {
      const isInside = score.nearBest.some(({ from, to }) => ms >= from.getTime() && ms <= to.getTime());
      // Spans are told in whole seconds, rounded inward: a T-0 may stand on an end.
      const isAtEnd = score.nearBest.some(
        ({ from, to }) => Math.abs(ms - from.getTime()) <= 1000 || Math.abs(ms - to.getTime()) <= 1000,
      );
      if (!isAtEnd)
        expect(isInside, new Date(ms).toISOString()).toBe(
          score.best.share > 0 && shareAt[i]! >= nearLeast - 1e-9,
        );
    });
  }
});

test("sun spans, drift and holding settings are those of the plan", () => {
  let spans = 0;
  let holding = 0;
  let settable = 0;
  for (const { site, window, skies, stepS, score } of CASES) {
    const plan = planWindow(site, window, { sky: skies, stepS });
    const shared = shareScene(makeScene(site, window, { sky: skies, stepS }));
    for (const camera of plan.cameras) {
      const view = score.views.find(({ id }) => id === camera.id)!;
      for (const kind of ["inFrame", "nearFrame"] as const) {
        const says = `${camera.id} ${kind} ${window.opens.toISOString()} ${JSON.stringify([view[kind], camera.sun[kind]])}`;
        expect(view[kind].length, says).toBe(camera.sun[kind].length);
        view[kind].forEach((span, i) => {
          const planned = camera.sun[kind][i]!;
          expect(Math.abs(span.from.getTime() - planned.from.getTime()), says).toBeLessThanOrEqual(100);
          expect(Math.abs(span.to.getTime() - planned.to.getTime()), says).toBeLessThanOrEqual(100);
          spans++;
        });
      }
      const perSky = plan.sun.length;
      const drifts = skies.map((_, s) => {
        const evs = camera.light.slice(s * perSky, (s + 1) * perSky).map(({ ev }) => ev!);
        return Math.max(...evs) - Math.min(...evs);
      });
      expect(view.driftStops).toBeCloseTo(Math.max(...drifts), 3);
      if (camera.setting === null) {
        expect([view.holds, view.spareStops]).toEqual([null, null]);
        continue;
      }
      settable++;
      expect(view.holds, camera.id).toBe(camera.setting.holds === 1);
      // The most of any setting over the plan's own samples; the plan gives some of it up for fewer filters or a better place.
      const { samples, choices, range } = prepareCamera(
        shared,
        site.cameras.find(({ id }) => id === camera.id)!,
      ).settingInput!;
      const envelope = envelopeOf(samples);
      const most = Math.max(...choices.map(({ midToneLog2 }) => spareAt(envelope, range, midToneLog2)));
      expect(view.spareStops!, camera.id).toBeCloseTo(most, 3);
      expect(camera.setting.spareStops).toBeLessThanOrEqual(view.spareStops! + 5e-4);
      if (view.holds) holding++;
    }
  }
  process.stdout.write(`  ${spans} sun spans, ${holding} of ${settable} settings hold\n`);
  expect(spans).toBeGreaterThan(30);
  expect(holding).toBeGreaterThan(20);
  expect(settable - holding).toBeGreaterThan(20);
});
