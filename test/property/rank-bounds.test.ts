/** What lets the ranking decide a block of T-0s at once: its bounds hold at every T-0 of the block. */

import { expect, test } from "vitest";
import { angleBetweenDeg } from "../../src/base/vector.ts";
import type { PlumeLuminance } from "../../src/light/plume.ts";
import { skyAt, skyOfBlock } from "../../src/plan/rank/axisSky.ts";
import { boundPhase } from "../../src/plan/rank/blocks.ts";
import { type TurnedSun, turnSun } from "../../src/plan/rank/flareCone.ts";
import { makeRankRoom, type RankRoom } from "../../src/plan/rank/rankRoom.ts";
import { scoreWindow } from "../../src/plan/rank/scoreWindow.ts";
import { boundKept, peakAt } from "../../src/plan/rank/skyView.ts";
import { makeScene, type Scene } from "../../src/plan/scene.ts";
import { correctionStops, sitePlume, spanOf, thingsAt } from "../../src/plan/things.ts";
import type { Site } from "../../src/site/types.ts";
import { liftedScratch } from "../../src/sky/sun.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { seenBy } from "../../src/view/sunInFrame.ts";
import { makeRandom } from "../support/random.ts";
import { randomNight, randomRankSite, randomWindow } from "../support/rankSites.ts";

interface Looked {
  bounds: number;
  shaded: number;
  moonlit: number;
  readonly wrong: string[];
}

/** Every T-0 of every block of one view under one sky against the block's bounds. */
function lookAtBlocks({ site, room, scene, plume }: Asked, v: number, s: number, looked: Looked): void {
  const { sun, blocks } = room;
  const { rankView, bySky } = room.views[v]!;
  const view = bySky[s]!;
  const sky = room.skies[s]!;
  const { camera } = rankView;
  const correction = correctionStops(site, camera.id, scene.skies[s]!);
  for (let block = 0; block < blocks.count; block++) {
    boundKept(view, sky, block, sky.scratch);
    const { leastDark, mostDark, leastBright, mostBright } = sky.scratch;
    for (let t = blocks.from[block]!; t < blocks.to[block]!; t++) {
      const instant = scene.instants[t]!;
      const holds = (what: string, value: number, least: number, most: number): void => {
        looked.bounds++;
        if (!(value >= least * (1 - ROUNDING) && value <= most * (1 + ROUNDING)))
          looked.wrong.push(`${what} ${camera.id} ${instant.at.toISOString()}: ${least} ${value} ${most}`);
      };
      const cosine = view.observerEast * sun.lampEast[t]! + view.observerNorth * sun.lampNorth[t]!;
      if (cosine < blocks.leastCosine[block]! || Math.min(1, cosine) > blocks.mostCosine[block]!)
        looked.wrong.push(`phase ${camera.id} ${instant.at.toISOString()}`);
      holds(
        "direct",
        sky.light.directLx[t]!,
        sky.bounds.leastDirectLx[block]!,
        sky.bounds.mostDirectLx[block]!,
      );
      const things = thingsAt(site, rankView.view, instant, instant.skies[s]!, plume, correction);
      const { brightest } = things.facets;
      if (instant.skies[s]!.hasBeam) holds("peak", peakAt(view, sun, t), brightest, brightest);
      if (view.kit === null) continue;
      const spans = camera.keep.map((thing) => spanOf(things, thing));
      holds("dark", Math.min(...spans.map(({ darkCdM2 }) => darkCdM2)), leastDark, mostDark);
      holds("bright", Math.max(...spans.map(({ brightCdM2 }) => brightCdM2)), leastBright, mostBright);
      if (instant.shade !== null && instant.skies[s]!.hasBeam) looked.shaded++;
      if (instant.moon !== null && things.upright.directLx > 0) looked.moonlit++;
    }
  }
}

interface Asked {
  readonly site: Site;
  readonly room: RankRoom;
  readonly scene: Scene;
  readonly plume: PlumeLuminance | null;
}

/** The sky along the axis comes from a table, good to a hundred-thousandth. */
const ROUNDING = 2e-5;

