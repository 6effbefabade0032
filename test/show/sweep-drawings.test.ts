/** The drawings of a sweep: marks by hand, names that hold anything, no label over another, the demo trackers as pictures. */

import { describe, expect, it } from "vitest";
import { sweepMomentMaker } from "../../src/plan/picture/sweepMoment.ts";
import { sweepPathOf } from "../../src/plan/picture/sweepPath.ts";
import { roundTimesMs } from "../../src/plan/roundTimes.ts";
import type { PreparedSweep } from "../../src/plan/sweep/prepareSweep.ts";
import { sweepMapFrom } from "../../src/plan/sweep/sweepMap.ts";
import { overlap } from "../../src/show/draw/boxes.ts";
import { placeLabels } from "../../src/show/draw/labelRoom.ts";
import { SweepMapCursor, SweepMapDrawing } from "../../src/show/draw/sweepMapDrawing.tsx";
import { drawnMapSize, mapCrossings, mapPlot, mapScales } from "../../src/show/draw/sweepMapPlan.ts";
import { SweepPathDrawing } from "../../src/show/draw/sweepPathDrawing.tsx";
import { momentLines, SweepPathLive } from "../../src/show/draw/sweepPathLive.tsx";
import { sweepSky } from "../../src/show/draw/sweepSky.ts";
import { skyLabels } from "../../src/show/draw/sweepSkyLabels.ts";
import { markupOf } from "../../src/show/markup.ts";
import { makeSecondsClock } from "../../src/show/sweepTimes.ts";
import type { Site } from "../../src/site/types.ts";
import { preparedOf, sweepSite, tracking } from "../plan/sweepSites.ts";
import { demoSite } from "../support/demoSites.ts";
import { drawingFile, expectSvg } from "../support/goldenSvg.ts";

const windowOf = (site: Site): string => site.windows[0]!.name!;
const isRough = (sweep: PreparedSweep): boolean => sweep.room.ascent.kind === "parameters";

const mapSvg = (sweep: PreparedSweep, zone: string): string => {
  const { columns, rowS } = drawnMapSize(sweep.room);
  const map = sweepMapFrom(sweep, columns, rowS);
  return drawingFile(SweepMapDrawing({ map, sun: sweep.sun, zone, isRough: isRough(sweep) }));
};

const pathSvg = (sweep: PreparedSweep, zone: string, t0Ms: number): string => {
  const path = sweepPathOf(sweep);
  const live = SweepPathLive({ path, moment: sweepMomentMaker(sweep)(t0Ms), zone });
  return drawingFile(SweepPathDrawing({ path, zone, children: live }));
};

const expectSound = (svg: string): void => {
  expect(svg.match(/NaN|undefined|Infinity| style=|<script/g)).toBeNull();
  expect(svg.match(/-?\d+\.\d{3,}/g)).toBeNull();
};

describe("the demo trackers", () => {
  it.each([
    ["skerry-vane", "T1"],
    ["skerry-vane", "T3"],
    ["calm-parallel", "T1"],
    ["long-day", "T1"],
  ])("of %s: %s as pictures", (name, id) => {
    const site = demoSite(name);
    const { sweep } = preparedOf(site, windowOf(site), {}, id);
    const crossing = sweep.sun.inFrame[0] ?? sweep.sun.nearFrame[0];
    const t0Ms = crossing?.closest.at.getTime() ?? sweep.room.window.opens.getTime();
    const svgs = [mapSvg(sweep, site.zone), pathSvg(sweep, site.zone, t0Ms)];
    svgs.forEach(expectSound);
    expectSvg(`sweep-map-${name}-${id}`, svgs[0]!);
    expectSvg(`sweep-path-${name}-${id}`, svgs[1]!);
  });

  it.each(["skerry-vane", "calm-parallel", "long-day"])("of %s: no label over another", (name) => {
    const site = demoSite(name);
    for (const { id } of site.cameras.filter(({ track }) => track !== null)) {
      const { sweep } = preparedOf(site, windowOf(site), {}, id);
      const path = sweepPathOf(sweep);
      const boxes = skyLabels(path, sweepSky(path), site.zone).flatMap(({ box }) => box ?? []);
      expect(boxes.length).toBeGreaterThan(6);
      boxes.forEach((box, i) => {
        expect(boxes.slice(i + 1).some((other) => overlap(box, other))).toBe(false);
      });
    }
  });
});

