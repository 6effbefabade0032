/** The one call of magvar that is used; the package brings no types. */
declare module "magvar" {
  /** Degrees to 0.01 and nT to 0.1, at a height in km. Only for the years of its model: beyond, it complains aloud and answers all the same. */
  export function calculateMagneticField(
    decimalYear: number,
    latitude: number,
    longitude: number,
    altitudeKm: number,
  ): { readonly declination: number; readonly h: number };
}
