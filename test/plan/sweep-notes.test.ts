/** The rows of a sweep's timeline, how fast the mount turns, and the notes about it: by hand and by differences of `lookAt`. */

import { describe, expect, it } from "vitest";
import type { SweepRow, TrackerSweep } from "../../src/plan/sweep/sweepTypes.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { locateInFrame } from "../../src/view/frame.ts";
import {
  type Bench,
  CLIMB,
  LEVEL_EAST,
  north,
  plannedOf,
  rowAt,
  south,
  sweepOf,
  sweepSite,
  tableOf,
  tableOfPoints,
  tracking,
  viewAt,
} from "./sweepSites.ts";

const DAY = "2027-04-18T14:00/15:00";
const wrap = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180;

/** The turn of the axis over a fiftieth of a second, by the library's public functions, degrees/s. */
function ratesAt(bench: Bench, tPlusS: number): { azimuth: number; elevation: number } {
  const [from, to] = [Math.max(0, tPlusS - 0.01), Math.min(bench.toS, tPlusS + 0.01)];
  const [a, b] = [viewAt(bench, from), viewAt(bench, to)];
  return {
    azimuth: wrap(b.azimuthDeg - a.azimuthDeg) / (to - from),
    elevation: (b.elevationDeg - a.elevationDeg) / (to - from),
  };
}

const everyTenth = (toS: number): number[] => Array.from({ length: toS * 10 + 1 }, (_, i) => i / 10);
const notesOf = ({ notes }: Pick<TrackerSweep, "notes">): string => notes.join("\n");

describe("the mount's rates", () => {
  it.each([
    ["foot, north", north(DAY)],
    ["nose, south", south(DAY)],
  ])("are those of the line of sight (%s)", (_, bench) => {
    const { timeline, slew, notes } = sweepOf(bench.site, DAY, { stepS: 3600, everyS: 3 });
    for (const row of timeline.rows) {
      const { azimuth, elevation } = ratesAt(bench, row.tPlusS);
      expect(Math.abs(row.azimuthRateDegS - azimuth), `T+${row.tPlusS}`).toBeLessThan(0.005);
      expect(Math.abs(row.elevationRateDegS - elevation), `T+${row.tPlusS}`).toBeLessThan(0.005);
      const { azimuthDeg, elevationDeg } = viewAt(bench, row.tPlusS);
      expect(Math.abs(wrap(row.azimuthDeg - azimuthDeg))).toBeLessThan(0.002);
      expect(row.elevationDeg).toBeCloseTo(elevationDeg, 2);
    }
    for (const [turn, most, at] of [
      ["azimuth", slew.mostAzimuthDegS, slew.mostAzimuthAtS],
      ["elevation", slew.mostElevationDegS, slew.mostElevationAtS],
    ] as const) {
      const fastest = Math.max(...everyTenth(bench.toS).map((s) => Math.abs(ratesAt(bench, s)[turn])));
      expect(most / fastest).toBeCloseTo(1, 2);
      expect(Math.abs(ratesAt(bench, at)[turn]) / fastest).toBeCloseTo(1, 1);
    }
    expect([slew.beyond, notes.filter((note) => note.includes("mount"))]).toEqual([[], []]);
  });

  it("beyond what the mount can do are told with their stretches and a note", () => {
    const bench = north(DAY);
    const [azimuth, elevation] = [0.8, 1.5];
    const track = `part: base, slew: { azimuth: ${azimuth}, elevation: ${elevation} }`;
    const site = sweepSite({
      cameras: [tracking("T", 60, 2500, "lens: { focal: 300 }, keep: [sky]", track)],
    });
    const sweep = sweepOf(site, DAY, { stepS: 3600 });
    const planned = plannedOf(site, DAY, { stepS: 3600 });
    const { beyond } = sweep.slew;
    expect(beyond.map(({ turn }) => turn).sort()).toEqual(["azimuth", "elevation"]);
    for (const { turn, fromS, toS, neededDegS, limitDegS } of beyond) {
      const limit = { azimuth, elevation }[turn];
      const over = everyTenth(100).filter((s) => Math.abs(ratesAt(bench, s)[turn]) > limit);
      expect(Math.abs(over[0]! - fromS)).toBeLessThan(0.2);
      expect(Math.abs(over.at(-1)! - toS)).toBeLessThan(0.2);
      expect(limitDegS).toBe(limit);
      expect(neededDegS / Math.max(...over.map((s) => Math.abs(ratesAt(bench, s)[turn])))).toBeCloseTo(1, 2);
      // The sweep's own sheet says it with the rates.
      expect(notesOf(planned)).toMatch(
        new RegExp(`mount cannot follow T\\+${Math.floor(fromS)}.*in ${turn}.* ${limit}`),
      );
    }
  });

  it("near the zenith are by hand what a level flight over a camera asks for", () => {
    const site = sweepSite({
      way: tableOfPoints(LEVEL_EAST),
      cameras: [
        tracking("T", 180, 500, "lens: { focal: 300 }, keep: [sky]", "part: middle, slew: { azimuth: 20 }"),
        tracking("F", 180, 9000, "lens: { focal: 300 }, keep: [sky]"),
      ],
    });
    const sweep = sweepOf(site, DAY, { stepS: 3600, everyS: 10 });
    // 1000 m/s past it 500 m to the north, and 2.4 more where the plumb lines are 30 km up: 1.99 radians/s; 20 degrees/s until 1000 x 500 / (500^2 + x^2) = 0.349: x = 1087 m, 1.09 s.
    expect(sweep.slew.mostAzimuthDegS).toBeCloseTo(((1000 / 502.4) * 180) / Math.PI, 1);
    expect(sweep.slew.mostAzimuthAtS).toBeCloseTo(120, 1);
    const pass = sweep.slew.beyond.find(({ fromS, toS }) => fromS < 120 && toS > 120)!;
    expect([pass.fromS, pass.toS].map((s) => Math.abs(s - 120))).toEqual([
      expect.closeTo(1.1, 1),
      expect.closeTo(1.1, 1),
    ]);
    // atan(500 / 30000), the height of foot and camera aside.
    expect(notesOf(sweep)).toMatch(/passes (0\.9|1\.0) degrees from the zenith at T\+120\.0 s/);
    // From 9 km off it stands 73 degrees up.
    expect(notesOf(sweepOf(site, DAY, { stepS: 3600 }, "F"))).not.toMatch(/zenith|mount/);
  });
});

