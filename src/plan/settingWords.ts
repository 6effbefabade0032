/** A setting in one word group, and the time its shutter is open. */

import { exactShutterS, stopName } from "../exposure/scales.ts";
import type { SettingChoice } from "../exposure/solver.ts";
import type { Setting } from "./setting.ts";

/** The setting that serves all skies asked for. */
export const ONE_FOR_ALL = "one for all";

/** "f/8 1/500 ND0.6", "f/8 120° 1/288": an angle is what a hand sets. */
export const settingWords = ({
  stop,
  shutterName,
  shutterAngleDeg,
  filterDensity,
}: Pick<SettingChoice, "stop" | "shutterName" | "shutterAngleDeg" | "filterDensity">): string =>
  `${stopName(stop)} ${shutterAngleDeg === null ? "" : `${shutterAngleDeg}° `}${shutterName}${filterDensity > 0 ? ` ND${filterDensity}` : ""}`;

/** A mark stands for its exact time; an angle gives it. Seconds. */
export const exactTimeS = ({ shutterS, shutterAngleDeg }: Setting): number =>
  shutterAngleDeg === null ? exactShutterS(shutterS) : shutterS;
