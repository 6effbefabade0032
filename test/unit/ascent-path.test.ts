/** The path of an ascent: how it begins and ends, where the body points, what is refused, what is assumed and told. */

import { describe, expect, it } from "vitest";
import type { Ascent, AscentPoint, Site } from "../../src/site/types.ts";
import { bodyAxisInto, flightAt, makeAscentPath, type Triple } from "../../src/view/ascentPath.ts";
import { poweredAscent } from "../../src/view/poweredAscent.ts";
import { siteAscentOf } from "../../src/view/siteAscent.ts";
import { siteOf, standing } from "../plan/sites.ts";
import { problemsFrom } from "../support/problemsFrom.ts";

const PAD = { latitudeDeg: 45, longitudeDeg: 0, heightM: 20 };
const row = (tPlusS: number, eastM: number, northM: number, upM: number): AscentPoint => ({
  ...{ tPlusS, eastM, northM, upM },
});
const positionAt = (points: readonly AscentPoint[], tPlusS: number): Triple => {
  const out: Triple = [0, 0, 0];
  makeAscentPath(points).positionInto(tPlusS, out);
  return out;
};
const axisAt = (points: readonly AscentPoint[], tPlusS: number): Triple => {
  const out: Triple = [0, 0, 0];
  bodyAxisInto(makeAscentPath(points), tPlusS, out);
  return out;
};

describe("a path", () => {
  const points = [row(2, 1, 2, 3), row(4, 1, 2, 13), row(9, 101, 2, 113)];

  it("stands where it begins, is held where it ends, and moves in neither", () => {
    const path = makeAscentPath(points);
    expect([path.fromS, path.toS]).toEqual([2, 9]);
    expect(positionAt(points, -100)).toEqual([1, 2, 3]);
    expect(positionAt(points, 100)).toEqual([101, 2, 113]);
    for (const tPlusS of [1.999, 9.001]) {
      const velocity: Triple = [1, 1, 1];
      path.velocityInto(tPlusS, velocity);
      expect(velocity).toEqual([0, 0, 0]);
      expect(flightAt(path, PAD, tPlusS)).toMatchObject({ speedMS: 0, flightPathDeg: null });
    }
  });

  it("of two rows is straight", () => {
    expect(positionAt([row(0, 0, 0, 0), row(10, 100, 0, 50)], 3)).toEqual([30, 0, 15]);
  });
});

describe("the body", () => {
  const level = (speedMS: number): AscentPoint[] => [row(0, 0, 0, 100), row(10, speedMS * 10, 0, 100)];

  it("stands upright when slow and points along a fast flight", () => {
    expect(axisAt(level(9.9), 5)).toEqual([0, 0, 1]);
    expect(axisAt(level(31), 5)).toEqual([1, 0, 0]);
  });

  it("leans half way at 20 m/s", () => {
    const [east, north, up] = axisAt(level(20), 5);
    expect([east, north, up]).toEqual([
      expect.closeTo(Math.SQRT1_2, 12),
      0,
      expect.closeTo(Math.SQRT1_2, 12),
    ]);
  });

  it("keeps the last direction after the end, and stands before the beginning", () => {
    expect(axisAt(level(50), 1000)).toEqual([1, 0, 0]);
    expect(axisAt(level(50), -1)).toEqual([0, 0, 1]);
  });

  it("has a direction even in a fall at the speed half way", () => {
    expect(axisAt([row(0, 0, 0, 1000), row(10, 0, 0, 800)], 5)).toEqual([0, 0, 1]);
  });
});

describe("a table that is no path is refused:", () => {
  const refused = (points: unknown): string => {
    const [first] = problemsFrom(() => makeAscentPath(points as AscentPoint[]));
    return `${first?.code} ${first?.key}`;
  };

  it.each([
    ["no list", "0,0,0", "E_TYPE ascent"],
    ["no row", [], "E_EMPTY ascent"],
    ["one row", [row(0, 0, 0, 0)], "E_EMPTY ascent"],
    ["a row that is none", [row(0, 0, 0, 0), null], "E_TYPE ascent[1]"],
    ["a time twice", [row(0, 0, 0, 0), row(1, 0, 0, 0), row(1, 0, 0, 1)], "E_ORDER ascent[2].tPlusS"],
    ["a time that is no number", [row(0, 0, 0, 0), row(Number.NaN, 0, 0, 0)], "E_RANGE ascent[1].tPlusS"],
    ["an endless way", [row(0, 0, 0, 0), row(1, 0, 0, Number.POSITIVE_INFINITY)], "E_RANGE ascent[1].upM"],
    ["a missing column", [row(0, 0, 0, 0), { tPlusS: 1, eastM: 0, upM: 1 }], "E_RANGE ascent[1].northM"],
  ])("%s", (_, points, said) => {
    expect(refused(points)).toBe(said);
  });
});

const withAscent = (ascent: Ascent): Site => {
  const site = siteOf({ cameras: [standing("A", 90)] });
  return { ...site, vehicle: { ...site.vehicle!, ascent } };
};
const BARE = {
  kind: "parameters",
  thrustToWeight: 1.35,
  massFlowPerS: null,
  burnS: null,
  pitch: null,
} as const;