test("phase, light and all that is kept lie inside the bounds of their block, by sun, in shade and by moon", () => {
  const random = makeRandom(2424);
  const looked: Looked = { bounds: 0, shaded: 0, moonlit: 0, wrong: [] };
  for (let i = 0; i < 40; i++) {
    const site = randomRankSite(random, 6);
    const stepS = [60, 300, 3600][i % 3]!;
    const window = i % 5 === 4 ? randomNight(random, site) : randomWindow(random);
    const room = makeRankRoom(site, ["clear", "haze"], [0.5, 0.5], 1500);
    const scene = makeScene(site, window, { sky: ["clear", "haze"], stepS });
    scoreWindow(room, window, stepS);
    room.views.forEach(({ bySky }, v) => {
      boundPhase(room.blocks, bySky[0]!.observerEast, bySky[0]!.observerNorth);
      for (const s of [0, 1]) lookAtBlocks({ site, room, scene, plume: sitePlume(site) }, v, s, looked);
    });
  }
  expect(looked.wrong).toEqual([]);
  const { bounds, shaded, moonlit } = looked;
  process.stdout.write(`  ${bounds} bounds held, ${shaded} T-0s of views in shade, ${moonlit} by moon\n`);
  expect(bounds).toBeGreaterThan(100_000);
  expect(shaded).toBeGreaterThan(5000);
  expect(moonlit).toBeGreaterThan(5000);
});

test("the sky along the axis lies inside the bounds of its block to the last bits", () => {
  const random = makeRandom(2425);
  let looked = 0;
  for (let i = 0; i < 12; i++) {
    const site = randomRankSite(random, 6);
    const room = makeRankRoom(site, ["clear", "haze"], [0.5, 0.5], 1500);
    scoreWindow(room, randomWindow(random), [60, 300, 3600][i % 3]!);
    const { sun, blocks } = room;
    const bound = { leastCdM2: 0, mostCdM2: 0 };
    for (const { bySky } of room.views) {
      room.skies.forEach((sky, s) => {
        const { axisSky } = bySky[s]!;
        if (axisSky === null) return;
        for (let block = 0; block < blocks.count; block++) {
          skyOfBlock(axisSky, blocks, sky.bounds, block, bound);
          for (let t = blocks.from[block]!; t < blocks.to[block]!; t++) {
            const luminance = skyAt(axisSky, sun, sky.light, t);
            const isInside =
              luminance >= bound.leastCdM2 * (1 - 1e-9) && luminance <= bound.mostCdM2 * (1 + 1e-9);
            if (!isInside) expect([bound.leastCdM2, luminance, bound.mostCdM2]).toBe("in order");
            looked++;
          }
        }
      });
    }
  }
  expect(looked).toBeGreaterThan(10_000);
});

test("the sun over the pad, turned to a camera, is as near to the camera's own as it is said to be", () => {
  const random = makeRandom(77);
  let widest = 0;
  for (let i = 0; i < 40; i++) {
    const site = randomRankSite(random, 6);
    const window = randomWindow(random);
    const room = makeRankRoom(site, ["clear"], [1], 400);
    scoreWindow(room, window, 300);
    const track = makeSunTrack(site.place, window.opens, window.closes);
    const turned: TurnedSun = { ...liftedScratch(), semidiameterDeg: 0 };
    for (const { rankView, cone } of room.views) {
      for (let t = 0; t < room.sun.count; t++) {
        turnSun(cone, room.sun, t, turned);
        const own = seenBy(rankView.axes, track.at(room.sun.timesMs[t]!), rankView.view.air);
        const apartDeg = angleBetweenDeg(turned.direction, own.direction);
        expect(apartDeg, rankView.camera.id).toBeLessThanOrEqual(cone.slackDeg);
        widest = Math.max(widest, apartDeg / cone.slackDeg);
      }
    }
  }
  process.stdout.write(`  widest at ${(widest * 100).toFixed(0)} % of what is allowed\n`);
  expect(widest).toBeGreaterThan(0.2);
});
