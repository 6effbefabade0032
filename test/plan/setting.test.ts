/** The setting against a search of every stop, shutter and filter by a formula of the test's own, from the plan's luminances. */

import { describe, expect, it } from "vitest";
import type { CameraPlan, LightSample } from "../../src/plan/planTypes.ts";
import type { PlanOptions } from "../../src/plan/scene.ts";
import type { Camera, Site, Thing } from "../../src/site/types.ts";
import { planOf, siteOf, standing } from "./sites.ts";

const DAY = "2027-03-20T11:00/17:00";

/** Exact values behind the full-stop marks used here. */
const EXACT_STOP = new Map([2.8, 4, 5.6, 8, 11, 16, 22].map((mark, i) => [mark, 2 ** ((i + 3) / 2)]));
const EXACT_TIME = new Map([125, 250, 500, 1000, 2000, 4000].map((mark, i) => [1 / mark, 2 ** -(i + 7)]));

interface Tried {
  readonly stop: number;
  readonly shutterS: number;
  readonly filterDensity: number;
  /** log2 of the luminance at the mid-tone. */
  readonly x: number;
}

function everySetting(camera: Camera): Tried[] {
  const { lens, medium, shutters, rateHz, filterDensities } = camera;
  return lens.stops.flatMap((stop) =>
    shutters.flatMap((shutter) =>
      filterDensities.map((filterDensity) => {
        const shutterS = shutter.kind === "angle" ? shutter.angleDeg / 360 / rateHz! : shutter.markedS;
        const exactS = shutter.kind === "angle" ? shutterS : EXACT_TIME.get(shutterS)!;
        const through = 10 ** -filterDensity * 2 ** -(lens.lossStops + camera.lossStops);
        const midTone = (12.5 * EXACT_STOP.get(stop)! ** 2) / (exactS * medium!.speedIso * through);
        return { stop, shutterS, filterDensity, x: Math.log2(midTone) };
      }),
    ),
  );
}

function spanOf(sample: LightSample, thing: Thing): { dark: number; bright: number } {
  if (thing === "body") {
    return { dark: Math.log2(sample.bodyDarkestCdM2!), bright: Math.log2(sample.bodyBrightestCdM2!) };
  }
  const value = Math.log2({ sky: sample.skyCdM2, deck: sample.deckCdM2, plume: sample.plumeCdM2! }[thing]);
  return { dark: value, bright: value };
}

interface Margin {
  readonly stops: number;
  readonly thing: Thing;
  readonly end: "over" | "under";
}

/** The kept thing with the least margin in one sample. */
function marginOf(sample: LightSample, camera: Camera, x: number): Margin {
  const { underStops, overStops } = camera.medium!;
  return camera.keep
    .flatMap((thing): Margin[] => {
      const { dark, bright } = spanOf(sample, thing);
      return [
        { stops: x + overStops - bright, thing, end: "over" },
        { stops: dark + underStops - x, thing, end: "under" },
      ];
    })
    .reduce((a, b) => (b.stops < a.stops ? b : a));
}

const spareOf = (light: readonly LightSample[], camera: Camera, x: number): number =>
  Math.min(...light.map((sample) => marginOf(sample, camera, x).stops));

/** Mean distance from where incident metering of the body would put it. */
const placeOf = (light: readonly LightSample[], x: number): number =>
  light.reduce((sum, { ev }) => sum + Math.log2((12.5 / 100) * 2 ** ev!) - x, 0) / light.length;

function checkCamera(site: Site, plan: CameraPlan, index: number): void {
  const camera = site.cameras[index]!;
  const setting = plan.setting!;
  const tried = everySetting(camera);
  const chosen = tried.find(
    (one) =>
      one.stop === setting.stop &&
      Math.abs(one.shutterS - setting.shutterS) < 1e-12 &&
      one.filterDensity === setting.filterDensity,
  )!;
  expect(chosen, `${plan.id}: a setting of this camera`).toBeDefined();
  const spare = spareOf(plan.light, camera, chosen.x);
  expect(setting.spareStops).toBeCloseTo(spare, 9);
  expect(setting.fromPlaceStops).toBeCloseTo(placeOf(plan.light, chosen.x), 9);
  const held = plan.light.filter((sample) => marginOf(sample, camera, chosen.x).stops >= -1e-9);
  expect(setting.holds).toBeCloseTo(held.length / plan.light.length, 12);
  checkWorst(plan, camera, chosen.x, spare);
  const expected = searched(tried, plan.light, camera, site.settings.comfortStops);
  expect([chosen.stop, chosen.shutterS, chosen.filterDensity], plan.id).toEqual([
    expected.stop,
    expected.shutterS,
    expected.filterDensity,
  ]);
  if (tried.some((one) => spareOf(plan.light, camera, one.x) >= 0)) expect(setting.holds).toBe(1);
}

