/** The sun along a sweep against a grid of T-0 and T+ made from the library's public functions. */

import { describe, expect, it } from "vitest";
import { sweepMapOf } from "../../src/plan/sweep/sweepMap.ts";
import type { ClosestApproach, SweepCrossing, SweepSun } from "../../src/plan/sweep/sweepTypes.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site } from "../../src/site/types.ts";
import { type SunPosition, sunAt } from "../../src/sky/sun.ts";
import { locateInFrame, type View } from "../../src/view/frame.ts";
import {
  type Bench,
  north,
  preparedOf,
  south,
  sunset,
  sweepOf,
  sweepSite,
  tracking,
  viewAt,
} from "./sweepSites.ts";

const T0_STEP_MS = 5000;
const T_PLUS_STEP_S = 0.5;
const ROUGH = { everyS: 100, stepS: 3600 };
const sunOf = (site: Site, window: string): SweepSun => sweepOf(site, window, ROUGH).sun;

interface Met {
  /** Degrees by which the disc misses frame and zone of flare. */
  readonly inFrameDeg: number;
  readonly flareDeg: number;
  readonly fromEdgeDeg: number;
  readonly offAxisDeg: number;
  /** Any of the disc. */
  readonly isUp: boolean;
}

function metAt(view: View, sun: SunPosition, cutoffDeg: number): Met {
  const at = { azimuthDeg: sun.azimuthDeg, elevationDeg: sun.apparentElevationDeg };
  const { fromEdgeDeg, offAxisDeg } = locateInFrame(view, at, sun.semidiameterDeg);
  const radius = sun.semidiameterDeg;
  const down = -(sun.apparentElevationDeg + radius);
  const inFrameDeg = Math.max(fromEdgeDeg - radius, down);
  const near = Math.max(fromEdgeDeg - radius - 5, offAxisDeg - radius - cutoffDeg, down);
  return { inFrameDeg, flareDeg: Math.min(inFrameDeg, near), fromEdgeDeg, offAxisDeg, isUp: down < 0 };
}

interface GridT0 {
  readonly t0Ms: number;
  readonly met: readonly (Met & { readonly tPlusS: number })[];
}

function gridOf(bench: Bench): GridT0[] {
  const { opens, closes } = chooseWindow(bench.site, bench.window);
  const steps = Array.from({ length: bench.toS / T_PLUS_STEP_S + 1 }, (_, i) => i * T_PLUS_STEP_S);
  const views = steps.map((tPlusS) => viewAt(bench, tPlusS));
  const suns = new Map<number, SunPosition>();
  const sunOf = (ms: number): SunPosition => {
    const sun = suns.get(ms) ?? sunAt(bench.camera, new Date(ms));
    suns.set(ms, sun);
    return sun;
  };
  const count = (closes.getTime() - opens.getTime()) / T0_STEP_MS + 1;
  return Array.from({ length: count }, (_, k) => opens.getTime() + k * T0_STEP_MS).map((t0Ms) => ({
    t0Ms,
    met: steps.map((tPlusS, i) => ({
      tPlusS,
      ...metAt(views[i]!, sunOf(t0Ms + tPlusS * 1000), bench.cutoffDeg),
    })),
  }));
}

type Zone = "inFrameDeg" | "flareDeg";
/** With T+ a fiftieth as far apart about the nearest of the grid: the disc may graze the frame between two of them. */
function isMet(bench: Bench, { met, t0Ms }: GridT0, zone: Zone): boolean {
  const nearest = met.reduce((a, b) => (b[zone] < a[zone] ? b : a));
  if (nearest[zone] < 0 || nearest[zone] > 0.4) return nearest[zone] < 0;
  return Array.from({ length: 101 }, (_, i) => nearest.tPlusS + ((i - 50) * T_PLUS_STEP_S) / 50)
    .filter((tPlusS) => tPlusS >= 0 && tPlusS <= bench.toS)
    .some((tPlusS) => {
      const sun = sunAt(bench.camera, new Date(t0Ms + tPlusS * 1000));
      return metAt(viewAt(bench, tPlusS), sun, bench.cutoffDeg)[zone] < 0;
    });
}

