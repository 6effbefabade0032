/** The light along a sweep: as the plan's at T+0, and worked with a pocket calculator in flight, at dusk and through the air. */

import { describe, expect, it } from "vitest";
import type { LightSample } from "../../src/plan/planTypes.ts";
import type { AloftThings } from "../../src/plan/sweep/aloft.ts";
import type { SweepRow, TrackerSweep } from "../../src/plan/sweep/sweepTypes.ts";
import type { Site, SkyState } from "../../src/site/types.ts";
import { daylight } from "../../src/sky/daylight.ts";
import { litAboveM } from "../../src/sky/earthShadow.ts";
import { sunAt } from "../../src/sky/sun.ts";
import {
  LEVEL_EAST,
  PAD,
  preparedOf,
  rowAt,
  steady,
  sweepOf,
  sweepSite,
  tableOfPoints,
  tracking,
} from "./sweepSites.ts";

const SKIES = ["clear", "haze", "bright-cloud", "overcast"] as const;
const BARE = "lens: { focal: 800 }, keep: [sky]";
const AROUND = [40, 130, 230, 320];

/** The plan's light and what the model of the flight gives on the pad at T+0, for every T-0 and sky. */
function bothOn(site: Site, window: string, id: string): { sample: LightSample; model: AloftThings }[] {
  const { light, sweep } = preparedOf(site, window, { sky: SKIES, stepS: 3600 }, id);
  const point = sweep.light.pointAt(0);
  return light.all().map((sample) => {
    const skyIndex = SKIES.indexOf(sample.sky as SkyState);
    return { sample, model: sweep.light.thingsAt(point, sample.at.getTime(), skyIndex) };
  });
}

function expectAlike(model: AloftThings, sample: LightSample, what: string, stops = 0.02): void {
  expect(model.light, what).toBe(sample.light);
  // A plan's phase is always that of the sun, a sweep's that of the moon where it is the lamp.
  if (!/dusk|night/.test(model.light))
    expect(Math.abs(model.phaseDeg - sample.phaseDeg), what).toBeLessThan(0.01);
  expect(Math.abs(model.ev! - sample.ev!), what).toBeLessThan(stops);
  expect(Math.abs(model.body.litShare - sample.litShare), what).toBeLessThan(1e-3);
  // The sky is that of up to ten seconds before or after.
  expect(Math.abs(Math.log2(model.skyCdM2 / sample.skyCdM2)), what).toBeLessThan(0.06);
}

describe("on the pad, in the open, the light of the sweep is the plan's", () => {
  const cameras = AROUND.map((bearing) => tracking(`T${bearing}`, bearing, 600, BARE));
  const plain = sweepSite({ cameras });
  const flooded = sweepSite({ cameras, more: "floodlights: { illuminance: 300, deck: 100 }" });
  // The nearly full moon is up at sunset (full on 22 March 2027).
  it.each([
    ["by day", plain, "2027-03-20T15:00/15:01", 0.02, ["back", "flat", "front", "side"]],
    ["with the sun a degree up", flooded, "2027-03-20T18:05/18:06", 0.02, ["back", "flat", "front"]],
    ["with the sun's last rim up", plain, "2027-03-20T18:11/18:12", 0.06, ["dusk"]],
    ["at dusk, under moon and floodlights", flooded, "2027-03-20T18:35/18:36", 0.02, ["dusk"]],
    ["at night, under moon and floodlights", flooded, "2027-03-20T22:00/22:01", 0.02, ["night"]],
    ["at night, under the moon alone", plain, "2027-03-20T22:00/22:01", 0.02, ["night"]],
  ])("%s, under every sky and from every side", (when, site, window, stops, words) => {
    const seen = new Set<string>();
    for (const bearing of AROUND) {
      for (const { sample, model } of bothOn(site, window, `T${bearing}`)) {
        // A beam that haze takes wholly on the ground leaves a trace in the air: another word, the same light.
        if (sample.sky === "haze" && sample.light === "flat") continue;
        expectAlike(model, sample, `${when}, ${sample.sky}, ${bearing}`, stops);
        seen.add(model.light);
      }
    }
    expect([...seen].sort()).toEqual(words);
  });
});

