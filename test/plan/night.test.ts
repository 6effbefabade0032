/** Dusk and night as a plan tells them: moon, Earth's shadow, floodlights, and the plume as the lamp. */

import { describe, expect, it } from "vitest";
import { familyLuminance } from "../../src/light/plume.ts";
import { lampFaceLxPerCdM2 } from "../../src/light/plumeLamp.ts";
import type { SunInstant } from "../../src/plan/planTypes.ts";
import { firstOf, planOf, siteOf, standing } from "./sites.ts";

/** Hours after sunset, two days before a full moon (22 March 2027, 10:44 UTC). */
const MOONLIT = "2027-03-20T21:00/22:00";
/** New moon, 8 March 2027. */
const MOONLESS = "2027-03-08T21:00/22:00";
const VEHICLE =
  "height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: solid, length: 50, width: 6 }";
const FLOODS = "floodlights: { illuminance: 400, deck: 100 }";
const WIDE = "lens: { focal: 28 }, medium: chip";
const keeping = (keep: string): string => standing("C", 200, `${WIDE}, keep: [${keep}]`, 120);

describe("the moon", () => {
  it("lights the body from its own side and is told, but makes nothing sunlit", () => {
    const facing = siteOf({ cameras: [standing("E", 140), standing("W", 320)] });
    const plan = planOf(facing, MOONLIT, { stepS: 600 });
    const [east, west] = plan.cameras;
    for (const { moon } of plan.sun) expect(moon!.litShare).toBeGreaterThan(0.9);
    east!.light.forEach((sample, i) => {
      expect(sample.light).toBe("night");
      expect(sample.litShare).toBe(0);
      // The moon stands in the south-east: its side of the body is at least a stop brighter.
      expect(Math.log2(sample.bodyMeanCdM2! / west!.light[i]!.bodyMeanCdM2!)).toBeGreaterThan(1);
    });
  });

  it("is a matter of stops between full and new, and of nothing by day", () => {
    const site = siteOf({ cameras: [standing("E", 140)] });
    const full = firstOf(site, MOONLIT, { stepS: 600 }).light.at(-1)!.ev!;
    const none = firstOf(site, MOONLESS, { stepS: 600 }).light.at(-1)!.ev!;
    expect(full - none).toBeGreaterThan(3);
    expect(
      planOf(site, "2027-03-20T12:00/13:00", { stepS: 600 }).sun.every(({ moon }) => moon === null),
    ).toBe(true);
  });

  it("in a frame is told with its times, and only there", () => {
    const [{ moon }] = planOf(siteOf({ cameras: [standing("E", 140)] }), MOONLIT, { stepS: 600 }).sun as [
      SunInstant,
    ];
    const axis = (id: string, azimuthDeg: number): string =>
      `id: ${id}, azimuth: ${azimuthDeg}, elevation: ${moon!.apparentElevationDeg}, lens: { focal: 100 }`;
    const cameras = [axis("M", moon!.azimuthDeg), axis("N", (moon!.azimuthDeg + 180) % 360)];
    const [towards, away] = planOf(siteOf({ cameras }), MOONLIT).cameras;
    expect(away!.moonInFrame).toEqual([]);
    expect(towards!.moonInFrame.length).toBe(1);
    expect(towards!.moonInFrame[0]!.from.toISOString()).toBe("2027-03-20T21:00:00.000Z");
    // Half of a field of 20 degrees at the moon's 15 degrees an hour, less for its height: most of an hour.
    const minutes =
      (towards!.moonInFrame[0]!.to.getTime() - towards!.moonInFrame[0]!.from.getTime()) / 60_000;
    expect(minutes).toBeGreaterThan(30);
    expect(towards!.notes.join("\n")).toMatch(/moon in frame 21:00-2\d:\d\d, 9\d % lit/);
    expect(towards!.sun.risk).toBe("down");
  });
});

describe("the Earth's shadow", () => {
  it("stands at the ground at sunset and climbs with the sun's depression", () => {
    const { sun } = planOf(siteOf({ cameras: [standing("E", 140)] }), "2027-03-20T17:30/20:00", {
      stepS: 600,
    });
    sun.forEach(({ apparentElevationDeg, earthShadowKm }, i) => {
      if (apparentElevationDeg > 0) expect(earthShadowKm).toBe(0);
      if (i > 0) expect(earthShadowKm).toBeGreaterThanOrEqual(sun[i - 1]!.earthShadowKm);
    });
    // FACTS 15 (geometry): with the sun 6 degrees down first light stands 20.59 km up.
    const near6 = sun.reduce((a, b) => (Math.abs(b.elevationDeg + 6) < Math.abs(a.elevationDeg + 6) ? b : a));
    expect(Math.abs(near6.earthShadowKm - 20.59)).toBeLessThan(9 * Math.abs(near6.elevationDeg + 6) + 0.1);
  });
});

