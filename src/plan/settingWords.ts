/** A setting in one word group, and the time its shutter is open. */

import { exactShutterS, stopName } from "../exposure/scales.ts";
import type { SettingChoice } from "../exposure/solver.ts";
import type { Setting } from "./setting.ts";

/** "f/8 1/500 ND0.6". */
export const settingWords = ({
  stop,
  shutterName,
  filterDensity,
}: Pick<SettingChoice, "stop" | "shutterName" | "filterDensity">): string =>
  `${stopName(stop)} ${shutterName}${filterDensity > 0 ? ` ND${filterDensity}` : ""}`;

/** A mark stands for its exact time; an angle gives it. Seconds. */
export const exactTimeS = ({ shutterS, shutterAngleDeg }: Setting): number =>
  shutterAngleDeg === null ? exactShutterS(shutterS) : shutterS;
