/** Pictures of frames on paper: tones, clipped parts, the way to the sun, the scale under them; one picture kept. */

import { describe, expect, it } from "vitest";
import type { Reading } from "../../src/plan/live/liveView.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { ExposureScale } from "../../src/show/draw/exposureScale.tsx";
import { arrowToSun } from "../../src/show/draw/frameArrow.ts";
import { framePaper, turned } from "../../src/show/draw/framePaper.ts";
import type { PaperProps } from "../../src/show/draw/frameProps.ts";
import { skyParts } from "../../src/show/draw/frameSky.ts";
import { ToneGroups } from "../../src/show/draw/frameTone.tsx";
import { toneOf } from "../../src/show/draw/tone.ts";
import { markupOf } from "../../src/show/markup.ts";
import { cameraFile } from "../../src/show/report/cameraFile.tsx";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { EVENING, siteOf } from "../plan/sites.ts";
import { expectSvg } from "../support/goldenSvg.ts";

const RANGE = { underStops: 3, overStops: 4 };
const EXPOSURE = { midToneLog2: 10, range: RANGE };
/** A gate of 36 x 24 mm, its picture reaching half as far again. */
const REACH = { xMm: 27, yMm: 18 };
const paperOf = (quarters: number) => framePaper({ reach: REACH, quarters });

describe("paper", () => {
  it("has the top of the gate at its top, 400 px across or 290 high", () => {
    const { width, height, at } = paperOf(0);
    // 54 x 36 mm: 400 / 54 = 7.407 px a mm, 267 high.
    expect([width, height]).toEqual([400, expect.closeTo((36 * 400) / 54, 9)]);
    expect(at([-27, 18])).toEqual([0, 0]);
    expect(at([27, -18])).toEqual([expect.closeTo(400, 9), expect.closeTo((36 * 400) / 54, 9)]);
  });

  it("turns quarters to the left", () => {
    // The right goes up, up goes to the left.
    expect(turned([1, 0], 1)).toEqual([expect.closeTo(0, 12), 1]);
    expect(turned([0, 1], 1)[0]).toBe(-1);
    expect(turned([2, 5], 2)).toEqual([-2, -5]);
    expect(turned([1, 0], 3)[1]).toBe(-1);
    expect(turned([0, 1], 3)[0]).toBe(1);
    const { width, height } = paperOf(1);
    expect(width / height).toBeCloseTo(36 / 54, 9);
  });
});

describe("tones", () => {
  it("run from nearly black to nearly white over the range, black and white beyond", () => {
    const greyOf = (stops: number): number => Number.parseInt(toneOf(stops, RANGE).slice(1, 3), 16);
    expect(toneOf(4.001, RANGE)).toBe("#ffffff");
    expect(toneOf(-3.001, RANGE)).toBe("#000000");
    // L* 6, 51 and 96: 0.664 %, 19.3 % and 90.0 % of white, 19, 121 and 243 of 255 in sRGB.
    for (const [stops, grey] of [
      [-3, 19],
      [0.5, 121],
      [4, 243],
    ] as const)
      expect(Math.abs(greyOf(stops) - grey), `${stops}`).toBeLessThanOrEqual(1);
    const steps = [-3, -2, -1, 0, 1, 2, 3, 4].map(greyOf);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
  });

  it("of parts over the range are hatched as over, under it as under, the rest has its grey", () => {
    const outline = [
      [0, 0],
      [5, 0],
      [5, 5],
    ] as const;
    const drawn = (stops: number): string =>
      markupOf(
        ToneGroups({
          parts: [{ outline, luminanceCdM2: 2 ** (10 + stops) }],
          exposure: EXPOSURE,
          paper: paperOf(0),
        }),
      );
    expect(drawn(4.1)).toMatch(
      /^<path class="frame-over" fill="url\(#pattern-over\)"[^>]*><\/path>$|^<path class="frame-over" fill="url\(#pattern-over\)"[^>]*\/>$/,
    );
    expect(drawn(3.9)).toContain(`color="${toneOf(3.9, RANGE)}"`);
    expect(drawn(-2.9)).toContain('class="frame-tone"');
    expect(drawn(-3.1)).toContain('class="frame-under" fill="url(#pattern-under)"');
    const dark = markupOf(
      ToneGroups({ parts: [{ outline, luminanceCdM2: 0 }], exposure: EXPOSURE, paper: paperOf(0) }),
    );
    expect(dark).toContain("frame-under");
  });

  it("of the sky join neighbours of one tone, and no others", () => {
    const cell = (column: number, row: number) => ({
      xMm: column * 10,
      yMm: row * 10,
      widthMm: 10,
      heightMm: 10,
      direction: [0, 0, 1] as const,
    });
    const cells = [cell(0, 0), cell(1, 0), cell(2, 0), cell(0, 1), cell(2, 1)];
    const parts = skyParts(cells, [1024, 1024, 4096, 1024, 1024], EXPOSURE);
    expect(parts.map(({ outline, luminanceCdM2 }) => [outline[0], outline[2], luminanceCdM2])).toEqual([
      [[0, 0], [20, 10], 1024],
      [[20, 0], [30, 10], 4096],
      // A new row, and one with a cell between them missing.
      [[0, 10], [10, 20], 1024],
      [[20, 10], [30, 20], 1024],
    ]);
  });
});

