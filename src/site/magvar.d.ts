/** The one call of magvar that is used; the package brings no types. */
declare module "magvar" {
  /** Degrees to 0.01 and nT to 0.1, at a height in km; out of its years it writes to the console. */
  export function calculateMagneticField(
    decimalYear: number,
    latitude: number,
    longitude: number,
    altitudeKm: number,
  ): { readonly declination: number; readonly h: number };
}
