/** A tracker's frames: the followed point stands where it should, the picture is level or rolled, and no frame turns faster than said. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { PadstopError } from "../../src/base/problem.ts";
import { makeAscentPath } from "../../src/view/ascentPath.ts";
import { onGateMm } from "../../src/view/frame.ts";
import { axisThrough, makeSweepFrames, type SweepFrames } from "../../src/view/sweepFrames.ts";
import { sweepSun } from "../../src/view/sweepSun.ts";
import { bruteFromEdgeDeg } from "../support/pinhole.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { metTracker, rowsOf } from "../support/randomTrackers.ts";
import { between, FIXED } from "../support/seeded.ts";
import {
  borderRuler,
  compassOf,
  lineTo,
  pictureOf,
  type TriedTracker,
  times,
  triedOffAxis,
  triedSun,
  type Vector,
} from "../support/sweepBruteForce.ts";
import { triedSearch, triedSweep } from "../support/sweepGrid.ts";

const RAD = Math.PI / 180;
const ROLLS = [0, 30, 90, -120, 180];

const framesOf = (tracker: TriedTracker, footUpM = 0, alongM = 0): SweepFrames =>
  makeSweepFrames(
    tracker,
    tracker.camera,
    { pad: tracker.pad, path: makeAscentPath(rowsOf(tracker)), footUpM, alongM },
    tracker.fromS,
    tracker.toS,
  );

/** The three directions of a turn. */
function turnAt(frames: SweepFrames, tPlusMs: number): readonly [Vector, Vector, Vector] {
  const turn = new Float64Array(9);
  frames.turnInto(tPlusMs, turn);
  const row = (i: number): Vector => [turn[i]!, turn[i + 1]!, turn[i + 2]!];
  return [row(0), row(3), row(6)];
}

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Below this elevation any roll and offset of these lenses can be had. */
const REACHED_DEG = 70;

test("the followed point stands at its offset, whatever the roll, in a picture that is level but for that roll", () => {
  const random = makeRandom(1);
  let seen = 0;
  for (let k = 0; k < 60; k++) {
    const rollDeg = ROLLS[k % ROLLS.length]!;
    const offsetShare = k % 4 === 0 ? 0 : random.between(-0.5, 0.5);
    const { tracker } = metTracker(random, { rollDeg, offsetShare });
    const frames = framesOf(tracker);
    const view = { ...frames.frame.view, rollDeg };
    const line = lineTo(tracker.pad, tracker.camera);
    for (let share = 0; share <= 1; share += 0.0625) {
      const tPlusMs = 1000 * (tracker.fromS + share * (tracker.toS - tracker.fromS));
      const point = line(tracker.way(tPlusMs / 1000));
      if (Math.asin(point[2] / Math.hypot(...point)) / RAD > REACHED_DEG) continue;
      seen++;
      const [right, axis, up] = turnAt(frames, tPlusMs);
      const placed = onGateMm({ view, axis, right, up }, point)!;
      // A centimetre of the curve between the rows, 400 m off at the nearest, behind the longest lens.
      expect(Math.abs(placed.xMm)).toBeLessThan(0.1);
      expect(Math.abs(placed.yMm - offsetShare * tracker.gateHeightMm)).toBeLessThan(0.1);
      const own = pictureOf(Math.atan2(axis[0], axis[1]), Math.asin(axis[2]), rollDeg * RAD);
      for (const [i, row] of [right, axis, up].entries())
        expect(Math.hypot(...row.map((value, j) => value - own[i]![j]!))).toBeLessThan(1e-9);
    }
  }
  expect(seen).toBeGreaterThan(700);
});

