/**
 * The columns a camera table may have: the camera keys of a site file with dots, what each holds, and the other words that
 * are taken for it. A word is listed only where it can mean nothing else in a table of cameras.
 */

import type { QuantityKind } from "./quantityKinds.ts";

export interface CameraColumnRule {
  /** One value, several in a cell, or several words. */
  readonly cell: "one" | "list" | "words";
  /** Null for text. */
  readonly quantity: QuantityKind | null;
  /** Other headers for it, in lower case with dots for blanks. */
  readonly also?: readonly string[];
}

const rule = (
  quantity: QuantityKind | null,
  also: readonly string[] = [],
  cell: CameraColumnRule["cell"] = "one",
): CameraColumnRule => ({ cell, quantity, also });

export const CAMERA_COLUMNS: Readonly<Record<string, CameraColumnRule>> = Object.freeze({
  id: rule(null, ["camera", "camera.id", "name"]),
  "at.bearing": rule("angleDeg", ["bearing"]),
  "at.range": rule("lengthM", ["range", "distance"]),
  "at.up": rule("lengthM"),
  "at.latitude": rule("latitudeDeg", ["latitude", "lat"]),
  "at.longitude": rule("longitudeDeg", ["longitude", "lon"]),
  "at.utm": rule(null),
  "at.mgrs": rule(null),
  "at.height": rule("lengthM"),
  "aim.up": rule("lengthM"),
  "aim.latitude": rule("latitudeDeg"),
  "aim.longitude": rule("longitudeDeg"),
  "aim.utm": rule(null),
  "aim.mgrs": rule(null),
  "aim.height": rule("lengthM"),
  azimuth: rule("angleDeg"),
  elevation: rule("angleDeg"),
  roll: rule("angleDeg"),
  "lens.focal": rule("lengthMm", ["focal", "focal.length"]),
  "lens.stops": rule("fNumber", ["stops"], "list"),
  "lens.loss": rule("stops"),
  "lens.hood.length": rule("lengthMm", ["hood.length"]),
  "lens.hood.diameter": rule("lengthMm", ["hood.diameter"]),
  gate: rule(null),
  "gate.width": rule("lengthMm"),
  "gate.height": rule("lengthMm"),
  rate: rule("rateHz", ["frame.rate"]),
  "shutter.angle": rule("angleDeg", [], "list"),
  "shutter.time": rule("timeS", ["shutter.speed", "exposure.time"], "list"),
  filters: rule("density", ["filter"], "list"),
  loss: rule("stops"),
  medium: rule(null, ["film"]),
  keep: rule(null, [], "words"),
  weight: rule("plain"),
  "track.part": rule(null),
  "track.up": rule("lengthM"),
  "track.offset": rule("ratio"),
  "track.slew.azimuth": rule("turnDegS"),
  "track.slew.elevation": rule("turnDegS"),
  notes: rule(null, ["note", "comments"]),
});

/** Headers, in lower case with dots, to their key. */
export const CAMERA_HEADERS: ReadonlyMap<string, string> = new Map(
  Object.entries(CAMERA_COLUMNS).flatMap(([key, { also = [] }]) =>
    [key, ...also].map((word) => [word, key] as const),
  ),
);
