/** A window that slips: what becomes of each setting, against the plan of each day. */

import { describe, expect, it } from "vitest";
import { planWindow } from "../../src/plan/planWindow.ts";
import { scrubSettings } from "../../src/plan/rank/scrub.ts";
import type { Window } from "../../src/site/types.ts";
import { siteOf, standing } from "./sites.ts";

const day = (date: string, from: string, to: string): Window => ({
  name: null,
  opens: new Date(`2027-${date}T${from}Z`),
  closes: new Date(`2027-${date}T${to}Z`),
});
const SHUTTER = "shutter: { angle: [160, 80] }";
const STIFF = `lens: { focal: 85, stops: [2.8, 8] }, filters: [0], medium: chip, ${SHUTTER}`;
const SITE = siteOf({
  defaults:
    "medium: grain, lens: { stops: [2.8, 4, 5.6, 8, 11, 16] }, filters: [0, 0.6], gate: full-frame, rate: 96",
  cameras: [
    standing("E", 90, `lens: { focal: 85 }, ${SHUTTER}`),
    standing("S", 170, STIFF),
    "id: X, azimuth: 262, elevation: 3, lens: { focal: 50 }",
  ],
});

describe("a window that slips", () => {
  const first = day("03-20", "09:00", "11:00");
  const later = [
    day("03-21", "09:00", "11:00"),
    day("06-20", "15:00", "17:00"),
    day("06-21", "21:30", "23:00"),
    day("06-20", "19:35", "19:45"),
  ];
  const scrub = scrubSettings(SITE, first, later, { stepS: 300 });

  it("starts from the plan's settings", () => {
    const plan = planWindow(SITE, first, { stepS: 300 });
    expect(scrub.cameras.map(({ id, setting }) => [id, setting])).toEqual(
      plan.cameras.map(({ id, setting }) => [id, setting]),
    );
  });

  it("gives each later day's own setting as that day's plan does, and never more spare to the old one", () => {
    later.forEach((window, i) => {
      const plan = planWindow(SITE, window, { stepS: 300 });
      scrub.cameras.forEach(({ days }, c) => {
        const { setting, spareStops } = days[i]!;
        expect(setting).toEqual(plan.cameras[c]!.setting);
        if (setting !== null) expect(spareStops!).toBeLessThanOrEqual(setting.bestPossibleSpareStops + 1e-9);
      });
    });
  });

  it("keeps a setting on the next day, changes it when the light has gone, and tells a camera without one", () => {
    const [east, , bare] = scrub.cameras;
    expect(east!.days[0]!.word).toBe("keep");
    expect(east!.days[0]!.spareStops!).toBeCloseTo(east!.setting!.spareStops, 1);
    expect(east!.days[2]!.word).toBe("lost");
    expect(east!.days[3]!.word).toBe("change");
    expect(east!.days[3]!.spareStops!).toBeLessThan(0);
    expect(east!.days[3]!.setting!.spareStops).toBeGreaterThan(0);
    expect(east!.days[2]!.spareStops!).toBeLessThan(-5);
    expect(bare!.days.map(({ word }) => word)).toEqual(["unset", "unset", "unset", "unset"]);
  });

  it("reports the sun of each day", () => {
    const plans = later.map((window) => planWindow(SITE, window, { stepS: 300 }));
    scrub.cameras.forEach(({ days }, c) => {
      expect(days.map(({ sun }) => sun.risk)).toEqual(plans.map(({ cameras }) => cameras[c]!.sun.risk));
    });
  });
});

describe("a tracker on a window that slips", () => {
  const vehicle =
    "height: 40, diameter: 3, base: 5, reflectance: 0.75, ascent: { heading: 180, thrustToWeight: 1.4 }";
  const tracker =
    "id: T, at: { bearing: 175, range: 2500, up: 2 }, track: { part: middle }, lens: { focal: 400 }";
  const site = siteOf({ vehicle, cameras: [tracker] });
  const first = day("03-20", "08:40", "09:20");
  const later = [
    day("03-21", "08:40", "09:20"),
    day("03-22", "12:00", "12:40"),
    day("03-23", "22:00", "22:40"),
  ];

  it("has the sun and the setting of its sweep on each day, as that day's plan has them", () => {
    const { days } = scrubSettings(site, first, later, { stepS: 300 }).cameras[0]!;
    later.forEach((window, i) => {
      const { setting, sun } = planWindow(site, window, { stepS: 300 }).cameras[0]!;
      expect(days[i]!.setting).toEqual(setting);
      expect(days[i]!.sun).toEqual({ risk: sun.risk, inFrame: sun.inFrame, nearFrame: sun.nearFrame });
    });
    expect(days.map(({ sun }) => sun.risk)).toEqual(["clear", "in-frame", "down"]);
    expect(days.map(({ word }) => word)).toEqual(["keep", "keep", "lost"]);
  });
});
