/** Options that have no meaning beside each other. */

import { PadstopError, problem } from "../base/problem.ts";

/** Refuses an option that has no meaning beside what else was asked for. */
export function refuseTogether(isWrong: boolean, key: string, found: string, accepted: string): void {
  if (isWrong) throw new PadstopError([problem("E_CONFLICT", key, { found, accepted })]);
}
