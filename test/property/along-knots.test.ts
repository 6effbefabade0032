/** Minima and spans of functions known at knots, against the same functions tried every few milliseconds. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { type Along, belowZeroAlong, type Knots, minimumFinder } from "../../src/base/alongKnots.ts";
import { lowestBetween } from "../../src/base/lowest.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { between, FIXED } from "../support/seeded.ts";

/** Straight pieces with kinks between them, and a slow swing on top. */
interface Made {
  readonly knots: Knots;
  readonly along: Along;
  readonly f: (ms: number) => number;
  /** The fastest it changes anywhere, per ms. */
  readonly rate: number;
  /** Times asked, knots and others. */
  asked: number;
}

/** How far above zero it swings, and by how much more than it must the way allows. */
interface Shape {
  readonly seed: number;
  readonly level: number;
  readonly slack: number;
  readonly count: number;
}

const anyShape = fc.record<Shape>({
  seed: fc.integer({ min: 0, max: 2 ** 31 }),
  level: between(-3, 9),
  slack: between(1, 2),
  count: fc.integer({ min: 2, max: 80 }),
});

/** Two knots to a piece, neither at its bends: no knot's step has two lows in it, and many lows lie between knots. */
function made({ seed, level, slack, count }: Shape): Made {
  const random = makeRandom(seed);
  const bends = bendsOf(random, count);
  const swing = random.between(0, 0.3);
  const turn = random.between(0, 2e-4);
  const f = (ms: number): number => level + straight(bends, ms) + swing * Math.sin(turn * ms);
  const atMs = bends.flatMap(({ ms }, i) => {
    const next = bends[i + 1];
    if (next === undefined) return [];
    const within = (low: number, high: number): number => ms + random.between(low, high) * (next.ms - ms);
    return [within(0.2, 0.4), within(0.6, 0.8)];
  });
  const way = [0];
  let rate = 0;
  for (let i = 1; i < atMs.length; i++) {
    const steepest = Math.max(...slopesIn(bends, atMs[i - 1]!, atMs[i]!)) + swing * turn;
    rate = Math.max(rate, steepest);
    way.push(way[i - 1]! + slack * steepest * (atMs[i]! - atMs[i - 1]!));
  }
  const knots = { atMs: Float64Array.from(atMs), way: Float64Array.from(way) };
  const result: Made = {
    knots,
    f,
    rate,
    asked: 0,
    along: { atKnot: (i) => at(atMs[i]!), at: (ms) => at(ms) },
  };
  const at = (ms: number): number => {
    result.asked++;
    return f(ms);
  };
  return result;
}

interface Bend {
  readonly ms: number;
  readonly value: number;
}

function bendsOf(random: Random, count: number): Bend[] {
  const bends = [{ ms: 0, value: random.between(-2, 2) }];
  for (let i = 0; i < count; i++) {
    const last = bends.at(-1)!;
    bends.push({ ms: last.ms + random.between(150, 1500), value: last.value + random.between(-1, 1) });
  }
  return bends;
}

const pieceAt = (bends: readonly Bend[], ms: number): number => {
  const next = bends.findIndex((bend) => bend.ms > ms);
  return next === -1 ? bends.length - 2 : Math.max(0, next - 1);
};

function straight(bends: readonly Bend[], ms: number): number {
  const [a, b] = [bends[pieceAt(bends, ms)]!, bends[pieceAt(bends, ms) + 1]!];
  return a.value + ((b.value - a.value) * (ms - a.ms)) / (b.ms - a.ms);
}

const slopesIn = (bends: readonly Bend[], fromMs: number, toMs: number): number[] =>
  bends.slice(0, -1).flatMap((a, i) => {
    const b = bends[i + 1]!;
    return b.ms > fromMs && a.ms < toMs ? [Math.abs((b.value - a.value) / (b.ms - a.ms))] : [];
  });

const triedMs = ({ atMs }: Knots, stepMs: number): number[] =>
  Array.from({ length: Math.floor((atMs.at(-1)! - atMs[0]!) / stepMs) }, (_, i) => atMs[0]! + i * stepMs);

