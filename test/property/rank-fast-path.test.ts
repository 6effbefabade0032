/** The ranking's tight loop against the plan's own models asked one T-0 at a time: every verdict, every sun span, every setting. */

import { expect, test } from "vitest";
import { envelopeOf, spareAt } from "../../src/exposure/solver.ts";
import type { Instant } from "../../src/plan/instants.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { prepareCamera, type Shared, shareScene } from "../../src/plan/prepareCamera.ts";
import { makeRankRoom, type RankRoom } from "../../src/plan/rank/rankRoom.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { scoreWindow, type WindowScore } from "../../src/plan/rank/scoreWindow.ts";
import { type Loss, lossAt, type RankView } from "../../src/plan/rank/wellLit.ts";
import { makeScene, type Scene } from "../../src/plan/scene.ts";
import { flareMeasure } from "../../src/plan/sunRisk.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site, Window } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { seenBy } from "../../src/view/sunInFrame.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { isOfSweepAlone, randomNight, randomRankSite, randomWindow } from "../support/rankSites.ts";

const SKIES: readonly (readonly Sky[])[] = [
  ["clear"],
  ["clear", "haze", "overcast"],
  [{ state: "haze", linkeTurbidity: 3 }, "bright-cloud"],
];
/** Many plans of trackers, on a busy machine. */
const SLOW_MS = 120_000;
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
  const window = random.next() < 0.2 ? randomNight(random, site) : randomWindow(random);
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
  const random = makeRandom(2_027_04);
  return Array.from({ length: 40 }, () => makeCase(random));
};
const CASES = cases();

/** The slow path's loss at each T-0, sky by sky, for each view of a case. */
const lossesOf = ({ site, room, scene, skies }: Case): (Loss | null)[][][] =>
  room.views.map(({ rankView }) =>
    scene.instants.map((instant) => skies.map((_, s) => lossAt(site, rankView, instant, s, room.plume))),
  );
const LOSSES = CASES.map(lossesOf);

/** In or near the frame and safely hidden, for a camera that stands still. */
function isHidden({ axes, view, flareRule, hides, sweep }: RankView, { sample }: Instant): boolean {
  if (hides.hidden === null || sweep !== null) return false;
  const sun = seenBy(axes, sample, view.air);
  return flareMeasure(view.frame, flareRule)(sun) < 0 && hides.hidden(sun) < 0;
}

test("every verdict is that of the slow path, each kind of loss among them, under shade and behind things too", () => {
  const seen = new Map<string, number>();
  const count = (word: string): void => void seen.set(word, (seen.get(word) ?? 0) + 1);
  const wrong: string[] = [];
  CASES.forEach(({ room, scene }, c) => {
    room.views.forEach(({ rankView, well }, v) => {
      scene.instants.forEach((instant, i) => {
        const losses = LOSSES[c]![v]![i]!;
        losses.forEach((loss, sky) => {
          if ((((well[i]! >> sky) & 1) === 1) !== (loss === null))
            wrong.push(`${c} ${rankView.camera.id} ${instant.at.toISOString()} ${loss}`);
          count(loss ?? "well");
          if (rankView.sweep !== null) count(`tracker ${loss ?? "well"}`);
          if (loss === "sun" && isOfSweepAlone(rankView, instant)) count("sun of the sweep alone");
          if (instant.shade !== null && instant.skies[sky]!.hasBeam) count(`shaded ${loss ?? "well"}`);
        });
        if (isHidden(rankView, instant)) for (const loss of losses) count(`hidden ${loss ?? "well"}`);
      });
    });
  });
  expect(wrong).toEqual([]);
  const told = [...seen].sort(([a], [b]) => (a < b ? -1 : 1)).map(([word, many]) => `${word} ${many}`);
  process.stdout.write(`  verdicts: ${told.join(", ")}\n`);
  const words = ["dark", "unlit", "sun", "setting", "well", "shaded unlit", "shaded setting", "shaded well"];
  const more = ["hidden well", "tracker sun", "tracker well", "tracker setting", "sun of the sweep alone"];
  for (const word of [...words, ...more]) expect(seen.get(word) ?? 0, word).toBeGreaterThan(20);
});

