/** What `--step` asks of a plan; one that was not given stays the plan's own. */

import type { CommonOptions } from "./options.ts";

export const stepOf = ({ step }: Pick<CommonOptions, "step">): { readonly stepS?: number } =>
  step === undefined ? {} : { stepS: step };