describe("what a sweep counts at T+0 alone", () => {
  const AFTERNOON = "2027-03-20T15:00/15:01";

  it("the shade of structures: the first row is the plan's, the model of the flight is that of the open", () => {
    const cameras = [tracking("T", 220, 600, BARE)];
    const wall =
      "structures: [{ name: wall, at: { bearing: 235, range: 20 }, width: 60, depth: 2, turn: 325, height: 90 }]";
    const site = sweepSite({ cameras, more: wall });
    const { rows } = sweepOf(site, AFTERNOON, { at: "15:00", everyS: 0.5 }).timeline;
    const [{ sample, model }] = bothOn(site, AFTERNOON, "T") as [ReturnType<typeof bothOn>[number]];
    const [open] = bothOn(sweepSite({ cameras }), AFTERNOON, "T");
    expect([sample.light, rows[0]!.light, rows[1]!.light]).toEqual(["shaded", "shaded", "front"]);
    expect(rows[0]).toMatchObject({ ev: sample.ev, litShare: sample.litShare, phaseDeg: sample.phaseDeg });
    expect(open!.sample.ev! - sample.ev!).toBeGreaterThan(1);
    expectAlike(model, open!.sample, "open");
    expect(rows[1]!.ev).toBeCloseTo(open!.sample.ev!, 2);
  });

  it("the plume's own light on the body, which trails behind once it flies", () => {
    const plume = "plume: { propellant: solid, length: 50, width: 6 }";
    const darkest = (keep: string): number[] => {
      const cameras = [tracking("T", 220, 600, `lens: { focal: 100 }, keep: [${keep}]`)];
      const site = sweepSite({ cameras, vehicle: plume });
      const { samples } = preparedOf(site, "2027-03-08T22:00/22:01").settingInput!;
      const steps = [...new Set(samples.map(({ tPlusS }) => tPlusS!))].sort((a, b) => a - b);
      expect(steps.slice(0, 2)).toEqual([0, 2.5]);
      return steps.map((at) => samples.find(({ tPlusS }) => tPlusS === at)!.spans[0]!.darkLog2);
    };
    const [body, both] = [darkest("body"), darkest("body, plume")];
    expect(both[0]! - body[0]!).toBeGreaterThan(5);
    expect(both.slice(1)).toEqual(body.slice(1));
  });
});

describe("the air between, at T+0", () => {
  const FAR_M = 4000;
  const RANGES = [
    ["T", FAR_M],
    ["N", 400],
  ] as const;
  const site = sweepSite({
    cameras: [tracking("T", 320, FAR_M, BARE), tracking("N", 320, 400, BARE)],
    place: "latitude: 45, longitude: 0, height: 0",
  });
  const window = "2027-03-20T15:00/15:01";

  /**
   * By hand: the air over sea level takes exp(-0.21) of a beam straight down and is as much as 8435 m of air of the ground's
   * density (R T / g at 15 C): along the ground exp(-0.21 x 4000 / 8435) = 0.905 arrives. Haze lies in a layer of scale height 1250 m.
   */
  it.each(["clear", "haze", "bright-cloud", "overcast"] as const)(
    "under %s takes what it takes by hand",
    (sky) => {
      // Air mass of a sun at 30 degrees: 1.994 (Kasten and Young).
      const beam = (state: "clear" | "haze"): number => daylight(30, state).directNormalLx;
      const hazePerM = sky === "haze" ? Math.log(beam("clear") / beam("haze")) / 1.994 / 1250 : 0;
      for (const [id, rangeM] of RANGES) {
        const { rows } = sweepOf(site, window, { sky, at: "15:00", everyS: 50 }, id).timeline;
        const { sample, model } = bothOn(site, window, id).find((one) => one.sample.sky === sky)!;
        // The haze at the line's mean height of some 14 m.
        const arrives = Math.exp(-rangeM * (0.21 / 8435 + hazePerM * Math.exp(-14 / 1250)));
        // So far to the horizon there is air enough to make all of the sky: what is taken is put back as sky.
        const byHand = arrives * sample.bodyMeanCdM2! + (1 - arrives) * sample.skyCdM2;
        for (const found of [model.body.meanCdM2, rows[0]!.bodyMeanCdM2])
          expect(Math.abs(found / byHand - 1), `${sky}, ${rangeM} m`).toBeLessThan(0.01);
        if (sky !== "haze") expect(arrives).toBeCloseTo(rangeM === FAR_M ? 0.905 : 0.99, 3);
        else if (rangeM === FAR_M) expect(arrives).toBeLessThan(0.4);
      }
    },
  );
});

