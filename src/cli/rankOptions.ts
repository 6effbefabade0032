/** What `rank` can be asked. */

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
