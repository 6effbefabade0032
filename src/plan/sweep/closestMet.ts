/** How near the sun comes while it is met: at the T-0s and T+ of a crossing, and at no others. */

import { lowestBetween, lowestOfSeveral, type Minimum } from "../../base/lowest.ts";
import type { SweepSearch } from "../../view/sweepSearch.ts";

/** In which the sun moves by 0.001 degree. */
const T0_PRECISION_MS = 200;
/** Farther than any direction is. */
const NOWHERE_DEG = 360;

/**
 * The lowest value of `nearness` for T-0s from..to (ms) while the measure of `met` is below zero; of the measure itself
 * where a crossing is so short that no T+ is found in it.
 */
export function closestMet(
  met: SweepSearch,
  nearness: SweepSearch,
  fromMs: number,
  toMs: number,
): Minimum & { readonly t0Ms: number } {
  const lowestAt = (t0Ms: number): Minimum => lowestOf(met, nearness, t0Ms);
  const { atMs: t0Ms, value } = lowestOfSeveral((ms) => lowestAt(ms).value, fromMs, toMs, T0_PRECISION_MS);
  if (value < NOWHERE_DEG) return { ...lowestAt(t0Ms), t0Ms };
  const middleMs = (fromMs + toMs) / 2;
  return { ...met.lowestAt(middleMs), t0Ms: middleMs };
}

/** The lowest nearness of one T-0 while the sun is met. */
function lowestOf(met: SweepSearch, nearness: SweepSearch, t0Ms: number): Minimum {
  let best: Minimum = { atMs: 0, value: NOWHERE_DEG };
  for (const { fromMs, toMs } of met.tPlusAt(t0Ms)) {
    const found = lowestBetween((tPlusMs) => nearness.valueAt(t0Ms, tPlusMs), fromMs, toMs);
    if (found.value < best.value) best = found;
  }
  return best;
}
