/**
 * Schema of a whole site file, in the words of the file. The JSON Schema for editors is made from it.
 * What needs more than one key to judge (zones, references, order) is left to the reader.
 */

import * as z from "zod";
import { ascentSchema } from "./ascentSchema.ts";
import { bearingsSchema } from "./bearingsKey.ts";
import { cameraDefaultsSchema, cameraSchema } from "./cameraSchema.ts";
import { choice, fail, map, quantity, tableName, text } from "./fields.ts";
import { bearing, PLACE_WAYS, placeKeys, requiredOf, spotSchema } from "./spotSchema.ts";
import { PROPELLANTS } from "./types.ts";

export const siteKeys = map({
  name: text("Name of the site"),
  zone: text("IANA time zone"),
  ...placeKeys(),
  pressure: quantity(
    "pressureHPa",
    300,
    1100,
    "Air pressure at the site, not reduced to sea level",
  ).optional(),
  temperature: quantity("temperatureC", -90, 60, "Air temperature").optional(),
  ground: quantity("ratio", 0, 1, "Diffuse reflectance of the ground").optional(),
  bearings: bearingsSchema.optional(),
}).meta({ description: "The pad", oneOf: requiredOf(PLACE_WAYS) });

const plumeSchema = map({
  propellant: choice(PROPELLANTS, "Propellant family").optional(),
  luminance: quantity("luminanceCdM2", 1, 1e10, "Luminance; goes before the propellant's").optional(),
  length: quantity("lengthM", 0.1, 5000, "Length as seen from the side").optional(),
  width: quantity("lengthM", 0.1, 1000, "Width as seen from the side").optional(),
})
  .meta({ description: "The plume", anyOf: [{ required: ["propellant"] }, { required: ["luminance"] }] })
  .transform((v, sink) => {
    if (v.propellant !== undefined || v.luminance !== undefined) return v;
    const accepted = `propellant (${PROPELLANTS.join(", ")}) or luminance`;
    return fail(sink, v, { code: "E_MISSING", accepted });
  });

export const vehicleKeys = map({
  name: text("Name of the vehicle").optional(),
  height: quantity("lengthM", 0.5, 300, "Height of the body"),
  diameter: quantity("lengthM", 0.05, 50, "Diameter of the body"),
  base: quantity("lengthM", -100, 300, "Foot of the body above the pad datum").optional(),
  reflectance: quantity("ratio", 0, 1, "Diffuse reflectance of the body").optional(),
  plume: plumeSchema.optional(),
  ascent: ascentSchema.optional(),
}).meta({ description: "The vehicle" });

export const structureKeys = map({
  name: text("Name of the structure, once per site"),
  shape: choice(["box", "cylinder"], "Shape").optional(),
  at: spotSchema,
  width: quantity("lengthM", 0.01, 5000, "Side of a box").optional(),
  depth: quantity("lengthM", 0.01, 5000, "Other side of a box").optional(),
  turn: bearing("Azimuth of the width of a box").optional(),
  diameter: quantity("lengthM", 0.01, 5000, "Diameter of a cylinder").optional(),
  base: quantity("lengthM", -500, 2000, "Foot above the height of its spot").optional(),
  height: quantity("lengthM", 0.01, 2000, "Height above its foot"),
  solidity: quantity("ratio", 0, 1, "Share of the light it stops").optional(),
}).meta({ description: "A thing that hides the sun or shades the body" });

/** One point makes no line. */
export const LEAST_HORIZON_POINTS = 2;

/** A list that starts at 350 and runs on to 370 is the case that is met. */
const PAST_NORTH_NEXT = "where the list runs on past north, start it below: write 350 to 370 as -10 to 10";

export const horizonPoint = z
  .tuple(
    [bearing("Azimuth", PAST_NORTH_NEXT), quantity("angleDeg", -10, 90, "Elevation of the skyline there")],
    { error: () => "[azimuth, elevation] in degrees" },
  )
  .meta({ description: "[azimuth, elevation] of the skyline" });

