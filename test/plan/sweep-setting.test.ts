/** One setting for a whole sweep against a dense search of T-0 x T+ by a formula of the test's own, and the two that serve where none does. */

import { describe, expect, it } from "vitest";
import type { Setting } from "../../src/plan/setting.ts";
import type { PreparedSweep } from "../../src/plan/sweep/prepareSweep.ts";
import type { SeenThings } from "../../src/plan/things.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Camera, Site, SkyState, Thing } from "../../src/site/types.ts";
import { preparedOf, steady, sweepOf, sweepSite, tracking } from "./sweepSites.ts";

const DAY = "2027-03-20T14:00/15:00";
const EVENING = "2027-03-20T17:00/18:00";
const DUSK = "2027-03-20T18:20/18:24";
const FINE = "filters: [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]";
const PLUME = "plume: { propellant: kerolox }";

/** Exact values behind the full-stop marks used here. */
const EXACT_STOP = new Map([2.8, 4, 5.6, 8, 11, 16, 22].map((mark, i) => [mark, 2 ** ((i + 3) / 2)]));

/** log2 of the luminance at the mid-tone; shutters here are angles, their times exact. */
const midToneLog2 = ({ medium }: Camera, stop: number, shutterS: number, density: number): number =>
  Math.log2((12.5 * EXACT_STOP.get(stop)! ** 2) / (shutterS * medium!.speedIso * 10 ** -density));

const xOf = (camera: Camera, { stop, shutterS, filterDensity }: Setting): number =>
  midToneLog2(camera, stop, shutterS, filterDensity);

/** Every setting of a camera. */
const allOf = (camera: Camera): number[] =>
  camera.lens.stops.flatMap((stop) =>
    camera.shutters.flatMap((shutter) =>
      camera.filterDensities.map((density) => {
        if (shutter.kind === "time") throw new Error("angles only");
        return midToneLog2(camera, stop, shutter.angleDeg / 360 / camera.rateHz!, density);
      }),
    ),
  );

/** Darkest and brightest, log2. */
function spanOf({ body, skyCdM2, plume }: SeenThings, thing: Thing): readonly [number, number] {
  if (thing === "body") return [Math.log2(body.darkestCdM2), Math.log2(body.brightestCdM2)];
  const value = Math.log2(thing === "sky" ? skyCdM2 : plume!.nominalCdM2);
  return [value, value];
}

const marginOf = (things: SeenThings, { keep, medium }: Camera, x: number): number =>
  Math.min(
    ...keep.flatMap((thing) => {
      const [dark, bright] = spanOf(things, thing);
      return [x + medium!.overStops - bright, dark + medium!.underStops - x];
    }),
  );

interface Met {
  readonly t0Ms: number;
  readonly tPlusS: number;
  readonly things: SeenThings;
}

const spread = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

/** What the tracker meets all over window and sweep, T+0 by the model of the flight: in the open as in the plan (`sweep-light.test.ts`). */
function everywhere(
  { light, room }: PreparedSweep,
  skyCount: number,
  t0Count: number,
  tPlusCount: number,
): Met[] {
  const { opens, closes } = room.window;
  const t0s = spread(opens.getTime(), closes.getTime(), t0Count);
  const points = spread(room.fromS, room.toS, tPlusCount).map(light.pointAt);
  return Array.from({ length: skyCount }, (_, sky) => sky).flatMap((sky) =>
    points.flatMap((point) =>
      t0s.map((t0Ms) => ({ t0Ms, tPlusS: point.tPlusS, things: light.thingsAt(point, t0Ms, sky) })),
    ),
  );
}

interface Case {
  readonly site: Site;
  readonly window: string;
  readonly sky: readonly SkyState[];
}

const CLIMBING = (more: string, vehicle?: string): Site =>
  sweepSite({ cameras: [tracking("T", 230, 600, more)], ...(vehicle === undefined ? {} : { vehicle }) });

