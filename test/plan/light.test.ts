/** How the body is lit through a day, from where the camera stands. */

import { describe, expect, it } from "vitest";
import type { LightSample } from "../../src/plan/planTypes.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { firstOf, planOf, siteOf, standing } from "./sites.ts";

const DAY = "2027-06-21T03:00/2027-06-21T21:00";
const ALL_ROUND = [0, 45, 90, 135, 180, 225, 270, 315];
const wordsOf = (light: readonly LightSample[]): Set<string> => new Set(light.map((one) => one.light));

describe("the light on a body", () => {
  it("is front, side or back by the phase alone while the sun shines, for cameras all around", () => {
    const site = siteOf({ cameras: ALL_ROUND.map((bearing) => standing(`C${bearing}`, bearing)) });
    const plan = planOf(site, DAY, { stepS: 600 });
    const met = new Set<string>();
    plan.cameras.forEach((camera, c) => {
      camera.light.forEach(({ light, phaseDeg, litShare }, i) => {
        const sun = plan.sun[i]!;
        const apart = Math.abs(sun.azimuthDeg - ALL_ROUND[c]!);
        const expected = apart > 180 ? 360 - apart : apart;
        // The way to the camera and its bearing part by the curve of the Earth: nothing at 400 m.
        expect(Math.abs(phaseDeg - expected)).toBeLessThan(0.01);
        if (sun.apparentElevationDeg <= 0) {
          expect(light).toBe("dusk");
          return;
        }
        met.add(light);
        expect(light).toBe(phaseDeg < 60 ? "front" : phaseDeg > 120 ? "back" : "side");
        expect(litShare).toBeCloseTo((1 + Math.cos((expected * Math.PI) / 180)) / 2, 3);
      });
    });
    expect([...met].sort()).toEqual(["back", "front", "side"]);
  });

  it("goes by the site's own borders", () => {
    const more = "settings: { front: 30, back: 150 }";
    const site = siteOf({ cameras: [standing("C", 90)], more });
    for (const { light, phaseDeg } of firstOf(site, "2027-06-21T06:00/18:00", { stepS: 600 }).light) {
      expect(light).toBe(phaseDeg < 30 ? "front" : phaseDeg > 150 ? "back" : "side");
    }
  });

  it("passes through sunset into dusk and night, each where the sun stands", () => {
    const site = siteOf({ cameras: [standing("C", 270)] });
    const plan = planOf(site, "2027-03-08T16:45/20:15", { stepS: 60 }); // new moon
    const { light } = plan.cameras[0]!;
    expect([...wordsOf(light)]).toEqual(["front", "dusk", "night"]);
    light.forEach((sample, i) => {
      const { elevationDeg, apparentElevationDeg } = plan.sun[i]!;
      expect(sample.light === "front").toBe(apparentElevationDeg > 0);
      expect(sample.light === "night").toBe(elevationDeg <= -18);
      if (sample.light !== "front") expect(sample.litShare).toBe(0);
      if (i > 0) expect(sample.ev!).toBeLessThan(light[i - 1]!.ev! + 1e-9);
    });
  });

  it("is flat under cloud and under a sky without a beam, with nothing lit", () => {
    const site = siteOf({ cameras: [standing("C", 270)] });
    for (const sky of ["bright-cloud", "overcast"] as const) {
      const { light } = firstOf(site, "2027-03-20T12:00/14:00", { sky: [sky], stepS: 600 });
      expect([...wordsOf(light)]).toEqual(["flat"]);
      expect(
        light.every(
          ({ litShare, bodyMeanCdM2, bodyDarkestCdM2 }) => litShare === 0 && bodyMeanCdM2 === bodyDarkestCdM2,
        ),
      ).toBe(true);
    }
  });

  it("gets dimmer from clear to haze to bright cloud to overcast at noon, front lit", () => {
    const site = siteOf({ cameras: [standing("C", 180)] });
    const { light } = firstOf(site, "2027-03-20T11:59/12:01", {
      sky: ["clear", "haze", "bright-cloud", "overcast"],
    });
    const noon = ["clear", "haze", "bright-cloud", "overcast"].map(
      (sky) => light.find((one) => one.sky === sky)!.ev!,
    );
    expect([...noon].sort((a, b) => b - a)).toEqual(noon);
    expect(noon[0]!).toBeGreaterThan(14);
    expect(noon[3]!).toBeGreaterThan(10.5);
  });

  it("lists every T-0 under the first sky, then under the next, in the plan's order", () => {
    const site = siteOf({ cameras: [standing("C", 180)] });
    const plan = planOf(site, "2027-03-20T11:00/12:00", { sky: ["overcast", "clear"], stepS: 900 });
    const { light } = plan.cameras[0]!;
    expect(light.map(({ sky }) => sky)).toEqual([...Array(5).fill("overcast"), ...Array(5).fill("clear")]);
    expect(light.map(({ at }) => at)).toEqual([...plan.sun, ...plan.sun].map(({ at }) => at));
  });

  it("has no night on a polar day, and no guide near the horizon", () => {
    const site = siteOf({ place: "latitude: 75, longitude: 0", cameras: [standing("C", 0)] });
    const plan = planOf(site, "2027-06-21T00:00/2027-06-22T00:00", { stepS: 900 });
    expect([...wordsOf(plan.cameras[0]!.light)].sort()).toEqual(["back", "front", "side"]);
    expect([plan.events.sunrise, plan.events.sunset]).toEqual([null, null]);
    for (const [i, { tableEv }] of plan.cameras[0]!.light.entries()) {
      expect(tableEv !== null).toBe(plan.sun[i]!.apparentElevationDeg >= 15);
    }
  });
});

