/** What a piece of work is refused with. */

import { PadstopError, type Problem } from "../../src/base/problem.ts";

/** The problems it throws; none when it is done. Anything thrown that is not our error fails the test. */
export function problemsFrom(work: () => unknown): readonly Problem[] {
  try {
    work();
    return [];
  } catch (thrown) {
    if (thrown instanceof PadstopError) return thrown.problems;
    throw thrown;
  }
}