describe("the map", () => {
  const site = demoSite("long-day");
  const { sweep } = preparedOf(site, windowOf(site), {}, "T1");
  const { columns, rowS } = drawnMapSize(sweep.room);
  const map = sweepMapFrom(sweep, columns, rowS);
  const scales = mapScales(map);

  it("has 74 s in rows of 5 s, 12 px each, and the window across 660 px", () => {
    expect([columns, rowS, mapPlot(sweep.room)]).toEqual([
      110,
      5,
      { x: 48, y: 48, width: 660, height: 177.6 },
    ]);
    const { opens, closes } = map.window;
    const at = { window: map.window, fromS: 0, toS: 74 };
    const middleMs = (opens.getTime() + closes.getTime()) / 2;
    expect(markupOf(SweepMapCursor({ ...at, atMs: middleMs })!)).toBe(
      '<path class="now" d="M378 45v183.6"/>',
    );
    expect(SweepMapCursor({ ...at, atMs: opens.getTime() - 1 })).toBeNull();
  });

  it("outlines each crossing at its exact T-0 and T+, the one in the frame with its closest approach", () => {
    const { opens, closes } = map.window;
    const clock = makeSecondsClock(site.zone, opens, closes);
    const crossings = mapCrossings(sweep.sun, scales, { clock, isRough: false });
    expect(crossings.map(({ zone }) => zone)).toEqual(["in-frame", "near-frame"]);
    const [framed, near] = crossings;
    const { from, tPlus } = sweep.sun.inFrame[0]!;
    const share = (from.getTime() - opens.getTime()) / (closes.getTime() - opens.getTime());
    expect(framed!.boxes[0]!.x).toBeCloseTo(48 + 660 * share, 6);
    // 1.4 s are 3.3 px tall, drawn no thinner than 3.
    const middleS = (tPlus[0]!.fromS + tPlus[0]!.toS) / 2;
    const { y, height } = framed!.boxes[0]!;
    expect(y + height / 2).toBeCloseTo(48 + (177.6 * middleS) / 74, 6);
    expect(framed!.words).toBe("closest 0.00° off the axis, T-0 Mon 01:55:49 T+6.2 s");
    expect(framed!.label).not.toBeNull();
    expect(near!.words).toBeNull();
  });
});

describe("names and windows of any kind", () => {
  it("are escaped and cut, the whole name beside", () => {
    const id = `<script>alert("x")</script>${"long & ".repeat(24)}`.slice(0, 60);
    const { sweep } = preparedOf(demoSite("skerry-vane"), "second try", {}, "T1");
    const named = { ...sweep, tracker: { ...sweep.tracker, camera: { ...sweep.tracker.camera, id } } };
    const svgs = [mapSvg(named, "UTC"), pathSvg(named, "UTC", sweep.room.window.opens.getTime())];
    for (const svg of svgs) {
      expectSound(svg);
      expect(svg).toContain("&lt;script>");
    }
  });

  it("of a night say so", () => {
    const site = sweepSite({ cameras: [tracking("T", 60, 2500)] });
    const { sweep } = preparedOf(site, "2027-04-18T22:00/22:01");
    const t0Ms = sweep.room.window.opens.getTime();
    const svg = pathSvg(sweep, "UTC", t0Ms);
    expectSound(svg);
    expectSound(mapSvg(sweep, "UTC"));
    expect(svg).toContain("sun down all along");
    expect(momentLines(sweepMomentMaker(sweep)(t0Ms), false)).toEqual([
      { text: "sun down all along the sweep", isAlarm: false },
    ]);
  });

  it("of four days have a line for each", () => {
    const site = sweepSite({ cameras: [tracking("T", 60, 2500)] });
    const { sweep } = preparedOf(site, "2027-04-18T00:00/2027-04-22T00:00", { stepS: 3600 });
    expect(sweepPathOf(sweep).sun.length).toBe(4);
    expectSound(pathSvg(sweep, "UTC", sweep.room.window.opens.getTime()));
    expectSound(mapSvg(sweep, "UTC"));
  });
});

describe("small parts", () => {
  it("round clock times lie inside the window, at least so far apart", () => {
    const window = { opens: new Date("2027-04-18T10:07:00Z"), closes: new Date("2027-04-18T11:30:00Z") };
    const minutes = roundTimesMs(window, "UTC", 11 * 60_000).map((ms) =>
      new Date(ms).toISOString().slice(11, 16),
    );
    expect(minutes).toEqual(["10:15", "10:30", "10:45", "11:00", "11:15", "11:30"]);
  });

  it("clock times along the sun's way have a round close among them, but not the next day's opening", () => {
    const times = (window: string): string[] => {
      const { sweep } = preparedOf(sweepSite({ cameras: [tracking("T", 60, 2500)] }), window, {
        stepS: 3600,
      });
      const path = sweepPathOf(sweep);
      return skyLabels(path, sweepSky(path), "UTC").flatMap(({ kind, text: time }) =>
        kind === "clock" ? [time] : [],
      );
    };
    expect(times("2027-04-18T10:00/2027-04-18T12:00").at(-1)).toBe("12:00");
    const days = times("2027-04-18T12:00/2027-04-20T12:00");
    expect(days[0]).toMatch(/12:00$/);
    expect(days.slice(1).filter((time) => time.endsWith("12:00"))).toEqual([]);
  });

  it("a label takes its first free place, or none", () => {
    const box = (x: number) => ({ x, y: 0, width: 10, height: 10 });
    const within = { x: 0, y: 0, width: 100, height: 10 };
    expect(placeLabels([[box(0), box(20)], [box(0)], [box(0), box(30)], [box(95)]], [], within)).toEqual([
      box(0),
      null,
      box(30),
      null,
    ]);
  });
});