export const MEDIUM_KINDS = ["negative", "reversal", "sensor"] as const;

export const mediumKeys = map({
  speed: quantity("plain", 0.5, 5_000_000, "ISO speed or exposure index"),
  kind: choice(MEDIUM_KINDS, "Gives the usable range of common practice").optional(),
  under: quantity("stops", 0.1, 20, "Usable range below the mid-tone").optional(),
  over: quantity("stops", 0.1, 20, "Usable range above the mid-tone").optional(),
  blur: quantity("lengthMm", 0.0001, 1, "Largest acceptable blur on the image").optional(),
}).meta({ description: "A film stock or sensor" });

export const windowKeys = map({
  name: text("Name of the window, once per site").optional(),
  opens: text("First T-0, ISO 8601; wall time of the site's zone unless it has an offset or Z"),
  closes: text("Last T-0, ISO 8601"),
}).meta({ description: "An interval of possible T-0s" });

const correction = () => quantity("stops", -10, 10, "Stops to add to the model's light");

export const correctionKeys = map({
  sky: map({
    clear: correction().optional(),
    haze: correction().optional(),
    "bright-cloud": correction().optional(),
    overcast: correction().optional(),
  }).optional(),
  cameras: z.record(z.string(), correction()).meta({ description: "By camera id" }).optional(),
}).meta({ description: "From meter readings" });

export const settingsKeys = map({
  comfort: quantity("stops", 0, 5, "Spare wanted before nearness to the ideal counts").optional(),
  flare: quantity(
    "angleDeg",
    0,
    90,
    "Near frame: this far outside the frame's edge, unless a hood keeps the sun off the glass",
  ).optional(),
  front: quantity("angleDeg", 0, 180, "Phase below which light is front light").optional(),
  back: quantity("angleDeg", 0, 180, "Phase above which light is back light").optional(),
  apart: quantity("stops", 0, 10, "How far model and table may part before a view is flagged").optional(),
  lit: quantity("ratio", 0, 1, "Well lit: least sunlit share of the body's visible width").optional(),
  spare: quantity("stops", -5, 5, "Well lit: least spare of some setting at the T-0").optional(),
  best: quantity("ratio", 0, 1, "Near the best: least part of the best T-0's share").optional(),
  shaded: quantity(
    "ratio",
    0,
    1,
    "Shaded: less than this share of the sunlit side that a camera sees stays in the sun",
  ).optional(),
  cover: quantity(
    "angleDeg",
    0,
    10,
    "A sun in the frame counts as hidden only when its limb lies this deep behind an opaque structure or the skyline",
  ).optional(),
}).meta({ description: "Thresholds" });

export const siteFile = map({
  site: siteKeys,
  vehicle: vehicleKeys.optional(),
  structures: z.array(structureKeys).optional(),
  horizon: z
    .array(horizonPoint)
    .meta({
      description: "The skyline, clockwise: azimuths rise from row to row, within one turn",
      minItems: LEAST_HORIZON_POINTS,
    })
    .optional(),
  floodlights: map({
    illuminance: quantity("illuminanceLx", 0, 1_000_000, "Illuminance on the body"),
    deck: quantity("illuminanceLx", 0, 1_000_000, "Illuminance on the deck").optional(),
  })
    .meta({ description: "Floodlights" })
    .optional(),
  media: z.record(z.string(), mediumKeys).meta({ description: "Film stocks and sensors by name" }).optional(),
  defaults: cameraDefaultsSchema.optional(),
  cameras: z.array(cameraSchema).optional(),
  "cameras-from": tableName("A camera table").optional(),
  windows: z.array(windowKeys).optional(),
  corrections: correctionKeys.optional(),
  settings: settingsKeys.optional(),
}).meta({ title: "padstop site file" });

/** The JSON Schema (2020-12) of a site file. */
export function siteJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(siteFile, { io: "input", target: "draft-2020-12" }) };
}
