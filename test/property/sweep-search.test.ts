/** The sun along a sweep, for one T-0 and over windows of them, against a grid of T-0 and T+ tried point by point. */

import { expect, test } from "vitest";
import type { Interval } from "../../src/base/crossings.ts";
import { standardAir } from "../../src/base/standardAir.ts";
import { makeSunPath } from "../../src/sky/sunPath.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { makeAscentPath } from "../../src/view/ascentPath.ts";
import { makeSweepFrames } from "../../src/view/sweepFrames.ts";
import { type SweepMeasure, type SweepSearch, sweepSearch } from "../../src/view/sweepSearch.ts";
import { offAxisDeg, sweepSun, sweptInFrame } from "../../src/view/sweepSun.ts";
import { makeRandom } from "../support/random.ts";
import { type MetTracker, metTracker, rowsOf, type Wanted } from "../support/randomTrackers.ts";
import { type TriedTracker, triedInGate, triedOffAxis, triedSun } from "../support/sweepBruteForce.ts";
import {
  type EdgeTally,
  edgeTally,
  expectSameSpans,
  narrowed,
  spansBelow,
  type TriedSearch,
  triedSearch,
  triedSweep,
} from "../support/sweepGrid.ts";

const inMs = ({ fromS, toS }: { fromS: number; toS: number }): Interval => ({
  fromMs: fromS * 1000,
  toMs: toS * 1000,
});

interface Worst {
  offAxisDeg: number;
  tPlusS: number;
  sharp: number;
}

function checkOneT0({ tracker, t0Ms }: MetTracker, worst: Worst, tally: EdgeTally): number {
  const found = sweepSun({ ...tracker, ascent: rowsOf(tracker) }, new Date(t0Ms), tracker.air);
  const sweep = triedSweep(tracker);
  const { camera, fromS, toS, air } = tracker;
  const sunOf = triedSun(camera, t0Ms + fromS * 1000, t0Ms + toS * 1000, air);
  const offAxis = triedSearch(sweep, sunOf, triedOffAxis);
  const lowest = offAxis.lowestAt(t0Ms);
  const atMs = found.closest.tPlusS * 1000;
  const apart = Math.abs(found.closest.offAxisDeg - lowest.value);
  expect(apart, tracker.name).toBeLessThan(0.01);
  worst.offAxisDeg = Math.max(worst.offAxisDeg, apart);
  // Its place is its own: no other T+ is asked for than one that is as near.
  expect(offAxis.valueAt(t0Ms, atMs) - lowest.value, tracker.name).toBeLessThan(0.01);
  const risen = [-100, 100].map((by) => offAxis.valueAt(t0Ms, lowest.atMs + by) - lowest.value);
  if (Math.min(...risen) > 0.01) {
    worst.sharp++;
    worst.tPlusS = Math.max(worst.tPlusS, Math.abs(atMs - lowest.atMs) / 1000);
  }
  const inGate = triedSearch(sweep, sunOf, triedInGate(tracker));
  const tried = inGate.tPlusAt(t0Ms);
  expectSameSpans(found.inFrame.map(inMs), tried, (ms) => inGate.valueAt(t0Ms, ms), tally, tracker.name);
  return tried.length;
}

const WANTED: readonly Wanted[] = [
  {},
  { climb: "behind", missing: 0.8 },
  { sun: [-0.9, 0.6], missing: 0.6 },
  { climb: "overhead", sun: [60, 89] },
];

const SWEEPS = 90;

test("one T-0: closest approach and stretches in the frame, any climb, lens, pad, date and air", () => {
  const random = makeRandom(20_270_418);
  const worst: Worst = { offAxisDeg: 0, tPlusS: 0, sharp: 0 };
  const tally = edgeTally();
  const spans = [0, 0, 0, 0];
  for (let k = 0; k < SWEEPS; k++) spans[checkOneT0(metTracker(random, WANTED[k % 4]!), worst, tally)]!++;
  expect(worst.tPlusS).toBeLessThan(0.1);
  process.stdout.write(
    `  sweepSun: ${SWEEPS} sweeps, off axis ${worst.offAxisDeg.toExponential(1)} deg, T+ ${worst.tPlusS.toExponential(1)} s in ${worst.sharp} sharp ones; ${tally.edges} ends ${tally.worstMs.toFixed(1)} ms, ${tally.between} spans between the grid's points, ${tally.grazes} grazes; spans 0/1/2/3: ${spans}\n`,
  );
  expect(worst.sharp).toBeGreaterThan(30);
  expect(spans[0]! > 20 && spans[1]! > 40 && spans[2]! > 1).toBe(true);
  expect(tally.grazes).toBeLessThan(3);
});