/** Measure by measure, those left that are as good as the best by it: what a person would do with a list and a pencil. */
function searched(
  tried: readonly Tried[],
  light: readonly LightSample[],
  camera: Camera,
  comfortStops: number,
): Tried {
  const middle = (camera.lens.stops.length - 1) / 2;
  const shortBy = new Map(
    tried.map((one) => [one, Math.max(0, comfortStops - 0.021 - spareOf(light, camera, one.x))]),
  );
  const measures: readonly (readonly [(one: Tried) => number, number])[] = [
    [(one) => (spareOf(light, camera, one.x) < -1e-9 ? 1 : 0), 0],
    [(one) => shortBy.get(one)!, 0.021],
    [(one) => (shortBy.get(one)! > 0 ? Math.sign(one.filterDensity) : 0), 0],
    [(one) => shortBy.get(one)!, 0.001],
    [(one) => Math.abs(placeOf(light, one.x)), 0.1],
    [(one) => Math.sign(one.filterDensity), 0],
    [(one) => Math.abs(camera.lens.stops.indexOf(one.stop) - middle), 0],
    [(one) => one.shutterS, 0],
    [(one) => one.stop, 0],
    [(one) => one.filterDensity, 0],
  ];
  let left = tried;
  for (const [measure, same] of measures) {
    const least = Math.min(...left.map(measure));
    left = left.filter((one) => measure(one) <= least + same);
  }
  expect(left.length).toBe(1);
  return left[0]!;
}

function checkWorst({ light, setting, id }: CameraPlan, camera: Camera, x: number, spare: number): void {
  const { worst } = setting!;
  const sample = light.find((one) => one.at.getTime() === worst.at.getTime() && one.sky === worst.sky)!;
  expect(sample, `${id}: a T-0 and sky of the plan`).toBeDefined();
  const margin = marginOf(sample, camera, x);
  expect(margin.stops).toBeCloseTo(spare, 9);
  expect([worst.thing, worst.end]).toEqual([margin.thing, margin.end]);
  expect(worst.stops).toBe(setting!.spareStops);
}

const LENSES = [
  "lens: { focal: 85 }",
  "lens: { focal: 50, stops: [4, 5.6, 8], loss: 0.4 }, loss: 0.3",
  "lens: { focal: 135 }, medium: chip, shutter: { time: [1/500, 1/1000, 1/250] }, rate: 100, filters: [0, 0.3, 1.2]",
  "lens: { focal: 85 }, keep: [body, plume]",
  "lens: { focal: 85 }, keep: [sky]",
  "lens: { focal: 85 }, keep: [deck]",
  "lens: { focal: 85 }, keep: [plume]",
  "lens: { focal: 85 }, medium: chip, keep: [sky, body, deck, plume]",
] as const;

describe("the setting", () => {
  const site = siteOf({
    cameras: [10, 100, 190, 280].flatMap((bearing) =>
      LENSES.map((lens, i) => standing(`C${bearing}-${i}`, bearing, lens)),
    ),
  });
  const CASES: readonly (readonly [string, string, PlanOptions])[] = [
    ["a clear afternoon", DAY, { stepS: 900 }],
    ["an afternoon of any sky", DAY, { stepS: 1800, sky: ["clear", "haze", "bright-cloud", "overcast"] }],
    ["the sunset", "2027-03-20T17:00/19:00", { stepS: 300, sky: ["clear", "overcast"] }],
    ["one minute", "2027-03-20T12:00/12:01", { stepS: 60 }],
  ];
  it.each(CASES)(
    "of %s is as good as any that can be set, and its margins are right",
    (_, window, options) => {
      const plan = planOf(site, window, options);
      for (const [i, camera] of plan.cameras.entries()) checkCamera(site, camera, i);
    },
  );

  it("for a sky alone is the one that a plan of that sky gives", () => {
    const sky = ["clear", "haze", "overcast"] as const;
    const all = planOf(site, DAY, { sky, stepS: 1800 });
    sky.forEach((state, s) => {
      const alone = planOf(site, DAY, { sky: [state], stepS: 1800 });
      all.cameras.forEach((camera, i) => {
        expect(camera.bySky[s]).toEqual({ sky: state, setting: alone.cameras[i]!.setting });
      });
    });
  });

  it("for all skies has no more spare than under any of them, and says the worst of them", () => {
    const all = planOf(site, DAY, { sky: ["clear", "overcast"], stepS: 1800 });
    for (const { setting, bySky } of all.cameras) {
      expect(setting!.bestPossibleSpareStops).toBeLessThanOrEqual(
        Math.min(...bySky.map((one) => one.setting!.bestPossibleSpareStops)) + 1e-9,
      );
      expect(setting!.spareStops).toBeLessThanOrEqual(setting!.bestPossibleSpareStops + 1e-9);
    }
  });

  it("does not depend on other cameras, nor on the order in which skies are asked for", () => {
    const alone = planOf({ ...site, cameras: [site.cameras[5]!] }, DAY, {
      stepS: 1800,
      sky: ["haze", "clear"],
    });
    const among = planOf(site, DAY, { stepS: 1800, sky: ["clear", "haze"] });
    const [one, other] = [alone.cameras[0]!.setting!, among.cameras[5]!.setting!];
    expect([one.stop, one.shutterS, one.filterDensity]).toEqual([
      other.stop,
      other.shutterS,
      other.filterDensity,
    ]);
    expect(one.spareStops).toBeCloseTo(other.spareStops, 12);
  });

  it("more comfort asked for gives no less spare", () => {
    const spareAt = (comfort: number): number => {
      const one = siteOf({ cameras: [standing("C", 280)], more: `settings: { comfort: ${comfort} }` });
      return planOf(one, DAY, { stepS: 1800 }).cameras[0]!.setting!.spareStops;
    };
    const spares = [0, 0.5, 1, 1.5, 2].map(spareAt);
    for (const [i, spare] of spares.slice(1).entries())
      expect(spare).toBeGreaterThanOrEqual(spares[i]! - 0.11);
    expect(spares.at(-1)!).toBeGreaterThan(spares[0]!);
  });
});
