/** Functions on 0..1 as tables, for loops in which the function itself would be most of the time. */

import { clamp } from "../../base/units.ts";

/** So many equal steps: linear between them. */
const STEPS = 4096;

/** `f` at every step, and once more, so that 1 itself may be asked. */
export const tableOf = (f: (share: number) => number): Float64Array =>
  Float64Array.from({ length: STEPS + 2 }, (_, i) => f(clamp(i / STEPS, 0, 1)));

/** `table` at a share of 0..1; a rounding error outside is taken along the last step. */
export function tableAt(table: Float64Array, share: number): number {
  const position = share * STEPS;
  // To a whole number by the quickest way: this is asked millions of times.
  const index = position | 0;
  const low = table[index]!;
  return low + (table[index + 1]! - low) * (position - index);
}
