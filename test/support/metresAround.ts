/** Points in metres around a place, Earth-fixed: shapes for tests of the map. */

import { fromHorizon, horizonAxes, toEarthFixed } from "../../src/base/earthFixed.ts";
import type { Place } from "../../src/base/place.ts";
import { add, type Vec3 } from "../../src/base/vector.ts";

/** East and north. */
export type Metres = readonly [number, number];

export const metresAround = (
  latitudeDeg: number,
  longitudeDeg: number,
  points: readonly Metres[],
): Vec3[] => {
  const place: Place = { latitudeDeg, longitudeDeg, heightM: 0 };
  const axes = horizonAxes(place);
  return points.map(([east, north]) => add(toEarthFixed(place), fromHorizon(axes, [east, north, 0])));
};
