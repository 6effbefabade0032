/** Schema of where things stand and what cameras aim at: a bearing and range, coordinates, or a height on the axis. */

import * as z from "zod";
import { fail, map, quantity } from "./fields.ts";
import type { GridPlace } from "./gridPlace.ts";
import type { GridResult } from "./gridZones.ts";
import { MGRS_ACCEPTED, parseMgrs } from "./mgrsText.ts";
import { describe } from "./quantity.ts";
import { parseUtm, UTM_ACCEPTED } from "./utmText.ts";

/** A place as written; a missing height is filled by the reader. */
export interface WrittenPlace {
  readonly kind: "place";
  readonly latitude: number;
  readonly longitude: number;
  readonly height: number | null;
  /** Side of the square of a grid whose middle it is, metres; null for a point. */
  readonly squareM: number | null;
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

/** Coordinates of a grid as one text. */
const gridText = (read: (text: string) => GridResult, what: string, accepted: string) =>
  z
    .unknown()
    .transform((value, sink): WrittenGrid => {
      if (typeof value !== "string")
        return fail(sink, value, { code: "E_TYPE", found: describe(value), accepted });
      const result = read(value);
      return result.ok ? result.place : fail(sink, value, result.fault);
    })
    .meta({ description: `${what}, WGS 84: ${accepted}`, type: "string" });

type WrittenGrid = GridPlace & { readonly squareM: number | null };

/** Keys of coordinates, in one of these ways. */
export const PLACE_WAYS = [["latitude", "longitude"], ["utm"], ["mgrs"]] as const;
export const PLACE_ACCEPTED = "latitude and longitude, or utm, or mgrs";
export const placeKeys = () => ({
  latitude: latitude().optional(),
  longitude: longitude().optional(),
  utm: gridText(parseUtm, "UTM coordinates", UTM_ACCEPTED).optional(),
  mgrs: gridText(parseMgrs, "MGRS square, its middle is taken", MGRS_ACCEPTED).optional(),
  height: height().optional(),
});

interface PlaceKeys {
  readonly latitude?: number | undefined;
  readonly longitude?: number | undefined;
  readonly utm?: WrittenGrid | undefined;
  readonly mgrs?: WrittenGrid | undefined;
  readonly height?: number | undefined;
}

const hasPlace = (v: PlaceKeys): boolean =>
  [v.latitude, v.longitude, v.utm, v.mgrs, v.height].some((given) => given !== undefined);

/** The keys of a second way beside a first. */
const waysGiven = (v: PlaceKeys): string[] =>
  PLACE_WAYS.flatMap((keys) => keys.filter((key) => v[key] !== undefined).slice(0, 1));

/** For the JSON Schema: one of these sets of keys, and no second one. */
export const requiredOf = (ways: readonly (readonly string[])[]): { required: string[] }[] =>
  ways.map((keys) => ({ required: [...keys] }));

type Sink = Parameters<typeof fail>[0];

function asPlace(v: PlaceKeys, sink: Sink): WrittenPlace {
  const ways = waysGiven(v);
  if (ways.length > 1) {
    return fail(sink, v, { code: "E_CONFLICT", found: ways.join(" and "), accepted: PLACE_ACCEPTED });
  }
  const grid = v.utm ?? v.mgrs;
  if (grid !== undefined) return { kind: "place", ...grid, height: v.height ?? null };
  if (v.latitude === undefined)
    return fail(sink, v, { code: "E_MISSING", key: "latitude", accepted: "-90 to 90 degrees" });
  if (v.longitude === undefined) {
    return fail(sink, v, { code: "E_MISSING", key: "longitude", accepted: "-180 to 180 degrees" });
  }
  const { latitude: north, longitude: east } = v;
  return { kind: "place", latitude: north, longitude: east, height: v.height ?? null, squareM: null };
}

/** `at` of cameras and structures. */
export const spotSchema = map({
  bearing: bearing("Bearing from the pad").optional(),
  range: quantity("lengthM", 0, 200_000, "Horizontal distance from the pad").optional(),
  up: quantity("lengthM", -500, 9000, "Height above the pad datum").optional(),
  ...placeKeys(),
})
  .meta({
    description: "Where it stands: bearing and range from the pad, or coordinates",
    oneOf: requiredOf([["bearing", "range"], ...PLACE_WAYS]),
  })
  .transform((v, sink): WrittenSpot => {
    const polar = [v.bearing, v.range, v.up].some((n) => n !== undefined);
    const accepted = `bearing and range (and up), or ${PLACE_ACCEPTED} (and height)`;
    if (polar && hasPlace(v)) return fail(sink, v, { code: "E_CONFLICT", found: "both", accepted });
    if (hasPlace(v)) return asPlace(v, sink);
    if (v.bearing === undefined) return fail(sink, v, { code: "E_MISSING", key: "bearing", accepted });
    if (v.range === undefined) return fail(sink, v, { code: "E_MISSING", key: "range", accepted });
    return { kind: "bearing", bearing: v.bearing, range: v.range, up: v.up ?? 0 };
  });

/** `aim` of a camera. */
export const aimSchema = map({
  up: quantity("lengthM", -500, 50_000, "Height on the vehicle's axis, above the pad datum").optional(),
  ...placeKeys(),
})
  .meta({
    description: "What it aims at: a height on the vehicle's axis, or coordinates",
    oneOf: requiredOf([["up"], ...PLACE_WAYS]),
  })
  .transform((v, sink): WrittenAim => {
    const accepted = `up, or ${PLACE_ACCEPTED} (and height)`;
    if (v.up !== undefined && hasPlace(v))
      return fail(sink, v, { code: "E_CONFLICT", found: "both", accepted });
    if (hasPlace(v)) return asPlace(v, sink);
    if (v.up === undefined) return fail(sink, v, { code: "E_MISSING", key: "up", accepted });
    return { kind: "vehicle", up: v.up };
  });