/** In so long the sun goes 0.0002 degree. */
const T0_PRECISION_MS = 50;
const MS_PER_HOUR = 3_600_000;
/** With a sun that comes back among the first. */
const LONG_SEED = 10;

interface Over {
  readonly tracker: TriedTracker;
  readonly fromMs: number;
  readonly toMs: number;
  readonly found: (measure: SweepMeasure) => SweepSearch;
  readonly tried: (measure: typeof triedOffAxis) => TriedSearch;
  readonly inFrame: SweepSearch;
  readonly inGate: TriedSearch;
  /** T-0s and T+ of the grid. */
  readonly t0sMs: readonly number[];
  readonly tPlusMs: readonly number[];
}

/** A window of some seconds to half an hour about a T-0 that has the sun near the axis. */
function windowOver(
  { tracker, t0Ms }: MetTracker,
  beforeMs: number,
  afterMs: number,
  { most = 60, sunStepMs = 2000 } = {},
): Over {
  const [fromMs, toMs] = [Math.round(t0Ms - beforeMs), Math.round(t0Ms + afterMs)];
  const { pad, camera, fromS, toS, air } = tracker;
  const target = { pad, path: makeAscentPath(rowsOf(tracker)), footUpM: 0, alongM: 0 };
  const frames = makeSweepFrames(tracker, camera, target, fromS, toS);
  const span = [fromMs + fromS * 1000, toMs + toS * 1000] as const;
  const track = makeSunTrack(pad, new Date(span[0]), new Date(span[1]));
  const sunPath = makeSunPath(track, camera, air ?? standardAir(camera.heightM));
  const sweep = triedSweep(tracker, 500);
  const sunOf = triedSun(camera, span[0], span[1], air, sunStepMs);
  const steps = Math.min(most, Math.max(10, Math.ceil((toMs - fromMs) / 1000)));
  const found = (measure: SweepMeasure) => sweepSearch(frames, sunPath, measure);
  const tried = (measure: typeof triedOffAxis) => triedSearch(sweep, sunOf, measure);
  return {
    ...{ tracker, fromMs, toMs, found, tried },
    inFrame: found(sweptInFrame(frames.frame)),
    inGate: tried(triedInGate(tracker)),
    t0sMs: Array.from({ length: steps + 1 }, (_, i) => fromMs + ((toMs - fromMs) * i) / steps),
    tPlusMs: sweep.atMs,
  };
}

/** T-0s with the sun in the frame somewhere along their sweep. */
function checkT0s({ tracker, fromMs, toMs, inFrame, inGate, t0sMs }: Over, tally: EdgeTally): Interval[] {
  const f = (ms: number): number => inGate.lowestAt(ms).value;
  const tried = spansBelow(f, t0sMs, t0sMs.map(f));
  const found = inFrame.t0sBetween(fromMs, toMs);
  expectSameSpans(found, tried, f, tally, `${tracker.name}, T-0`);
  return found;
}

/** T+ at which some T-0 has it there. */
function checkTPlus(
  { tracker, fromMs, toMs, inFrame, inGate, t0sMs, tPlusMs }: Over,
  tally: EdgeTally,
): number {
  const f = (ms: number): number => inGate.lowestOver(t0sMs, ms).value;
  const tried = spansBelow(f, tPlusMs, tPlusMs.map(f));
  expectSameSpans(inFrame.tPlusBetween(fromMs, toMs), tried, f, tally, `${tracker.name}, T+`);
  return tried.length;
}

/** The nearest of all, and no T-0 of the grid has a nearer one. */
function checkLowest({ tracker, fromMs, toMs, found, tried, t0sMs }: Over): number {
  const offAxis = tried(triedOffAxis);
  const f = (ms: number): number => offAxis.lowestAt(ms).value;
  const expected = narrowed(f, t0sMs, t0sMs.map(f), T0_PRECISION_MS).value;
  const { value, t0Ms, atMs } = found(offAxisDeg).lowestBetween(fromMs, toMs);
  expect(Math.abs(value - expected), tracker.name).toBeLessThan(0.002);
  expect(Math.abs(offAxis.valueAt(t0Ms, atMs) - value), tracker.name).toBeLessThan(0.002);
  return Math.abs(value - expected);
}

