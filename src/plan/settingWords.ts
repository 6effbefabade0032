/** A setting in one word group. */

import { stopName } from "../exposure/scales.ts";
import type { SettingChoice } from "../exposure/solver.ts";

/** "f/8 1/500 ND0.6". */
export const settingWords = ({ stop, shutterName, filterDensity }: SettingChoice): string =>
  `${stopName(stop)} ${shutterName}${filterDensity > 0 ? ` ND${filterDensity}` : ""}`;
