/** The sun in and near the frame, and whether what is said to clear it does. */

import { describe, expect, it } from "vitest";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { locateInFrame, type View } from "../../src/view/frame.ts";
import { lookAt, placeFrom } from "../../src/view/sightLine.ts";
import { sunInFrame } from "../../src/view/sunInFrame.ts";
import { EVENING, firstOf, siteOf, standing, viewOf } from "./sites.ts";

const PAD = { latitudeDeg: 45, longitudeDeg: 0, heightM: 20 };

const PLACE = placeFrom(PAD, 90, 400, 2);

/** Where the sun's disc stands in a view at an instant, by the ephemeris itself. */
function sunIn(view: View, at: Date): { edgeDeg: number; axisDeg: number; upDeg: number } {
  const sun = sunAt(PLACE, at);
  const direction = { azimuthDeg: sun.azimuthDeg, elevationDeg: sun.apparentElevationDeg };
  const { fromEdgeDeg, offAxisDeg } = locateInFrame(view, direction);
  return {
    edgeDeg: fromEdgeDeg - sun.semidiameterDeg,
    axisDeg: offAxisDeg - sun.semidiameterDeg,
    upDeg: sun.apparentElevationDeg + sun.semidiameterDeg,
  };
}

/** Instants through a span, its very ends left out by a second. */
const instantsIn = ({ from, to }: { from: Date; to: Date }): Date[] =>
  Array.from(
    { length: 9 },
    (_, i) => new Date(from.getTime() + 1000 + ((to.getTime() - from.getTime() - 2000) * i) / 8),
  );

describe("the sun's risk", () => {
  it.each([
    ["in-frame", 90, "lens: { focal: 50 }", EVENING],
    ["near-frame", 105, "lens: { focal: 85 }", EVENING],
    ["clear", 270, "lens: { focal: 85 }", EVENING],
    ["clear", 90, "lens: { focal: 85 }", "2027-03-20T09:00/10:00"],
    ["down", 90, "lens: { focal: 50 }", "2027-03-20T20:00/21:00"],
  ])("is %s from %i degrees", (risk, bearing, lens, window) => {
    const camera = firstOf(siteOf({ cameras: [standing("C", bearing, lens)] }), window);
    expect(camera.sun.risk).toBe(risk);
    expect(camera.sun.inFrame.length > 0).toBe(risk === "in-frame");
    expect(camera.remedy !== null).toBe(risk === "in-frame" || risk === "near-frame");
    expect(camera.sun.closest === null).toBe(risk === "down");
    if (risk === "clear") expect(camera.sun.closest!.fromEdgeDeg).toBeGreaterThan(5);
  });

  it.each([50, 85, 200])("in the frame of a %i mm lens has the very intervals of sunInFrame", (focal) => {
    const site = siteOf({ cameras: [standing("C", 90, `lens: { focal: ${focal} }, roll: 20`)] });
    const camera = firstOf(site, EVENING, { stepS: 3600 });
    const { opens, closes } = chooseWindow(site, EVENING);
    const expected = sunInFrame(viewOf(camera, site), PLACE, opens, closes);
    expect(expected.length).toBeGreaterThan(0);
    expect(camera.sun.inFrame.length).toBe(expected.length);
    camera.sun.inFrame.forEach(({ from, to }, i) => {
      expect(Math.abs(from.getTime() - expected[i]!.from.getTime())).toBeLessThan(200);
      expect(Math.abs(to.getTime() - expected[i]!.to.getTime())).toBeLessThan(200);
    });
  });

  it("has near-frame times that leave out the frame and lie within the flare margin", () => {
    const site = siteOf({ cameras: [standing("C", 90, "lens: { focal: 85 }")] });
    const camera = firstOf(site, EVENING);
    expect(camera.sun.nearFrame.length).toBeGreaterThan(0);
    const view = viewOf(camera, site);
    for (const span of camera.sun.nearFrame) {
      for (const at of instantsIn(span)) {
        const { edgeDeg } = sunIn(view, at);
        expect(edgeDeg).toBeGreaterThan(0);
        expect(edgeDeg).toBeLessThan(5);
      }
    }
  });

  it("has its closest approach at the sun's smallest angle from the edge", () => {
    const site = siteOf({ cameras: [standing("C", 110, "lens: { focal: 85 }")] });
    const camera = firstOf(site, EVENING, { stepS: 60 });
    const { at, fromEdgeDeg } = camera.sun.closest!;
    const view = viewOf(camera, site);
    const place = placeFrom(PAD, 110, 400, 2);
    let least = Number.POSITIVE_INFINITY;
    for (let ms = Date.UTC(2027, 2, 20, 15); ms <= Date.UTC(2027, 2, 20, 18, 30); ms += 5000) {
      const sun = sunAt(place, new Date(ms));
      if (sun.apparentElevationDeg + sun.semidiameterDeg <= 0) continue;
      const direction = { azimuthDeg: sun.azimuthDeg, elevationDeg: sun.apparentElevationDeg };
      least = Math.min(least, locateInFrame(view, direction).fromEdgeDeg);
    }
    expect(fromEdgeDeg).toBeCloseTo(least, 2);
    expect(at.getTime()).toBeGreaterThan(Date.UTC(2027, 2, 20, 15));
  });

  it("counts a hood by atan(diameter / length) off the axis", () => {
    const lens = "lens: { focal: 200, hood: { length: 200, diameter: 80 } }";
    const site = siteOf({ cameras: [standing("C", 90, lens)] });
    const camera = firstOf(site, EVENING);
    const cutoff = (Math.atan(80 / 200) * 180) / Math.PI;
    expect(camera.sun.flare).toEqual({ marginDeg: 5, cutoffDeg: expect.closeTo(cutoff, 9) });
    // A hood that lets the sun in only where it stands near the edge anyway changes nothing; a longer one does.
    const bare = firstOf(siteOf({ cameras: [standing("C", 90, "lens: { focal: 200 }")] }), EVENING);
    expect(camera.sun.nearFrame).toEqual(bare.sun.nearFrame);
    const long = "lens: { focal: 200, hood: { length: 800, diameter: 80 } }";
    const shaded = firstOf(siteOf({ cameras: [standing("C", 90, long)] }), EVENING);
    const view = viewOf(shaded, site);
    const [first] = shaded.sun.nearFrame;
    const reach = (Math.atan(80 / 800) * 180) / Math.PI;
    expect(sunIn(view, first!.from).axisDeg).toBeCloseTo(reach, 2);
    expect(sunIn(view, new Date(first!.from.getTime() - 2000)).axisDeg).toBeGreaterThan(reach);
  });

  it("goes by the site's own flare margin", () => {
    const cameras = [standing("C", 110, "lens: { focal: 85 }")];
    const { fromEdgeDeg } = firstOf(siteOf({ cameras }), EVENING).sun.closest!;
    const riskAt = (flare: number): string =>
      firstOf(siteOf({ cameras, more: `settings: { flare: ${flare} }` }), EVENING).sun.risk;
    expect(riskAt(fromEdgeDeg - 0.27 - 0.05)).toBe("clear");
    expect(riskAt(fromEdgeDeg - 0.27 + 0.05)).toBe("near-frame");
  });
});

