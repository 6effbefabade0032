/**
 * Where a function of time is below zero, found without a grid.
 *
 * Needs a bound on how fast the function can change (its Lipschitz constant); with it a stretch of time is put
 * aside only when the function provably cannot reach zero inside it, so that no crossing is missed however short.
 */

export interface Interval {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Crossings closer together than this are one. */
const RESOLUTION_MS = 20;
/** Ends are refined to this. */
const END_PRECISION_MS = 0.5;

/** The instants in `fromMs`..`toMs` at which `f` changes sign; `maxRatePerMs` bounds |df/dt|. */
export function signChanges(
  f: (ms: number) => number,
  fromMs: number,
  toMs: number,
  maxRatePerMs: number,
): number[] {
  const found: number[] = [];
  const search = (a: number, fa: number, b: number, fb: number): void => {
    const differ = fa < 0 !== fb < 0;
    if (!differ && Math.abs(fa) + Math.abs(fb) > maxRatePerMs * (b - a)) return;
    if (b - a <= RESOLUTION_MS) {
      if (differ) found.push(bisect(f, a, fa, b));
      return;
    }
    const middle = (a + b) / 2;
    const fMiddle = f(middle);
    search(a, fa, middle, fMiddle);
    search(middle, fMiddle, b, fb);
  };
  if (toMs > fromMs) search(fromMs, f(fromMs), toMs, f(toMs));
  return found;
}

/** The intervals inside `fromMs`..`toMs` in which `f` < 0. Ends lie within a millisecond of the crossing. */
export function intervalsBelowZero(
  f: (ms: number) => number,
  fromMs: number,
  toMs: number,
  maxRatePerMs: number,
): Interval[] {
  const edges = signChanges(f, fromMs, toMs, maxRatePerMs);
  const intervals: Interval[] = [];
  let openedMs: number | null = f(fromMs) < 0 ? fromMs : null;
  for (const edgeMs of edges) {
    if (openedMs === null) openedMs = edgeMs;
    else {
      intervals.push({ fromMs: openedMs, toMs: edgeMs });
      openedMs = null;
    }
  }
  if (openedMs !== null) intervals.push({ fromMs: openedMs, toMs });
  return intervals;
}

/** The part of `fromMs`..`toMs` that `inside` leaves over. */
export function intervalsOutside(inside: readonly Interval[], fromMs: number, toMs: number): Interval[] {
  const outside: Interval[] = [];
  let startMs = fromMs;
  for (const interval of inside) {
    if (interval.fromMs > startMs) outside.push({ fromMs: startMs, toMs: interval.fromMs });
    startMs = Math.max(startMs, interval.toMs);
  }
  if (startMs < toMs) outside.push({ fromMs: startMs, toMs });
  return outside;
}

function bisect(f: (ms: number) => number, fromMs: number, fFrom: number, toMs: number): number {
  let low = fromMs;
  let high = toMs;
  while (high - low > END_PRECISION_MS) {
    const middle = (low + high) / 2;
    if (f(middle) < 0 === fFrom < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** In so short a time no angle in the sky changes by more than 0.001 degree. */
const MINIMUM_PRECISION_MS = 200;

/** Where `f` is smallest: the smallest of the samples (times ascending, `values[i]` = f(samplesMs[i])), refined between its neighbours. */
export function minimumNear(
  f: (ms: number) => number,
  samplesMs: readonly number[],
  values: readonly number[],
): { atMs: number; value: number } {
  let best = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! < values[best]!) best = i;
  let low = samplesMs[Math.max(0, best - 1)]!;
  let high = samplesMs[Math.min(samplesMs.length - 1, best + 1)]!;
  while (high - low > MINIMUM_PRECISION_MS) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (f(a) <= f(b)) high = b;
    else low = a;
  }
  const atMs = (low + high) / 2;
  const value = f(atMs);
  return value < values[best]! ? { atMs, value } : { atMs: samplesMs[best]!, value: values[best]! };
}
