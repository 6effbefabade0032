/** What a map of a plan is made of: things with a shape in the Earth-fixed frame (metres, WGS 84) and figures in plain names. */

import type { Vec3 } from "../../base/vector.ts";

/** Straight between its points. Of a flat shape only latitude and longitude are meant. */
export type MapShape =
  | { readonly kind: "point"; readonly atM: Vec3 }
  | { readonly kind: "line"; readonly pathM: readonly Vec3[]; readonly isFlat: boolean }
  /** Convex; corners in a plane, counterclockwise seen from above, the first not repeated. */
  | { readonly kind: "area"; readonly cornersM: readonly Vec3[] };

export type MapKind =
  | "pad"
  | "camera"
  | "sight line"
  | "field"
  | "structure"
  | "vehicle"
  | "shadow"
  | "sun"
  | "ground track";

export type MapFigure = number | string | boolean | null;

export interface MapThing {
  /** Once per map. */
  readonly key: string;
  readonly kind: MapKind;
  /** Of the camera it belongs to. */
  readonly cameraId: string | null;
  /** Null: its place is not known, or it has no extent; `figures.note` says which. */
  readonly shape: MapShape | null;
  readonly figures: Readonly<Record<string, MapFigure>>;
}
