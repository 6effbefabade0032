/** One T-0 at a time: what is told of it is what the whole plan tells. */

import { describe, expect, it } from "vitest";
import { liveView } from "../../src/plan/live/liveView.ts";
import { type LiveWindow, liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import type { WindowPlan } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { midToneLog2Of } from "../../src/plan/settingMidTone.ts";
import type { Site, Window } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { demoSite } from "../support/reportPages.ts";

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
    let compared = 0;
    plan.sun.forEach(({ at }, t0) => {
      const instant = live.scene.instantAt(at.getTime());
      SKIES.forEach((_, skyIndex) => {
        plan.cameras.forEach((camera, i) => {
          const sample = camera.lightAt(skyIndex * plan.sun.length + t0);
          const view = liveView(live, live.cameras[i]!, instant, skyIndex, null);
          const { light, phaseDeg, litShare, ev, tableEv } = sample;
          expect(view).toMatchObject({ light, phaseDeg, litShare, ev, tableEv, exposure: null });
          expect(view.sun.fromEdgeDeg).toBeCloseTo(sample.fromEdgeDeg, 9);
          compared++;
        });
      });
    });
    expect(compared).toBe(plan.sun.length * SKIES.length * plan.cameras.length);
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

  it("the sun is in or near the frame inside the spans of the plan and not outside of them", () => {
    const words = new Set<string>();
    for (const [i, camera] of plan.cameras.entries()) {
      for (const { at } of plan.sun) {
        const { sun } = liveView(live, live.cameras[i]!, live.scene.instantAt(at.getTime()), 0, null);
        words.add(sun.word);
        const within = (spans: readonly { from: Date; to: Date }[], marginMs: number): boolean =>
          spans.some(({ from, to }) => +at >= +from - marginMs && +at <= +to + marginMs);
        // A T-0 within a second of an edge may fall on either side.
        if (sun.word === "in-frame") expect(within(camera.sun.inFrame, 1000), camera.id).toBe(true);
        else if (sun.word === "near-frame") expect(within(camera.sun.nearFrame, 1000), camera.id).toBe(true);
        else if (sun.word === "hidden") expect(within(camera.sun.hidden, 1000), camera.id).toBe(true);
        else {
          const spans = [...camera.sun.inFrame, ...camera.sun.nearFrame, ...camera.sun.hidden];
          expect(within(spans, -1000), `${camera.id} ${sun.word} ${at.toISOString()}`).toBe(false);
        }
      }
    }
    expect(words.size).toBeGreaterThan(0);
  });
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
    for (const { fromS, toS } of sun.tPlus) {
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
