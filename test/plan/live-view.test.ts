/** One T-0 at a time: what is told of it is what the whole plan tells. */

import { describe, expect, it } from "vitest";
import { liveView } from "../../src/plan/live/liveView.ts";
import { type LiveWindow, liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import type { WindowPlan } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { midToneLog2Of } from "../../src/plan/settingMidTone.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site, Window } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { demoSite } from "../support/demoSites.ts";
import { EVENING, siteOf, standing } from "./sites.ts";
import { sweepSite, tracking } from "./sweepSites.ts";

const SKIES: readonly Sky[] = ["clear", "haze", "overcast"];

interface Both {
  readonly site: Site;
  readonly window: Window;
  readonly plan: WindowPlan;
  readonly live: LiveWindow;
}

const bothOf = (name: string, windowIndex = 0): Both => {
  const site = demoSite(name);
  const window = site.windows[windowIndex]!;
  return {
    site,
    window,
    plan: planWindow(site, window, { sky: SKIES, stepS: 600 }),
    live: liveWindowOf(site, window, SKIES),
  };
};

const CASES = [
  ["skerry-vane", 0],
  ["skerry-vane", 2],
  ["calm-parallel", 0],
  ["long-day", 0],
] as const;

describe.each(CASES)("%s, window %i", (name, windowIndex) => {
  const { site, plan, live } = bothOf(name, windowIndex);

  it("light, phase and both EVs are those of the plan, for every camera, T-0 and sky", () => {
    plan.sun.forEach(({ at }, t0) => {
      const instant = live.scene.instantAt(at.getTime());
      SKIES.forEach((_, skyIndex) => {
        plan.cameras.forEach((camera, i) => {
          const sample = camera.lightAt(skyIndex * plan.sun.length + t0);
          const view = liveView(live, live.cameras[i]!, instant, skyIndex, null);
          const { light, phaseDeg, litShare, ev, tableEv } = sample;
          expect(view).toMatchObject({ light, phaseDeg, litShare, ev, tableEv, exposure: null });
          expect(view.sun.fromEdgeDeg).toBeCloseTo(sample.fromEdgeDeg, 9);
        });
      });
    });
  });

  it("the least spare of all T-0s and skies is the spare of the setting, of fixed cameras", () => {
    const fixed = plan.cameras.filter(({ sweep, setting }) => sweep === null && setting !== null);
    expect(fixed.length).toBeGreaterThan(3);
    for (const camera of fixed) {
      const i = plan.cameras.indexOf(camera);
      const midTone = midToneLog2Of(site.cameras[i]!, camera.setting!);
      const spares = plan.sun.flatMap(({ at }) => {
        const instant = live.scene.instantAt(at.getTime());
        return SKIES.map(
          (_, skyIndex) => liveView(live, live.cameras[i]!, instant, skyIndex, midTone).exposure!.spareStops,
        );
      });
      expect(Math.min(...spares), camera.id).toBeCloseTo(camera.setting!.spareStops, 9);
    }
  });

  it("the word for the sun is that of the plan's span, in the middle of each and at every T-0 outside of all", () => {
    let told = 0;
    plan.cameras.forEach(({ id, sun }, i) => {
      const wordAt = (ms: number) =>
        liveView(live, live.cameras[i]!, live.scene.instantAt(ms), 0, null).sun.word;
      const spans = [
        ...sun.inFrame.map((span) => ({ ...span, word: "in-frame" })),
        ...sun.nearFrame.map((span) => ({ ...span, word: "near-frame" })),
        ...sun.hidden.map((span) => ({ ...span, word: "hidden" })),
      ];
      for (const { from, to, word } of spans) {
        // A span of seconds is told to the second.
        if (+to - +from < 4000) continue;
        expect(wordAt((+from + +to) / 2), `${id} ${word} ${from.toISOString()}`).toBe(word);
        told++;
      }
      for (const { at } of plan.sun) {
        if (spans.some(({ from, to }) => +at >= +from - 1000 && +at <= +to + 1000)) continue;
        expect(["clear", "down"], `${id} ${at.toISOString()}`).toContain(wordAt(+at));
      }
    });
    expect(told).toBeGreaterThan(0);
  });
});

it("the sun behind a tower is hidden, and in the frame beside it", () => {
  const site = siteOf({
    cameras: [standing("E", 90, "lens: { focal: 35 }")],
    more: "structures: [{ name: tower, at: { bearing: 90, range: 350 }, width: 12, depth: 12, height: 40 }]",
  });
  const window = chooseWindow(site, EVENING);
  const plan = planWindow(site, window, { sky: ["clear"], stepS: 600 });
  const live = liveWindowOf(site, window, ["clear"]);
  const { hidden, inFrame } = plan.cameras[0]!.sun;
  expect([hidden.length > 0, inFrame.length > 0]).toEqual([true, true]);
  for (const [word, spans] of [
    ["hidden", hidden],
    ["in-frame", inFrame],
  ] as const)
    for (const { from, to } of spans) {
      const instant = live.scene.instantAt((+from + +to) / 2);
      expect(liveView(live, live.cameras[0]!, instant, 0, null).sun.word).toBe(word);
    }
});

it.each([
  ["rises", "2027-04-18T04:00/06:30"],
  ["sets", "2027-04-18T17:30/20:00"],
])("a sweep on which the sun %s is not one with the sun down", (_, text) => {
  const site = sweepSite({ cameras: [tracking("T", 10, 2500)] });
  const window = chooseWindow(site, text);
  const live = liveWindowOf(site, window, ["clear"]);
  const isUp = (ms: number): boolean => sunAt(site.place, new Date(ms)).apparentElevationDeg > -0.2666;
  let edgeMs = window.opens.getTime();
  while (isUp(edgeMs) === isUp(+window.opens)) edgeMs += 1000;
  // The sweep takes 100 s.
  const wordAt = (beforeS: number) =>
    liveView(live, live.cameras[0]!, live.scene.instantAt(edgeMs - beforeS * 1000), 0, null).sun.word;
  const rises = !isUp(+window.opens);
  expect([wordAt(300), wordAt(50), wordAt(-60)].map((word) => word === "down")).toEqual(
    rises ? [true, false, false] : [false, false, true],
  );
});

it("a tracker's T+ at a T-0 lie within those of its crossings", () => {
  const { plan, live } = bothOf("skerry-vane");
  const trackers = plan.cameras.filter(({ sweep }) => sweep !== null && sweep.sun.inFrame.length > 0);
  expect(trackers.map(({ id }) => id)).toEqual(["T3", "T4"]);
  for (const camera of trackers) {
    const [crossing] = camera.sweep!.sun.inFrame;
    const middle = new Date((+crossing!.from + +crossing!.to) / 2);
    const i = plan.cameras.indexOf(camera);
    const { sun } = liveView(live, live.cameras[i]!, live.scene.instantAt(+middle), 0, null);
    expect(sun.word).toBe("in-frame");
    expect(sun.tPlus.length).toBeGreaterThan(0);
    for (const { fromS, toS } of sun.tPlus) {
      expect(toS).toBeGreaterThan(fromS);
      expect(fromS).toBeGreaterThanOrEqual(crossing!.tPlus[0]!.fromS - 0.02);
      expect(toS).toBeLessThanOrEqual(crossing!.tPlus.at(-1)!.toS + 0.02);
    }
  }
});

it("with the sun down every camera says so", () => {
  const { site, window, live } = bothOf("skerry-vane", 2);
  const at = window.closes;
  expect(sunAt(site.place, at).apparentElevationDeg).toBeLessThan(-1);
  const instant = live.scene.instantAt(+at);
  const words = live.cameras.map((camera) => liveView(live, camera, instant, 0, null).sun.word);
  expect(new Set(words)).toEqual(new Set(["down"]));
});
