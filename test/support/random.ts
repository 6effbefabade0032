/** Numbers that look random and are the same every time (mulberry32). */

export interface Random {
  /** 0 (included) to 1 (excluded). */
  next(): number;
  between(low: number, high: number): number;
  /** A whole number, `low` to `high`, both included. */
  whole(low: number, high: number): number;
}

export function makeRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number): number => low + (high - low) * next();
  return { next, between, whole: (low, high) => Math.floor(between(low, high + 1)) };
}