describe("what clears the sun", () => {
  const CASES = [
    ["without a hood", "lens: { focal: 85 }"],
    ["with a short hood", "lens: { focal: 135, hood: { length: 60, diameter: 60 } }"],
    ["with a long hood", "lens: { focal: 300, hood: { length: 400, diameter: 90 } }"],
  ] as const;

  it.each(CASES)(
    "%s, other T-0s: no disc in the frame and no flare at any of them, flare at all others",
    (_, lens) => {
      const site = siteOf({ cameras: [standing("C", 90, lens)] });
      const camera = firstOf(site, EVENING);
      const view = viewOf(camera, site);
      const { flare } = camera.sun;
      const isFlared = (at: Date): boolean => {
        const { edgeDeg, axisDeg, upDeg } = sunIn(view, at);
        if (upDeg <= 0) return false;
        return edgeDeg < 0 || (edgeDeg < flare.marginDeg && axisDeg < (flare.cutoffDeg ?? 180));
      };
      const { clearTimes } = camera.remedy!;
      expect(clearTimes.length).toBeGreaterThan(0);
      for (const span of clearTimes) for (const at of instantsIn(span)) expect(isFlared(at)).toBe(false);
      const { opens, closes } = chooseWindow(site, EVENING);
      for (let ms = opens.getTime(); ms <= closes.getTime(); ms += 60_000) {
        const isClear = clearTimes.some(
          ({ from, to }) => ms >= from.getTime() - 1000 && ms <= to.getTime() + 1000,
        );
        if (!isClear) expect(isFlared(new Date(ms)), new Date(ms).toISOString()).toBe(true);
      }
    },
  );

  it("the pad's cameras see the sun over the vehicle where it stands", () => {
    const site = siteOf({ cameras: [standing("C", 90)] });
    const { axis } = firstOf(site, EVENING);
    const straight = lookAt(PLACE, placeFrom(PAD, 0, 0, 25));
    expect(axis.azimuthDeg).toBeCloseTo(straight.azimuthDeg, 6);
    expect(axis.elevationDeg).toBeCloseTo(straight.elevationDeg, 6);
    expect(axis.rangeM).toBeCloseTo(straight.rangeM, 6);
  });
});
