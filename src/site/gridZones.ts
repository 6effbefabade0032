/**
 * Zones and latitude bands of the grid, with the zones that are cut otherwise in the far north (NGA.SIG.0012, 2014; from
 * memory), and the rules that UTM and MGRS coordinates share. Near the poles another grid is in use: it is not read here.
 */

import { WGS84_SEMI_MAJOR_M } from "../base/constants.ts";
import { cosDeg, RAD_PER_DEG, wrap180 } from "../base/units.ts";
import type { IssueParams } from "./fields.ts";
import type { GridPlace } from "./gridPlace.ts";

/** A place, with the side of the square that was given for it; or what is wrong. */
export type GridResult =
  | { readonly ok: true; readonly place: GridPlace & { readonly squareM: number | null } }
  | { readonly ok: false; readonly fault: IssueParams };

export const gridFault = (
  code: IssueParams["code"],
  found: string,
  accepted: string,
  next: string | null = null,
): { readonly ok: false; readonly fault: IssueParams } => ({
  ok: false,
  fault: { code, found, accepted, next },
});

/** Longer than this is no coordinate, and not worth a pattern's time. */
export const MOST_GRID_CHARS = 60;

/** Bands of 8 degrees from 80 S, the last of 12. */
const BANDS = "CDEFGHJKLMNPQRSTUVWX";
const SOUTH_END_DEG = -80;
const NORTH_END_DEG = 84;
const BAND_DEG = 8;

export const isBand = (letter: string): boolean => letter.length === 1 && BANDS.includes(letter);
export const bandOf = (latitudeDeg: number): string =>
  BANDS.charAt(Math.min(BANDS.length - 1, Math.max(0, Math.floor((latitudeDeg - SOUTH_END_DEG) / BAND_DEG))));
/** Latitudes from and to which a band reaches. */
export function bandSpan(band: string): readonly [southDeg: number, northDeg: number] {
  const southDeg = SOUTH_END_DEG + BAND_DEG * BANDS.indexOf(band);
  return [southDeg, band === "X" ? NORTH_END_DEG : southDeg + BAND_DEG];
}

const SPECIAL_SPANS: Readonly<Record<string, readonly [number, number] | null>> = Object.freeze({
  "31V": [0, 3],
  "32V": [3, 12],
  "31X": [0, 9],
  "32X": null,
  "33X": [9, 21],
  "34X": null,
  "35X": [21, 33],
  "36X": null,
  "37X": [33, 42],
});

/** Longitudes from and to which a zone reaches in a band; null for the three that do not exist. */
export function zoneSpan(zone: number, band: string): readonly [westDeg: number, eastDeg: number] | null {
  const name = `${zone}${band}`;
  const special = Object.hasOwn(SPECIAL_SPANS, name) ? SPECIAL_SPANS[name] : undefined;
  if (special !== undefined) return special;
  const westDeg = 6 * zone - 186;
  return [westDeg, westDeg + 6];
}

const POLES_NEXT = "nearer the poles give latitude and longitude";

/** What is wrong with the zone or its letter; `word` is a band when it is one letter. */
export function zoneFault(zone: number, band: string | null): ReturnType<typeof gridFault> | null {
  if (zone < 1 || zone > 60) return gridFault("E_RANGE", `zone ${zone}`, "zones 1 to 60");
  if (band === null || isBand(band)) return null;
  const next = /^[ABYZ]$/.test(band) ? POLES_NEXT : null;
  return gridFault("E_CHOICE", `latitude band ${band}`, "C to X without I and O", next);
}

/** Grids of neighbouring zones are carried on beside each other, so that a site on the border has one; farther off it is a slip. */
const FARTHEST_BESIDE_M = 100_000;

/** What is wrong with where a point came out: off the grid, or far from the zone that was named. */
export function placeFault(
  zone: number,
  place: GridPlace,
  written: string,
): ReturnType<typeof gridFault> | null {
  const { latitude, longitude } = place;
  if (latitude < SOUTH_END_DEG || latitude > NORTH_END_DEG) {
    const found = `${written}, at ${latitudeText(latitude)}`;
    return gridFault("E_RANGE", found, `latitudes ${-SOUTH_END_DEG}° S to ${NORTH_END_DEG}° N`, POLES_NEXT);
  }
  const [westDeg, eastDeg] = zoneSpan(zone, bandOf(latitude)) ?? [6 * zone - 186, 6 * zone - 180];
  const halfDeg = (eastDeg - westDeg) / 2;
  const beyondDeg = Math.abs(wrap180(longitude - westDeg - halfDeg)) - halfDeg;
  const beyondM = beyondDeg * RAD_PER_DEG * WGS84_SEMI_MAJOR_M * cosDeg(latitude);
  if (beyondM <= FARTHEST_BESIDE_M) return null;
  return gridFault(
    "E_RANGE",
    `${written}, ${Math.round(beyondM / 1000)} km outside zone ${zone}`,
    `a place in the zone, or up to ${FARTHEST_BESIDE_M / 1000} km beside it`,
    "check zone and easting",
  );
}

/** "45.2° S". */
export const latitudeText = (latitudeDeg: number): string =>
  `${Math.abs(latitudeDeg).toFixed(1)}° ${latitudeDeg < 0 ? "S" : "N"}`;
