/** Where the exposure guide's direct-sun rows may be used: two hours after sunrise to two hours before sunset. */

import { MS_PER_DAY, MS_PER_HOUR } from "../base/units.ts";
import { GUIDE_LOWEST_SUN_DEG, GUIDE_MARGIN_HOURS } from "../exposure/guide.ts";
import { sunEvents } from "../sky/sunEvents.ts";
import { localDate } from "./clock.ts";
import type { Scene } from "./scene.ts";

/** For each T-0 of the scene whether the guide holds there. */
export function guideHolds(scene: Scene): readonly boolean[] {
  const passages = sunPassages(scene);
  return scene.instants.map(({ ms, sun }) => {
    if (sun.apparentElevationDeg <= 0) return false;
    if (passages.length === 0) return sun.apparentElevationDeg >= GUIDE_LOWEST_SUN_DEG;
    return passages.every((passageMs) => Math.abs(passageMs - ms) >= GUIDE_MARGIN_HOURS * MS_PER_HOUR);
  });
}

/** Rises and sets on the days around the window. */
function sunPassages(scene: Scene): number[] {
  const { zone, place } = scene.site;
  const passages: number[] = [];
  const firstMs = scene.window.opens.getTime() - MS_PER_DAY;
  for (let ms = firstMs; ms <= scene.window.closes.getTime() + MS_PER_DAY; ms += MS_PER_DAY) {
    const { sunrise, sunset } = sunEvents(place, localDate(new Date(ms), zone), zone);
    for (const at of [sunrise, sunset]) if (at !== null) passages.push(at.getTime());
  }
  return passages;
}
