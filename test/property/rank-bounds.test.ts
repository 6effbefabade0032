/** What lets the ranking decide a block of T-0s at once: its bounds hold at every T-0 of the block. */

import { expect, test } from "vitest";
import { angleBetweenDeg } from "../../src/base/vector.ts";
import { skyAt, skyOfBlock } from "../../src/plan/rank/axisSky.ts";
import { boundPhase } from "../../src/plan/rank/blocks.ts";
import { type TurnedSun, turnSun } from "../../src/plan/rank/flareCone.ts";
import { makeRankRoom } from "../../src/plan/rank/rankRoom.ts";
import { scoreWindow } from "../../src/plan/rank/scoreWindow.ts";
import { liftedScratch } from "../../src/sky/sun.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { seenBy } from "../../src/view/sunInFrame.ts";
import { makeRandom } from "../support/random.ts";
import { randomRankSite, randomWindow } from "../support/rankSites.ts";

test("phase, light and sky along the axis lie inside the bounds of their block", () => {
  const random = makeRandom(2424);
  let looked = 0;
  for (let i = 0; i < 30; i++) {
    const site = randomRankSite(random, 8);
    const stepS = [60, 300, 3600][i % 3]!;
    const room = makeRankRoom(site, ["clear", "haze"], [0.5, 0.5], 1500);
    scoreWindow(room, randomWindow(random), stepS);
    const { sun, blocks } = room;
    for (const view of room.views) {
      boundPhase(blocks, view.bySky[0]!.observerEast, view.bySky[0]!.observerNorth);
      room.skies.forEach((sky, s) => {
        const { axisSky, observerEast, observerNorth } = view.bySky[s]!;
        const bound = { leastCdM2: 0, mostCdM2: 0 };
        for (let block = 0; block < blocks.count; block++) {
          if (axisSky !== null) skyOfBlock(axisSky, blocks, sky.bounds, block, bound);
          for (let t = blocks.from[block]!; t < blocks.to[block]!; t++) {
            const cosine = observerEast * sun.lampEast[t]! + observerNorth * sun.lampNorth[t]!;
            expect(cosine).toBeGreaterThanOrEqual(blocks.leastCosine[block]!);
            expect(Math.min(1, cosine)).toBeLessThanOrEqual(blocks.mostCosine[block]!);
            expect(sky.light.directLx[t]!).toBeLessThanOrEqual(sky.bounds.mostDirectLx[block]!);
            expect(sky.light.fillLx[t]!).toBeGreaterThanOrEqual(sky.bounds.leastFillLx[block]!);
            if (axisSky === null) continue;
            const luminance = skyAt(axisSky, sun, sky.light, t);
            expect(luminance).toBeGreaterThanOrEqual(bound.leastCdM2 * (1 - 1e-9));
            expect(luminance).toBeLessThanOrEqual(bound.mostCdM2 * (1 + 1e-9));
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
