/** Shadows on the body and a sun behind things, as a plan tells them: worked with a pocket calculator on small sites. */

import { describe, expect, it } from "vitest";
import { tanDeg } from "../../src/base/units.ts";
import { firstOf, planOf, siteOf, standing } from "./sites.ts";

const AFTERNOON = "2027-03-20T15:00/17:00";
/** A wall due west of the pad, so wide that the sun does not get round it in the window. */
const wall = (more: string): string =>
  `structures: [{ name: wall, at: { bearing: 240, range: 60 }, width: 400, depth: 2, turn: 330, height: 40${more} }]`;
const camera = standing("C", 240, "lens: { focal: 40 }", 150);
const plain = firstOf(siteOf({ cameras: [camera] }), AFTERNOON, { stepS: 600 });

describe("a wall between sun and body", () => {
  const site = siteOf({ cameras: [camera], more: wall("") });
  const plan = planOf(site, AFTERNOON, { stepS: 600 });
  const shaded = plan.cameras[0]!;

  it("shades it as high as the wall less its distance times the tangent of the sun's elevation", () => {
    for (const [i, sun] of plan.sun.entries()) {
      // The far face of the wall stands 61 m out across; the way to it is longer when the sun stands aslant (shadow = h / tan el).
      const acrossDeg = sun.azimuthDeg - 240;
      const nearM = (59 - 1.5) / Math.cos((acrossDeg * Math.PI) / 180);
      const topM = 40 - nearM * tanDeg(sun.apparentElevationDeg) - 5;
      const shadow = sun.shadows[0];
      if (topM < -2) expect(shadow, String(i)).toBeUndefined();
      if (topM > 1 && topM < 39) expect(Math.abs(shadow!.toM - topM)).toBeLessThan(1.2);
      if (shadow !== undefined) expect(shadow.by).toBe("wall");
    }
    expect(plan.sun.some(({ shadows }) => shadows.length > 0)).toBe(true);
  });

  it("takes the direct light, lit width and class with it, and only that", () => {
    shaded.light.forEach((sample, i) => {
      const open = plain.light[i]!;
      expect(sample.bodyDarkestCdM2).toBe(open.bodyDarkestCdM2);
      expect(sample.phaseDeg).toBe(open.phaseDeg);
      expect(sample.litShare).toBeLessThanOrEqual(open.litShare + 1e-12);
      expect(sample.litShare / open.litShare).toBeCloseTo(sample.keptShare, 1);
      expect(sample.light === "shaded").toBe(sample.keptShare < 0.5);
      if (sample.keptShare === 0) expect(sample.bodyMeanCdM2).toBeCloseTo(sample.bodyDarkestCdM2!, 6);
    });
    expect(new Set(shaded.light.map(({ light }) => light)).size).toBe(2);
  });

  it("says what shades how much of it from when, to the minute", () => {
    expect(shaded.notes.join("\n")).toMatch(/in the shadow of wall over 0-\d+ m of the body from 1\d:\d\d/);
    const [span] = plan.shade;
    expect(span!.by).toBe("wall");
    expect(span!.heights.at(-1)!.toM).toBeGreaterThan(span!.heights[0]!.toM);
  });

  it("changes nothing without solidity, and half of the direct light with half of it", () => {
    const none = firstOf(siteOf({ cameras: [camera], more: wall(", solidity: 0") }), AFTERNOON, {
      stepS: 600,
    });
    expect(none.light).toEqual(plain.light);
    const half = firstOf(siteOf({ cameras: [camera], more: wall(", solidity: 0.5") }), AFTERNOON, {
      stepS: 600,
    });
    half.light.forEach((sample, i) => {
      expect(sample.keptShare).toBeCloseTo((1 + shaded.light[i]!.keptShare) / 2, 9);
      // Somewhere in its gaps a facet has all of the sun.
      expect(sample.bodyBrightestCdM2).toBe(plain.light[i]!.bodyBrightestCdM2);
    });
  });

  it("moves the border of the class with its setting", () => {
    const light = (shadedShare: number): string[] =>
      firstOf(
        siteOf({ cameras: [camera], more: `${wall("")}\nsettings: { shaded: ${shadedShare} }` }),
        AFTERNOON,
        {
          stepS: 600,
        },
      ).light.map((sample) => sample.light);
    expect(light(0)).not.toContain("shaded");
    expect(light(1).filter((word) => word === "shaded").length).toBeGreaterThan(
      light(0.5).filter((word) => word === "shaded").length,
    );
  });
});

