/**
 * The sun by a second and wholly independent chain: VSOP87 positions, nutation and sidereal time of astronomia (Meeus's book as a
 * library), parallax and horizon worked out here with vectors.
 */

import { createRequire } from "node:module";

interface Astronomia {
  readonly planetposition: { readonly Planet: new (vsop87: unknown) => unknown };
  readonly solar: {
    apparentEquatorialVSOP87(earth: unknown, jde: number): { ra: number; dec: number; range: number };
  };
  /** Seconds of time. */
  readonly sidereal: { apparent(jd: number): number };
}

// The library has no types, so it is loaded at run time.
const load = createRequire(import.meta.url);
const { planetposition, solar, sidereal } = load("astronomia") as Astronomia;
const earth = new planetposition.Planet(
  (load("astronomia/data") as { default: { vsop87Bearth: unknown } }).default.vsop87Bearth,
);

const RAD = Math.PI / 180;
/** IAU 2012. */
const AU_M = 149_597_870_700;

/** Airless topocentric azimuth and elevation in degrees; universal time taken as UTC. */
export function astronomiaSun(
  place: { latitudeDeg: number; longitudeDeg: number; heightM: number },
  at: Date,
  deltaTS: number,
): { azimuthDeg: number; elevationDeg: number } {
  const jd = at.getTime() / 86_400_000 + 2_440_587.5;
  const { ra, dec, range } = solar.apparentEquatorialVSOP87(earth, jd + deltaTS / 86_400);
  const hourRad = (sidereal.apparent(jd) / 240) * RAD - ra;
  const distanceM = range * AU_M;
  const [phi, lambda] = [place.latitudeDeg * RAD, place.longitudeDeg * RAD];
  // WGS 84 (NIMA TR8350.2).
  const e2 = 0.00669437999014;
  const crossM = 6_378_137 / Math.sqrt(1 - e2 * Math.sin(phi) ** 2);
  const levelM = (crossM + place.heightM) * Math.cos(phi);
  const x = distanceM * Math.cos(dec) * Math.cos(hourRad) - levelM * Math.cos(lambda);
  const y = -distanceM * Math.cos(dec) * Math.sin(hourRad) - levelM * Math.sin(lambda);
  const z = distanceM * Math.sin(dec) - (crossM * (1 - e2) + place.heightM) * Math.sin(phi);
  const outward = x * Math.cos(lambda) + y * Math.sin(lambda);
  const east = -x * Math.sin(lambda) + y * Math.cos(lambda);
  const north = -outward * Math.sin(phi) + z * Math.cos(phi);
  const up = outward * Math.cos(phi) + z * Math.sin(phi);
  const azimuthDeg = Math.atan2(east, north) / RAD;
  return {
    azimuthDeg: (azimuthDeg + 360) % 360,
    elevationDeg: Math.atan2(up, Math.hypot(east, north)) / RAD,
  };
}
