/** Where a function of time is lowest in a stretch. */

export interface Minimum {
  readonly atMs: number;
  readonly value: number;
}

/** Minima are found to this. */
const MINIMUM_PRECISION_MS = 0.1;

/** Share of a stretch kept at each step, 1 over the golden ratio: one of the two values is used again (J. Kiefer 1953). */
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
const TRIED = 12;

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
