/** Looks for the sun along a sweep on a grid of T-0 and T+, with halving and narrowing about what the grid shows. */

import { expect } from "vitest";
import type { Interval } from "../../src/base/crossings.ts";
import {
  inPicture,
  type Picture,
  pictureMaker,
  type TriedMeasure,
  type TriedSun,
  type TriedTracker,
  times,
} from "./sweepBruteForce.ts";

/** T+ of the grid: this far apart, or as the picture turns by so much. */
const STEP_MS = 100;
const TURN = (0.2 * Math.PI) / 180;
const LEAST_STEP_MS = 0.5;

/** A tracker's pictures at the T+ of the grid: made once for all measures and T-0s. */
export interface TriedSweep {
  readonly atMs: readonly number[];
  readonly pictures: readonly Picture[];
  readonly pictureAt: (tPlusMs: number) => Picture;
}

const turned = (a: Picture, b: Picture): number =>
  Math.max(...[0, 1, 2].map((i) => Math.acos(Math.min(1, times(a[i]!, b[i]!)))));

export function triedSweep(tracker: TriedTracker, stepMs = STEP_MS): TriedSweep {
  const picture = pictureMaker(tracker);
  const pictureAt = (tPlusMs: number): Picture => picture(tPlusMs / 1000);
  const atMs = [tracker.fromS * 1000];
  const pictures = [pictureAt(atMs[0]!)];
  const endMs = tracker.toS * 1000;
  while (atMs.at(-1)! < endMs) {
    const last = pictures.at(-1)!;
    let step = Math.min(stepMs, endMs - atMs.at(-1)!);
    let next = pictureAt(atMs.at(-1)! + step);
    while (step > LEAST_STEP_MS && turned(last, next) > TURN) {
      step /= 2;
      next = pictureAt(atMs.at(-1)! + step);
    }
    const ms = atMs.at(-1)! + step;
    atMs.push(endMs - ms < 1e-6 ? endMs : ms);
    pictures.push(next);
  }
  return { atMs, pictures, pictureAt };
}

export interface Lowest {
  readonly atMs: number;
  readonly value: number;
}

export interface TriedSearch {
  valueAt(t0Ms: number, tPlusMs: number): number;
  /** The smallest over T+. */
  lowestAt(t0Ms: number): Lowest;
  /** The smallest over some T-0s at one T+. */
  lowestOver(t0sMs: readonly number[], tPlusMs: number): Lowest;
  tPlusAt(t0Ms: number): Interval[];
}

export function triedSearch(
  sweep: TriedSweep,
  sunOf: (ms: number) => TriedSun,
  measure: TriedMeasure,
): TriedSearch {
  const valueIn = (picture: Picture, ms: number): number => {
    const sun = sunOf(ms);
    return measure(inPicture(picture, sun.direction), sun);
  };
  const valueAt = (t0Ms: number, tPlusMs: number): number =>
    valueIn(sweep.pictureAt(tPlusMs), t0Ms + tPlusMs);
  const along = (t0Ms: number): number[] => sweep.atMs.map((ms, i) => valueIn(sweep.pictures[i]!, t0Ms + ms));
  return {
    valueAt,
    lowestAt: (t0Ms) => narrowed((ms) => valueAt(t0Ms, ms), sweep.atMs, along(t0Ms)),
    lowestOver: (t0sMs, tPlusMs) => {
      const picture = sweep.pictureAt(tPlusMs);
      const f = (t0Ms: number): number => valueIn(picture, t0Ms + tPlusMs);
      return narrowed(f, t0sMs, t0sMs.map(f));
    },
    tPlusAt: (t0Ms) => spansBelow((ms) => valueAt(t0Ms, ms), sweep.atMs, along(t0Ms)),
  };
}

/** Grid values are no farther than this above a low between them, degrees. */
const SLACK = 0.3;

