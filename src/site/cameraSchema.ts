/** Schema of one camera, and of the keys that `defaults` may give for all of them. */

import * as z from "zod";
import { choice, fail, map, oneOrList, quantity, text } from "./fields.ts";
import { GATE_NAMES, gateNamed } from "./gates.ts";
import { nearest } from "./nearest.ts";
import { describe } from "./quantity.ts";
import { aimSchema, bearing, spotSchema } from "./spotSchema.ts";
import { type Gate, type Shutter, THINGS, TRACK_PARTS, type Track } from "./types.ts";

const hoodSchema = map({
  length: quantity("lengthMm", 0.1, 5000, "How far the hood stands out before the front element"),
  diameter: quantity("lengthMm", 1, 2000, "Inner diameter of the hood's opening"),
}).meta({ description: "Lens hood: inside the flare margin, a sun it keeps off the glass is not near" });

const lensSchema = map({
  focal: quantity("lengthMm", 1, 20_000, "Focal length").optional(),
  stops: oneOrList(quantity("fNumber", 0.5, 128, "Marked stop"), "Marked stops, as engraved").optional(),
  loss: quantity("stops", 0, 10, "Light lost in the glass").optional(),
  hood: hoodSchema.optional(),
}).meta({ description: "The lens; keys a camera leaves out come from defaults" });

const gateName = z
  .unknown()
  .transform((value, sink): Gate => {
    const accepted = `${GATE_NAMES.join(", ")}; or { width, height } in mm`;
    if (value === undefined) return fail(sink, value, { code: "E_MISSING", accepted });
    const found = describe(value);
    if (typeof value !== "string") return fail(sink, value, { code: "E_TYPE", found, accepted });
    const suggestion = nearest(value, GATE_NAMES);
    return gateNamed(value) ?? fail(sink, value, { code: "E_CHOICE", found, accepted, suggestion });
  })
  .meta({ type: "string", examples: [...GATE_NAMES] });

const gateSize = map({
  width: quantity("lengthMm", 0.5, 300, "Width of the image area"),
  height: quantity("lengthMm", 0.5, 300, "Height of the image area"),
}).transform((v): Gate => ({ name: null, widthMm: v.width, heightMm: v.height }));

const shutterMap = map({
  angle: oneOrList(
    quantity("angleDeg", 0.1, 360, "Opening angle"),
    "Opening angle, or a list to choose from",
  ).optional(),
  time: oneOrList(
    quantity("timeS", 1e-6, 3600, "Marked time"),
    "Marked time, or a list to choose from",
  ).optional(),
})
  .meta({ oneOf: [{ required: ["angle"] }, { required: ["time"] }] })
  .transform((v, sink): Shutter[] => {
    const accepted = "either angle or time; a list of { angle } and { time } to choose from both";
    if (v.angle && v.time) return fail(sink, v, { code: "E_CONFLICT", found: "angle and time", accepted });
    if (v.angle) return v.angle.map((angleDeg): Shutter => ({ kind: "angle", angleDeg }));
    if (v.time) return v.time.map((markedS): Shutter => ({ kind: "time", markedS }));
    return fail(sink, v, { code: "E_MISSING", accepted });
  });

const turnRate = (what: string) =>
  quantity("turnDegS", 0.01, 1000, `Fastest turn of the mount in ${what}`).optional();

const slewSchema = map({ azimuth: turnRate("azimuth"), elevation: turnRate("elevation") })
  .meta({
    description: "The most the mount can do; without it no turn is too fast",
    minProperties: 1,
  })
  .transform((v, sink) => {
    if (v.azimuth !== undefined || v.elevation !== undefined) return v;
    return fail(sink, v, { code: "E_MISSING", accepted: "azimuth, elevation or both, degrees/s" });
  });

const trackSchema = map({
  part: choice(TRACK_PARTS, "Part of the vehicle the tracker follows").optional(),
  up: quantity("lengthM", 0, 300, "Height along the vehicle the tracker follows, above its foot").optional(),
  offset: quantity(
    "ratio",
    -0.5,
    0.5,
    "Where what it follows stands in the picture: share of the gate's height above its middle",
  ).optional(),
  slew: slewSchema.optional(),
})
  .meta({
    description: "A tracker follows the vehicle",
    oneOf: [{ required: ["part"] }, { required: ["up"] }],
  })
  .transform((v, sink): Track => {
    const accepted = `part (${TRACK_PARTS.join(", ")}) or up`;
    const mount = {
      offsetShare: v.offset ?? 0,
      mostAzimuthDegS: v.slew?.azimuth ?? null,
      mostElevationDegS: v.slew?.elevation ?? null,
    };
    if (v.part && v.up !== undefined)
      return fail(sink, v, { code: "E_CONFLICT", found: "part and up", accepted });
    if (v.part) return { kind: "part", part: v.part, ...mount };
    if (v.up !== undefined) return { kind: "up", upM: v.up, ...mount };
    return fail(sink, v, { code: "E_MISSING", accepted });
  });

/** Every camera key but the id. */
export const cameraDefaultsSchema = map({
  at: spotSchema.optional(),
  aim: aimSchema.optional(),
  azimuth: bearing("Azimuth of the optical axis").optional(),
  elevation: quantity("angleDeg", -90, 90, "Elevation of the optical axis").optional(),
  roll: quantity("angleDeg", -180, 180, "Roll, clockwise seen from behind the camera").optional(),
  lens: lensSchema.optional(),
  gate: z
    .union([gateName, gateSize])
    .meta({ description: "Image area: a name, or width and height in mm" })
    .optional(),
  rate: quantity("rateHz", 0.001, 1_000_000, "Frame rate").optional(),
  shutter: z
    .union([shutterMap, z.array(shutterMap).min(1).max(200)])
    .transform((value): Shutter[] => value.flat())
    .meta({ description: "Shutter settings to choose from" })
    .optional(),
  filters: oneOrList(
    quantity("density", 0, 8, "Optical density"),
    "Filters in the kit, by optical density",
  ).optional(),
  loss: quantity("stops", 0, 10, "Light lost in a housing window and alike").optional(),
  medium: text("A name under media").optional(),
  keep: oneOrList(
    choice(THINGS, "A thing in the picture"),
    "What must lie inside the medium's range",
  ).optional(),
  weight: quantity("plain", 0, 1000, "Weight of the view in rankings").optional(),
  track: trackSchema.optional(),
  notes: text("Free text for the crew's card", 2000, true).optional(),
}).meta({ description: "Camera keys for every camera that is silent about them" });

/** One entry of `cameras`. */
export const cameraSchema = map({
  id: text("Name of the camera, once per site"),
  ...cameraDefaultsSchema.shape,
}).meta({
  description: "A camera: needs gate, lens.focal and an aim, an azimuth or track",
});
