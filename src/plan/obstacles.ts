/** What of a site stands in the light: made once for all cameras and T-0s. */

import type { Place } from "../base/place.ts";
import type { Site } from "../site/types.ts";
import type { Shaders } from "../view/bodyShade.ts";
import { type Hider, hidersOf } from "../view/hiders.ts";
import { type Prism, prismOf, vehiclePrism } from "../view/prism.ts";
import { type Skyline, skylineOf } from "../view/skyline.ts";

export interface Obstacles {
  /** Structures and the vehicle. */
  readonly hiding: readonly Prism[];
  readonly skyline: Skyline | null;
  /** Null where nothing can shade the body, or the site names none. */
  readonly shaders: Shaders | null;
}

/** Distances to an edge are wanted up to the margin of a hidden sun and its disc, and some way on for the search. */
const farthestDegOf = ({ settings }: Site): number =>
  Math.max(LEAST_FARTHEST_DEG, settings.coverMarginDeg + 1);
const LEAST_FARTHEST_DEG = 3;

export function obstaclesOf(site: Site): Obstacles {
  const { place, structures, horizon, vehicle } = site;
  const prisms = structures.map((structure) => prismOf(place, structure));
  const skyline = skylineOf(horizon, farthestDegOf(site));
  const canShade = prisms.some(({ solidity }) => solidity > 0) || skyline !== null;
  return {
    hiding: vehicle === null ? prisms : [...prisms, vehiclePrism(vehicle)],
    skyline,
    shaders: vehicle !== null && canShade ? { vehicle, prisms, skyline } : null,
  };
}

/** What can hide the sun from a camera that stands at `place`; nothing when only its axis is known. */
export const cameraHiders = (
  site: Site,
  obstacles: Obstacles,
  place: Place,
  isPlaceGiven: boolean,
): Hider[] =>
  hidersOf(site.place, place, obstacles.hiding, obstacles.skyline, farthestDegOf(site), isPlaceGiven);
