/** What the bearings of a site file were measured from. In a `Site` all are true: this is kept to be told. */

export type Bearings =
  | { readonly kind: "true" }
  /** Turned by a declination that the file gives, degrees east. */
  | { readonly kind: "given"; readonly declinationDeg: number }
  | MagneticBearings;

/** Turned by the World Magnetic Model. */
export interface MagneticBearings {
  readonly kind: "magnetic";
  /** Degrees east. */
  readonly declinationDeg: number;
  /** Standard error of it, degrees; iron near a compass comes on top. */
  readonly errorDeg: number;
  /** The date it is for, in the site's zone: 2027-04-18. */
  readonly date: string;
  /** The date is that of the first window, or written beside the word. */
  readonly dateFrom: "window" | "file";
  /** So near a magnetic pole that a compass is to be used with caution. */
  readonly isWeak: boolean;
}
