/** How the vehicle leaves, as a site gives it: metres, seconds after T-0, degrees. Part of `types.ts`. */

/** The vehicle's foot at a time after T-0, metres from its place on the pad, in the pad's tangent plane. */
export interface AscentPoint {
  readonly tPlusS: number;
  readonly eastM: number;
  readonly northM: number;
  readonly upM: number;
}

/** The same by the way along the ground and the height above it. */
export interface DownrangePoint {
  readonly tPlusS: number;
  readonly downrangeM: number;
  readonly altitudeM: number;
}

export type AscentTable =
  | { readonly kind: "enu"; readonly points: readonly AscentPoint[] }
  | { readonly kind: "downrange"; readonly points: readonly DownrangePoint[] };

/** Elevation of the thrust above the local horizontal at a time after T-0. */
export interface PitchPoint {
  readonly tPlusS: number;
  readonly pitchDeg: number;
}

/** How the vehicle leaves: a table, or parameters to compute one from. */
export type Ascent =
  | {
      readonly kind: "table";
      readonly fileName: string;
      /** Needed by a table of downrange and altitude; else null. */
      readonly headingDeg: number | null;
      readonly table: AscentTable;
    }
  | {
      readonly kind: "parameters";
      /** Null: straight up. */
      readonly headingDeg: number | null;
      readonly thrustToWeight: number;
      /** Share of the lift-off mass burned per second; null when not given. */
      readonly massFlowPerS: number | null;
      /** How long the engines burn, seconds; null when not given. */
      readonly burnS: number | null;
      /** Straight between rows, held before the first and after the last; null when not given. */
      readonly pitch: readonly PitchPoint[] | null;
    };