describe("the rows of the timeline", () => {
  const EXACT_STOP = new Map([2.8, 4, 5.6, 8, 11, 16, 22].map((mark, i) => [mark, 2 ** ((i + 3) / 2)]));
  /** 1/1000 s by angle and rate. */
  const MILLISECOND = "rate: 480, shutter: { angle: 172.8 }";

  it("begin at T+0, end with the sweep, and have the sun's closest approach among them", () => {
    const bench = north(DAY);
    const { timeline, ascent } = sweepOf(bench.site, DAY, { stepS: 3600, everyS: 7 });
    const at = timeline.rows.map(({ tPlusS }) => tPlusS);
    const even = [...Array.from({ length: 15 }, (_, i) => 7 * i), 100];
    expect([ascent.fromS, ascent.toS]).toEqual([0, CLIMB.toS]);
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(at.filter((s) => even.includes(s))).toEqual(even);
    const [closest] = at.filter((s) => !even.includes(s));
    expect(at.length).toBe(even.length + 1);
    const edges = everyTenth(100).map((tPlusS) => ({ tPlusS, edge: rowsEdge(bench, timeline.at, tPlusS) }));
    const nearest = edges.reduce((a, b) => (b.edge < a.edge ? b : a));
    expect(Math.abs(closest! - nearest.tPlusS)).toBeLessThan(0.15);
    expect(sweepOf(bench.site, DAY, { stepS: 3600 }).timeline.rows.map(({ tPlusS }) => tPlusS)).toEqual(
      expect.arrayContaining([0, 5, 10, 95, 100]),
    );
  });

  /** From the sun's centre to the edge of a frame so narrow that it is the angle to the axis. */
  const rowsEdge = (bench: Bench, at: Date, tPlusS: number): number => {
    const sun = sunAt(bench.camera, new Date(at.getTime() + 1000 * tPlusS));
    return locateInFrame(viewAt(bench, tPlusS), {
      azimuthDeg: sun.azimuthDeg,
      elevationDeg: sun.apparentElevationDeg,
    }).fromEdgeDeg;
  };

  it("tell the sun as it stands: in the frame, near it, clear", () => {
    const bench = north(DAY);
    const { timeline } = sweepOf(bench.site, DAY, { stepS: 3600, everyS: 1 });
    expect(new Set(timeline.rows.map(({ sun }) => sun))).toEqual(
      new Set(["clear", "near-frame", "in-frame"]),
    );
    for (const { tPlusS, sun, fromEdgeDeg } of timeline.rows) {
      const edge = rowsEdge(bench, timeline.at, tPlusS);
      expect(fromEdgeDeg, `T+${tPlusS}`).toBeCloseTo(edge, 2);
      // Radius of the disc 0.265 degrees on that day, zone of flare 5.
      const near = edge < 5.265 ? "near-frame" : "clear";
      expect(sun, `T+${tPlusS}`).toBe(edge < 0.265 ? "in-frame" : near);
    }
  });

  it("tell when the last of the disc is down", () => {
    // Apparent -0.262 degrees at 18:49:00, 0.0023 less each second; radius 0.265: it goes at T+41.3 s.
    const evening = { at: "18:48:20", stepS: 3600, everyS: 1 };
    const { rows } = sweepOf(north(DAY).site, "2027-04-18T18:40/18:50", evening).timeline;
    for (const { tPlusS, sun } of rows)
      expect([tPlusS, sun]).toEqual([tPlusS, tPlusS < 41.4 ? "clear" : "down"]);
  });

  it("have the image's length: focal length x length across the line of sight / range", () => {
    const cameras = [tracking("T", 60, 2500, "lens: { focal: 1000 }, keep: [sky]")];
    const { rows } = sweepOf(sweepSite({ cameras }), DAY, { stepS: 3600 }).timeline;
    for (const { vehicleMm, vehicleShare, rangeM, endOnDeg } of rows) {
      const acrossM = 40 * Math.sin((endOnDeg * Math.PI) / 180);
      expect(vehicleMm / ((1000 * acrossM) / rangeM)).toBeCloseTo(1, 2);
      expect(vehicleShare).toBeCloseTo(vehicleMm / 24, 12);
    }
    // On the pad, across: 1000 x 40 / 2500, the camera 23 m lower.
    expect(rows[0]!.vehicleMm).toBeCloseTo(16, 1);
  });

  it("have the smear of what is not followed (FACTS 11: 100 m/s at 5 km, 400 mm, 1/1000 s: 8.0 um; and by hand)", () => {
    const steady = tableOf([0, 1, 2, 3, 4].map((s) => [s, 0, 0, 100 * s]));
    const climb = sweepSite({
      way: steady,
      cameras: [tracking("T", 0, 5000, `lens: { focal: 400 }, ${MILLISECOND}`)],
    });
    const slow = sweepOf(climb, DAY, { stepS: 3600, everyS: 1 });
    for (const tPlusS of [0, 1]) expect(rowAt(slow, tPlusS).blurMm).toBeCloseTo(0.008, 5);
    expect(rowAt(slow, 3).speedMS).toBeCloseTo(100, 6);
    // Level at 30 km, 1000 m/s across, 50 km off: 2000 x 1000 / 1000 / 50000 mm.
    const level = sweepSite({
      way: tableOfPoints(LEVEL_EAST),
      cameras: [tracking("T", 180, 40_000, `lens: { focal: 2000 }, ${MILLISECOND}`)],
    });
    const fast = sweepOf(level, DAY, { stepS: 3600, everyS: 10 });
    expect(rowAt(fast, 120).blurMm).toBeCloseTo(0.04, 4);
    // Everywhere: focal length x time x the turn of the line of sight.
    for (const { blurMm, elevationDeg, azimuthRateDegS, elevationRateDegS } of fast.timeline.rows) {
      const turnDegS = Math.hypot(
        azimuthRateDegS * Math.cos((elevationDeg * Math.PI) / 180),
        elevationRateDegS,
      );
      expect(blurMm! / (2000 * 0.001 * turnDegS * (Math.PI / 180))).toBeCloseTo(1, 2);
    }
  });

  it("have the depth of field at the set stop and the row's range (FACTS 11)", () => {
    const cameras = [
      tracking("T", 0, 2500, "lens: { focal: 2000 }"),
      tracking("W", 0, 2500, "lens: { focal: 200 }"),
    ];
    const site = sweepSite({ cameras });
    const check = (row: SweepRow, focalMm: number, stop: number): void => {
      const [f, s] = [focalMm / 1000, row.rangeM];
      const hyper = (focalMm * focalMm) / (EXACT_STOP.get(stop)! * 0.05) / 1000 + f;
      expect(row.sharpNearM! / ((s * (hyper - f)) / (hyper + s - 2 * f))).toBeCloseTo(1, 9);
      if (s >= hyper) expect(row.sharpFarM).toBeNull();
      else expect(row.sharpFarM! / ((s * (hyper - f)) / (hyper - s))).toBeCloseTo(1, 9);
    };
    const [long, wide] = ["T", "W"].map((id) => sweepOf(site, DAY, { stepS: 3600, everyS: 20 }, id));
    for (const row of long!.timeline.rows) check(row, 2000, long!.setting!.stop);
    for (const row of wide!.timeline.rows) check(row, 200, wide!.setting!.stop);
    expect([
      rowAt(long!, 0).sharpFarM === null,
      rowAt(long!, 100).sharpFarM,
      rowAt(wide!, 0).sharpFarM,
    ]).toEqual([false, null, null]);
  });

  it("have no smear and no depth of field without a setting", () => {
    const site = sweepSite({ cameras: [tracking("T", 0, 2500)], defaults: "gate: full-frame" });
    const { timeline, setting } = sweepOf(site, DAY, { stepS: 3600 });
    expect([setting, timeline.rows[0]]).toMatchObject([
      null,
      { blurMm: null, sharpNearM: null, sharpFarM: null },
    ]);
    expect(timeline.rows.every(({ bodyMeanCdM2 }) => bodyMeanCdM2 > 0)).toBe(true);
  });
});