/** The lowest of a grid, each of its lows narrowed down by thirds. */
export function narrowed(
  f: (ms: number) => number,
  atMs: readonly number[],
  values: readonly number[],
  precisionMs = 0.2,
): Lowest {
  let best: Lowest = { atMs: atMs[0]!, value: Number.POSITIVE_INFINITY };
  for (let i = 0; i < values.length; i++)
    if (values[i]! < best.value) best = { atMs: atMs[i]!, value: values[i]! };
  const leastOnGrid = best.value;
  for (let i = 0; i < values.length; i++) {
    const [before, after] = [Math.max(0, i - 1), Math.min(values.length - 1, i + 1)];
    if (values[i]! > leastOnGrid + SLACK || values[i]! > values[before]! || values[i]! > values[after]!)
      continue;
    let [low, high] = [atMs[before]!, atMs[after]!];
    while (high - low > precisionMs) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
      if (f(a) <= f(b)) high = b;
      else low = a;
    }
    const middle = (low + high) / 2;
    const value = f(middle);
    if (value < best.value) best = { atMs: middle, value };
  }
  return best;
}

/** The stretches below zero that a grid shows, their ends found by halving. */
export function spansBelow(
  f: (ms: number) => number,
  atMs: readonly number[],
  values: readonly number[],
): Interval[] {
  const spans: Interval[] = [];
  let fromMs: number | null = values[0]! < 0 ? atMs[0]! : null;
  for (let i = 1; i < values.length; i++) {
    if (values[i]! < 0 === values[i - 1]! < 0) continue;
    let [low, high] = [atMs[i - 1]!, atMs[i]!];
    while (high - low > 1) {
      const middle = (low + high) / 2;
      if (f(middle) < 0 === values[i - 1]! < 0) low = middle;
      else high = middle;
    }
    const edgeMs = (low + high) / 2;
    if (fromMs === null) fromMs = edgeMs;
    else {
      spans.push({ fromMs, toMs: edgeMs });
      fromMs = null;
    }
  }
  if (fromMs !== null) spans.push({ fromMs, toMs: atMs.at(-1)! });
  return spans;
}

/** How far ends of spans were apart, and how many. */
export interface EdgeTally {
  edges: number;
  worstMs: number;
  /** Stretches that one side has and the other not, the measure all but zero in them. */
  grazes: number;
  /** Spans that the grid had stepped over. */
  between: number;
}

export const edgeTally = (): EdgeTally => ({ edges: 0, worstMs: 0, grazes: 0, between: 0 });

const EDGE_MS = 100;
/** So near to zero either word is right, degrees. */
const GRAZE = 2e-4;

/**
 * Both have the same spans, with ends within 0.1 s. Where they differ for longer, the measure `f` has to be all but zero; a span that
 * only the search has may have fallen between the points of the grid, and then `f` is below zero in it.
 */
export function expectSameSpans(
  found: readonly Interval[],
  tried: readonly Interval[],
  f: (ms: number) => number,
  tally: EdgeTally,
  name: string,
): void {
  const covers = (spans: readonly Interval[], ms: number): boolean =>
    spans.some(({ fromMs, toMs }) => ms >= fromMs && ms <= toMs);
  const edges = [...found, ...tried].flatMap(({ fromMs, toMs }) => [fromMs, toMs]).sort((a, b) => a - b);
  tally.edges += 2 * tried.length;
  for (let i = 1; i < edges.length; i++) {
    const [fromMs, toMs] = [edges[i - 1]!, edges[i]!];
    const middle = (fromMs + toMs) / 2;
    const isFound = covers(found, middle);
    if (toMs === fromMs || isFound === covers(tried, middle)) continue;
    const within = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => f(fromMs + share * (toMs - fromMs)));
    const isWhole = (isFound ? found : tried).some((span) => span.fromMs === fromMs && span.toMs === toMs);
    if (toMs - fromMs <= EDGE_MS && !isWhole) tally.worstMs = Math.max(tally.worstMs, toMs - fromMs);
    else if (isFound && within.every((value) => value < 0)) tally.between++;
    else if (within.every((value) => Math.abs(value) < GRAZE)) tally.grazes++;
    else {
      const says = isFound ? "invented" : "missed";
      expect.fail(
        `${name}: ${says} ${fromMs}..${toMs} (${((toMs - fromMs) / 1000).toFixed(2)} s), where the measure is ${within.map((v) => v.toFixed(5))}; found ${JSON.stringify(found)}, tried ${JSON.stringify(tried)}`,
      );
    }
  }
}