describe("the way to a sun off the picture", () => {
  const arrow = (towards: readonly [number, number], quarters = 0, fromEdgeDeg = 12.9) =>
    arrowToSun({
      tones: { sun: { isUp: true, disc: [], towards } },
      paper: paperOf(quarters),
      fromEdgeDeg,
    } as unknown as PaperProps)!;
  const tipOf = (path: string): number[] => /M([\d.]+),([\d.]+)/.exec(path)!.slice(1).map(Number);

  it("points up for a sun above, to the right for one at the right, and turns with the picture", () => {
    expect(tipOf(arrow([0, 1]).path)).toEqual([200, 3]);
    expect(tipOf(arrow([0, -1]).path)[1]).toBeGreaterThan(260);
    expect(tipOf(arrow([1, 0]).path)[0]).toBe(397);
    expect(tipOf(arrow([-1, 0]).path)[0]).toBe(3);
    // A quarter to the left: what is at the right of the gate stands at the top of the paper.
    expect(tipOf(arrow([1, 0], 1).path)[1]).toBe(3);
  });

  it("never says that it is farther off than it is", () => {
    expect(arrow([0, 1], 0, 12.99).words).toBe("sun 12.9° outside the edge");
    expect(arrow([0, 1], 0, 0.49).words).toBe("sun 0.4° outside the edge");
  });

  it("points the right way from a picture thinner than its own inset, and its words stand about a narrow one's middle", () => {
    const at = (reach: typeof REACH, towards: readonly [number, number]) =>
      arrowToSun({
        tones: { sun: { isUp: true, disc: [], towards } },
        paper: framePaper({ reach, quarters: 0 }),
        fromEdgeDeg: 12,
      } as unknown as PaperProps)!;
    // 100 to 1: 400 x 4 px.
    const slit = { xMm: 100, yMm: 1 };
    expect(tipOf(at(slit, [0.6, 0.8]).path)).toEqual([200, 2]);
    expect(tipOf(at(slit, [1, 0]).path)).toEqual([397, 2]);
    // 2.9 x 290 px.
    const { box } = at({ xMm: 1, yMm: 100 }, [0, 1]);
    expect(box.x + box.width / 2).toBeCloseTo(1.45, 9);
  });

  it("is none while the disc shows, and with the sun down", () => {
    const none = (isUp: boolean, disc: readonly (readonly [number, number])[]) =>
      arrowToSun({
        tones: { sun: { isUp, disc, towards: [0, 1] } },
        paper: paperOf(0),
        fromEdgeDeg: 0,
      } as unknown as PaperProps);
    expect(none(false, [])).toBeNull();
    expect(none(true, [[0, 0]])).toBeNull();
  });
});