test("to the last digit: a point given in metres is put on its place in the gate", () => {
  const anyGate = fc.record({
    rollDeg: fc.oneof(fc.constantFrom(30, 90, -120), between(-180, 180)),
    focalMm: between(50, 3000),
    gateWidthMm: between(5, 50),
    gateHeightMm: between(5, 36),
    offsetShare: between(-0.5, 0.5),
  });
  fc.assert(
    fc.property(anyGate, between(0, 360), between(-60, REACHED_DEG), (gate, azimuthDeg, elevationDeg) => {
      const [, point] = pictureOf(azimuthDeg * RAD, elevationDeg * RAD, 0);
      const { azimuthDeg: az, elevationDeg: el } = axisThrough(gate, [
        point[0] * 5e3,
        point[1] * 5e3,
        point[2] * 5e3,
      ]);
      const [right, axis, up] = pictureOf(az * RAD, el * RAD, gate.rollDeg * RAD);
      const placed = onGateMm({ view: { azimuthDeg: 0, elevationDeg: 0, ...gate }, right, axis, up }, point)!;
      expect(Math.abs(placed.xMm)).toBeLessThan(1e-8);
      expect(Math.abs(placed.yMm - gate.offsetShare * gate.gateHeightMm)).toBeLessThan(1e-8);
    }),
    FIXED,
  );
});

test("foot and length along the vehicle are those of the pad's vertical while it stands, of the flight when it is fast", () => {
  const random = makeRandom(2);
  for (let k = 0; k < 30; k++) {
    const { tracker } = metTracker(random);
    const frames = framesOf(tracker, 7, 40);
    const line = lineTo(tracker.pad, tracker.camera);
    const point: [number, number, number] = [0, 0, 0];
    const apart = (tPlusS: number, expected: Vector): number => {
      frames.pointInto(tPlusS * 1000, point);
      const own = line(expected);
      return Math.hypot(point[0] - own[0], point[1] - own[1], point[2] - own[2]);
    };
    expect(apart(0, [0, 0, 47])).toBeLessThan(1e-6);
    const lateS = tracker.toS - 2;
    const [at, later] = [tracker.way(lateS), tracker.way(lateS + 1e-4)];
    const step: Vector = [later[0] - at[0], later[1] - at[1], later[2] - at[2]];
    const along = 40 / Math.hypot(...step);
    const nose: Vector = [at[0] + along * step[0], at[1] + along * step[1], at[2] + 7 + along * step[2]];
    expect(apart(lateS, nose)).toBeLessThan(0.02);
  }
});

test("knots stand close, and between any two T+ the picture turns no farther than the way between the knots about them", () => {
  const random = makeRandom(3);
  let closest = 0;
  for (let k = 0; k < 60; k++) {
    const { tracker } = metTracker(random, {
      rollDeg: ROLLS[k % 5]!,
      offsetShare: random.between(-0.5, 0.5),
    });
    const frames = framesOf(tracker, 5, 30);
    const { atMs, way } = frames;
    for (let i = 1; i < atMs.length; i++) {
      const stepMs = atMs[i]! - atMs[i - 1]!;
      expect(stepMs).toBeLessThanOrEqual(1000);
      if (i % 5 === 0 && stepMs > 1)
        expect(turnedDeg(turnAt(frames, atMs[i - 1]!), turnAt(frames, atMs[i]!))).toBeLessThan(0.2501);
    }
    for (let tries = 0; tries < 60; tries++) {
      const i = random.whole(0, atMs.length - 2);
      const j = Math.min(atMs.length - 1, i + random.whole(1, tries % 2 === 0 ? 1 : 40));
      const [a, b] = [random.between(atMs[i]!, atMs[j]!), random.between(atMs[i]!, atMs[j]!)];
      const turned = turnedDeg(turnAt(frames, a), turnAt(frames, b));
      const bound = way[j]! - way[i]!;
      closest = Math.max(closest, turned / bound);
      expect(turned, `${tracker.name} at ${a} and ${b}`).toBeLessThanOrEqual(bound);
    }
  }
  // And it is a bound, not a wall far away.
  expect(closest).toBeGreaterThan(0.8);
});

