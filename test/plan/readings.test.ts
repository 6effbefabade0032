/** Meter readings against the model: the model by hand, known offsets found again, readings that must not be used. */

import { describe, expect, it } from "vitest";
import { evOfIlluminance, exposureValue } from "../../src/exposure/exposureValue.ts";
import { compareReadings } from "../../src/plan/readings/compareReadings.ts";
import type { ComparedReading, ReadingsReport } from "../../src/plan/readings/readingTypes.ts";
import type { Site } from "../../src/site/types.ts";
import { problemsFrom } from "../support/problemsFrom.ts";
import { makeRandom } from "../support/random.ts";
import { EVENING, planOf, siteOf, standing } from "./sites.ts";

const HEADER = "time,sky,what,camera,azimuth,elevation,value,iso,note";
const SITE = siteOf({ cameras: [standing("S", 180), standing("N", 0), standing("E", 90)] });

const compare = (rows: readonly string[], site: Site = SITE): ReadingsReport =>
  compareReadings(site, [HEADER, ...rows].join("\n"), "r.csv");
const first = (row: string, site: Site = SITE): ComparedReading => compare([row], site).readings[0]!;

/** The same but for the sun's knots: those of a day here, of the window there, apart by 2e-5 degree. */
const same = (a: number, b: number): void => expect(a / b).toBeCloseTo(1, 5);

/** Noon of the equinox at 45 degrees north: the sun stands 45 degrees high in the south. */
const NOON = "2027-03-20T12:07";

describe("the model's light", () => {
  it("sunny 16: a receptor facing a clear sun at 45 degrees reads EV 15", () => {
    // With the clear sky of the IES Calculation Procedures Committee 1984:
    // 127,500 e^(-0.21 x 1.41) = 94,800 lx of beam, x cos 45 = 67,000; half the sky (800 + 15,500 sqrt sin 45 = 13,800) 6,900;
    // half of 0.2 of the ground's 80,900: 8,100. Together 82,000 lx, EV log2 (82,000 / 2.5) = 15.0.
    const reading = first(`${NOON},clear,incident,,180,,82 klx,,`);
    expect(reading.sunElevationDeg).toBeCloseTo(45, 0);
    expect(reading.modelLight).toBeGreaterThan(81_000);
    expect(reading.modelLight).toBeLessThan(83_500);
    expect(evOfIlluminance(reading.modelLight)).toBeCloseTo(15, 1);
    expect(Math.abs(reading.stops)).toBeLessThan(0.03);
  });

  it("a side turned away from the sun gets the fill alone: some 15,000 lx, 2.4 stops less", () => {
    expect(first(`${NOON},clear,incident,N,,,15 klx,,`).modelLight).toBeGreaterThan(14_500);
    expect(first(`${NOON},clear,incident,N,,,15 klx,,`).modelLight).toBeLessThan(15_500);
    expect(first(`${NOON},clear,incident,N,,,15 klx,,`).modelLight).toBe(
      first(`${NOON},clear,incident,,40,,15 klx,,`).modelLight,
    );
  });

  it("a grey card of 18 % stands log2 (0.18 / 0.157) = 0.2 EV above the incident reading beside it", () => {
    const lx = first(`${NOON},clear,incident,S,,,80 klx,,`).modelLight;
    const card = first(`${NOON},clear,grey-card,S,,,EV 15,,`).modelLight;
    expect(card).toBeCloseTo((0.18 * lx) / Math.PI, 6);
    expect(exposureValue({ luminanceCdM2: card }) - evOfIlluminance(lx)).toBeCloseTo(0.197, 3);
  });

  it("body and sky of a camera are those of the plan", () => {
    const sample = planOf(SITE, "2027-03-20T12:07/12:08").cameras[0]!.lightAt(0);
    same(first(`${NOON},clear,body,S,,,EV 15,,`).modelLight, sample.bodyMeanCdM2!);
    same(first(`${NOON},clear,sky,S,,,EV 15,,`).modelLight, sample.skyCdM2);
  });

  it("horizontal is the deck's light: pi L / 0.2", () => {
    const sample = planOf(SITE, "2027-03-20T12:07/12:08").cameras[0]!.lightAt(0);
    same(first(`${NOON},clear,horizontal,,,,80 klx,,`).modelLight, (Math.PI * sample.deckCdM2) / 0.2);
  });

  it("is taken without corrections and floodlights of the file", () => {
    const more =
      "floodlights: { illuminance: 5000, deck: 900 }\ncorrections: { sky: { clear: 1 }, cameras: { S: 0.5 } }";
    const site = siteOf({ cameras: [standing("S", 180)], more });
    for (const what of ["incident,S", "grey-card,S", "body,S", "sky,S", "horizontal,"]) {
      const row = `${NOON},clear,${what},,,EV 15,,`;
      expect(first(row, site).modelLight, what).toBe(first(row).modelLight);
    }
  });
});

