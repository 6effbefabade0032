/** The plan drawing of the pad: nothing lost, nothing over another, nothing that is no number; one demo kept as a picture. */

import { describe, expect, it } from "vitest";
import { padPlanOf } from "../../src/plan/picture/padPlan.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import type { SunRiskWord } from "../../src/plan/sunRisk.ts";
import { overlap } from "../../src/show/draw/boxes.ts";
import { PadDrawing } from "../../src/show/draw/padDrawing.tsx";
import { placeNames } from "../../src/show/draw/padLabels.ts";
import { PadLive, sunText } from "../../src/show/draw/padLive.tsx";
import { riskMark } from "../../src/show/draw/padMarks.tsx";
import { lengthText, padSheet, scaleBarM } from "../../src/show/draw/padSheet.ts";
import { arcTicks, sunArc } from "../../src/show/draw/padSunArc.ts";
import { markupOf } from "../../src/show/markup.ts";
import type { Site } from "../../src/site/types.ts";
import { siteOf, standing } from "../plan/sites.ts";
import { demoSite } from "../support/demoSites.ts";
import { drawingFile, expectSvg } from "../support/goldenSvg.ts";
import { makeRandom } from "../support/random.ts";

const WINDOW = {
  opens: new Date("2027-03-20T15:00:00Z"),
  closes: new Date("2027-03-20T18:30:00Z"),
  zone: "UTC",
};
const sunAt = (hours: number, azimuthDeg: number, apparentElevationDeg: number) => ({
  at: new Date(WINDOW.opens.getTime() + hours * 3_600_000),
  azimuthDeg,
  apparentElevationDeg,
});
const SUNS = [sunAt(0, 230, 20), sunAt(1.5, 250, 5), sunAt(2.5, 262, -5), sunAt(3.5, 275, -16)];

const RISKS: readonly SunRiskWord[] = ["in-frame", "near-frame", "clear", "hidden", "down"];
const risksOf = (site: Site) => new Map(site.cameras.map(({ id }, i) => [id, RISKS[i % 5]!] as const));

const drawn = (site: Site, sun = SUNS[0]!): string => {
  const plan = padPlanOf(site);
  const children = PadLive({ plan, sun });
  return drawingFile(PadDrawing({ plan, sun: SUNS, window: WINDOW, risks: risksOf(site), children }));
};

/** Cameras spread evenly by the logarithm of the range, 30 m to 20 km. */
function crowd(count: number): Site {
  const random = makeRandom(300);
  const cameras = Array.from({ length: count }, (_, i) => {
    const range = (30 * (20_000 / 30) ** random.next()).toFixed(1);
    return i % 10 === 9
      ? `id: A${i}, azimuth: ${random.whole(0, 359)}, elevation: 2, lens: { focal: 50 }`
      : standing(`CAM-${i}`, random.whole(0, 359), "lens: { focal: 85 }", Number(range));
  });
  return siteOf({
    cameras,
    more: "structures: [{ name: tower, at: { bearing: 300, range: 12 }, width: 6, depth: 6, height: 60 }]",
  });
}