const CASES: Readonly<Record<string, Case>> = {
  "the body on a clear and on a dull afternoon": {
    site: CLIMBING("lens: { focal: 400 }"),
    window: DAY,
    sky: ["clear", "overcast"],
  },
  "body and plume": {
    site: CLIMBING("lens: { focal: 400 }, keep: [body, plume]", PLUME),
    window: DAY,
    sky: ["clear"],
  },
  "the sky before sunset": {
    site: CLIMBING(`lens: { focal: 400 }, keep: [sky], medium: narrow, ${FINE}`),
    window: EVENING,
    sky: ["clear"],
  },
  "a body that flies out of dusk into the sun": {
    site: sweepSite({
      way: steady(300, 800, 100),
      ascent: "{ table: way.csv, heading: 90 }",
      cameras: [tracking("T", 270, 500, "lens: { focal: 400 }, medium: chip, rate: 24")],
    }),
    window: DUSK,
    sky: ["clear"],
  },
};

/** T-0s about as many as T+ asks for, so that shares of samples are shares of the window. */
function stepOf({ site, window }: Case): number {
  const { opens, closes } = chooseWindow(site, window);
  return (closes.getTime() - opens.getTime()) / 12_000;
}

describe("the setting of a sweep", () => {
  it.each(Object.keys(CASES))("for %s: spare, worst and share held are those of a dense search", (name) => {
    const { site, window, sky } = CASES[name]!;
    const camera = site.cameras[0]!;
    const stepS = stepOf(CASES[name]!);
    const setting = sweepOf(site, window, { sky, stepS }).setting!;
    const x = xOf(camera, setting);
    const { sweep } = preparedOf(site, window, { sky, stepS });
    const met = everywhere(sweep, sky.length, 25, 121).map((one) => ({
      ...one,
      margin: marginOf(one.things, camera, x),
    }));
    const least = met.reduce((a, b) => (b.margin < a.margin ? b : a));
    expect(Math.abs(setting.spareStops - least.margin)).toBeLessThan(0.1);
    // It is worst where it is told, and hardly less so anywhere.
    const { worst } = setting;
    const skyIndex = sky.indexOf(worst.sky as SkyState);
    const there = sweep.light.thingsAt(sweep.light.pointAt(worst.tPlusS!), worst.at.getTime(), skyIndex);
    expect(Math.abs(marginOf(there, camera, x) - setting.spareStops)).toBeLessThan(0.1);
    const near = met.filter(({ margin }) => margin < least.margin + 0.1);
    expect(near.some(({ tPlusS }) => Math.abs(tPlusS - worst.tPlusS!) < 2.6)).toBe(true);
    expect(worst.stops).toBe(setting.spareStops);
    const held = met.filter(({ margin }) => margin >= -1e-9).length / met.length;
    expect(Math.abs(setting.holds - held)).toBeLessThan(0.03);
    if (setting.spareStops >= 0) expect(setting.holds).toBe(1);
  });
});

/** The sky gets darker on the way up, by more than some media hold. */
function darkening(medium: string, window: string) {
  const site = CLIMBING(`lens: { focal: 400 }, keep: [sky], medium: ${medium}, ${FINE}`);
  const { change, setting, notes } = sweepOf(site, window, { stepS: 300, everyS: 50 });
  const { settingInput, sweep } = preparedOf(site, window, { stepS: 300 });
  const { samples } = settingInput!;
  const steps = [...new Set(samples.map(({ tPlusS }) => tPlusS!))].sort((a, b) => a - b);
  const note = notes.find((text) => text.startsWith("over the sweep"));
  return { camera: site.cameras[0]!, sweep, change, setting: setting!, note, samples, steps };
}

type Darkening = ReturnType<typeof darkening>;

/** Margin of a setting over all samples with T+ in a stretch. */
const leastOver = (
  { samples, camera: { medium } }: Darkening,
  x: number,
  fromS: number,
  toS: number,
): number =>
  Math.min(
    ...samples
      .filter(({ tPlusS }) => tPlusS! >= fromS && tPlusS! <= toS)
      .flatMap(({ spans }) =>
        spans.flatMap(({ darkLog2, brightLog2 }) => [
          x + medium!.overStops - brightLog2,
          darkLog2 + medium!.underStops - x,
        ]),
      ),
  );