/** Crossings begin and end with the T-0s of the grid that have one, to its steps. */
function expectCrossings(
  told: readonly SweepCrossing[],
  grid: readonly GridT0[],
  isIn: (t0: GridT0) => boolean,
  zone: Zone,
): void {
  const inside = (t0Ms: number, slackMs: number): boolean =>
    told.some(({ from, to }) => t0Ms >= from.getTime() - slackMs && t0Ms <= to.getTime() + slackMs);
  for (const t0 of grid) {
    if (isIn(t0)) expect(inside(t0.t0Ms, 100), `${new Date(t0.t0Ms).toISOString()} is told`).toBe(true);
    else expect(inside(t0.t0Ms, -100), `${new Date(t0.t0Ms).toISOString()} is not`).toBe(false);
  }
  for (const { from, to, tPlus } of told) {
    const hits = grid
      .filter(({ t0Ms }) => t0Ms >= from.getTime() && t0Ms <= to.getTime())
      .flatMap(({ met }) => met.filter((one) => one[zone] < 0).map(({ tPlusS }) => tPlusS));
    for (const hit of hits)
      expect(tPlus.some(({ fromS, toS }) => hit > fromS - 0.1 && hit < toS + 0.1)).toBe(true);
    expect(Math.abs(Math.min(...hits) - tPlus[0]!.fromS)).toBeLessThan(T_PLUS_STEP_S + 0.1);
    expect(Math.abs(Math.max(...hits) - tPlus.at(-1)!.toS)).toBeLessThan(T_PLUS_STEP_S + 0.1);
  }
}

/** What is told holds there, and is as close as anything on the grid. */
function expectClosest(
  bench: Bench,
  told: ClosestApproach,
  by: "fromEdgeDeg" | "offAxisDeg",
  leastOnGridDeg: number,
): void {
  const sun = sunAt(bench.camera, new Date(told.at.getTime() + told.tPlusS * 1000));
  const there = metAt(viewAt(bench, told.tPlusS), sun, bench.cutoffDeg);
  // Told to a tenth of a second, in which an axis turns some hundredths of a degree.
  expect(Math.abs(there.fromEdgeDeg - told.fromEdgeDeg)).toBeLessThan(0.1);
  expect(Math.abs(there.offAxisDeg - told.offAxisDeg)).toBeLessThan(0.1);
  expect(told[by]).toBeLessThan(leastOnGridDeg + 0.001);
  expect(told[by]).toBeGreaterThan(leastOnGridDeg - 0.6);
}

/** While any of the disc is up; of a crossing, while it is met. */
const leastOf = (
  grid: readonly GridT0[],
  by: "fromEdgeDeg" | "offAxisDeg",
  counts: (met: Met) => boolean = ({ isUp }) => isUp,
): number => Math.min(...grid.map(({ met }) => Math.min(...met.filter(counts).map((one) => one[by]))));

const isFramed = ({ inFrameDeg }: Met): boolean => inFrameDeg < 0;

describe("the sun along the sweep is that of a grid of 5 s x 0.5 s", () => {
  it.each([
    ["comes into the frame, north", north("2027-04-18T14:03/14:14"), ["in-frame", 1, 1]],
    ["goes out of the zone of flare, north", north("2027-04-18T15:18/15:28"), ["near-frame", 0, 1]],
    ["with a hood, a rolled camera and the nose, south", south("2027-02-11T13:37/13:47"), ["in-frame", 1, 1]],
    ["sets while it is in the frame", sunset(91, "2027-03-20T18:04/18:16"), ["in-frame", 1, 0]],
    ["sets before it comes as near as it would", sunset(97, "2027-03-20T18:08/18:20"), ["near-frame", 0, 1]],
  ] as const)("%s", (_, bench, [risk, framed, near]) => {
    const grid = gridOf(bench);
    const sun = sunOf(bench.site, bench.window);
    expect([sun.risk, sun.inFrame.length, sun.nearFrame.length]).toEqual([risk, framed, near]);
    const inFrame = new Set(grid.filter((t0) => isMet(bench, t0, "inFrameDeg")));
    const flared = new Set(grid.filter((t0) => isMet(bench, t0, "flareDeg")));
    expectCrossings(sun.inFrame, grid, (t0) => inFrame.has(t0), "inFrameDeg");
    expectCrossings(sun.nearFrame, grid, (t0) => flared.has(t0) && !inFrame.has(t0), "flareDeg");
    expectClosest(bench, sun.closest!, "fromEdgeDeg", leastOf(grid, "fromEdgeDeg"));
    if (risk === "in-frame")
      expectClosest(bench, sun.inFrame[0]!.closest, "offAxisDeg", leastOf(grid, "offAxisDeg", isFramed));
  });

  it("is down throughout at night, and nothing is close then", () => {
    const { site } = north("");
    expect(sunOf(site, "2027-04-18T22:00/23:00")).toEqual({
      risk: "down",
      inFrame: [],
      nearFrame: [],
      hidden: [],
      closest: null,
    });
  });
});