describe("names on the plan", () => {
  const site = crowd(300);
  const plan = padPlanOf(site);
  const risks = risksOf(site);
  const panels = padSheet(plan).panels;
  const placed = panels.map((panel) => placeNames(plan, panel, (id) => riskMark(risks.get(id))));

  it("lie inside the border, over no other name and no mark", () => {
    placed.forEach(({ labels, cameras, outside }, i) => {
      expect(labels.length).toBeGreaterThan(40);
      const marks = [...cameras, ...outside].map(({ at: [x, y] }) => ({
        x: x - 3,
        y: y - 3,
        width: 6,
        height: 6,
      }));
      const boxes = labels.map((label) => label.placed.box);
      boxes.forEach((box, j) => {
        expect(boxes.slice(j + 1).some((other) => overlap(box, other))).toBe(false);
        expect(marks.some((mark) => overlap(box, mark))).toBe(false);
        const [x, y] = panels[i]!.centre;
        expect(Math.hypot(box.x + box.width / 2 - x, box.y - y)).toBeLessThan(176);
      });
    });
  });

  it("every camera is drawn once, named or counted as left out, and on the border of each drawing inside its own", () => {
    const ids = placed.flatMap(({ cameras }) => cameras.map(({ camera }) => camera.id));
    expect([...ids].sort()).toEqual(site.cameras.map(({ id }) => id).sort());
    placed.forEach(({ cameras, labels, leftOutIds, outside }, i) => {
      const own = new Set(cameras.map(({ camera }) => camera.id));
      expect(labels.filter(({ name }) => own.has(name)).length + leftOutIds).toBe(own.size);
      expect(outside).toHaveLength(
        plan.cameras.filter(({ stand }) => stand !== null && stand.drawing > i).length,
      );
    });
    const svg = drawn(site);
    const told = [...svg.matchAll(/(\d+) ids? left out; see the table/g)].map(([, count]) => Number(count));
    expect(told).toEqual(placed.map(({ leftOutIds }) => leftOutIds).filter((count) => count > 0));
  });

  it("those with the sun in the frame come first", () => {
    const framed = placed.flatMap(({ cameras, labels }) => {
      const named = new Set(labels.map(({ name }) => name));
      return cameras.map(({ camera: { id } }) => ({
        isIn: risks.get(id) === "in-frame",
        has: named.has(id),
      }));
    });
    const share = (isIn: boolean): number => {
      const some = framed.filter((one) => one.isIn === isIn);
      return some.filter(({ has }) => has).length / some.length;
    };
    expect(share(true)).toBeGreaterThan(share(false));
  });

  it("are escaped, cut when long, and whole in the title", () => {
    const long = `${"long ".repeat(39)}name`;
    const svg = drawn(
      siteOf({
        cameras: [
          standing('"<script>alert(1)</script>"', 40),
          standing(`"${long}"`, 140),
          standing('"a&b"', 220),
        ],
        more: 'structures: [{ name: "<b>tank</b>", at: { bearing: 300, range: 50 }, width: 6, depth: 6, height: 60 }]',
      }),
    );
    expect(svg).not.toMatch(/<script|<b>/);
    expect(svg).toMatch(/>&lt;script>al[^<]*…</);
    expect(svg).toContain("a&amp;b");
    expect(svg).toMatch(/>long long l[^<]*…</);
    expect(svg.split(long)).toHaveLength(2);
  });
});