const lowestTried = ({ knots, f }: Made): number =>
  Math.min(...triedMs(knots, 7).map(f), f(knots.atMs.at(-1)!));

test("the lowest is no higher than any of the values tried, and is the function's own", () => {
  fc.assert(
    fc.property(anyShape, (shape) => {
      const one = made(shape);
      const { atMs, value } = minimumFinder(one.knots).lowest(one.along);
      expect(value).toBe(one.f(atMs));
      expect(value).toBeLessThanOrEqual(lowestTried(one) + 0.2 * one.rate);
    }),
    FIXED,
  );
});

test("the sign of the lowest is right and its size never more than it is", () => {
  let signs = [0, 0];
  fc.assert(
    fc.property(anyShape, (shape) => {
      const one = made(shape);
      const least = lowestTried(one);
      const sign = minimumFinder(one.knots).lowestSign(one.along);
      // Seven milliseconds between the tried ones.
      const grain = 7 * one.rate;
      if (Math.abs(least) > grain) expect(sign < 0).toBe(least < 0);
      expect(Math.abs(sign)).toBeLessThanOrEqual(Math.abs(least) + grain);
      expect(sign < 0 ? sign >= least - grain : sign <= least + grain).toBe(true);
      signs = [signs[0]! + Number(sign < 0), signs[1]! + Number(sign > 0)];
    }),
    FIXED,
  );
  expect(Math.min(...signs)).toBeGreaterThan(40);
});

test("one finder asked for one function after another has nothing left of the last", () => {
  fc.assert(
    fc.property(anyShape, between(-4, 4), (shape, shift) => {
      const one = made(shape);
      const shifted: Along = {
        atKnot: (i) => shift - one.along.atKnot(i),
        at: (ms) => shift - one.along.at(ms),
      };
      const find = minimumFinder(one.knots);
      const alone = minimumFinder(one.knots).lowest(one.along);
      find.lowestSign(shifted);
      find.lowest(shifted);
      expect(find.lowest(one.along)).toEqual(alone);
    }),
    FIXED,
  );
});

test("the spans below zero are those of the values tried", () => {
  let spans = 0;
  fc.assert(
    fc.property(anyShape, (shape) => {
      const one = made(shape);
      const found = belowZeroAlong(one.knots, one.along);
      const wrong: number[] = [];
      spans += found.length;
      for (const ms of triedMs(one.knots, 13)) {
        const value = one.f(ms);
        // What is over in 20 ms is not seen.
        if (Math.abs(value) < 21 * one.rate) continue;
        if (found.some(({ fromMs, toMs }) => ms >= fromMs && ms <= toMs) !== value < 0) wrong.push(ms);
      }
      expect(wrong).toEqual([]);
      for (const { fromMs, toMs } of found)
        for (const edgeMs of [fromMs, toMs])
          if (edgeMs !== one.knots.atMs[0] && edgeMs !== one.knots.atMs.at(-1))
            expect(Math.abs(one.f(edgeMs))).toBeLessThan(one.rate);
    }),
    FIXED,
  );
  expect(spans).toBeGreaterThan(500);
});

test("far from zero hardly anything is asked", () => {
  const one = made({ seed: 1, level: 200, slack: 1, count: 120 });
  expect(belowZeroAlong(one.knots, one.along)).toEqual([]);
  expect(one.asked).toBeLessThan(5);
  one.asked = 0;
  expect(minimumFinder(one.knots).lowestSign(one.along)).toBeGreaterThan(50);
  expect(one.asked).toBeLessThan(20);
});

test("one low is found to a tenth of a millisecond wherever it lies", () => {
  fc.assert(
    fc.property(between(0, 1000), between(1, 3), (lowMs, power) => {
      const found = lowestBetween((ms) => Math.abs(ms - lowMs) ** power - 5, 0, 1000);
      expect(Math.abs(found.atMs - lowMs)).toBeLessThan(0.1);
    }),
    FIXED,
  );
});