/** By the trace: the angle of one turn about one axis. */
function turnedDeg(a: readonly Vector[], b: readonly Vector[]): number {
  const cosine = (times(a[0]!, b[0]!) + times(a[1]!, b[1]!) + times(a[2]!, b[2]!) - 1) / 2;
  if (cosine < 0.99) return Math.acos(Math.max(-1, cosine)) / RAD;
  const halves = [0, 1, 2].map((i) => Math.hypot(...cross(a[i]!, b[i]!)) ** 2).reduce((sum, x) => sum + x, 0);
  return Math.asin(Math.sqrt(halves / 2)) / RAD;
}

/** A climb that passes exactly over the camera at T+40 s, straight up the slope from the pad. */
function overheadTracker(random: Random, besideM: number): TriedTracker {
  const { tracker } = metTracker(random, { climb: "vertical" });
  const { pad, camera } = tracker;
  const [east, north, up] = compassOf(pad);
  const [away, zenith] = [lineTo(camera, pad)([0, 0, 0]), compassOf(camera)[2]];
  const highM = random.between(3000, 20_000);
  const at: Vector = [
    away[0] + highM * times(east, zenith) + besideM,
    away[1] + highM * times(north, zenith),
    away[2] + highM * times(up, zenith),
  ];
  const way = (tPlusS: number): Vector => {
    const share = (Math.max(0, tPlusS) / 40) ** 2;
    return [share * at[0], share * at[1], share * at[2]];
  };
  return { ...tracker, way, fromS: 0, toS: 70 };
}

test("straight overhead, or a hair beside it: no NaN, and the sun is met as tried", () => {
  const random = makeRandom(4);
  let highest = 0;
  for (let k = 0; k < 24; k++) {
    const tracker = overheadTracker(random, [0, 0, 0.001, 1, -30, 200][k % 6]!);
    const t0 = new Date(Date.UTC(2027, 3, 18) + k * 3_600_000);
    const found = sweepSun({ ...tracker, ascent: rowsOf(tracker, 0.5) }, t0, tracker.air);
    const frames = framesOf(tracker);
    expect(frames.turns.some(Number.isNaN) || frames.way.some(Number.isNaN)).toBe(false);
    for (let i = 1; i < frames.atMs.length; i++) expect(frames.atMs[i]! > frames.atMs[i - 1]!).toBe(true);
    highest = Math.max(highest, ...frames.turns.filter((_, i) => i % 9 === 5));
    const sunOf = triedSun(tracker.camera, t0.getTime(), t0.getTime() + 70_000, tracker.air);
    const tried = triedSearch(triedSweep(tracker), sunOf, triedOffAxis).lowestAt(t0.getTime());
    expect(Math.abs(found.closest.offAxisDeg - tried.value), tracker.name).toBeLessThan(0.01);
  }
  expect(highest).toBeGreaterThan(0.99999);
});

test("a camera on the way of the followed point is refused, or all but there told without NaN", () => {
  const { tracker } = metTracker(makeRandom(5), { climb: "vertical" });
  const { pad } = tracker;
  const from = (heightM: number) =>
    sweepSun({ ...tracker, camera: { ...pad, heightM }, ascent: rowsOf(tracker, 1) }, new Date(0));
  expect(() => from(pad.heightM)).toThrow(PadstopError);
  const { closest } = from(pad.heightM + tracker.way(10)[2]);
  expect(Number.isFinite(closest.tPlusS + closest.offAxisDeg)).toBe(true);
});

test("the ruler of these tests is that of a border walked along point by point", () => {
  const random = makeRandom(6);
  for (let k = 0; k < 60; k++) {
    const gate = {
      focalMm: random.between(20, 500),
      gateWidthMm: random.between(8, 53),
      gateHeightMm: random.between(5, 36),
    };
    const view = { azimuthDeg: 0, elevationDeg: 0, rollDeg: 0, ...gate };
    const far = k % 2 === 0 ? 180 : 15;
    const [az, el] = [random.between(-far, far), random.between(-far / 2, far / 2)];
    const [, direction] = pictureOf(az * RAD, el * RAD, 0);
    expect(borderRuler(gate)(direction)).toBeCloseTo(bruteFromEdgeDeg(view, az, el), 5);
  }
});