describe("the drawing", () => {
  it("holds no number that is none, whatever the sun and the site", () => {
    const sites = [
      demoSite("skerry-vane"),
      crowd(12),
      siteOf({ cameras: ["id: A, azimuth: 0, elevation: 90, lens: { focal: 50 }"], vehicle: null }),
      siteOf({ cameras: [standing("one", 10, "lens: { focal: 8 }", 12)] }),
    ];
    for (const site of sites)
      for (const sun of [sunAt(0, 0, 90), sunAt(0, 359.99, 1e-7), sunAt(0, 90, 0), sunAt(0, 180, -40)])
        expect(drawn(site, sun)).not.toMatch(/NaN|undefined|Infinity|(?<!#)\b\d{6}|e[-+]\d/);
  });

  it("has a scale bar as long as it says", () => {
    for (const { pxPerM, radiusM } of padSheet({ radiiM: [17, 980, 22_000] }).panels) {
      const lengthM = scaleBarM(pxPerM, 84);
      expect(lengthM * pxPerM).toBeLessThanOrEqual(84);
      expect(lengthM * pxPerM).toBeGreaterThan(84 / 2.5 - 1);
      const [, figure, unit] = /^([\d.]+) (k?m)$/.exec(lengthText(lengthM))!;
      expect(Number(figure) * (unit === "km" ? 1000 : 1)).toBe(lengthM);
      expect(pxPerM * radiusM).toBe(176);
    }
    const svg = drawn(siteOf({ cameras: [standing("one", 10)] }));
    // A camera 400 m off: border 440 m, 176 px; 200 m are 80 px.
    expect(svg).toMatch(/class="pad-bar"[^>]*width="80"/);
    expect(svg).toContain(">200 m</text>");
  });

  it("cuts the axis of a camera that looks out at the border, as its field is cut", () => {
    const svg = drawn(
      siteOf({ cameras: ["id: A, at: { bearing: 90, range: 410 }, azimuth: 90, lens: { focal: 50 }"] }),
    );
    // The border's radius is 176 px about (240, 270), with a corner of its polygon in the east.
    const [, x, y] = /class="pad-axis" d="M[\d.]+,[\d.]+L([\d.]+),([\d.]+)"/.exec(svg)!;
    expect(Number(x)).toBeCloseTo(240 + 176, 1);
    expect(Number(y)).toBeCloseTo(270, 1);
  });

  it("draws shadows away from the sun, and none with the sun down", () => {
    const plan = padPlanOf(siteOf({ cameras: [standing("one", 10)] }));
    const live = (sun: (typeof SUNS)[number]) => markupOf(PadLive({ plan, sun }));
    // 45 m to the top of a vehicle 3 m across under 45 degrees from the south: 45 to 46.5 m north, 0.4 px a metre.
    const path = /pad-shadow-vehicle" d="([^"]+)"/.exec(live(sunAt(0, 180, 45)))![1]!;
    const tops = [...path.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/g)].map(([, , y]) => Number(y));
    expect(Math.min(...tops)).toBeCloseTo(30 + 240 - 46.5 * 0.4, 1);
    expect(Math.max(...tops)).toBeCloseTo(30 + 240 - 3.5 * 0.4, 1);
    expect(live(sunAt(0, 180, -1))).not.toContain("pad-shadow");
    expect(live(sunAt(0, 180, -1))).toContain("sun down");
  });

  it("tells the sun in a line", () => {
    const plan = padPlanOf(siteOf({ cameras: [standing("one", 10)] }));
    expect(sunText(plan, sunAt(0, 7.25, 45))).toBe(
      "sun: azimuth 007.3°, elevation +45.0° · shadow of the vehicle 45 m",
    );
    expect(sunText(plan, sunAt(0, 7, 0.01))).toContain("shadow of the vehicle over 10.0 km");
    expect(sunText(plan, sunAt(0, 7, -3))).toBe("sun: azimuth 007.0°, elevation -3.0° · sun down");
    expect(sunText({ solids: [] }, sunAt(0, 7, 3))).toBe("sun: azimuth 007.0°, elevation +3.0°");
  });

  it("of a demo site is the one kept", () => {
    const site = demoSite("skerry-vane");
    const plan = planWindow(site, site.windows[0]!);
    const pad = padPlanOf(site);
    const risks = new Map(plan.cameras.map(({ id, sun }) => [id, sun.risk]));
    const sun = plan.sun[plan.middleIndex]!;
    const children = PadLive({ plan: pad, sun });
    const props = { plan: pad, sun: plan.sun, window: plan.window, risks, children };
    expectSvg("pad-skerry-vane", drawingFile(PadDrawing(props)));
  });
});

describe("the sun's arc", () => {
  it("changes where the centre sets, and goes on from there", () => {
    const [up, down] = sunArc(SUNS);
    expect([up!.isUp, down!.isUp]).toEqual([true, false]);
    // +5 to -5 degrees: half way from 250 to 262.
    expect(up!.azimuthsDeg.at(-1)).toBeCloseTo(256, 9);
    expect(down!.azimuthsDeg[0]).toBeCloseTo(256, 9);
    expect(down!.azimuthsDeg.at(-1)).toBe(275);
  });

  it("runs over north the short way", () => {
    const [part] = sunArc([sunAt(0, 350, 5), sunAt(1, 5, 5)]);
    expect(part!.azimuthsDeg[0]).toBe(350);
    expect(part!.azimuthsDeg.at(-1)).toBe(365);
    expect(sunArc([])).toEqual([]);
  });

  it("has clock times with room between them", () => {
    const ticks = arcTicks(SUNS, WINDOW, 200);
    expect(ticks.map(({ text }) => text)).toEqual(["15:00", "16:00", "17:00", "18:00"]);
    // An hour on: a third short of 16:30.
    expect(ticks[1]!.azimuthDeg).toBeCloseTo(230 + (20 * 2) / 3, 9);
    // A close that is round is among them.
    const closes = new Date("2027-03-20T18:00:00Z");
    expect(arcTicks(SUNS, { ...WINDOW, closes }, 200).map(({ text }) => text)).toEqual([
      "15:00",
      "16:00",
      "17:00",
      "18:00",
    ]);
    // A sun that stays where it is has one.
    expect(arcTicks([sunAt(0, 90, 10), sunAt(3.5, 90, 60)], WINDOW, 200).length).toBeLessThanOrEqual(1);
  });
});