const WINDOWS: readonly Wanted[] = [
  { missing: 1 },
  { missing: 1, rollDeg: 30, offsetShare: 0.4 },
  { climb: "behind", missing: 0.7 },
  { sun: [-0.9, 0.5], missing: 0.6 },
  { missing: 1, rollDeg: 90, offsetShare: -0.5 },
  { sun: [-0.9, 0.5], missing: 0.6, rollDeg: -120, offsetShare: 0.3 },
];

test("windows of T-0s: which, at which T+, and how near at the nearest", () => {
  const random = makeRandom(7);
  const [t0Tally, tPlusTally] = [edgeTally(), edgeTally()];
  const [t0Spans, tPlusSpans] = [
    [0, 0, 0, 0],
    [0, 0, 0, 0],
  ];
  let worstDeg = 0;
  for (let k = 0; k < 18; k++) {
    const aboutMs = 10_000 * 90 ** random.next();
    const met = metTracker(random, WINDOWS[k % WINDOWS.length]!);
    const over = windowOver(met, 2 * random.next() * aboutMs, aboutMs);
    t0Spans[checkT0s(over, t0Tally).length]!++;
    if (k % 2 === 0) tPlusSpans[checkTPlus(over, tPlusTally)]!++;
    if (k % 3 === 0) worstDeg = Math.max(worstDeg, checkLowest(over));
  }
  process.stdout.write(
    `  windows: ${t0Tally.edges} ends of T-0 ${t0Tally.worstMs.toFixed(1)} ms (spans ${t0Spans}), ${tPlusTally.edges} of T+ ${tPlusTally.worstMs.toFixed(1)} ms (spans ${tPlusSpans}), nearest ${worstDeg.toExponential(1)} deg\n`,
  );
  expect(Math.min(t0Tally.edges, tPlusTally.edges)).toBeGreaterThan(15);
  expect(t0Tally.grazes + tPlusTally.grazes).toBeLessThan(3);
});

test("eight hours of T-0s: the sun comes to the sweep and may come back", () => {
  const random = makeRandom(LONG_SEED);
  const tally = edgeTally();
  const spans = [0, 0, 0, 0];
  for (let k = 0; k < 2; k++) {
    const met = metTracker(random, { climb: "overhead", sun: [40, 89], missing: 0.5 });
    const over = windowOver(met, 4 * MS_PER_HOUR, 4 * MS_PER_HOUR, { most: 240, sunStepMs: 15_000 });
    spans[checkT0s(over, tally).length]!++;
    checkTPlus(over, tally);
    checkLowest(over);
  }
  process.stdout.write(
    `  eight hours: ${tally.edges} ends of T-0 and T+ ${tally.worstMs.toFixed(1)} ms, spans ${spans}\n`,
  );
  expect(spans[2]).toBeGreaterThan(0);
});

/** So far beyond the nearest of all, degrees: the sun goes that way in a second. */
const HAIR_DEG = 0.004;

test("crossings of seconds of T-0 in half an hour are not missed", () => {
  const random = makeRandom(9);
  const tally = edgeTally();
  let shortestMs = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 8; k++) {
    const met = metTracker(random, { missing: 0.3 });
    const over = windowOver(met, 600_000 * random.next(), 1_200_000, { most: 150 });
    const offAxis = over.tried(triedOffAxis);
    const nearestAt = (ms: number): number => offAxis.lowestAt(ms).value;
    const lowest = narrowed(nearestAt, over.t0sMs, over.t0sMs.map(nearestAt), T0_PRECISION_MS);
    const withinDeg = lowest.value + HAIR_DEG;
    const f = (ms: number): number => nearestAt(ms) - withinDeg;
    const about = Array.from({ length: 101 }, (_, i) => lowest.atMs + (i - 50) * 250);
    const t0sMs = about.filter((ms) => ms > over.fromMs && ms < over.toMs);
    const tried = spansBelow(f, t0sMs, t0sMs.map(f));
    const found = over.found((sun) => offAxisDeg(sun) - withinDeg).t0sBetween(over.fromMs, over.toMs);
    expectSameSpans(found, tried, f, tally, over.tracker.name);
    for (const { fromMs, toMs } of tried) shortestMs = Math.min(shortestMs, toMs - fromMs);
  }
  process.stdout.write(
    `  short crossings: ${tally.edges} ends of T-0 ${tally.worstMs.toFixed(1)} ms, the shortest ${(shortestMs / 1000).toFixed(1)} s\n`,
  );
  expect(tally.edges).toBeGreaterThanOrEqual(16);
  expect(shortestMs).toBeLessThan(2500);
});
