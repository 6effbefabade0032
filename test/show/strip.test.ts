/** The strips over a window: what is merged, where a T-0 stands, how thin a crossing may get, what names can do. */

import { describe, expect, it } from "vitest";
import { LightStrip, lightRuns, sunBoxes } from "../../src/show/draw/lightStrip.tsx";
import { MarginStrip, spareRuns } from "../../src/show/draw/marginStrip.tsx";
import { spareStep } from "../../src/show/draw/stripMarks.tsx";
import { rowHeightPx, stripGeometry } from "../../src/show/draw/stripSheet.tsx";
import { sunEventMarks } from "../../src/show/draw/sunEventMarks.ts";
import { TimeCursor } from "../../src/show/draw/timeCursor.tsx";
import { spanBox, type TimeFrame, xOf } from "../../src/show/draw/timeFrame.ts";
import { clearMiddle, midEdges, runsOf } from "../../src/show/draw/timeRuns.ts";
import { markupOf, svgFile } from "../../src/show/markup.ts";
import { EVENING, planOf, siteOf, standing } from "../plan/sites.ts";
import { drawingFile, expectSvg } from "../support/goldenSvg.ts";
import { type CameraParts, type DrawnPlan, minutes, NO_EVENTS, OPENS_MS, planByHand } from "./stripPlans.ts";

const FRAME: TimeFrame = {
  left: 100,
  top: 20,
  width: 600,
  height: 80,
  sheetWidth: 720,
  sheetHeight: 120,
  fromMs: OPENS_MS,
  toMs: OPENS_MS + minutes(120),
};
const drawn = (plan: DrawnPlan): string => drawingFile(LightStrip({ plan }));
const span = (from: number, to: number): { fromMs: number; toMs: number } => ({
  fromMs: OPENS_MS + minutes(from),
  toMs: OPENS_MS + minutes(to),
});

describe("runs", () => {
  it("of one class are merged, from half way to half way between T-0s", () => {
    const plan = planByHand([{ lights: ["front", "front", "side", "side", "side", "front"] }]);
    const runs = lightRuns(plan, plan.cameras[0]!);
    expect(
      runs.map(({ light, fromMs, toMs }) => [
        light,
        (fromMs - OPENS_MS) / 60_000,
        (toMs - OPENS_MS) / 60_000,
      ]),
    ).toEqual([
      ["front", 0, 15],
      ["side", 15, 45],
      ["front", 45, 50],
    ]);
  });

  it("of a single T-0 are the whole window", () => {
    expect(midEdges([5], { fromMs: 0, toMs: 10 })).toEqual([0, 10]);
    expect(runsOf([0, 10], () => "x")).toEqual([{ first: 0, fromMs: 0, toMs: 10 }]);
  });

  it("of spare step at 1, 0 and -1 stop, nothing for no setting", () => {
    expect([1, 0.99, 0, -0.01, -0.99, -1].map(spareStep)).toEqual([
      "ample",
      "tight",
      "tight",
      "clipped",
      "clipped",
      "lost",
    ]);
    const plan = planByHand([{ lights: ["front", "front", "front", "front"] }]);
    const spares = [2, 0.5, null, Number.NaN];
    expect(spareRuns(plan, (i) => spares[i]!).map(({ step }) => step)).toEqual(["ample", "tight", null]);
  });

  it("have their letter where the sun leaves most room, or none", () => {
    expect(clearMiddle(0, 100, [{ x: 20, width: 30 }], 9)).toBe(75);
    expect(
      clearMiddle(
        0,
        100,
        [
          { x: 60, width: 30 },
          { x: -5, width: 10 },
        ],
        9,
      ),
    ).toBe(32.5);
    expect(clearMiddle(0, 100, [{ x: 4, width: 92 }], 9)).toBeNull();
  });
});

describe("a T-0", () => {
  it("stands where the share of the window says", () => {
    // 30 of 120 minutes: a quarter of 600 behind the left edge at 100.
    expect(xOf(FRAME, OPENS_MS + minutes(30))).toBe(250);
    expect(spanBox(FRAME, span(30, 60), 5, 8)).toEqual({ x: 250, y: 5, width: 150, height: 8 });
  });

  it("of a crossing is cut at the window; none is drawn outside it", () => {
    expect(spanBox(FRAME, span(-50, 30), 0, 8)).toMatchObject({ x: 100, width: 150 });
    expect(spanBox(FRAME, span(90, 500), 0, 8)).toMatchObject({ x: 550, width: 150 });
    expect(spanBox(FRAME, span(-50, -1), 0, 8)).toBeNull();
    expect(spanBox(FRAME, span(121, 130), 0, 8)).toBeNull();
    expect(spanBox(FRAME, span(60, 30), 0, 8)).toBeNull();
  });

  it("of a crossing of two seconds is 1.5 wide about its middle, and inside at either end", () => {
    const two = (fromMinutes: number): ReturnType<typeof sunBoxes> => {
      const geometry = { ...FRAME, rowPx: 16 };
      return sunBoxes([{ ...span(fromMinutes, fromMinutes + 2 / 60), sun: "in-frame" }], {
        frame: geometry,
        y: 0,
        height: 14,
      });
    };
    // 60 minutes and one second: 400.08, half of 1.5 to either side.
    expect(two(60)[0]!.width).toBe(1.5);
    expect(two(60)[0]!.x).toBeCloseTo(400.083 - 0.75, 1);
    expect(two(0)[0]).toMatchObject({ x: 100, width: 1.5 });
    expect(two(120 - 2 / 60)[0]).toMatchObject({ x: 698.5, width: 1.5 });
  });

  it("that is chosen has its line and clock time, kept on the sheet, and none outside", () => {
    const cursor = (atMs: number): string => {
      const line = TimeCursor({ atMs, text: "18:30", frame: FRAME });
      return line === null ? "" : markupOf(line);
    };
    expect(cursor(OPENS_MS + minutes(30))).toMatch(/d="M250 11V104"/);
    expect(cursor(OPENS_MS - 1)).toBe("");
    expect(cursor(Number.NaN)).toBe("");
  });
});

