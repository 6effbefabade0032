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
export const RESOLUTION_MS = 20;
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
      if (differ) found.push(rootBetween(f, a, fa, b, fb));
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
  return intervalsBetween(edges, f(fromMs) < 0, fromMs, toMs);
}

/** The intervals inside `fromMs`..`toMs` that begin and end at the edges in turn; the first begins at `fromMs` when it `isOpen` there. */
export function intervalsBetween(
  edges: readonly number[],
  isOpen: boolean,
  fromMs: number,
  toMs: number,
): Interval[] {
  const intervals: Interval[] = [];
  let openedMs: number | null = isOpen ? fromMs : null;
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

/** Spans that overlap or touch made one, in the order of time. */
export function joined(spans: readonly Interval[]): Interval[] {
  const whole: Interval[] = [];
  for (const { fromMs, toMs } of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = whole.at(-1);
    if (last !== undefined && last.toMs >= fromMs)
      whole[whole.length - 1] = { fromMs: last.fromMs, toMs: Math.max(last.toMs, toMs) };
    else whole.push({ fromMs, toMs });
  }
  return whole;
}

/** The parts of spans that no hole takes out. */
export const spansWithout = (spans: readonly Interval[], holes: readonly Interval[]): Interval[] =>
  holes.length === 0
    ? [...spans]
    : spans.flatMap((span) => intervalsOutside(overlapping(holes, span), span.fromMs, span.toMs));

export const overlapping = (intervals: readonly Interval[], span: Interval): Interval[] =>
  intervals.filter(({ fromMs, toMs }) => fromMs < span.toMs && toMs > span.fromMs);

/** After so many steps by the slope one by halves, should the slope mislead. */
const SLOPE_STEPS = 4;

/**
 * The instant between `fromMs` and `toMs` at which `f` passes zero; its values there have different signs and need be
 * no better than rough. The secant method kept inside the bracket: two or three steps for what is nearly straight.
 */
export function rootBetween(
  f: (ms: number) => number,
  fromMs: number,
  fFrom: number,
  toMs: number,
  fTo: number,
): number {
  const startsBelow = fFrom < 0;
  let [a, b] = [fromMs, toMs];
  let slope = (fTo - fFrom) / (toMs - fromMs);
  let at = fromMs - fFrom / slope;
  let value = f(at);
  for (let step = 1; b - a > END_PRECISION_MS; step++) {
    if (value < 0 === startsBelow) a = at;
    else b = at;
    const next = at - value / slope;
    if (Math.abs(next - at) < END_PRECISION_MS) return Math.min(toMs, Math.max(fromMs, next));
    const isUsable = next > a && next < b && step % SLOPE_STEPS !== 0;
    const nextAt = isUsable ? next : (a + b) / 2;
    const nextValue = f(nextAt);
    const nextSlope = (nextValue - value) / (nextAt - at);
    if (nextSlope * slope > 0) slope = nextSlope;
    at = nextAt;
    value = nextValue;
  }
  return (a + b) / 2;
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
