/** What `rank` can be asked, and what cannot be asked together. */

import { PadstopError, problem } from "../base/problem.ts";
import type { CommonOptions } from "./options.ts";
import type { WeightedSkies } from "./skyOption.ts";

export type RankCommandOptions = Pick<
  CommonOptions,
  | "from"
  | "days"
  | "daily"
  | "shift"
  | "step"
  | "top"
  | "strip"
  | "picture"
  | "scrub"
  | "format"
  | "output"
  | "quiet"
  | "color"
  | "width"
> & { readonly window?: readonly string[]; readonly sky: WeightedSkies };

/** Refuses an option that has no meaning beside what else was asked for. */
export function refuseTogether(isWrong: boolean, key: string, found: string, accepted: string): void {
  if (isWrong) throw new PadstopError([problem("E_CONFLICT", key, { found, accepted })]);
}
