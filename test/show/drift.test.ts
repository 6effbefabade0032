/** Charts of exposure over T-0: gaps, labels that keep apart, what is out of sight, who is named. */

import { describe, expect, it } from "vitest";
import { CameraDrift, cameraDriftFrame } from "../../src/show/draw/cameraDrift.tsx";
import { type CameraDriftData, rangeScale } from "../../src/show/draw/cameraDriftData.ts";
import { curvePath } from "../../src/show/draw/curves.ts";
import { DriftOverview, evDrifts } from "../../src/show/draw/driftChart.tsx";
import { fittedText, textWidthPx } from "../../src/show/draw/fitText.ts";
import { spreadLabels } from "../../src/show/draw/labelRoom.ts";
import type { Point } from "../../src/show/draw/paths.ts";
import { drawingFile, expectSvg } from "../support/goldenSvg.ts";
import { minutes, OPENS_MS, planByHand } from "./stripPlans.ts";

const WINDOW = { fromMs: OPENS_MS, toMs: OPENS_MS + minutes(60) };
const TIMES = Array.from({ length: 7 }, (_, i) => OPENS_MS + minutes(10 * i));
const DATA: CameraDriftData = {
  id: "P04",
  timesMs: TIMES,
  bodyDarkStops: [-1, -1.2, -1.5, null, -2, -2.4, -3],
  bodyBrightStops: [1, 1.1, 0.8, null, 0.2, -0.4, -1],
  skyStops: [2, 2.5, 3, 3.5, 3, 2, 0],
  deckStops: null,
  plumeStops: [9, 9, 9, 9, 9, 9, 9],
  rangeStops: { under: 4, over: 3 },
  inFrame: [{ fromMs: OPENS_MS + minutes(20), toMs: OPENS_MS + minutes(30) }],
};
const camera = (data: CameraDriftData): string =>
  drawingFile(CameraDrift({ data, zone: "UTC", window: WINDOW }));