describe("the ascent of a site", () => {
  it("is none without one", () => {
    expect(siteAscentOf(siteOf({ cameras: [standing("A", 90)] }))).toBeNull();
  });

  it("made from a thrust and a heading tells what it assumed", () => {
    const made = siteAscentOf(withAscent({ ...BARE, headingDeg: 98 }))!;
    expect(made.source).toBe("made from parameters");
    expect(made.assumed).toEqual([
      "mass flow not given: 0.45 % of the lift-off mass per second assumed (specific impulse 300 s)",
      "burn not given: 150 s assumed",
      "pitch programme not given: a usual one assumed, good to several degrees",
      "no drag, no staging, thrust held: the path ends with the burn",
    ]);
    const flight = flightAt(made.path, PAD, 150);
    expect(flight.altitudeM).toBeGreaterThan(50_000);
    expect(flight.flightPathDeg).toBeLessThan(30);
  });

  it("with all parameters given assumes only the model", () => {
    const pitch = [{ tPlusS: 0, pitchDeg: 90 }];
    const all = { ...BARE, headingDeg: 98, massFlowPerS: 0.004, burnS: 100, pitch };
    const made = siteAscentOf(withAscent(all))!;
    expect(made.assumed).toHaveLength(1);
    expect(made.path.toS).toBeCloseTo(100, 9);
  });

  it("without a heading goes straight up, and says so", () => {
    const made = siteAscentOf(withAscent({ ...BARE, headingDeg: null }))!;
    expect(made.assumed).toContain("heading not given: straight up");
    expect(flightAt(made.path, PAD, 60).flightPathDeg).toBeGreaterThan(89.8);
  });

  it("cuts a burn that would leave nothing of the vehicle", () => {
    const made = siteAscentOf(withAscent({ ...BARE, headingDeg: 98, massFlowPerS: 0.01, burnS: 200 }))!;
    expect(made.path.toS).toBeCloseTo(97, 9);
    expect(made.assumed.join()).toContain("burn cut short at 97 s");
  });

  it("tells of a thrust that does not carry, at first or later", () => {
    // 1.35 sin 40 = 0.8678 of the weight: the rest has to be burned first, 0.1322 / 0.0045 = 29.4 s.
    const flat = { ...BARE, headingDeg: 98, pitch: [{ tPlusS: 0, pitchDeg: 40 }] };
    expect(siteAscentOf(withAscent(flat))!.assumed.join()).toMatch(
      /does not carry the vehicle before T\+29 s/,
    );
    const falling = {
      ...BARE,
      headingDeg: 98,
      pitch: [90, 90, 0].map((pitchDeg, i) => ({ tPlusS: i * 5, pitchDeg })),
    };
    expect(siteAscentOf(withAscent(falling))!.assumed.join()).toMatch(
      /back to the ground: the path ends at T\+\d\d s/,
    );
  });

  it("of a table is the table's", () => {
    const points = [row(0, 0, 0, 0), row(10, 0, 0, 200), row(20, 50, 0, 800)];
    const table = { kind: "enu", points } as const;
    const made = siteAscentOf(withAscent({ kind: "table", fileName: "a.csv", headingDeg: null, table }))!;
    expect([made.source, made.assumed]).toEqual(["from a.csv", []]);
    const out: Triple = [0, 0, 0];
    made.path.positionInto(10, out);
    expect(out).toEqual([0, 0, 200]);
  });

  it("refuses a table of downrange without a heading, and a thrust that does not lift", () => {
    const points = [0, 10].map((tPlusS) => ({ tPlusS, downrangeM: tPlusS, altitudeM: tPlusS }));
    const table = { kind: "downrange", points } as const;
    const flat = withAscent({ kind: "table", fileName: "a.csv", headingDeg: null, table });
    expect(() => siteAscentOf(flat)).toThrow("E_MISSING");
    expect(() => siteAscentOf(withAscent({ ...BARE, thrustToWeight: 1, headingDeg: 0 }))).toThrow("E_RANGE");
  });
});

describe("a flight by steps", () => {
  const leaning = { latitudeDeg: 40, headingDeg: 75, thrustToWeight: 1.5, massFlowPerS: 0.005, burnS: 160 };
  const endOf = (stepS: number): AscentPoint =>
    poweredAscent({ ...leaning, pitch: [{ tPlusS: 0, pitchDeg: 65 }] }, { stepS }).at(-1)!;
  const apartM = (a: AscentPoint, b: AscentPoint): number =>
    Math.hypot(a.eastM - b.eastM, a.northM - b.northM, a.upM - b.upM);

  it("is of fourth order: half the step, a sixteenth of the error", () => {
    const truth = endOf(0.25);
    const errors = [20, 10, 5].map((stepS) => apartM(endOf(stepS), truth));
    expect(errors[0]! / errors[1]!).toBeGreaterThan(11);
    expect(errors[1]! / errors[2]!).toBeGreaterThan(13.5);
    expect(errors[1]! / errors[2]!).toBeLessThan(17);
  });

  it("stands until its thrust carries it, and stops where it comes back to the ground", () => {
    const late = poweredAscent({ ...leaning, pitch: [{ tPlusS: 0, pitchDeg: 30 }] });
    // 1.5 sin 30 = 0.75 of the weight: a quarter of the mass has to be burned first, 50 s.
    expect(late[1]!.tPlusS).toBeCloseTo(50, 0);
    expect(late[1]).toMatchObject({ eastM: 0, northM: 0, upM: 0 });
    const pitch = [90, 90, 0].map((pitchDeg, i) => ({ tPlusS: i * 5, pitchDeg }));
    const end = poweredAscent({ ...leaning, pitch }).at(-1)!;
    expect(end.tPlusS).toBeLessThan(60);
    expect(Math.abs(flightAt(makeAscentPath([row(0, 0, 0, 0), end]), PAD, 1000).altitudeM)).toBeLessThan(2);
    const never = poweredAscent({ ...leaning, burnS: 20, pitch: [{ tPlusS: 0, pitchDeg: 5 }] });
    expect(never).toEqual([row(0, 0, 0, 0), row(20, 0, 0, 0)]);
  });
});