describe("sun events", () => {
  const events = { ...NO_EVENTS, sunset: new Date(OPENS_MS + minutes(12)) };

  it("are marked inside the window only, on lanes of their own when close", () => {
    const lights: CameraParts["lights"] = ["side", "side", "side"];
    expect(sunEventMarks(planByHand([{ lights }], 10, { events }))).toEqual([
      { ms: OPENS_MS + minutes(12), text: "sunset 18:12", lane: 0 },
    ]);
    const both = { ...events, sunrise: new Date(OPENS_MS + minutes(13)) };
    expect(sunEventMarks(planByHand([{ lights }], 10, { events: both })).map(({ lane }) => lane)).toEqual([
      0, 1,
    ]);
    expect(sunEventMarks(planByHand([{ lights }], 5, { events }))).toEqual([]);
  });

  it("of days between the first and the last are found where the T-0s pass the horizon", () => {
    const plan = planByHand([{ lights: Array.from({ length: 6 }, () => "side" as const) }], 720);
    const elevations = [10, -10, 10, -10, 10, -10];
    const sun = plan.sun.map((instant, i) => ({ ...instant, elevationDeg: elevations[i]! }));
    const marks = sunEventMarks({ ...plan, sun });
    expect(marks.map(({ text }) => text.split(" ")[0])).toEqual([
      "sunset",
      "sunrise",
      "sunset",
      "sunrise",
      "sunset",
    ]);
    // From 10 to -10 degrees in 12 h, -0.8333 comes after 10.8333 / 20 of it: 6.5 h.
    expect((marks[0]!.ms - OPENS_MS) / 3_600_000).toBeCloseTo(6.5, 3);
  });
});

describe("the picture", () => {
  const wild = `<script>alert("1")</script> & 'x' ${"W".repeat(200)}\u0000`;

  it("escapes names, cuts long ones, and has the whole name beside it", () => {
    const svg = drawn(planByHand([{ id: wild, lights: ["front", "side"] }]));
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&lt;script>alert(");
    expect(svg).toContain("…");
    expect(svg).toContain("W".repeat(200));
    expect(svg).not.toContain("\u0000");
    const { left } = stripGeometry(planByHand([{ id: wild, lights: ["front", "side"] }]));
    expect(left).toBeLessThan(150);
  });

  it.each([1, 120, 300])("of %i cameras has a row for each, no NaN, and 9 to 16 from row to row", (count) => {
    const cameras = Array.from(
      { length: count },
      (_, i): CameraParts => ({
        id: `C${i}`,
        lights: ["front", "side", "shaded", "dusk"],
        inFrame: [[5, 5 + 1 / 30]],
      }),
    );
    const plan = planByHand(cameras);
    const svg = drawn(plan);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    expect(svg.match(/class="strip-cell"/g)!.length).toBe(count + 4);
    const { rowPx, height } = stripGeometry(plan);
    expect([rowPx >= 9, rowPx <= 16, height]).toEqual([true, true, count * rowPx]);
    const margin = svgFile(MarginStrip({ plan, spareStops: (c, t) => (c === 0 ? null : 2 - t) }));
    expect(margin).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("has a key of what occurs and nothing else", () => {
    const svg = drawn(planByHand([{ lights: ["front", "front"], hidden: [[2, 4]] }]));
    expect(svg).toContain(">front</text>");
    expect(svg).toContain(">sun hidden</text>");
    expect(svg).not.toMatch(/>(side|night|sun in the frame|follows the vehicle[^<]*)<\/text>/);
  });

  it("is drawn for no cameras at all", () => {
    expect(drawn(planByHand([]))).toContain("no cameras");
    expect([0, 1, 30, 40, 300].map(rowHeightPx)).toEqual([16, 16, 16, 12, 9]);
  });

  it("is the kept one", () => {
    const cameras: CameraParts[] = [
      { id: "P01", lights: ["front", "front", "side", "side", "shaded", "flat", "flat"] },
      {
        id: "a long name that has to be cut",
        lights: ["back", "back", "back", "dusk", "dusk", "night", "night"],
        inFrame: [[12, 21]],
        nearFrame: [
          [5, 12],
          [21, 26],
        ],
        hidden: [[30, 34]],
      },
      { id: "T1", lights: Array(7).fill("side"), inFrame: [[40, 40.05]], follows: true },
    ];
    const events = { ...NO_EVENTS, sunset: new Date(OPENS_MS + minutes(25)) };
    const plan = planByHand(cameras, 10, { events });
    expectSvg("strip-light", drawn(plan));
    const spares = [1.4, 1, 0.4, -0.2, -0.9, -1.5, -2];
    const margin = {
      plan,
      spareStops: (c: number, t: number) => (c === 1 ? null : spares[t]!),
    };
    expectSvg("strip-margin", drawingFile(MarginStrip(margin)));
  });

  it("of a real plan tells the spans of its sheet", () => {
    const site = siteOf({
      cameras: [standing("E1", 90), "id: A, azimuth: 265, elevation: 8, lens: { focal: 50 }"],
    });
    const plan = planOf(site, EVENING, { stepS: 300 });
    const svg = drawn(plan);
    const [first] = plan.cameras[1]!.sun.inFrame;
    expect(svg).toContain(`sun in the frame ${first!.from.toISOString().slice(11, 16)}-`);
    expect(svg).toMatch(/sunset 18:\d\d/);
  });
});
