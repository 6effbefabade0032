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

export function obstaclesOf({ place, structures, horizon, vehicle }: Site): Obstacles {
  const prisms = structures.map((structure) => prismOf(place, structure));
  const skyline = skylineOf(horizon);
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
): Hider[] => hidersOf(site.place, place, isPlaceGiven ? obstacles.hiding : [], obstacles.skyline);