describe("a building before the sun", () => {
  const camera = tracking("T", 84, 1500, "lens: { focal: 2000 }, keep: [sky]");
  // Seen from 1.6 km it stands 14 degrees wide and 10 high.
  const building =
    "structures: [{ name: hall, at: { bearing: 264, range: 100 }, width: 400, depth: 20, turn: 354, height: 290 }]";
  // The sun goes down from 4 to 2 degrees in the west, three to four degrees to the right of the pad.
  const window = "2027-03-20T17:50/18:00";

  it("hides it while the tracker looks by it, at T+0 and a little after: neither in nor near the frame", () => {
    const open = sunOf(sweepSite({ cameras: [camera] }), window);
    expect([open.risk, open.inFrame, open.nearFrame.length]).toEqual(["near-frame", [], 1]);
    const [{ from, to, tPlus }] = open.nearFrame as [SweepCrossing];
    expect([tPlus.length, tPlus[0]!.fromS, tPlus[0]!.toS < 30]).toEqual([1, 0, true]);
    const behind = sunOf(sweepSite({ cameras: [camera], more: building }), window);
    expect(behind).toMatchObject({ risk: "hidden", inFrame: [], nearFrame: [], closest: open.closest });
    expect(behind.hidden).toEqual([{ from, to, by: ["hall"] }]);
  });
});

describe("the map", () => {
  const { site, window } = north("2027-04-18T13:50/14:30");
  const [columns, rows, rowS] = [5, 7, 15];
  const { opens, closes } = chooseWindow(site, window);
  const map = sweepMapOf(site, chooseWindow(site, window), "T", "clear", columns, rowS);
  const { tracker } = preparedOf(site, window, { stepS: 3600 }).sweep;
  const sun = sunOf(site, window);
  const overlaps = (
    spans: readonly { fromMs: number; toMs: number }[],
    fromS: number,
    toS: number,
  ): boolean => spans.some(({ fromMs, toMs }) => fromMs < 1000 * toS && toMs > 1000 * fromS);

  it("has even stretches of T-0 and T+ over all of window and sweep, the last T+ shorter", () => {
    expect(map.edges.map((edge) => (edge.getTime() - opens.getTime()) / 60_000)).toEqual([
      0, 8, 16, 24, 32, 40,
    ]);
    expect(map.rows.map(({ fromS, toS, cells }) => [fromS, toS, cells.length])).toEqual(
      Array.from({ length: rows }, (_, i) => [rowS * i, Math.min(100, rowS * (i + 1)), columns]),
    );
    expect([map.id, map.window]).toEqual(["T", { opens, closes }]);
  });

  it("marks the cells that the sun meets at any of their T-0s, and no others", () => {
    const words = new Set<string | null>();
    for (let column = 0; column < columns; column++) {
      const [fromMs, toMs] = [map.edges[column]!.getTime(), map.edges[column + 1]!.getTime()];
      const [framed, flared] = [tracker.inFrame, tracker.flare].map((search) =>
        search.tPlusBetween(fromMs, toMs),
      );
      const t0s = Array.from({ length: 17 }, (_, i) => fromMs + ((toMs - fromMs) * i) / 16);
      const framedAt = t0s.map((t0Ms) => tracker.inFrame.tPlusAt(t0Ms));
      for (const { fromS, toS, cells } of map.rows) {
        const word = cells[column]!.sun;
        words.add(word);
        const near = overlaps(flared!, fromS, toS) ? "near-frame" : null;
        expect(word).toBe(overlaps(framed!, fromS, toS) ? "in-frame" : near);
        if (framedAt.some((spans) => overlaps(spans, fromS, toS))) expect(word).toBe("in-frame");
      }
      // As the sweep tells it by T-0.
      const isTold = sun.inFrame.some(({ from, to }) => from.getTime() < toMs && to.getTime() > fromMs);
      expect(map.rows.some(({ cells }) => cells[column]!.sun === "in-frame")).toBe(isTold);
    }
    expect([...words].sort()).toEqual(["in-frame", "near-frame", null]);
  });

  it("has the light of the timeline in the middle of each cell", () => {
    // Above, the sun sets later.
    const evening = "2027-04-18T18:20/19:00";
    const late = sweepMapOf(site, chooseWindow(site, evening), "T", "clear", columns, rowS);
    expect(late.rows[0]!.cells.map(({ light }) => light)).toEqual(["back", "back", "back", "dusk", "dusk"]);
    expect(late.rows.at(-1)!.cells.map(({ light }) => light)).toEqual(Array(5).fill("back"));
    late.edges.slice(0, -1).forEach((edge, column) => {
      const at = new Date(edge.getTime() + 4 * 60_000).toISOString();
      const { timeline } = sweepOf(site, evening, { at, everyS: 2.5, stepS: 3600 });
      for (const { fromS, toS, cells } of late.rows)
        expect(cells[column]!.light).toBe(
          timeline.rows.find(({ tPlusS }) => tPlusS === (fromS + toS) / 2)!.light,
        );
    });
  });
});
