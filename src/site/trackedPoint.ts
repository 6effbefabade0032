/** Where on the vehicle a tracker's point is: a length along its axis. What the picture makes of it is left to the view. */

import type { TrackedPoint, TrackPart } from "./types.ts";

/** Share of the vehicle's height; a half stands for its middle. */
const SHARE_OF_HEIGHT: Readonly<Record<TrackPart, number>> = {
  base: 0,
  "lower-half": 1 / 4,
  middle: 1 / 2,
  "upper-half": 3 / 4,
  nose: 1,
};

/** Height of what is tracked above the vehicle's foot, metres. */
export function trackedUpM(track: TrackedPoint, vehicle: { readonly heightM: number }): number {
  return track.kind === "up" ? track.upM : vehicle.heightM * SHARE_OF_HEIGHT[track.part];
}
