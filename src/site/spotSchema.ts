/** Schema of where things stand and what cameras aim at: a bearing and range, coordinates, or a height on the axis. */

import { fail, map, quantity } from "./fields.ts";

/** A place as written; a missing height is filled by the reader. */
export interface WrittenPlace {
  readonly kind: "place";
  readonly latitude: number;
  readonly longitude: number;
  readonly height: number | null;
}

export type WrittenSpot =
  | WrittenPlace
  | { readonly kind: "bearing"; readonly bearing: number; readonly range: number; readonly up: number };

export type WrittenAim = WrittenPlace | { readonly kind: "vehicle"; readonly up: number };

/** Heights are above sea level or the ellipsoid, as the site's own: the difference does not matter for light. */
export const latitude = () => quantity("latitudeDeg", -90, 90, "Latitude, north positive, WGS 84");
export const longitude = () => quantity("longitudeDeg", -180, 180, "Longitude, east positive, WGS 84");
export const height = () => quantity("lengthM", -500, 9000, "Height of the place");
export const bearing = (what: string, beyondNext: string | null = null) =>
  quantity("angleDeg", -360, 360, `${what}, clockwise from north`, beyondNext);

const placeKeys = {
  latitude: latitude().optional(),
  longitude: longitude().optional(),
  height: height().optional(),
};

interface PlaceKeys {
  readonly latitude?: number | undefined;
  readonly longitude?: number | undefined;
  readonly height?: number | undefined;
}

const hasPlace = (v: PlaceKeys): boolean => [v.latitude, v.longitude, v.height].some((n) => n !== undefined);

type Sink = Parameters<typeof fail>[0];

function asPlace(v: PlaceKeys, sink: Sink): WrittenPlace {
  if (v.latitude === undefined)
    return fail(sink, v, { code: "E_MISSING", key: "latitude", accepted: "-90 to 90 degrees" });
  if (v.longitude === undefined) {
    return fail(sink, v, { code: "E_MISSING", key: "longitude", accepted: "-180 to 180 degrees" });
  }
  return { kind: "place", latitude: v.latitude, longitude: v.longitude, height: v.height ?? null };
}

/** `at` of cameras and structures. */
export const spotSchema = map({
  bearing: bearing("Bearing from the pad").optional(),
  range: quantity("lengthM", 0, 200_000, "Horizontal distance from the pad").optional(),
  up: quantity("lengthM", -500, 9000, "Height above the pad datum").optional(),
  ...placeKeys,
})
  .meta({
    description: "Where it stands: bearing and range from the pad, or coordinates",
    oneOf: [{ required: ["bearing", "range"] }, { required: ["latitude", "longitude"] }],
  })
  .transform((v, sink): WrittenSpot => {
    const polar = [v.bearing, v.range, v.up].some((n) => n !== undefined);
    const accepted = "bearing and range (and up), or latitude and longitude (and height)";
    if (polar && hasPlace(v)) return fail(sink, v, { code: "E_CONFLICT", found: "both", accepted });
    if (hasPlace(v)) return asPlace(v, sink);
    if (v.bearing === undefined) return fail(sink, v, { code: "E_MISSING", key: "bearing", accepted });
    if (v.range === undefined) return fail(sink, v, { code: "E_MISSING", key: "range", accepted });
    return { kind: "bearing", bearing: v.bearing, range: v.range, up: v.up ?? 0 };
  });

/** `aim` of a camera. */
export const aimSchema = map({
  up: quantity("lengthM", -500, 50_000, "Height on the vehicle's axis, above the pad datum").optional(),
  ...placeKeys,
})
  .meta({
    description: "What it aims at: a height on the vehicle's axis, or coordinates",
    oneOf: [{ required: ["up"] }, { required: ["latitude", "longitude"] }],
  })
  .transform((v, sink): WrittenAim => {
    const accepted = "up, or latitude and longitude (and height)";
    if (v.up !== undefined && hasPlace(v))
      return fail(sink, v, { code: "E_CONFLICT", found: "both", accepted });
    if (hasPlace(v)) return asPlace(v, sink);
    if (v.up === undefined) return fail(sink, v, { code: "E_MISSING", key: "up", accepted });
    return { kind: "vehicle", up: v.up };
  });
