/** A camera's setting as a plan reports it. */

import type { Thing } from "../site/types.ts";

export interface Setting {
  /** As engraved. */
  readonly stop: number;
  /** As engraved, or by angle and rate. */
  readonly shutterS: number;
  readonly shutterName: string;
  /** Opening in degrees where the shutter is set so; null for a marked time. */
  readonly shutterAngleDeg: number | null;
  readonly filterDensity: number;
  /** Share of (T-0 x sky) samples with everything kept inside the medium's range. */
  readonly holds: number;
  /** Smallest margin, stops; negative: clipped by that much. */
  readonly spareStops: number;
  readonly worst: {
    readonly at: Date;
    /** Of a tracker: seconds after that T-0. */
    readonly tPlusS?: number;
    readonly sky: string;
    readonly thing: Thing;
    readonly stops: number;
    readonly end: "over" | "under";
  };
  /** The body's mean against its place, stops, averaged over the samples; positive: brighter. */
  readonly fromPlaceStops: number;
  /** What no setting could beat. */
  readonly bestPossibleSpareStops: number;
  /** Spare with the plume at the low and high end of its range; null when the plume is not kept or was given. */
  readonly plumeRange: { readonly lowSpareStops: number; readonly highSpareStops: number } | null;
}
