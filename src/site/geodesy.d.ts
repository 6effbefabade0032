/** The one class of geodesy that is used; the package brings no types. */
declare module "geodesy/utm.js" {
  class Utm {
    constructor(
      zone: number,
      hemisphere: "N" | "S",
      eastingM: number,
      northingM: number,
      datum: undefined,
      convergence: null,
      scale: null,
      verifyEN: boolean,
    );
    toLatLon(): { readonly lat: number; readonly lon: number };
  }

  export = Utm;
}