describe("the body turns with its flight", () => {
  const site = sweepSite({
    place: "latitude: 44.71, longitude: 0, height: 20",
    way: tableOfPoints(LEVEL_EAST),
    cameras: [tracking("T", 180, 40_000, BARE), tracking("N", 0, 40_000, BARE)],
  });
  const window = "2027-02-07T12:12/12:13";
  const row = (id: string): SweepRow =>
    rowAt(sweepOf(site, window, { at: "12:12:05", everyS: 10, stepS: 60 }, id), 120);

  it("level due east at 30 km, the sun 30 degrees up in the south, seen from 40 km south of the pad", () => {
    const sun = sunAt({ ...PAD, latitudeDeg: 44.71 }, new Date("2027-02-07T12:14:05Z"));
    expect([sun.azimuthDeg, sun.elevationDeg, sun.distanceAu].map((x) => Math.round(x * 100) / 100)).toEqual([
      180, 30, 0.99,
    ]);
    const found = row("T");
    // Across an axis that lies east and west the sun stands 30 up, the camera atan(30.02 / 40) = 36.89 down: phase 66.9.
    expect(found.phaseDeg).toBeCloseTo(66.9, 1);
    expect([found.light, found.flightPathDeg]).toEqual(["side", expect.closeTo(0, 3)]);
    expect(found.endOnDeg).toBeCloseTo(90, 1);
    expect(found.litShare).toBeCloseTo((1 + Math.cos((66.89 * Math.PI) / 180)) / 2, 3);
    // Beam 127.5 klx / 0.98625^2, 2 x 0.0118 air masses: 130.4. On the ground 127.5 x 1.028 e^-0.42 sin 30 = 43.1, and sky 0.8 + 15.5 sin^0.5 30 = 11.8.
    // From below 0.2 x 54.8 + 0.988 x 11.8 = 22.6, from above 0.14. Normal of the facet that faces the camera: -0.6 up.
    // (130.4 / 4) [(pi - 1.1675) cos + sin] = 55.3; (22.6 + 0.14) / 2 = 11.4; pi / 4 x 0.6 x (22.6 - 0.14) / 2 = 5.3: 72.0 klx.
    expect(found.ev).toBeCloseTo(Math.log2(72_000 / 2.5), 1);
    // 0.75 / pi of it; up at 36.9 degrees through 0.988 / 0.6 = 1.647 air masses: e^-0.346 = 0.708, and 0.29 / 0.295 of the sky on that line.
    const byHand = 0.708 * ((0.75 / Math.PI) * 72_000) + 0.99 * found.skyCdM2;
    expect(found.bodyMeanCdM2 / byHand).toBeCloseTo(1, 2);
  });

  it("and from the north, where the camera looks up at its dark belly", () => {
    const found = row("N");
    // In the plane across, sun at 30, camera at 180 + 36.89: 173.1 the short way round.
    expect(found.phaseDeg).toBeCloseTo(173.1, 1);
    expect(found.light).toBe("back");
    // (130.4 / 4) [(pi - 3.0212) cos + sin] = 0.02; 11.4 and 5.3 as before: 16.7 klx.
    expect(found.ev).toBeCloseTo(Math.log2(16_700 / 2.5), 1);
  });
});

describe("out of the Earth's shadow at dusk", () => {
  const site = sweepSite({
    way: steady(300, 800, 100),
    ascent: "{ table: way.csv, heading: 90 }",
    cameras: [270, 180, 90].map((bearing) => tracking(`T${bearing}`, bearing, 3000, BARE)),
  });
  const sweepAt = (id: string): TrackerSweep =>
    sweepOf(site, "2027-03-20T18:38/18:40", { at: "18:38:10", everyS: 5, stepS: 60 }, id);
  /** Height over the edge of the shadow, straight up there. */
  const aboveEdgeM = ({ timeline }: TrackerSweep, { tPlusS, altitudeM }: SweepRow): number => {
    const sun = sunAt(PAD, new Date(timeline.at.getTime() + tPlusS * 1000));
    return altitudeM - litAboveM(sun.elevationDeg, 300 * tPlusS, 90 - sun.azimuthDeg)!;
  };

  it.each([
    ["T270", "front", 3],
    ["T180", "side", 3],
    ["T90", "back", -1],
  ] as const)("%s sees it dusk and dark under the edge, lit from some way above", (id, word, stops) => {
    const sweep = sweepAt(id);
    const { rows } = sweep.timeline;
    const under = rows.filter((row) => aboveEdgeM(sweep, row) < 0);
    const over = rows.filter((row) => aboveEdgeM(sweep, row) > 20_000);
    expect([under.length > 3, over.length > 5]).toEqual([true, true]);
    for (const row of under) expect([row.light, row.litShare]).toEqual(["dusk", 0]);
    for (const { light, litShare } of over) expect([light, litShare > 0]).toEqual([word, true]);
    // Under the edge nothing changes by stops, over it the sun comes.
    expect(Math.abs(under.at(-1)!.ev! - under[0]!.ev!)).toBeLessThan(1.5);
    expect(over[0]!.ev! - under.at(-1)!.ev!).toBeGreaterThan(stops);
  });

  it("as bright as by hand at 48 and at 80 km", () => {
    const sweep = sweepAt("T270");
    // T+100 s, 80 km: the sun is 6.0 down there, its rays pass 6451 cos 6.0 - 6371 = 45 km up, above the air: 127.5 x 1.008 = 128.5 klx.
    // Axis 69 up to the east, sun in the west: sine 0.9; phase 6: 0.78. 128.5 x 0.9 x 0.78 = 90 klx.
    expect(rowAt(sweep, 100).ev).toBeCloseTo(Math.log2(90_000 / 2.5), 1);
    // T+60 s, 48 km: 5.78 down; 6419 cos 5.78 - 6371 = 15.4 km up, under 0.112 of the air: 2 x 38 x 0.112 = 8.5 air masses leave e^-1.78.
    expect(Math.abs(rowAt(sweep, 60).ev! - Math.log2((90_000 * Math.exp(-1.78)) / 2.5))).toBeLessThan(0.3);
    // The pad has 5.5 down: 3 to 7 lx on the horizontal (FACTS 5: 3.4 lx at 6 degrees), half of it and of what the ground throws back on a wall.
    expect(rowAt(sweep, 0).ev).toBeGreaterThan(Math.log2(1.5 / 2.5));
    expect(rowAt(sweep, 0).ev).toBeLessThan(Math.log2(5 / 2.5));
  });
});
