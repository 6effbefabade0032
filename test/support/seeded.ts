/** How property tests run: the same cases every time. */

import fc from "fast-check";

export const FIXED = { seed: 20_270_418, numRuns: 300 } as const;

/** Any finite number between two, both included. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