describe("what is added to the model's light", () => {
  const cameras = [standing("A", 180), standing("B", 180)];
  const window = "2027-03-20T11:00/12:00";

  it("corrections shift the EV by exactly their stops, by sky and by camera", () => {
    const options = { sky: ["clear", "haze"] as const, stepS: 1800 };
    const plain = planOf(siteOf({ cameras }), window, options);
    const more = "corrections: { sky: { haze: -0.75 }, cameras: { B: 0.4 } }";
    const corrected = planOf(siteOf({ cameras, more }), window, options);
    corrected.cameras.forEach(({ id, light }, c) => {
      light.forEach((sample, i) => {
        const stops = (sample.sky === "haze" ? -0.75 : 0) + (id === "B" ? 0.4 : 0);
        const before = plain.cameras[c]!.light[i]!;
        expect(sample.ev! - before.ev!).toBeCloseTo(stops, 9);
        expect(Math.log2(sample.skyCdM2 / before.skyCdM2)).toBeCloseTo(stops, 9);
        expect(Math.log2(sample.deckCdM2 / before.deckCdM2)).toBeCloseTo(stops, 9);
        expect(sample.tableEv).toBe(before.tableEv);
      });
    });
    expect(corrected.notes.join()).toContain("corrections");
    expect(plain.notes.join()).not.toContain("corrections");
  });

  it("floodlights give light at night, as much as they are, and nothing to the deck", () => {
    const night = "2027-03-08T23:00/23:30"; // new moon
    const dark = firstOf(siteOf({ cameras }), night).light[0]!;
    const lit = firstOf(siteOf({ cameras, more: "floodlights: { illuminance: 500 }" }), night).light[0]!;
    expect(lit.light).toBe("night");
    expect(lit.bodyMeanCdM2).toBeCloseTo((0.75 / Math.PI) * 500, 1);
    expect(lit.ev!).toBeCloseTo(Math.log2((500 * 100) / 250), 2);
    expect(dark.ev!).toBeLessThan(-5);
    expect(lit.deckCdM2).toBe(dark.deckCdM2);
  });

  it("bearings of the file turn cameras and axes, not the sun", () => {
    const axis = "id: X, azimuth: 100, lens: { focal: 50 }";
    const plain = planOf(siteOf({ cameras: [standing("A", 180), axis] }), window);
    const turned = planOf(siteOf({ head: "bearings: 7.5", cameras: [standing("A", 172.5), axis] }), window);
    expect(turned.cameras[0]!.light).toEqual(plain.cameras[0]!.light);
    expect(turned.cameras[1]!.axis.azimuthDeg).toBeCloseTo(107.5, 9);
    expect(turned.sun).toEqual(plain.sun);
  });
});

describe("the T-0s of a window", () => {
  const site = siteOf({ cameras: [standing("C", 180)] });
  const timesOf = (window: string, stepS: number): string[] =>
    planOf(site, window, { stepS }).sun.map(({ at }) => at.toISOString().slice(11, 19));

  it("are every step from the opening, with the middle and the close whatever the step", () => {
    expect(timesOf("2027-03-20T11:00/11:25", 600)).toEqual([
      "11:00:00",
      "11:10:00",
      "11:12:30",
      "11:20:00",
      "11:25:00",
    ]);
    expect(timesOf("2027-03-20T11:00/11:01", 3600)).toEqual(["11:00:00", "11:00:30", "11:01:00"]);
    expect(timesOf("2027-03-20T11:00/11:00:01", 1)).toEqual(["11:00:00", "11:00:00", "11:00:01"]);
  });

  it("pass local midnight without a break", () => {
    const plan = planOf(site, "2027-03-20T23:30/2027-03-21T00:30", { stepS: 900 });
    expect(plan.sun.map(({ at }) => at.toISOString().slice(5, 16))).toEqual([
      "03-20T23:30",
      "03-20T23:45",
      "03-21T00:00",
      "03-21T00:15",
      "03-21T00:30",
    ]);
  });

  it("have the sun where it is", () => {
    const plan = planOf(site, "2027-03-20T05:00/19:00", { stepS: 1800 });
    for (const { at, azimuthDeg, elevationDeg, apparentElevationDeg } of plan.sun) {
      const sun = sunAt(site.place, at);
      expect(Math.abs(azimuthDeg - sun.azimuthDeg)).toBeLessThan(0.002);
      expect(Math.abs(elevationDeg - sun.elevationDeg)).toBeLessThan(0.001);
      expect(Math.abs(apparentElevationDeg - sun.apparentElevationDeg)).toBeLessThan(0.001);
    }
  });
});