describe("values and times", () => {
  it("units: 7618 fc and 82 klx are 82,000 lx, EV 15 is 81,920 lx; EV 17 at ISO 400 is EV 15", () => {
    const light = (cells: string): number => first(`${NOON},clear,incident,S,,,${cells},`).light;
    expect(light("7618 fc,")).toBeCloseTo(82_000, -1);
    expect(light("82 klx,")).toBe(82_000);
    expect(light("EV 15,")).toBeCloseTo(2.5 * 2 ** 15, 6);
    expect(light("17 EV,400")).toBeCloseTo(2.5 * 2 ** 15, 6);
    expect(first(`${NOON},clear,body,S,,,EV 15,,`).light).toBeCloseTo(0.125 * 2 ** 15, 6);
  });

  it("the unit may stand in the header", () => {
    const header = HEADER.replace("value", "value (klx)");
    const report = compareReadings(
      SITE,
      `${header}\n${NOON},clear,incident,S,,,82,,\n${NOON},clear,incident,S,,,EV 15,,`,
      "r.csv",
    );
    expect(report.readings.map(({ light }) => Math.round(light))).toEqual([82_000, 81_920]);
  });

  it("a wall time, an offset and Z of the same instant are one", () => {
    const rows = ["2027-03-20T12:07", "2027-03-20T14:07+02:00", "2027-03-20 12:07:00Z"];
    const { readings } = compare(rows.map((time) => `${time},clear,incident,S,,,82 klx,,`));
    expect(new Set(readings.map(({ at }) => at.toISOString()))).toEqual(
      new Set(["2027-03-20T12:07:00.000Z"]),
    );
  });
});

/** Readings made of the model: `offset` stops off, with a normal scatter of `sigma` stops. */
function madeUp(
  offset: number,
  sigma: number,
  count: number,
  seed: number,
  sky = "clear",
  more = "S",
): string[] {
  const random = makeRandom(seed);
  // Box and Muller 1958.
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
  const times = Array.from({ length: count }, (_, i) =>
    new Date(Date.UTC(2027, 2, 20, 9) + i * 120_000).toISOString(),
  );
  const model = compare(times.map((time) => `${time},${sky},incident,${more},,,1 klx,,`)).readings;
  return model.map(({ at, modelLight }) => {
    const lx = modelLight * 2 ** (offset + sigma * normal());
    return `${at.toISOString()},${sky},incident,${more},,,${lx.toFixed(3)} lx,,`;
  });
}

describe("a known offset", () => {
  it("is found again within twice its standard error, for most seeds within once", () => {
    const off = Array.from({ length: 40 }, (_, seed) => {
      const { skies } = compare(madeUp(-0.6, 0.2, 60, seed + 1));
      expect(skies[0]!.errorStops).toBeLessThan(0.06);
      return Math.abs(skies[0]!.medianStops! + 0.6) / skies[0]!.errorStops!;
    });
    // 68 % within one error, 95 % within two.
    expect(off.filter((errors) => errors <= 1).length).toBeGreaterThanOrEqual(22);
    expect(off.filter((errors) => errors <= 2).length).toBeGreaterThanOrEqual(36);
  });

  it("becomes the correction of that sky alone, with the sign of the file: darker than the model is negative", () => {
    const { suggested, skies } = compare(madeUp(-0.6, 0.1, 30, 7));
    expect(suggested).toEqual({ bySky: { clear: -0.6 }, byCamera: {} });
    expect(skies.map(({ sky, used, outliers }) => [sky, used, outliers])).toEqual([["clear", 30, 0]]);
  });

  it("put into the file changes the plan by exactly those stops", () => {
    const { suggested } = compare(madeUp(-0.6, 0.1, 30, 7));
    const more = `corrections: { sky: { clear: ${suggested.bySky.clear} } }`;
    const corrected = siteOf({ cameras: [standing("S", 180), standing("N", 0), standing("E", 90)], more });
    const [before, after] = [SITE, corrected].map((site) => planOf(site, EVENING).cameras[0]!.lightAt(0));
    expect(after!.ev! - before!.ev!).toBeCloseTo(-0.6, 9);
    expect(Math.log2(after!.skyCdM2 / before!.skyCdM2)).toBeCloseTo(-0.6, 9);
  });

  it("of one camera beside three others is that camera's own, on top of the sky's", () => {
    const rows = [
      ...madeUp(0.3, 0.1, 40, 11),
      ...madeUp(0.3, 0.1, 40, 12, "clear", "N"),
      ...madeUp(0.7, 0.1, 20, 13, "clear", "E"),
    ];
    const { suggested, cameras } = compare(rows);
    expect(suggested.bySky.clear).toBeCloseTo(0.3, 9);
    expect(suggested.byCamera).toEqual({ E: 0.4 });
    expect(cameras.find(({ id }) => id === "S")!.why).toBe("agrees with its sky within their error");
  });
});