describe("the plume as a lamp at night", () => {
  const siteWith = (keep: string, vehicle = VEHICLE) =>
    siteOf({ vehicle, cameras: [keeping(keep)], more: FLOODS });
  const { nominalCdM2 } = familyLuminance("solid");

  it("lights body and deck by the inverse-square law of its area: worked from the lamp's own formula", () => {
    const camera = firstOf(siteWith("plume, deck, body"), MOONLESS, { stepS: 600 });
    const { setting } = camera;
    const radiusM = Math.sqrt((50 * 6) / Math.PI);
    // Top of the body 45 m up, the fire's middle 2.5 m: the darkest of the body. Deck: at the fire's edge and a body's height out.
    const topLx = 400 + nominalCdM2 * lampFaceLxPerCdM2(radiusM, -1.5, 42.5);
    const darkestCdM2 = (0.75 / Math.PI) * topLx;
    const farDeckCdM2 = (0.2 / Math.PI) * (100 + nominalCdM2 * lampFaceLxPerCdM2(radiusM, 2.5, 40));
    const stops = Math.log2(nominalCdM2 / Math.min(darkestCdM2, farDeckCdM2));
    // Range of the medium 7.5 stops: half of what is too much is lost at each end, and no setting can beat that.
    expect(setting!.bestPossibleSpareStops).toBeCloseTo((7.5 - stops) / 2, 1);
  });

  it("keep [plume, deck, body] gets one setting for after ignition, and is told what that loses", () => {
    const { setting, notes } = firstOf(siteWith("plume, deck, body"), MOONLESS, { stepS: 600 });
    const text = notes.join("\n");
    // Within a stop of the best that can be had: the kit's steps are a third of a stop to a stop.
    expect(setting!.spareStops).toBeGreaterThan(setting!.bestPossibleSpareStops - 1);
    // The floodlit body is ten stops and more below the plume: it is not what the setting is for.
    expect(Math.log2(nominalCdM2 / ((0.75 / Math.PI) * 400))).toBeGreaterThan(10);
    expect(text).toMatch(
      /set for after ignition; before it the body's dark side \d\.\d stops under, the deck \d\.\d stops under/,
    );
    expect(text).toMatch(/spare [+-]\d\.\d at its dim end, [+-]\d\.\d at its bright end/);
  });

  it("keep [body] is set by the floodlights, and told what ignition does to it", () => {
    const { setting, notes, light } = firstOf(siteWith("body"), MOONLESS, { stepS: 600 });
    expect(setting!.holds).toBe(1);
    expect(light[0]!.bodyDarkestCdM2).toBeCloseTo((0.75 / Math.PI) * 400, 0);
    expect(notes.join("\n")).toMatch(
      /set for before ignition; after it .* some \d\.\d stops over: keep \[body, plume\]/,
    );
  });

  it("counts for nothing without its size, and says so", () => {
    const bare = "height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: solid }";
    const without = firstOf(siteWith("plume, body", bare), MOONLESS, { stepS: 600 });
    const lit = firstOf(siteWith("plume, body"), MOONLESS, { stepS: 600 });
    expect(without.notes.join("\n")).toContain("no length and width");
    expect(lit.setting!.bestPossibleSpareStops).toBeGreaterThan(without.setting!.bestPossibleSpareStops + 1);
  });

  it("has both ends of its range carried through to body and deck", () => {
    const { low, high } = { low: familyLuminance("solid").lowCdM2, high: familyLuminance("solid").highCdM2 };
    const setting = firstOf(siteWith("plume, body"), MOONLESS, { stepS: 600 }).setting!;
    for (const [luminance, told] of [
      [low, setting.plumeRange!.lowSpareStops],
      [high, setting.plumeRange!.highSpareStops],
    ] as const) {
      const given = VEHICLE.replace("propellant: solid", `luminance: ${luminance}`);
      const other = firstOf(siteWith("plume, body", given), MOONLESS, { stepS: 600 });
      // The same camera with that luminance given: its best is as far from this setting as from its own.
      expect(told).toBeLessThanOrEqual(other.setting!.bestPossibleSpareStops + 0.02);
    }
  });
});

describe("floodlights on the deck", () => {
  it("light the deck alone", () => {
    const without = firstOf(
      siteOf({ cameras: [keeping("body")], more: "floodlights: { illuminance: 400 }" }),
      MOONLESS,
    );
    const site = siteOf({ cameras: [keeping("body")], more: FLOODS });
    const deck = firstOf(site, MOONLESS);
    expect(deck.light[0]!.deckCdM2 - without.light[0]!.deckCdM2).toBeCloseTo((0.2 / Math.PI) * 100, 6);
    expect(deck.light[0]!.bodyMeanCdM2).toBe(without.light[0]!.bodyMeanCdM2);
    expect(planOf(site, MOONLESS).notes.join("\n")).not.toContain("none is given for the deck");
  });
});
