/** The map of a plan: every thing that has a place on the ground, in the order in which it is written. */

import type { Site } from "../../site/types.ts";
import type { WindowPlan } from "../planTypes.ts";
import { mapCameras } from "./mapCameras.ts";
import { mapGround } from "./mapGround.ts";
import type { MapThing } from "./mapTypes.ts";

/** `plan` is that of `site` for one window. */
export const padMapOf = (site: Site, plan: WindowPlan): MapThing[] => [
  ...mapGround(site, plan),
  ...mapCameras(site),
];