describe("readings that are not used", () => {
  const sound = madeUp(0, 0.1, 20, 3);

  it("under another sky are outliers, named with the sky they read like, and move nothing", () => {
    const overcast = madeUp(0, 0.1, 4, 4, "overcast").map((row) => row.replace("overcast", "clear"));
    const report = compare([...sound, ...overcast]);
    const outliers = report.readings.filter(({ use }) => use === "outlier");
    expect(outliers.map(({ line }) => line)).toEqual([22, 23, 24, 25]);
    for (const { why } of outliers) expect(why).toBe("stands apart from the others; reads like overcast");
    expect(report.skies[0]!.medianStops).toBe(compare(sound).skies[0]!.medianStops);
    expect(report.skies[0]).toMatchObject({ readings: 24, used: 20, outliers: 4, suggestedStops: 0 });
  });

  it.each([
    ["at night", "2027-03-20T23:00,clear,incident,S,,,1 lx,,", "sun down"],
    ["under a sun below 5 degrees", "2027-03-20T17:50,clear,incident,S,,,900 lx,,", "sun under 5°"],
    ["of the sky beside the sun", `${NOON},clear,sky,,180,40,EV 18,,`, "within 15° of the sun"],
    [
      "of haze with a sun so low that the turbidity model fails",
      "2027-03-20T17:35,haze,horizontal,,,,3 klx,,",
      "haze with so low a sun",
    ],
  ])("%s are shown, with the reason", (_, row, why) => {
    const reading = first(row);
    expect(reading.use).toBe("shown");
    expect(reading.why).toContain(why);
    const clear = compare([...sound, row]).skies[0]!;
    expect(clear).toMatchObject({ used: 20, medianStops: compare(sound).skies[0]!.medianStops });
  });

  it("in the shade of a structure are shown; the side away from the sun is used", () => {
    const more =
      "structures:\n  - { name: mast, at: { bearing: 180, range: 12 }, width: 20, depth: 5, height: 90 }";
    const site = siteOf({ cameras: [standing("S", 180), standing("N", 0)], more });
    const shaded = first(`${NOON},clear,incident,S,,,15 klx,,`, site);
    expect(shaded.why).toContain("in shade");
    // Fill alone, as on the side turned away.
    expect(shaded.modelLight).toBeCloseTo(first(`${NOON},clear,incident,N,,,15 klx,,`, site).modelLight, 6);
    expect(first(`${NOON},clear,incident,N,,,15 klx,,`, site).use).toBe("used");
    expect(first(`${NOON},clear,body,S,,,EV 14,,`, site).why).toContain("in shade");
    expect(first(`${NOON},overcast,incident,S,,,9 klx,,`, site).use).toBe("used");
  });
});

describe("corrections that stand in the file", () => {
  it("are replaced, a camera's that is no longer needed by 0, others stay and are named", () => {
    const more = "corrections: { sky: { clear: 1, overcast: 0.2 }, cameras: { S: 0.5, N: 0.3 } }";
    const site = siteOf({ cameras: [standing("S", 180), standing("N", 0), standing("E", 90)], more });
    const report = compare(madeUp(-0.6, 0.1, 30, 7), site);
    expect(report.suggested).toEqual({ bySky: { clear: -0.6 }, byCamera: { S: 0 } });
    expect(report.notes.join("\n")).toContain("stays in the file: overcast +0.2 stops, N +0.3 stops");
  });
});

describe("limits", () => {
  const problemOf = (rows: readonly string[]): string =>
    problemsFrom(() => compare(rows))
      .map(({ code, found }) => `${code} ${found}`)
      .join();

  it("more rows, days or skies than can be told in time are refused", () => {
    const row = `${NOON},clear,incident,S,,,82 klx,,`;
    expect(problemOf(Array(50_001).fill(row))).toBe("E_SIZE more rows");
    const days = Array.from({ length: 401 }, (_, i) => new Date(Date.UTC(2027, 0, 1 + i, 12)).toISOString());
    expect(problemOf(days.map((time) => `${time},clear,incident,S,,,82 klx,,`))).toBe(
      "E_SIZE readings of 401 days",
    );
    const skies = Array.from({ length: 25 }, (_, i) => `haze:${2 + i / 10}`);
    expect(problemOf(skies.map((sky) => `${NOON},${sky},incident,S,,,82 klx,,`))).toBe(
      "E_SIZE 25 different skies",
    );
  });

  it("turbidities of haze are judged together, and that is said", () => {
    const { notes } = compare(
      [4, 5, 6].map((turbidity) => `${NOON},haze:${turbidity},incident,S,,,60 klx,,`),
    );
    expect(notes.join()).toContain("readings of haze:4, haze:5, haze:6 are judged together");
  });
});
