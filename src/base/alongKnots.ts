/**
 * A function of time known at knots, with a bound on how far it can change from one knot to the next: where it is
 * smallest and where it is below zero, at the price of the knots near the answer only.
 *
 * A value says how far off the answer is; knots the function cannot have got there by are passed over. Between knots the
 * exact function is asked. What dips below a minimum and back inside one knot's step beside a lower knot is not seen.
 */

import { type Interval, intervalsBetween, RESOLUTION_MS, signChanges } from "./crossings.ts";

export interface Knots {
  /** Ascending times. */
  readonly atMs: Float64Array;
  /** Ascending: between the knots i and j no two values differ by more than `way[j] - way[i]`. */
  readonly way: Float64Array;
}

/** One function along the knots. */
export interface Along {
  readonly atKnot: (index: number) => number;
  readonly at: (ms: number) => number;
}

export interface Minimum {
  readonly atMs: number;
  readonly value: number;
}

/** Minima are found to this. */
const MINIMUM_PRECISION_MS = 0.1;

/** Looks for minima along one set of knots; keeps its scratch, so that it can be asked often. */
export interface MinimumFinder {
  lowest(along: Along): Minimum;
  /** Its sign, and a size that is not more than that of the minimum: cheaper the farther it is from zero. */
  lowestSign(along: Along): number;
}

export function minimumFinder({ atMs, way }: Knots): MinimumFinder {
  const scratch: Scratch = {
    atMs,
    way,
    values: new Float64Array(atMs.length),
    visited: new Int32Array(atMs.length),
    seen: 0,
  };
  return {
    lowest: (along) => {
      visitLow(scratch, along, 1);
      return refined(scratch, along);
    },
    lowestSign: (along) => {
      visitLow(scratch, along, SIGN_SHARE);
      const best = lowestVisited(scratch).value;
      const low = leastPossible(scratch, best);
      if (low > 0) return Math.min(low, SIGN_SHARE * best);
      if (best < 0 && best <= SIGN_SHARE * low) return best;
      const value = refined(scratch, along).value;
      return value > 0 ? Math.min(value, SIGN_SHARE * best) : value;
    },
  };
}

/** Of a positive minimum no more than this share has to be known. */
const SIGN_SHARE = 1 / 2;

interface Scratch extends Knots {
  readonly values: Float64Array;
  /** Knots asked, in their order. */
  readonly visited: Int32Array;
  seen: number;
}

/** Values at all knots where the function can be lower than a share of the lowest so far, and next to them. */
function visitLow(scratch: Scratch, { atKnot }: Along, share: number): void {
  const { way, values, visited } = scratch;
  const last = way.length - 1;
  let best = Number.POSITIVE_INFINITY;
  let seen = 0;
  for (let i = 0; i <= last; ) {
    const value = atKnot(i);
    values[i] = value;
    visited[seen++] = i;
    best = Math.min(best, value);
    // As far as it cannot have come down to the best, whatever it does.
    const reach = value - (best > 0 ? share * best : best);
    i = i === last ? last + 1 : Math.max(i + 1, Math.min(last, lastWithin(way, i, reach)));
  }
  scratch.seen = seen;
}

/** The lowest of the visited knots, or between two of them. */
function refined({ atMs, way, values, visited, seen }: Scratch, { at }: Along): Minimum {
  let best = lowestVisited({ atMs, values, visited, seen });
  for (let k = 0; k < seen; k++) {
    const i = visited[k]!;
    const left = k > 0 && visited[k - 1] === i - 1 ? i - 1 : i;
    const right = k + 1 < seen && visited[k + 1] === i + 1 ? i + 1 : i;
    const value = values[i]!;
    if (values[left]! < value || values[right]! < value) continue;
    if (value - (way[right]! - way[left]!) >= best.value) continue;
    const found = lowestBetween(at, atMs[left]!, atMs[right]!);
    if (found.value < best.value) best = found;
  }
  return best;
}

/** The last knot that is no more than `reach` of way from knot `i`. */
export function lastWithin(way: Float64Array, i: number, reach: number): number {
  const limit = way[i]! + reach;
  let step = 1;
  let low = i;
  while (low + step < way.length && way[low + step]! <= limit) {
    low += step;
    step *= 2;
  }
  for (; step >= 1; step = Math.floor(step / 2)) {
    if (low + step < way.length && way[low + step]! <= limit) low += step;
  }
  return low;
}

