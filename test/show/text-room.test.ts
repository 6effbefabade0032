/** Room for text in drawings: folded heads, words kept apart along a line, runs of what is alike, a picture's file with long names. */

import { describe, expect, it } from "vitest";
import { planWindow } from "../../src/plan/planWindow.ts";
import { alikeRuns } from "../../src/show/draw/alikeRuns.ts";
import { ExposureScale } from "../../src/show/draw/exposureScale.tsx";
import { foldedText, textWidthPx } from "../../src/show/draw/fitText.ts";
import { spreadAlong } from "../../src/show/draw/labelRoom.ts";
import { markupOf } from "../../src/show/markup.ts";
import { cameraFile } from "../../src/show/report/cameraFile.tsx";
import { demoSite } from "../support/demoSites.ts";

describe("a folded text", () => {
  it("breaks at blanks, is cut where a word or the last line is too long, and loses nothing else", () => {
    // Each letter is 6.4 wide: ten in a line.
    expect(foldedText("aaaa bbbb cccc", 64, 10, 3)).toEqual(["aaaa bbbb", "cccc"]);
    expect(foldedText("aaaa bbbb cccc dddd eeee", 64, 10, 2)).toEqual(["aaaa bbbb", "cccc ddd…"]);
    const [word] = foldedText("a".repeat(200), 64, 10, 3);
    expect(word).toBe(`${"a".repeat(8)}…`);
  });
});

describe("words along a line", () => {
  it("of different widths just touch where they would overlap, and stay inside", () => {
    const wishes = [
      { at: 50, size: 40 },
      { at: 60, size: 20 },
      { at: 2, size: 10 },
    ];
    expect(spreadAlong(wishes, 0, 200)).toEqual([50, 80, 5]);
    expect(spreadAlong(wishes, 0, 80)).toEqual([40, 70, 5]);
  });
});

describe("runs", () => {
  it("are compared with their first", () => {
    const values = [1, 1, 2, 2, 2, 1];
    expect(alikeRuns(values.length, (first, i) => values[first] === values[i])).toEqual([
      [0, 1],
      [2, 4],
      [5, 5],
    ]);
    expect(alikeRuns(0, () => true)).toEqual([]);
  });
});

/** Texts with their middle and width as estimated, px. */
const textsOf = (svg: string, fontPx: number): { x: number; text: string; width: number }[] =>
  [...svg.matchAll(/<text class="small mid[^"]*" x="([\d.-]+)" y="[\d.]+">([^<]*)</g)].map(([, x, text]) => ({
    x: Number(x),
    text: text!,
    width: textWidthPx(text!, fontPx),
  }));

it("heads of a narrow exposure scale are apart and inside", () => {
  const svg = markupOf(
    ExposureScale({ readings: [], keep: [], range: { underStops: 5, overStops: 0.5 }, width: 320 }),
  );
  const heads = textsOf(svg, 8.5);
  expect(heads.map(({ text }) => text)).toEqual(["under -5.0", "mid-tone", "over +0.5"]);
  heads.slice(1).forEach(({ x, width }, i) => {
    expect(x - heads[i]!.x).toBeGreaterThanOrEqual((width + heads[i]!.width) / 2);
  });
});

it("the head of a picture with a long name and two dates stays in its sheet", () => {
  const long = "Skerry".repeat(33);
  const site = { ...demoSite("skerry-vane"), name: long };
  const camera = site.cameras.find(({ id }) => id === "P04")!;
  const alone = { ...site, cameras: [camera] };
  const window = {
    ...site.windows[0]!,
    opens: new Date("2027-04-18T17:10Z"),
    closes: new Date("2027-04-19T19:40Z"),
    stepS: 3600,
  };
  const plan = planWindow(alone, window, { sky: ["clear"] });
  const svg = cameraFile(alone, window, ["clear"], plan, null);
  const [, width] = /viewBox="0 0 ([\d.]+)/.exec(svg)!;
  const heads = [
    ...svg.matchAll(
      /<text class="(strong|soft)" x="12" y="[\d.]+" unicode-bidi="plaintext">(?:<title>[^<]*<\/title>)?([^<]*)</g,
    ),
  ];
  expect(heads.length).toBeGreaterThan(5);
  for (const [, , text] of heads) expect(textWidthPx(text!, 10)).toBeLessThanOrEqual(Number(width) - 24);
  expect(svg).toContain(`<title>P04 at ${long}</title>`);
  expect(svg).toContain("Monday 19 April 2027");
});
