/** Where the exposure guide's direct-sun rows may be used: two hours after sunrise to two hours before sunset. */

import { RISE_SET_ELEVATION_DEG } from "../base/constants.ts";
import { MS_PER_HOUR } from "../base/units.ts";
import { GUIDE_LOWEST_SUN_DEG, GUIDE_MARGIN_HOURS } from "../exposure/guide.ts";
import { passagesThrough } from "../sky/sunEvents.ts";
import { makeSunTrack } from "../sky/sunTrack.ts";
import type { Instant } from "./instants.ts";
import type { Scene } from "./scene.ts";

/** For each T-0 of the scene whether the guide holds there. */
export const guideHolds = (scene: Scene): readonly boolean[] => scene.instants.map(guideHoldsIn(scene));

/** Whether the guide holds at a T-0 of the scene's window. */
export function guideHoldsIn(scene: Pick<Scene, "site" | "window">): (t0: Instant) => boolean {
  const passagesMs = risesAndSetsMs(scene);
  return ({ ms, sun }) => {
    if (sun.apparentElevationDeg <= 0) return false;
    // A sun that does not set for a day has no hours to count from.
    if (passagesMs.length === 0) return sun.apparentElevationDeg >= GUIDE_LOWEST_SUN_DEG;
    return passagesMs.every((passageMs) => Math.abs(passageMs - ms) >= GUIDE_MARGIN_HOURS * MS_PER_HOUR);
  };
}

/** Half a day on either side: enough to tell a sun that sets from one that does not. */
const LOOK_AROUND_MS = 12 * MS_PER_HOUR;

function risesAndSetsMs({ site, window }: Pick<Scene, "site" | "window">): readonly number[] {
  const fromMs = window.opens.getTime() - LOOK_AROUND_MS;
  const toMs = window.closes.getTime() + LOOK_AROUND_MS;
  const track = makeSunTrack(site.place, new Date(fromMs), new Date(toMs));
  return passagesThrough(track, RISE_SET_ELEVATION_DEG).edges;
}
