/** What odd sites ask of drawings: files that are XML, slit gates, windows of a week behind a long lens, marks beside letters. */

import { describe, expect, it } from "vitest";
import { liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import { frameLayoutOf } from "../../src/plan/picture/frameLayout.ts";
import { sunTrackPicture } from "../../src/plan/picture/sunTrackPicture.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { textWidthPx } from "../../src/show/draw/fitText.ts";
import { cameraFile } from "../../src/show/report/cameraFile.tsx";
import { chartInstants } from "../../src/show/report/chartsOver.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { EVENING, siteOf } from "../plan/sites.ts";

const WEEK = "2027-06-21T00:00/2027-06-28T00:00";

function fileOf(camera: string): string {
  const site = siteOf({ cameras: [camera] });
  const window = chooseWindow(site, EVENING);
  return cameraFile(site, window, ["clear"], planWindow(site, window, { sky: ["clear"] }), null);
}

describe("a picture's file", () => {
  it("gives every attribute a value, with the vehicle and the flare margin out of the picture too", () => {
    const svg = fileOf("id: C, at: { bearing: 90, range: 400 }, azimuth: 90, lens: { focal: 1 }");
    expect(svg).toContain('class="frame-body" d=""');
    const tags = svg.slice(svg.indexOf("</style>")).match(/<[a-z][^>]*>/g)!;
    for (const tag of tags) expect(tag).toMatch(/^<[a-z]+(\s+[^\s="<>/]+="[^"<]*")*\s*\/?>$/i);
  });

  it("takes a name with the end of a section of characters", () => {
    const svg = fileOf('id: "a]]>b", at: { bearing: 90, range: 400 }, aim: { up: 25 }, lens: { focal: 85 }');
    expect(svg).toContain("a]]&gt;b");
    expect(svg).not.toContain("]]>");
  });

  it("of a slit keeps its words on the sheet", () => {
    const svg = fileOf(
      "id: C, at: { bearing: 270, range: 400 }, aim: { up: 25 }, lens: { focal: 85 }, gate: { width: 300, height: 0.5 }",
    );
    const [, height] = /viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)!;
    const [, top] = /<g transform="translate\([\d.]+ ([\d.]+)\)"/.exec(svg)!;
    const [, y] = /<text class="frame-label[^"]*" x="[\d.-]+" y="([\d.-]+)">sun /.exec(svg)!;
    // Below the last line of the head, whose base line is 4.2 + 4 px above the picture's room.
    expect(Number(top) + Number(y) - 9).toBeGreaterThan(0);
    expect(Number(y)).toBeGreaterThan(-12);
    expect(Number(top) + Number(y)).toBeLessThan(Number(height));
  });
});

describe("a week", () => {
  // Where the sun stands in its middle at ten; at midsummer it comes by there every day.
  const pad = { latitudeDeg: 45, longitudeDeg: 0, heightM: 20 };
  const sun = sunAt(pad, new Date("2027-06-24T10:00:00Z"));
  const aims = `azimuth: ${sun.azimuthDeg}, elevation: ${sun.apparentElevationDeg}`;
  const site = siteOf({
    cameras: [`id: L, ${aims}, lens: { focal: 1000 }, gate: { width: 24, height: 18 }`],
  });
  const live = liveWindowOf(site, chooseWindow(site, WEEK), ["clear"]);

  it("behind a long lens is not walked by the second, and no day's way is lost", () => {
    const camera = live.cameras[0]!;
    const { reach } = frameLayoutOf(live, camera);
    let asked = 0;
    const sunOf = (ms: number) => {
      asked++;
      return camera.sunOf(ms);
    };
    const counted = { ...camera, sunOf };
    const { lines } = sunTrackPicture(live, counted, reach);
    // Half the picture's diagonal is 1.1 degrees: a 24th of it are 11 s of the sun, 54,000 of them in the week.
    expect(asked).toBeLessThan(5000);
    expect(lines).toHaveLength(7);
    for (const line of lines) {
      const [first, last] = [line[0]!, line.at(-1)!];
      const atEdge = [first, last].map(([x, y]) =>
        Math.max(Math.abs(x) / reach.xMm, Math.abs(y) / reach.yMm),
      );
      for (const share of atEdge) expect(share).toBeGreaterThan(0.9);
    }
  });

  it("by the minute has no more T-0s in its charts than can be told apart, its ends among them", () => {
    const { window } = live.scene;
    const instants = chartInstants(live, { window, stepS: 60 });
    expect(instants.length).toBeLessThanOrEqual(723);
    expect(instants[0]!.ms).toBe(window.opens.getTime());
    expect(instants.at(-1)!.ms).toBe(window.closes.getTime());
  });
});

it("marks over a letter take no room, those beside or around it do, rare ideographs as much as common ones", () => {
  expect(textWidthPx("a\u0300\u0301", 10)).toBeCloseTo(6.4, 9);
  expect(textWidthPx("\u0915\u093e", 10)).toBeCloseTo(12.8, 9);
  expect(textWidthPx("a\u0489", 10)).toBeCloseTo(12.8, 9);
  expect(textWidthPx("\u{20bb7}\ua000", 10)).toBeCloseTo(22, 9);
});