const nothingHolds = (all: Darkening, fromS: number, toS: number): void => {
  for (const x of allOf(all.camera)) expect(leastOver(all, x, fromS, toS)).toBeLessThan(-1e-9);
};

/** The parts hold what they are said to hold, no setting holds a longer one. */
function checkParts(all: Darkening): void {
  const { camera, steps, change, sweep } = all;
  const [firstS, lastS] = [steps[0]!, steps.at(-1)!];
  const [until, from] = [change!.first!.untilS, change!.second!.fromS];
  const parts = [
    [change!.first!.setting, firstS, until],
    [change!.second!.setting, from, lastS],
  ] as const;
  for (const [setting, a, b] of parts) {
    expect(setting.spareStops).toBeGreaterThanOrEqual(-1e-9);
    expect(setting.spareStops).toBeCloseTo(leastOver(all, xOf(camera, setting), a, b), 9);
    // Between the sampled T-0s and T+ too.
    for (const { things, tPlusS } of everywhere(sweep, 1, 8, 151))
      if (tPlusS >= a && tPlusS <= b)
        expect(marginOf(things, camera, xOf(camera, setting))).toBeGreaterThan(-0.05);
  }
  nothingHolds(all, firstS, steps[steps.indexOf(until) + 1]!);
  nothingHolds(all, steps[steps.indexOf(from) - 1]!, lastS);
}

describe("where one setting does not hold the sweep", () => {
  it("two do, and it serves to change anywhere in the stretch told", () => {
    const all = darkening("middling", "2027-03-20T17:30/17:40");
    const { change, camera, steps, setting, note } = all;
    expect(setting.spareStops).toBeLessThan(0);
    expect([setting.holds > 0, setting.holds < 1]).toEqual([true, true]);
    checkParts(all);
    const { fromS, toS } = change!.changeAt!;
    expect([fromS, toS]).toEqual([change!.second!.fromS, change!.first!.untilS]);
    const at = steps.filter((step) => step >= fromS && step <= toS);
    expect(at.length).toBeGreaterThan(1);
    for (const step of at) {
      expect(leastOver(all, xOf(camera, change!.first!.setting), 0, step)).toBeGreaterThanOrEqual(-1e-9);
      expect(leastOver(all, xOf(camera, change!.second!.setting), step, 100)).toBeGreaterThanOrEqual(-1e-9);
    }
    expect(note).toMatch(/until T\+\d+ s, .* from T\+\d+ s on\W+change between T\+\d+ and \d+ s$/);
  });

  it("two with a gap between them have no T+ to change at", () => {
    const all = darkening("narrow", "2027-03-20T17:30/17:40");
    const { change, note } = all;
    checkParts(all);
    expect(change!.first!.untilS).toBeLessThan(change!.second!.fromS);
    expect(change!.changeAt).toBeNull();
    expect(note).toMatch(/until T\+\d+ s, .* on\W+nothing holds in between$/);
  });

  it("an end that nothing holds has no setting, nor have both", () => {
    const one = darkening("thin", DAY);
    expect([one.change!.second, one.change!.changeAt]).toEqual([null, null]);
    expect(one.change!.first!.untilS).toBeGreaterThan(0);
    nothingHolds(one, 100, 100);
    expect(one.note).toMatch(/until T\+\d+ s/);
    expect(one.note).not.toMatch(/change|between/);
    const none = darkening("narrow", EVENING);
    expect([none.setting.spareStops < 0, none.change, none.note]).toEqual([true, null, undefined]);
    nothingHolds(none, 0, 0);
    nothingHolds(none, 100, 100);
  });

  it("there is no change while it holds", () => {
    const { change, setting, note } = darkening("grain", DAY);
    expect([setting.holds, change, note]).toEqual([1, null, undefined]);
  });
});
