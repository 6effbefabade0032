/** A tracker in a plan against its sweep, a plan without an ascent, and what a sweep refuses. */

import { describe, expect, it } from "vitest";
import type { Problem } from "../../src/base/problem.ts";
import { sweepTrackers } from "../../src/plan/sweep/sweepTracker.ts";
import type { SweepOptions, TrackerSweep } from "../../src/plan/sweep/sweepTypes.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site } from "../../src/site/types.ts";
import { problemsFrom } from "../support/problemsFrom.ts";
import { north, plannedOf, rowAt, sweepOf, sweepSite, tracking } from "./sweepSites.ts";

const DAY = "2027-04-18T14:00/15:00";
const BEFORE = "2027-04-18T13:30/13:45";
const FOCAL = "lens: { focal: 300 }";
const LOOK = `at: { bearing: 60, range: 2500, up: 2 }, ${FOCAL}`;
const FIXED = `id: F, ${LOOK}, aim: { up: 25 }`;
const BOTH = sweepSite({ cameras: [tracking("T", 60, 2500, FOCAL), FIXED] });
const spans = (list: readonly { readonly from: Date; readonly to: Date }[]) =>
  list.map(({ from, to }) => ({ from, to }));

describe("a tracker in the plan of a window", () => {
  it.each([
    ["clear", DAY],
    [["haze", "overcast"], BEFORE],
    ["clear", "2027-04-18T18:35/18:55"],
  ] as const)("has the sun, the setting and the mount of its sweep (%s, %s)", (sky, window) => {
    const options = { sky, stepS: 600 };
    const [planned, sweep] = [plannedOf(BOTH, window, options), sweepOf(BOTH, window, options)];
    expect(planned.sweep).toMatchObject({
      sun: sweep.sun,
      slew: sweep.slew,
      change: sweep.change,
      ascent: sweep.ascent,
      follows: sweep.follows,
    });
    expect(planned.setting).toEqual(sweep.setting);
    expect(planned.bySky).toEqual(sweep.bySky);
    expect(planned.keep).toEqual(sweep.keep);
    expect(planned.axis).toEqual(sweep.axis);
    expect(planned.sun.risk).toBe(sweep.sun.risk);
    expect([planned.sun.inFrame, planned.sun.nearFrame]).toEqual([
      spans(sweep.sun.inFrame),
      spans(sweep.sun.nearFrame),
    ]);
    const { at, fromEdgeDeg } = sweep.sun.closest!;
    expect(planned.sun.closest).toMatchObject({ at, fromEdgeDeg });
  });

  it("is cleared by the T-0s that its sweep has the sun away, and by no other aim", () => {
    const window = "2027-04-18T13:30/14:20";
    const { remedy } = plannedOf(BOTH, window, { stepS: 600 });
    const { sun } = sweepOf(BOTH, window, { stepS: 600 });
    const met = [...sun.inFrame, ...sun.nearFrame].sort((a, b) => a.from.getTime() - b.from.getTime());
    expect(met.length).toBe(2);
    expect(remedy!.clearTimes).toEqual([{ from: new Date("2027-04-18T13:30Z"), to: met[0]!.from }]);
    expect([remedy!.aim, remedy!.hoodDiameters]).toEqual([null, null]);
    expect(plannedOf(BOTH, "2027-04-18T12:00/12:30").remedy).toBeNull();
  });

  it("loses its flare with a hood as long as told, and not with one a twentieth shorter", () => {
    const [window, more] = ["2027-04-18T12:00/12:20", "settings: { flare: 40 }"];
    const siteWith = (lens: string): Site => sweepSite({ cameras: [tracking("T", 60, 2500, lens)], more });
    const { remedy, sun } = plannedOf(siteWith(FOCAL), window);
    expect(sun.risk).toBe("near-frame");
    const riskWith = (length: number): string => {
      const lens = `lens: { focal: 300, hood: { length: ${length}, diameter: 100 } }`;
      return sweepOf(siteWith(lens), window).sun.risk;
    };
    expect(riskWith(remedy!.hoodDiameters! * 100 * 1.001)).toBe("clear");
    expect(riskWith(remedy!.hoodDiameters! * 100 * 0.95)).toBe("near-frame");
  });

  it("without an ascent is planned on its axis at T-0 as a fixed camera, and a note says so", () => {
    const site = sweepSite({
      ascent: null,
      cameras: [`id: T, ${LOOK}, track: { part: middle }`, FIXED],
    });
    const [tracker, fixed] = ["T", "F"].map((id) => plannedOf(site, DAY, { stepS: 600 }, id));
    expect(tracker!.sweep).toBeNull();
    for (const key of ["axis", "sun", "setting", "bySky", "remedy", "light", "fieldDeg"] as const)
      expect(tracker![key], key).toEqual(fixed![key]);
    expect(tracker!.notes.join("\n")).toMatch(/tracker: .*no ascent/);
  });

  it("does not change what a fixed camera beside it is told", () => {
    const alone = sweepSite({ cameras: [FIXED] });
    const [among, byItself] = [BOTH, alone].map((site) => plannedOf(site, DAY, { stepS: 600 }, "F"));
    expect(among!.sweep).toBeNull();
    for (const key of ["sun", "setting", "light", "notes"] as const)
      expect(among![key], key).toEqual(byItself![key]);
  });
});

