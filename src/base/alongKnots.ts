/**
 * A function of time known at knots, with a bound on how far it can change from one knot to the next: where it is
 * smallest and where it is below zero, at the price of the knots near the answer only.
 *
 * A value says how far off the answer is; knots the function cannot have got there by are passed over. Between knots the
 * exact function is asked. What dips below a minimum and back inside one knot's step beside a lower knot is not seen.
 */

import { type Interval, intervalsBetween, RESOLUTION_MS, signChanges } from "./crossings.ts";
import { lowestBetween, type Minimum } from "./lowest.ts";

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
    lowest: 0,
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
  /** The lowest knot of the last time. */
  lowest: number;
}

/**
 * Values at all knots where the function can be lower than a share of the lowest so far, and next to them. The knot that
 * was lowest the last time is asked first: the next function is often much the same.
 */
function visitLow(scratch: Scratch, { atKnot }: Along, share: number): void {
  const { way, values, visited, lowest } = scratch;
  const last = way.length - 1;
  const atLowest = atKnot(lowest);
  let best = atLowest;
  let seen = 0;
  for (let i = 0; i <= last; ) {
    const value = i === lowest ? atLowest : atKnot(i);
    values[i] = value;
    visited[seen++] = i;
    if (value < best) {
      best = value;
      scratch.lowest = i;
    }
    // As far as it cannot have come down to the best, whatever it does; but not past the knot that is known.
    const reach = value - (best > 0 ? share * best : best);
    const next = Math.max(i + 1, lastWithin(way, i, reach));
    i = i < lowest && next > lowest ? lowest : i === last ? last + 1 : Math.min(last, next);
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