function lowestVisited({
  atMs,
  values,
  visited,
  seen,
}: Pick<Scratch, "atMs" | "values" | "visited" | "seen">): Minimum {
  let lowest = visited[0]!;
  for (let k = 1; k < seen; k++) if (values[visited[k]!]! < values[lowest]!) lowest = visited[k]!;
  return { atMs: atMs[lowest]!, value: values[lowest]! };
}

/** No value between two neighbours that were both asked is lower than this. */
function leastPossible({ way, values, visited, seen }: Scratch, best: number): number {
  let low = best;
  for (let k = 1; k < seen; k++) {
    const [i, j] = [visited[k - 1]!, visited[k]!];
    if (j === i + 1) low = Math.min(low, (values[i]! + values[j]! - (way[j]! - way[i]!)) / 2);
  }
  return low;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Golden section, for a function with one low in the stretch. */
export function lowestBetween(
  f: (ms: number) => number,
  fromMs: number,
  toMs: number,
  precisionMs: number = MINIMUM_PRECISION_MS,
): Minimum {
  let [low, high] = [fromMs, toMs];
  let a = high - GOLDEN * (high - low);
  let b = low + GOLDEN * (high - low);
  let fa = f(a);
  let fb = f(b);
  while (high - low > precisionMs) {
    if (fa <= fb) {
      high = b;
      b = a;
      fb = fa;
      a = high - GOLDEN * (high - low);
      fa = f(a);
    } else {
      low = a;
      a = b;
      fa = fb;
      b = low + GOLDEN * (high - low);
      fb = f(b);
    }
  }
  return fa <= fb ? { atMs: a, value: fa } : { atMs: b, value: fb };
}

/** Instants tried in a stretch before it is narrowed to the neighbours of the lowest. */
const TRIED = 24;

/** For a function with several lows: even instants, once more between the neighbours of the lowest, then golden section. */
export function lowestOfSeveral(
  f: (ms: number) => number,
  fromMs: number,
  toMs: number,
  precisionMs: number,
): Minimum {
  let best: Minimum = { atMs: fromMs, value: f(fromMs) };
  let [low, high] = [fromMs, toMs];
  for (let pass = 0; pass < 2 && high - low > precisionMs; pass++) {
    const stepMs = (high - low) / TRIED;
    for (let i = 0; i <= TRIED; i++) {
      const atMs = low + i * stepMs;
      const value = f(atMs);
      if (value < best.value) best = { atMs, value };
    }
    [low, high] = [Math.max(fromMs, best.atMs - stepMs), Math.min(toMs, best.atMs + stepMs)];
  }
  const refined = lowestBetween(f, low, high, precisionMs);
  return refined.value < best.value ? refined : best;
}

/** Between two knots the way need not grow evenly: so much faster than even is allowed for. */
const UNEVEN = 2;

/** The stretches of the knots' span in which the function is below zero. Shorter than 20 ms is not seen. */
export function belowZeroAlong({ atMs, way }: Knots, { atKnot, at }: Along): Interval[] {
  const last = atMs.length - 1;
  const edges: number[] = [];
  let value = atKnot(0);
  const isOpen = value < 0;
  for (let i = 0; i < last; ) {
    const far = lastWithin(way, i, Math.abs(value));
    if (far > i) {
      i = far;
      value = atKnot(i);
      continue;
    }
    const next = atKnot(i + 1);
    const change = way[i + 1]! - way[i]!;
    if (value < 0 !== next < 0 || Math.abs(value) + Math.abs(next) <= change) {
      const [fromMs, toMs] = [atMs[i]!, atMs[i + 1]!];
      edges.push(...changesBetween(at, fromMs, value, toMs, next, change));
    }
    i++;
    value = next;
  }
  return intervalsBetween(edges, isOpen, atMs[0]!, atMs[last]!);
}

/** Sign changes between two knots, as many as their values call for: the one at an end that rounding moved over it is put there. */
function changesBetween(
  at: (ms: number) => number,
  fromMs: number,
  from: number,
  toMs: number,
  to: number,
  change: number,
): number[] {
  const held = (ms: number): number => (ms === fromMs ? from : ms === toMs ? to : at(ms));
  if (toMs - fromMs <= RESOLUTION_MS) return from < 0 !== to < 0 ? [(fromMs + toMs) / 2] : [];
  return signChanges(held, fromMs, toMs, (UNEVEN * change) / (toMs - fromMs));
}