test("shares, losses and the best T-0 are those of asking every T-0", () => {
  CASES.forEach(({ site, room, scene, skies, score }, c) => {
    const count = scene.instants.length;
    const shareAt = new Float64Array(count);
    const weightSum = site.cameras.reduce((sum, { weight }) => sum + weight, 0);
    room.views.forEach((view, v) => {
      const lost = { dark: 0, unlit: 0, sun: 0, setting: 0 };
      LOSSES[c]![v]!.forEach((losses, i) => {
        losses.forEach((loss) => {
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
  });
});

/** The T-0s alone: what a ranking judges a tracker's setting by. */
const withoutAscent = (site: Site): Site => ({ ...site, vehicle: { ...site.vehicle!, ascent: null } });

/** The most of any setting over the plan's own samples; the plan gives some of it up for fewer filters or a better place. */
function mostSpareOf(shared: Shared, cameraId: string): number {
  const camera = shared.scene.site.cameras.find(({ id }) => id === cameraId)!;
  const { samples, choices, range } = prepareCamera(shared, camera).settingInput!;
  const envelope = envelopeOf(samples);
  return Math.max(...choices.map(({ midToneLog2 }) => spareAt(envelope, range, midToneLog2)));
}

test("sun spans, front light, drift and holding settings are those of the plan", { timeout: SLOW_MS }, () => {
  let spans = 0;
  let hidden = 0;
  let holding = 0;
  let settable = 0;
  let ofTrackers = 0;
  for (const { site, window, skies, stepS, score } of CASES) {
    const options = { sky: skies, stepS };
    const plan = planWindow(site, window, options);
    const sharedOf = (one: Site): Shared => shareScene(makeScene(one, window, options));
    const [swept, bare] = [sharedOf(site), sharedOf(withoutAscent(site))];
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
          if (camera.sweep !== null) ofTrackers++;
        });
      }
      hidden += camera.sun.hidden.length;
      const fronts = camera.light.filter(({ light }) => light === "front").length;
      expect(view.frontShare, camera.id).toBeCloseTo(fronts / camera.light.length, 9);
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
      const isFixed = camera.sweep === null;
      const most = mostSpareOf(isFixed ? swept : bare, camera.id);
      expect(view.spareStops!, camera.id).toBeCloseTo(most, 3);
      expect(view.holds, camera.id).toBe(isFixed ? camera.setting.holds === 1 : most >= 0);
      if (isFixed) expect(camera.setting.spareStops).toBeLessThanOrEqual(view.spareStops! + 5e-4);
      if (view.holds) holding++;
    }
  }
  process.stdout.write(
    `  ${spans} sun spans (${ofTrackers} of trackers), ${hidden} hidden; ${holding} of ${settable} settings hold\n`,
  );
  expect(spans - ofTrackers).toBeGreaterThan(30);
  expect(ofTrackers).toBeGreaterThan(30);
  expect(hidden).toBeGreaterThan(4);
  expect(holding).toBeGreaterThan(20);
  expect(settable - holding).toBeGreaterThan(20);
});

test("a bright deck in the light of a dim wide plume: the brightest part of it sets the spare", () => {
  const window = { name: null, opens: new Date("2027-03-20T10:00Z"), closes: new Date("2027-03-20T14:00Z") };
  const spareWith = (flame: string): number => {
    const site = parseSite(`
site: { name: Bright Ness, zone: UTC, latitude: 0, longitude: 0, height: 20, ground: 0.8 }
vehicle: { height: 45, diameter: 4, base: 5, reflectance: 0.2, plume: { luminance: 6000${flame} } }
media: { one: { speed: 50, under: 3, over: 3 } }
defaults: { lens: { focal: 85, stops: [2.8] }, gate: full-frame, rate: 100, shutter: { angle: [160] } }
cameras: [{ id: A, at: { bearing: 90, range: 800 }, aim: { up: 20 }, keep: [plume, deck], medium: one }]
`);
    const spare = rankWindows(site, [window], { stepS: 300 }).windows[0]!.views[0]!.spareStops!;
    expect(spare).toBeCloseTo(mostSpareOf(shareScene(makeScene(site, window, { stepS: 300 })), "A"), 4);
    return spare;
  };
  expect(spareWith(", length: 80, width: 8")).toBeLessThan(spareWith("") - 0.01);
});
