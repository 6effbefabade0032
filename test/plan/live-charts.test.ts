/** Charts over a window against the plan: margins of settings, sun and light of every camera, readings at a T-0. */

import { describe, expect, it } from "vitest";
import { envelopeOf, spareAt } from "../../src/exposure/solver.ts";
import { chartPlanOf } from "../../src/plan/live/chartPlan.ts";
import { liveView } from "../../src/plan/live/liveView.ts";
import { liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import { spareTable } from "../../src/plan/live/windowSpares.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { makeScene } from "../../src/plan/scene.ts";
import { midToneLog2Of } from "../../src/plan/settingMidTone.ts";
import { sweepSamples } from "../../src/plan/sweep/sweepLight.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { demoSite } from "../support/demoSites.ts";
import { EVENING, planOf, siteOf, standing } from "./sites.ts";

const SKIES: readonly Sky[] = ["clear", "overcast"];

describe.each(["skerry-vane", "calm-parallel", "long-day"])("%s", (name) => {
  const site = demoSite(name);
  const window = site.windows[0]!;
  const plan = planWindow(site, window, { sky: SKIES, stepS: 300 });
  const live = liveWindowOf(site, window, SKIES);
  const instants = plan.sun.map(({ at }) => live.scene.instantAt(at.getTime()));
  const midTonesOf = (skyIndex: number): (number | null)[] =>
    plan.cameras.map(({ bySky }, i) => {
      const { setting } = bySky[skyIndex]!;
      return setting && midToneLog2Of(site.cameras[i]!, setting);
    });

  it.each([0, 1])("the least margin of a camera's row is the spare of its setting (sky %i)", (skyIndex) => {
    const spares = spareTable(live, instants, skyIndex, midTonesOf(skyIndex));
    plan.cameras.forEach(({ id, bySky }, i) => {
      const { setting } = bySky[skyIndex]!;
      const row = instants.map((_, t0) => spares(i, t0));
      if (setting === null) expect(new Set(row), id).toEqual(new Set([null]));
      else expect(Math.min(...(row as number[])), id).toBeCloseTo(setting.spareStops, 9);
    });
  });

  it.each([0, 1])(
    "a tracker's margin is that of the nearest T-0 its sweep is judged at (sky %i)",
    (skyIndex) => {
      const scene = makeScene(site, window, { sky: SKIES, stepS: 300 });
      const midTones = midTonesOf(skyIndex);
      const spares = spareTable(live, instants, skyIndex, midTones);
      live.cameras.forEach(({ sweep, view }, i) => {
        const midTone = midTones[i]!;
        if (sweep === null || midTone === null) return;
        const samples = sweepSamples(sweep.room, scene, sweep.tracker, sweep.light).filter(
          (one) => one.skyIndex === skyIndex,
        );
        const along = samples.filter(({ tPlusS }) => tPlusS !== sweep.room.fromS);
        instants.forEach(({ ms }, t0) => {
          const offMs = Math.min(...along.map(({ atMs }) => Math.abs(atMs - ms)));
          // Half way between two either may tell.
          const atNearest = along.filter(({ atMs }) => Math.abs(atMs - ms) === offMs);
          if (new Set(atNearest.map(({ atMs }) => atMs)).size > 1) return;
          const atStart = samples.filter(({ atMs, tPlusS }) => atMs === ms && tPlusS === sweep.room.fromS);
          const wanted = spareAt(envelopeOf([...atStart, ...atNearest]), view.camera.medium!, midTone);
          expect(spares(i, t0), `${view.camera.id} ${t0}`).toBeCloseTo(wanted, 9);
        });
      });
    },
  );

  it.each([0, 1])("light, sun and names are those of the plan (sky %i)", (skyIndex) => {
    const suns = plan.cameras.map(({ sun }) => sun);
    const charts = chartPlanOf(live, site, window, instants, skyIndex, suns);
    expect(charts.sky).toEqual([plan.sky[skyIndex]]);
    expect(charts.events).toEqual(plan.events);
    expect(charts.window).toEqual(plan.window);
    charts.sun.forEach(({ at, elevationDeg }, t0) => {
      expect(at).toEqual(plan.sun[t0]!.at);
      expect(elevationDeg).toBeCloseTo(plan.sun[t0]!.elevationDeg, 9);
    });
    charts.cameras.forEach((camera, i) => {
      const own = plan.cameras[i]!;
      expect(camera.id).toBe(own.id);
      expect(camera.sun).toEqual(own.sun);
      expect(camera.sweep === null).toBe(own.sweep === null);
      for (let t0 = 0; t0 < instants.length; t0++) {
        const { light, ev } = own.lightAt(skyIndex * instants.length + t0);
        expect(camera.lightAt(t0)).toMatchObject({ light, ev });
      }
    });
  });
});

describe("readings", () => {
  const cameras = [
    standing("both", 60, "lens: { focal: 85 }, keep: [body, sky]"),
    standing("fire", 200, "lens: { focal: 85 }, keep: [body, plume]"),
  ];
  const corrections = "corrections: { sky: { clear: 0.5, overcast: -0.75 }, cameras: { both: 0.25 } }";
  const site = siteOf({ cameras, more: corrections });
  const plan = planOf(site, EVENING, { sky: SKIES, stepS: 1800 });
  const live = liveWindowOf(site, chooseWindow(site, EVENING), SKIES);

  it.each([0, 1])("are the plan's luminances in stops from the mid-tone (sky %i)", (skyIndex) => {
    plan.sun.forEach(({ at }, t0) => {
      const instant = live.scene.instantAt(at.getTime());
      const sample = plan.cameras[0]!.lightAt(skyIndex * plan.sun.length + t0);
      // 2^10 cd/m2 as the mid-tone.
      const { exposure } = liveView(live, live.cameras[0]!, instant, skyIndex, 10);
      const stops = (cdM2: number): number => Math.log2(cdM2) - 10;
      const readings = new Map(exposure!.readings.map((one) => [one.thing, one]));
      expect([...readings.keys()].sort()).toEqual(["body", "deck", "plume", "sky"]);
      expect(readings.get("body")!.darkStops).toBeCloseTo(stops(sample.bodyDarkestCdM2!), 9);
      expect(readings.get("body")!.brightStops).toBeCloseTo(stops(sample.bodyBrightestCdM2!), 9);
      expect(readings.get("sky")!.brightStops).toBeCloseTo(stops(sample.skyCdM2), 9);
      expect(readings.get("deck")!.darkStops).toBeCloseTo(stops(sample.deckCdM2), 9);
      expect(readings.get("plume")!.darkStops).toBeCloseTo(stops(sample.plumeCdM2!), 9);
    });
  });

  it("without a vehicle tell of no body and no plume", () => {
    const bare = siteOf({
      cameras: ["id: A, azimuth: 200, elevation: 5, lens: { focal: 50 }"],
      vehicle: null,
    });
    const { scene, ...rest } = liveWindowOf(bare, chooseWindow(bare, EVENING), SKIES);
    const instant = scene.instantAt(scene.window.opens.getTime());
    const { exposure } = liveView({ scene, ...rest }, rest.cameras[0]!, instant, 0, 10);
    expect(exposure!.readings.map(({ thing }) => thing).sort()).toEqual(["deck", "sky"]);
  });

  it("with readings of the light the least spare is still that of the setting", () => {
    plan.cameras.forEach(({ id, setting }, i) => {
      const midTone = midToneLog2Of(site.cameras[i]!, setting!);
      const spares = plan.sun.flatMap(({ at }) =>
        SKIES.map((_, skyIndex) => {
          const instant = live.scene.instantAt(at.getTime());
          return liveView(live, live.cameras[i]!, instant, skyIndex, midTone).exposure!.spareStops;
        }),
      );
      expect(Math.min(...spares), id).toBeCloseTo(setting!.spareStops, 9);
    });
  });
});
