/** The plan that a command's options ask for. */

import type { WindowPlan } from "../plan/planTypes.ts";
import { planWindow } from "../plan/planWindow.ts";
import { chooseWindow } from "../site/chooseWindow.ts";
import type { Site } from "../site/types.ts";
import type { CommonOptions } from "./options.ts";
import { stepOf } from "./stepOf.ts";

type Options = Pick<CommonOptions, "window" | "sky" | "step">;

/** Of one window: that of `--window`, or the file's first. Throws PadstopError. */
export const planAsked = (site: Site, options: Options): WindowPlan =>
  planWindow(site, chooseWindow(site, options.window ?? null), { sky: options.sky, ...stepOf(options) });
