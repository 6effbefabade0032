/** Words, settings and order of a report's page, from the plan's own figures. */

import { describe, expect, it } from "vitest";
import { type Chosen, type LiveRow, liveRow, t0Text } from "../../src/show/report/liveRow.ts";
import { nowLine } from "../../src/show/report/nowLine.ts";
import { pageDataOf, pageDataText, settingsOf, settingTargets } from "../../src/show/report/pageData.ts";
import { firstChosen, reportInput, shownT0 } from "../../src/show/report/reportInput.ts";
import { type RowFilter, type RowOrder, shownRows } from "../../src/show/report/rowOrder.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { EVENING, siteOf, standing } from "../plan/sites.ts";
import { sweepSite, tracking } from "../plan/sweepSites.ts";

const SKIES: readonly Sky[] = ["clear", "overcast"];
const site = siteOf({
  cameras: [
    standing("E", 90),
    standing("plume", 60, "lens: { focal: 85 }, keep: [body, plume], medium: chip"),
    "id: A, azimuth: 200, elevation: 5, lens: { focal: 50 }",
    standing("S", 200, "lens: { focal: 85 }, filters: [0.9]"),
  ],
});
const window = chooseWindow(site, EVENING);
const input = reportInput(site, window, SKIES, { stepS: 600 });
const { plan, live, data, clock } = input;
const chosenAt = (minutes: number, skyIndex = 0, settingIndex = 0): Chosen => ({
  ms: window.opens.getTime() + minutes * 60_000,
  skyIndex,
  settingIndex,
});

describe("settings of the page", () => {
  it("stand in the order of their names: each sky's own, then that for all", () => {
    expect(settingTargets(plan.sky)).toEqual(["clear", "overcast", "one for all"]);
    expect(settingTargets(["clear"])).toEqual(["clear"]);
    for (const camera of plan.cameras) {
      const [clear, overcast] = camera.bySky.map(({ setting }) => setting);
      expect(settingsOf(camera)).toEqual([clear, overcast, camera.setting]);
    }
    const one = { ...plan.cameras[0]!, bySky: plan.cameras[0]!.bySky.slice(0, 1) };
    expect(settingsOf(one)).toEqual([one.bySky[0]!.setting]);
  });

  it("have the mid-tone of their camera: K N2 2^loss / (t S)", () => {
    plan.cameras.forEach((camera, i) => {
      for (const [k, setting] of settingsOf(camera).entries()) {
        const page = data.cameras[i]!.settings[k]!;
        expect(page === null).toBe(setting === null);
        if (setting === null) continue;
        const speed = i === 1 ? 400 : 200;
        // Engraved stops and times stand for powers of two: within a tenth of a stop; a density of 0.3 is a stop.
        const byHand =
          Math.log2((12.5 * setting.stop ** 2) / (setting.shutterS * speed)) +
          setting.filterDensity / 0.30103;
        expect(Math.abs(page.midToneLog2 - byHand)).toBeLessThan(0.1);
        expect(page.words).toContain(`f/${setting.stop}`);
      }
    });
    expect(settingsOf(plan.cameras[3]!)[0]!.filterDensity).toBe(0.9);
  });

  it("come back from the text of the page as they were, dates and spans too", () => {
    expect(pageDataOf(pageDataText(data))).toEqual(data);
    expect(pageDataText({ ...data, site: { ...site, name: "</script>\u2028" } })).not.toMatch(/<|\u2028/);
    data.cameras.forEach(({ sun }, i) => {
      const own = plan.cameras[i]!.sun;
      for (const kind of ["inFrame", "nearFrame", "hidden"] as const)
        expect(sun[kind]).toEqual(own[kind].map(({ from, to }) => ({ from, to })));
    });
    expect(data.cameras[0]!.sun.inFrame.length + data.cameras[0]!.sun.nearFrame.length).toBeGreaterThan(0);
  });

  it("of a tracker come back with the instants of its crossings", () => {
    const swept = sweepSite({ cameras: [tracking("T", 60, 2500)] });
    const made = reportInput(swept, chooseWindow(swept, "2027-04-18T17:00/19:00"), ["clear"], { stepS: 900 });
    const { sweepSun } = pageDataOf(pageDataText(made.data)).cameras[0]!;
    expect(sweepSun).toEqual(made.plan.cameras[0]!.sweep!.sun);
  });
});