describe("the scale of exposure", () => {
  const readings: readonly Reading[] = [
    { thing: "body", darkStops: -3.4, brightStops: 1 },
    { thing: "sky", darkStops: 2, brightStops: 2 },
    { thing: "plume", darkStops: 11, brightStops: 11 },
    { thing: "deck", darkStops: -5, brightStops: -5 },
  ];
  const svg = markupOf(ExposureScale({ readings, keep: ["body", "sky"], range: RANGE, width: 400 }));
  const marks = [...svg.matchAll(/class="scale-(kept|free)" d="M([\d.]+) \d+H([\d.]+)"/g)].map(
    ([, kind, from, to]) => [kind, Number(from), Number(to)] as const,
  );
  // From 30 to 370 px there are 3 + 4 and twice two stops: 30.909 px a stop, the mid-tone at 30 + 5 x 30.909.
  const at = (stops: number): number => 30 + ((stops + 5) * 340) / 11;

  it("has each thing at its stops, held at the ends", () => {
    expect(marks.map(([kind]) => kind)).toEqual(["kept", "kept", "free", "free"]);
    expect(marks[0]![1]).toBeCloseTo(at(-3.4), 1);
    expect(marks[0]![2]).toBeCloseTo(at(1), 1);
    expect(marks[1]![1]).toBeCloseTo(at(2), 1);
    expect(marks[2]![1]).toBeCloseTo(370, 1);
    expect(marks[3]![1]).toBeCloseTo(30, 1);
  });

  it("names the ends of the range, and warns of what is kept and clipped alone", () => {
    expect(svg).toMatch(/>under -3\.0<.*>mid-tone<.*>over \+4\.0</);
    const alarms = [...svg.matchAll(/class="[^"]*alarm-text[^"]*"[^>]*>([^<]*)</g)].map(([, words]) => words);
    expect(alarms).toEqual(["body -3.4..+1.0"]);
    expect(svg).toContain(">plume +11.0<");
  });
});

describe("a picture as a file", () => {
  const site = siteOf({
    cameras: [
      "id: E1, at: { bearing: 96, range: 240, up: 2 }, aim: { up: 40 }, lens: { focal: 50 }, keep: [body, plume]",
    ],
    vehicle:
      "height: 40, diameter: 4, base: 6, reflectance: 0.75, plume: { propellant: kerolox, length: 30, width: 7 }, ascent: { heading: 90, thrustToWeight: 1.3 }",
    more: "structures: [{ name: mast <1>, at: { bearing: 340, range: 14 }, width: 6, depth: 6, height: 55, solidity: 0.4 }, { name: hall, at: { bearing: 170, range: 60 }, width: 30, depth: 20, height: 14 }]",
  });
  const window = chooseWindow(site, EVENING);
  const fileAt = (at: string | null, skies: readonly Sky[] = ["clear"]): string => {
    const plan = planWindow(site, window, { sky: skies, stepS: 600 });
    return cameraFile(site, window, skies, plan, at === null ? null : new Date(at));
  };
  const svg = fileAt("2027-03-20T17:55:00Z");

  it("is the kept one: lattice, hall, plume, clipped parts, the sun in the frame", () => {
    expect(svg).toMatch(/class="frame-structure frame-lattice"[^>]*><title>mast &lt;1><\/title>/);
    expect(svg).toMatch(/class="frame-structure frame-solid"[^>]*><title>hall<\/title>/);
    for (const part of [
      "frame-over",
      "frame-under",
      "frame-disc",
      "frame-risen",
      "frame-flare",
      "frame-track",
    ])
      expect(svg, part).toContain(`class="${part}"`);
    expect(svg).not.toMatch(/NaN|undefined|Infinity| style=/);
    expectSvg("frame-picture", svg);
  });

  it("draws what stands behind the vehicle before it, and what stands nearer after it", () => {
    const placeOf = (part: string): number => svg.indexOf(part);
    // The camera is 240 m from the body, 246 m from the mast and 231 m from the hall.
    expect(placeOf(">mast")).toBeGreaterThan(-1);
    expect(placeOf(">mast")).toBeLessThan(placeOf('class="frame-body"'));
    expect(placeOf(">hall")).toBeGreaterThan(placeOf('class="frame-body"'));
  });

  it("says the T-0, sky and setting it is for: that for all skies, at the middle of the window unless told", () => {
    const plan = planWindow(site, window, { sky: ["clear", "overcast"], stepS: 600 });
    const middle = fileAt(null, ["clear", "overcast"]);
    expect(middle).toContain("T-0 16:45:00, clear");
    expect(middle).toContain("one for all: f/");
    const { setting, bySky } = plan.cameras[0]!;
    expect(setting!.spareStops).not.toBe(bySky[0]!.setting!.spareStops);
    expect(svg).toContain("T-0 17:55:00, clear");
    expect(svg).toContain("IN FRAME");
    expect(svg).toContain("set for clear");
  });
});