describe("what is asked of a sweep", () => {
  it("T-0 of the rows: a time of day, an instant, or the middle of the window", () => {
    const at = (options: SweepOptions): string =>
      sweepOf(BOTH, DAY, { stepS: 3600, everyS: 50, ...options }).timeline.at.toISOString();
    expect(at({})).toBe("2027-04-18T14:30:00.000Z");
    expect(at({ at: "14:05:30" })).toBe("2027-04-18T14:05:30.000Z");
    expect(at({ at: "2027-04-18T14:59" })).toBe("2027-04-18T14:59:00.000Z");
    expect(at({ at: "2027-04-18T17:00+03:00" })).toBe("2027-04-18T14:00:00.000Z");
  });

  it("skies: the rows are under the first, the setting is for all and for each", () => {
    const [both, clear, overcast] = [["overcast", "clear"], "clear", "overcast"].map((sky) =>
      sweepOf(BOTH, DAY, { sky: sky as SweepOptions["sky"] & string, stepS: 600, everyS: 20 }),
    );
    expect([both!.timeline.sky, clear!.timeline.sky]).toEqual(["overcast", "clear"]);
    const light = ({ rows }: TrackerSweep["timeline"]) =>
      rows.map(({ light, ev, skyCdM2 }) => [light, ev, skyCdM2]);
    expect(light(both!.timeline)).toEqual(light(overcast!.timeline));
    expect(rowAt(both!, 20).ev).not.toBe(rowAt(clear!, 20).ev);
    expect(both!.bySky).toEqual([
      { sky: "overcast", setting: overcast!.setting },
      { sky: "clear", setting: clear!.setting },
    ]);
    for (const { setting } of both!.bySky)
      expect(both!.setting!.bestPossibleSpareStops).toBeLessThanOrEqual(
        setting!.bestPossibleSpareStops + 1e-9,
      );
  });

  it("all trackers, in the order of the file, each as by itself", () => {
    const site = sweepSite({ cameras: [tracking("B", 200, 3000), FIXED, tracking("A", 60, 2500)] });
    const plan = sweepTrackers(site, chooseWindow(site, DAY), null, { stepS: 600, everyS: 50 });
    expect(plan.trackers.map(({ id }) => id)).toEqual(["B", "A"]);
    for (const tracker of plan.trackers)
      expect(tracker).toEqual(sweepOf(site, DAY, { stepS: 600, everyS: 50 }, tracker.id));
    expect(plan.cautions.length).toBeGreaterThan(0);
  });
});

describe("a sweep refuses", () => {
  const bare = sweepSite({ cameras: [FIXED] });
  const unfed = sweepSite({ ascent: null, cameras: [tracking("T", 60, 2500)] });
  const problemOf = (work: () => unknown): Problem => problemsFrom(work)[0]!;
  const asked =
    (site: Site, id: string | null, options: SweepOptions = {}) =>
    () =>
      sweepTrackers(site, chooseWindow(site, DAY), id, options);

  it.each<[string, () => unknown, Partial<Problem>]>([
    ["an unknown camera", asked(BOTH, "TT"), { code: "E_NAME", key: "CAMERA" }],
    ["a fixed camera", asked(BOTH, "F"), { code: "E_CHOICE", key: "CAMERA", accepted: "T" }],
    ["a fixed camera of a site without trackers", asked(bare, "F"), { code: "E_CHOICE", key: "CAMERA" }],
    ["a site without a tracker", asked(bare, null), { code: "E_MISSING", key: "track" }],
    ["a site without an ascent", asked(unfed, "T"), { code: "E_MISSING", key: "vehicle.ascent" }],
  ])("%s, and says what to do next", (_, work, expected) => {
    const problem = problemOf(work);
    expect(problem).toMatchObject(expected);
    expect(problem.accepted).toMatch(/\w/);
    // A near name is the next step of a mistyped one.
    expect(problem.next ?? problem.suggestion).toMatch(/\w/);
  });

  it.each<[string, SweepOptions, Partial<Problem>]>([
    ["rows too close", { everyS: 0.05 }, { code: "E_RANGE", key: "every" }],
    ["rows too far apart", { everyS: 601 }, { code: "E_RANGE", key: "every" }],
    ["rows at no number", { everyS: Number.NaN }, { key: "every" }],
    ["a T-0 outside the window", { at: "15:00:01" }, { code: "E_RANGE", key: "--at" }],
    ["a T-0 that is none", { at: "25:00" }, { code: "E_TIME", key: "--at" }],
    ["an unknown sky", { sky: "fog" as "clear" }, { code: "E_CHOICE", key: "sky" }],
    ["a step out of range", { stepS: 0 }, { code: "E_RANGE", key: "step" }],
  ])("%s", (_, options, expected) => {
    const problem = problemOf(asked(BOTH, "T", options));
    expect(problem).toMatchObject(expected);
    expect(problem.accepted).toMatch(/\w/);
  });

  it("none of it for a site as it should be", () => {
    expect(asked(north(DAY).site, "T", { everyS: 600, stepS: 3600 })).not.toThrow();
  });
});