describe("a row", () => {
  const rowAt = (index: number, chosen: Chosen): LiveRow => {
    const { views } = shownT0(live, data, chosen);
    return liveRow(views[index]!, data.cameras[index]!, index, chosen, null);
  };

  it("has the least spare over all T-0s that its setting has, for each sky and for all", () => {
    plan.cameras.forEach((camera, i) => {
      settingsOf(camera).forEach((setting, k) => {
        if (setting === null) return;
        const skies = k < SKIES.length ? [k] : [0, 1];
        const rows = plan.sun.flatMap(({ at }) =>
          skies.map((skyIndex) => rowAt(i, { ms: at.getTime(), skyIndex, settingIndex: k })),
        );
        expect(Math.min(...rows.map(({ spareStops }) => spareStops!)), camera.id).toBeCloseTo(
          setting.spareStops,
          6,
        );
        for (const { spareStops, isClipped } of rows)
          if (Math.abs(spareStops!) > 0.001) expect(isClipped).toBe(spareStops! < 0);
        expect(rows[0]!.setting).toContain(`f/${setting.stop} `);
      });
    });
  });

  it("tells the body from dark to bright, and the sun in words", () => {
    const chosen = chosenAt(30);
    const { body } = rowAt(0, chosen);
    const [dark, bright] = body.split("..").map(Number);
    const sample = plan.cameras[0]!.lightAt(3);
    const { midToneLog2 } = data.cameras[0]!.settings[0]!;
    expect(Math.abs(dark! - (Math.log2(sample.bodyDarkestCdM2!) - midToneLog2))).toBeLessThan(0.051);
    expect(Math.abs(bright! - (Math.log2(sample.bodyBrightestCdM2!) - midToneLog2))).toBeLessThan(0.051);
    const { views } = shownT0(live, data, chosen);
    const said = (sun: Partial<(typeof views)[0]["sun"]>): string =>
      liveRow(
        { ...views[0]!, sun: { ...views[0]!.sun, tPlus: [], ...sun } },
        data.cameras[0]!,
        0,
        chosen,
        null,
      ).sunWords;
    expect(said({ word: "clear", fromEdgeDeg: 24.9 })).toBe("clear 24°");
    expect(said({ word: "down" })).toBe("sun down");
    expect(said({ word: "hidden" })).toBe("hidden");
    expect(said({ word: "near-frame", fromEdgeDeg: 3.21 })).toBe("near frame 3.2°");
    expect(said({ word: "in-frame", fromEdgeDeg: -2 })).toBe("IN FRAME");
    // Outward, as spans are.
    expect(said({ word: "in-frame", tPlus: [{ fromS: 31.7, toS: 36.2 }] })).toBe("IN FRAME T+31-37 s");
    expect(
      said({
        word: "near-frame",
        tPlus: [
          { fromS: 2, toS: 3.1 },
          { fromS: 9.9, toS: 12 },
        ],
      }),
    ).toBe("near frame T+2-4, 9-12 s");
  });

  it("of a camera without a vehicle or setting has dashes", () => {
    const bare = siteOf({
      cameras: ["id: A, azimuth: 200, elevation: 5, lens: { focal: 50 }"],
      vehicle: null,
    });
    const made = reportInput(bare, chooseWindow(bare, EVENING), SKIES, { stepS: 1800 });
    const chosen = firstChosen(made.data.window);
    const { views } = shownT0(made.live, made.data, chosen);
    expect(liveRow(views[0]!, made.data.cameras[0]!, 0, chosen, null)).toMatchObject({
      body: "-",
      spare: "-",
      setting: "none",
    });
  });

  it("and the line under a picture say the chosen T-0, to the second, its sky and its setting", () => {
    const chosen = { ...chosenAt(30, 1, 2), ms: Date.parse("2027-03-20T15:30:07Z") };
    expect(t0Text(chosen.ms, clock)).toBe("15:30:07");
    const row = {
      ...rowAt(0, chosen),
      sunWords: "clear 24°",
      riskWords: "IN FRAME 17:00-17:30",
      isClipped: false,
    };
    const words = nowLine(row, chosen, "overcast", "one for all", clock);
    expect(words).toMatch(
      /^T-0 15:30:07, overcast: \w+ light, clear 24° · one for all: f\/[\d.]+ .* · spare [+-]\d/,
    );
    expect(words).not.toContain("CLIPPED");
    expect(nowLine({ ...row, isClipped: true }, chosen, "overcast", "one for all", clock)).toMatch(
      /, CLIPPED$/,
    );
    expect(nowLine({ ...row, spareStops: null }, chosen, "x", "y", clock)).toMatch(
      /no setting: tones by the body alone$/,
    );
  });

  it("is first shown at the middle of the window", () => {
    expect(firstChosen(window).ms).toBe(Date.parse("2027-03-20T16:45:00Z"));
  });
});

describe("rows shown", () => {
  const row = (id: string, more: Partial<LiveRow>): LiveRow =>
    ({ id, risk: "clear", spareStops: 1, isClipped: false, ...more }) as LiveRow;
  const rows = [
    { row: row("Far", { risk: "down", spareStops: 0.5 }), isTracker: false },
    { row: row("b1", { risk: "hidden", spareStops: -1, isClipped: true }), isTracker: false },
    { row: row("B2", { risk: "in-frame", spareStops: null }), isTracker: false },
    { row: row("t", { risk: "near-frame", spareStops: 3 }), isTracker: true },
    { row: row("c", { spareStops: 0.5 }), isTracker: false },
  ];
  const ids = (order: RowOrder, filter: RowFilter = "all", part = ""): string[] =>
    shownRows(rows, order, filter, part).map(({ id }) => id);

  it("are in the order of the file, of the risk, or of the least spare with those without one last", () => {
    expect(ids("file")).toEqual(["Far", "b1", "B2", "t", "c"]);
    expect(ids("risk")).toEqual(["B2", "t", "b1", "c", "Far"]);
    expect(ids("spare")).toEqual(["b1", "Far", "c", "t", "B2"]);
  });

  it("are those that a filter names, by letters of the id whatever their case", () => {
    expect(ids("file", "sun")).toEqual(["b1", "B2", "t"]);
    expect(ids("file", "clipped")).toEqual(["b1"]);
    expect(ids("file", "unset")).toEqual(["B2"]);
    expect(ids("file", "trackers")).toEqual(["t"]);
    expect(ids("file", "all", " B ")).toEqual(["b1", "B2"]);
  });
});