/** Places of the labels at the right, from their text elements. */
const labelYs = (svg: string, left: number): number[] =>
  [...svg.matchAll(/<text class="[^"]*" x="([\d.]+)" y="([\d.]+)"/g)]
    .filter(([, x]) => Number(x) === left)
    .map(([, , y]) => Number(y))
    .sort((a, b) => a - b);

describe("curves", () => {
  it("keep their gaps, and show a value alone", () => {
    expect(curvePath([[0, 1], [5, 2], null, [9, 3], null, [12, 4], [20, 9]])).toBe(
      "M0,1L5,2M9,3h1.5M12,4L20,9",
    );
    expect(curvePath([null, null])).toBe("");
  });

  it("lose the points of a straight line, and no corner", () => {
    const straight = Array.from({ length: 50 }, (_, i): Point => [i, 2 * i]);
    expect(curvePath(straight)).toBe("M0,0L49,98");
    const dip = straight.map(([x, y], i): Point => [x, i === 20 ? y + 5 : y]);
    expect(curvePath(dip)).toBe("M0,0L19,38L20,45L21,42L49,98");
  });
});

describe("labels", () => {
  it("are moved apart no more than needed, in their order, inside their bounds", () => {
    expect(spreadLabels([10, 50], 12, 0, 100)).toEqual([10, 50]);
    expect(spreadLabels([50, 50, 50], 12, 0, 100)).toEqual([50, 62, 74]);
    expect(spreadLabels([99, 98, 97], 12, 0, 100)).toEqual([100, 88, 76]);
    expect(spreadLabels([], 12, 0, 100)).toEqual([]);
  });

  it("are cut to their room by an upper estimate of their width", () => {
    expect(fittedText("P04", 60, 10)).toBe("P04");
    for (const name of ["W".repeat(200), "漢字".repeat(50), "שלום ".repeat(30), "é".repeat(90)]) {
      const cutName = fittedText(name, 60, 10);
      expect(cutName.endsWith("…")).toBe(true);
      expect(textWidthPx(cutName, 10)).toBeLessThanOrEqual(60);
    }
    expect(fittedText("a\ud800b\u202ec", 100, 10)).toBe("a\ufffdb\ufffdc");
  });
});

describe("the overview", () => {
  const lights = Array(7).fill("side");
  const cameras = [
    { id: "flat", lights, ev: [10, 10, 10, 10, 10, 10, 10] },
    { id: "down", lights, ev: [13, 12, 11, 10, 9, 8, 7] },
    { id: "gap", lights, ev: [12, 11, null, null, 9, 8.5, 8] },
    { id: "dip", lights, ev: [12, 12, 9.5, 12, 12, 12, 12] },
    { id: "near", lights, ev: [10.1, 10, 10, 10, 10, 10, 10] },
    { id: "none", lights, ev: [null, null, null, null, null, null, null] },
  ];

  it("names the two that change most and the two that change least", () => {
    const drifts = evDrifts(planByHand(cameras));
    expect(drifts.map(({ id, named }) => [id, named])).toEqual([
      ["flat", "least"],
      ["down", "most"],
      ["gap", "most"],
      ["dip", null],
      ["near", "least"],
      ["none", null],
    ]);
    expect(drifts.map(({ changeStops }) => changeStops && Number(changeStops.toFixed(6)))).toEqual([
      0,
      6,
      4,
      2.5,
      0.1,
      null,
    ]);
  });

  it("has its names apart, escapes them, and no NaN", () => {
    const wild = cameras.map((one) => ({ ...one, id: `<b>&${one.id}${"x".repeat(200)}` }));
    const svg = drawingFile(DriftOverview({ plan: planByHand(wild) }));
    expect(svg).not.toMatch(/NaN|undefined|Infinity|<b>/);
    const ys = labelYs(svg, 900 - 190 + 37);
    expect(ys.length).toBe(4);
    expect(Math.min(...ys.slice(1).map((y, i) => y - ys[i]!))).toBeGreaterThanOrEqual(13 - 0.02);
  });

  it.each([1, 2, 3, 300])("of %i cameras is drawn", (count) => {
    const many = Array.from({ length: count }, (_, i) => ({ ...cameras[i % 6]!, id: `C${i}` }));
    const svg = drawingFile(DriftOverview({ plan: planByHand(many) }));
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    expect(svg.length).toBeLessThan(80_000);
  });

  it("says so when there is no EV", () => {
    const svg = drawingFile(DriftOverview({ plan: planByHand([cameras[5]!]) }));
    expect(svg).toContain("no EV at any T-0");
    expect(svg).not.toMatch(/NaN|Infinity|change over/);
  });

  it("is the kept one", () => {
    expectSvg("drift-overview", drawingFile(DriftOverview({ plan: planByHand(cameras) })));
  });
});

describe("a camera's drift", () => {
  it("shows its range with at least a stop and at most four beyond", () => {
    const frame = cameraDriftFrame(WINDOW);
    // The plume at +9 is cut at 3 + 4; nothing is under -4, so a stop more: 12 stops and 6 % at either end.
    const { low, high } = rangeScale(DATA, frame);
    expect(high - low).toBeCloseTo(12 * 1.12, 6);
    expect((low + high) / 2).toBeCloseTo(1, 6);
  });

  it("names what it draws, apart, with an arrow for what is out of sight", () => {
    const svg = camera(DATA);
    expect(svg).toContain("plume ↑");
    expect(svg).toMatch(/>over<.*>under</);
    expect(svg).not.toContain(">deck");
    const ys = labelYs(svg, 440 - 68 + 25);
    expect(ys.length).toBe(3);
    expect(Math.min(...ys.slice(1).map((y, i) => y - ys[i]!))).toBeGreaterThanOrEqual(11 - 0.02);
    const dashes = [...svg.matchAll(/stroke-dasharray="([^"]+)"/g)].map(([, dash]) => dash);
    expect(new Set(dashes).size).toBe(2);
  });

  it("draws no span outside the window, and a short one at least 1.5 wide", () => {
    const inFrame = [
      { fromMs: OPENS_MS - 9000, toMs: OPENS_MS - 5000 },
      { fromMs: OPENS_MS + minutes(30), toMs: OPENS_MS + minutes(30) + 2000 },
    ];
    const widths = [
      ...camera({ ...DATA, inFrame }).matchAll(/class="strip-in" x="[\d.]+" y="[\d.]+" width="([\d.]+)"/g),
    ];
    expect(widths.map(([, width]) => Number(width))).toEqual([1.5]);
  });

  it("has no NaN whatever is missing", () => {
    const none = TIMES.map(() => null);
    const empty = {
      ...DATA,
      bodyDarkStops: none,
      bodyBrightStops: none,
      skyStops: null,
      plumeStops: none,
      inFrame: [],
    };
    const noBody = { ...DATA, bodyDarkStops: null, bodyBrightStops: null };
    const infinite = { ...DATA, skyStops: TIMES.map((_, i) => (i === 3 ? Number.NEGATIVE_INFINITY : -50)) };
    for (const data of [empty, noBody, infinite]) expect(camera(data)).not.toMatch(/NaN|undefined|Infinity/);
    expect(camera(infinite)).toContain("sky ↓");
  });

  it("is the kept one", () => {
    expectSvg("drift-camera", camera(DATA));
  });
});
