/** What a fixed camera's plan leaves out of a long line of sight: the air between it and the body. */

import { airBetween, sightAir } from "../sky/airBetween.ts";
import { skyName } from "../sky/daylight.ts";
import type { CameraView } from "./cameraView.ts";
import type { Scene } from "./scene.ts";

/** Told when less than this share of the body's light comes through: half a stop gone. */
const CLEAR_SHARE = 0.7;

/** A note for each sky under which the air takes a good part; none for a camera of which only the axis is known. */
export function airNotes({ skies, site, air }: Scene, { axis, place, placeGiven }: CameraView): string[] {
  const { rangeM } = axis;
  if (!placeGiven || rangeM === null) return [];
  return skies.flatMap((sky) => {
    const line = { cameraHeightM: place.heightM, elevationDeg: axis.elevationDeg, rangeM };
    const { transmittance } = airBetween(line, sightAir(sky, site.place.heightM, air.pressureHPa));
    if (transmittance >= CLEAR_SHARE) return [];
    return [
      `the air between, not counted, takes ${Math.round((1 - transmittance) * 100)} % of the body's light under ${skyName(sky)} and puts a veil of sky before it`,
    ];
  });
}