describe("a skyline", () => {
  const site = siteOf({ cameras: [camera], more: "horizon: [[0, 0], [180, 0], [230, 8], [300, 8]]" });
  const plan = planOf(site, "2027-03-20T16:00/18:30", { stepS: 300 });

  it("leaves the body in the sun while the disc is above it, in shadow when it is below", () => {
    const light = plan.cameras[0]!.light;
    plan.sun.forEach(({ apparentElevationDeg }, i) => {
      if (apparentElevationDeg > 8.3) expect(light[i]!.keptShare).toBe(1);
      if (apparentElevationDeg < 7.7 && apparentElevationDeg > 0) {
        expect(light[i]!.light).toBe("shaded");
        expect(light[i]!.litShare).toBe(0);
      }
    });
  });
});

describe("a sun in the frame behind something", () => {
  const looking = standing("C", 80, "lens: { focal: 85 }", 400);
  const tank = (more = ""): string =>
    `structures: [{ name: tank, at: { bearing: 260, range: 80 }, diameter: 90, height: 120${more} }]`;
  const evening = "2027-03-20T16:30/17:50";
  const open = firstOf(siteOf({ cameras: [looking] }), evening);

  it("is hidden, by name, while it stands deep enough behind it, and comes out", () => {
    const plan = firstOf(siteOf({ cameras: [looking], more: tank() }), evening);
    expect(open.sun.risk).toBe("in-frame");
    expect(open.sun.hidden).toEqual([]);
    expect(plan.sun.hidden.length).toBeGreaterThan(0);
    expect(plan.sun.hidden.every(({ by }) => by.join() === "tank")).toBe(true);
    const shown = [...plan.sun.inFrame, ...plan.sun.nearFrame];
    for (const one of shown)
      for (const hidden of plan.sun.hidden) {
        expect(one.to <= hidden.from || one.from >= hidden.to).toBe(true);
      }
  });

  it("keeps its warning behind a lattice, and where its edge is nearer than the margin", () => {
    const lattice = firstOf(siteOf({ cameras: [looking], more: tank(", solidity: 0.9") }), evening);
    expect(lattice.sun.inFrame).toEqual(open.sun.inFrame);
    expect(lattice.sun.hidden).toEqual([]);
    expect(lattice.notes.join("\n")).toMatch(/sun behind tank .*: about 10 % of it shines through/);
    const hiddenMs = (cover: number): number =>
      firstOf(
        siteOf({ cameras: [looking], more: `${tank()}\nsettings: { cover: ${cover} }` }),
        evening,
      ).sun.hidden.reduce((sum, { from, to }) => sum + to.getTime() - from.getTime(), 0);
    expect(hiddenMs(0)).toBeGreaterThan(hiddenMs(0.53));
    expect(hiddenMs(0.53)).toBeGreaterThan(hiddenMs(3));
  });

  it("is called hidden throughout where it is never seen in or near the frame", () => {
    const vast = `structures: [{ name: hall, at: { bearing: 262, range: 150 }, width: 900, depth: 20, turn: 352, height: 300 }]`;
    const plan = planOf(siteOf({ cameras: [looking], more: vast }), "2027-03-20T16:50/17:30");
    const [view] = plan.cameras;
    expect(view!.sun.risk).toBe("hidden");
    expect(view!.remedy).toBeNull();
    expect(view!.sunImage).toBeNull();
    expect(plan.cautions.join("\n")).toMatch(/Never look.*\n.*hidden behind a structure/s);
    expect(
      view!.light.every(({ sunBehind }) => sunBehind.some(({ by, share }) => by === "hall" && share === 1)),
    ).toBe(true);
  });
});
