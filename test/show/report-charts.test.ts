/** A report's cards and charts: settings, sky and spans are the plan's. */

import { describe, expect, it } from "vitest";
import { liveView } from "../../src/plan/live/liveView.ts";
import type { Setting } from "../../src/plan/planTypes.ts";
import { markupOf } from "../../src/show/markup.ts";
import { CameraCard } from "../../src/show/report/cameraCard.tsx";
import { cameraDriftOf, thinned } from "../../src/show/report/cameraDriftOf.ts";
import { chartInstants, windowChartData } from "../../src/show/report/chartsOver.ts";
import { firstChosen, reportInput } from "../../src/show/report/reportInput.ts";
import { reportPage } from "../../src/show/report/reportPage.tsx";
import { cursorFrames, WindowCharts } from "../../src/show/report/windowCharts.tsx";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { EVENING, siteOf, standing } from "../plan/sites.ts";
import { sweepSite, tracking } from "../plan/sweepSites.ts";
import { partsOf } from "../support/reportParts.tsx";

const site = siteOf({
  cameras: [
    standing("E", 90),
    standing("plume", 60, "lens: { focal: 85 }, keep: [body, plume], medium: chip"),
    standing("S", 200, "lens: { focal: 85 }, filters: [0.9]"),
  ],
});
const input = reportInput(site, chooseWindow(site, EVENING), ["clear", "overcast"], { stepS: 600 });
const { plan, live, data, clock } = input;

describe("a card", () => {
  it("has the first sky's setting large, and a row for every sky and for all", () => {
    const own = plan.cameras[0]!;
    const html = markupOf(
      CameraCard({
        index: 0,
        camera: live.cameras[0]!.view.camera,
        plan: own,
        skyNames: plan.sky,
        clock,
        where: "",
        cautions: [],
        sweepLink: null,
        now: "",
        picture: null,
        drawings: null,
      }),
    );
    const [clear, overcast] = own.bySky.map(({ setting }) => setting!);
    const all = own.setting!;
    const figures = ({ stop, shutterName, filterDensity }: Setting): string =>
      `${stop} ${shutterName} ${filterDensity}`;
    // They must differ for this to tell anything.
    expect(new Set([clear!, overcast!, all].map(figures)).size).toBeGreaterThan(1);
    const [, big] = /<p class="big"><span>f\/([\d.]+)<\/span>/.exec(html)!;
    expect(Number(big)).toBe(clear!.stop);
    expect(html).toContain("<small> clear</small>");
    const rows = [...html.matchAll(/<th scope="row">([^<]+)<\/th><td>f\/([\d.]+)<\/td><td>([^<]+)</g)];
    expect(rows.map(([, sky, stop, shutter]) => [sky, Number(stop), shutter!.split(" ").at(-1)])).toEqual([
      ["clear", clear!.stop, clear!.shutterName],
      ["overcast", overcast!.stop, overcast!.shutterName],
      ["one for all", all.stop, all.shutterName],
    ]);
  });
});

describe("charts", () => {
  const instants = chartInstants(live, data);

  it("follow the chosen sky and settings", () => {
    for (const [skyIndex, settingIndex] of [
      [0, 0],
      [1, 1],
      [1, 2],
    ] as const) {
      const charts = windowChartData(live, data, instants, { skyIndex, settingIndex });
      expect(charts.plan.sky).toEqual([plan.sky[skyIndex]]);
      plan.cameras.forEach((camera, i) => {
        expect(charts.plan.cameras[i]!.lightAt(5).ev).toBe(camera.lightAt(skyIndex * plan.sun.length + 5).ev);
        const spare = charts.spares(i, 5);
        const { midToneLog2 } = data.cameras[i]!.settings[settingIndex]!;
        expect(spare).toBe(
          liveView(live, live.cameras[i]!, instants[5]!, skyIndex, midToneLog2).exposure!.spareStops,
        );
      });
    }
  });

  it("of one camera have its range, its body from dark to bright, and what it keeps", () => {
    const drift = (index: number) => {
      const { midToneLog2 } = data.cameras[index]!.settings[0]!;
      return cameraDriftOf(live, index, instants, 0, midToneLog2, data.cameras[index]!)!;
    };
    const [east, fire] = [drift(0), drift(1)];
    expect(east.rangeStops).toEqual({ under: 3, over: 4 });
    expect(fire.rangeStops).toEqual({ under: 5, over: 2.5 });
    expect([fire.plumeStops === null, fire.deckStops]).toEqual([false, null]);
    expect(east.inFrame).toEqual(
      plan.cameras[0]!.sun.inFrame.map(({ from, to }) => ({ fromMs: +from, toMs: +to })),
    );
    const { midToneLog2 } = data.cameras[0]!.settings[0]!;
    plan.sun.forEach((_, t0) => {
      const sample = plan.cameras[0]!.lightAt(t0);
      expect(east.bodyDarkStops![t0]).toBeCloseTo(Math.log2(sample.bodyDarkestCdM2!) - midToneLog2, 9);
      expect(east.bodyBrightStops![t0]).toBeCloseTo(Math.log2(sample.bodyBrightestCdM2!) - midToneLog2, 9);
    });
    expect(cameraDriftOf(live, 0, instants, 0, null, data.cameras[0]!)).toBeNull();
  });

  it("of many T-0s keep both ends", () => {
    const many = Array.from({ length: 200 }, (_, i) => ({ ...instants[0]!, ms: i }));
    const few = thinned(many).map(({ ms }) => ms);
    expect([few.length, few[0], few.at(-1)]).toEqual([61, 0, 199]);
    expect(few[30]).toBe(100);
  });
});

it("the line of the chosen T-0 lies over each chart as wide and as far down as it", () => {
  const charts = windowChartData(live, data, chartInstants(live, data), { skyIndex: 0, settingIndex: 0 });
  const html = markupOf(WindowCharts({ charts, settingWords: "" }));
  const sheets = [...html.matchAll(/<svg[^>]* viewBox="0 0 ([\d.]+) ([\d.]+)"/g)].map(([, w, h]) => [
    Number(w),
    Number(h),
  ]);
  const frames = cursorFrames(charts);
  expect([frames.length, sheets.length]).toEqual([3, 3]);
  frames.forEach(({ sheetWidth, sheetHeight, top, height }, i) => {
    expect(sheetWidth).toBe(sheets[i]![0]);
    // Under the strips stands a key, which the line does not run through.
    expect(sheetHeight).toBeLessThanOrEqual(sheets[i]![1]!);
    expect(sheetHeight).toBeGreaterThan(sheets[i]![1]! - 60);
    expect(top + height).toBeLessThanOrEqual(sheetHeight);
  });
});

it("the page as it comes shows all parts at the middle of the window", () => {
  const swept = sweepSite({ cameras: [tracking("T", 60, 2500), standing("S", 200)] });
  const made = reportInput(swept, chooseWindow(swept, "2027-04-18T17:00/19:00"), ["clear"], { stepS: 900 });
  const html = reportPage(made, { script: "", sha256: () => "x", cardsAPage: 2, madeBy: "padstop" });
  const parts = Object.entries(partsOf(made, firstChosen(made.data.window)));
  const shown = parts.filter(([selector]) => !selector.includes("cursor"));
  expect(shown.length).toBeGreaterThan(8);
  for (const [selector, markup] of shown) expect(html.includes(markup), selector).toBe(true);
});
