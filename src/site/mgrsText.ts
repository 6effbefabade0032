/**
 * "29TMK6823098120": a square of the Military Grid Reference System to the place of its middle, and how wide it is. Letters
 * of columns and rows after NGA.SIG.0012 (2014; from memory), lettering for WGS 84.
 */

import { type GridPlace, gridPlace } from "./gridPlace.ts";
import {
  bandSpan,
  type GridResult,
  gridFault,
  MOST_GRID_CHARS,
  placeFault,
  zoneFault,
  zoneSpan,
} from "./gridZones.ts";
import { shortText } from "./sourcePlaces.ts";

export const MGRS_ACCEPTED =
  "zone, latitude band, two letters of the square, and as many digits east as north, such as 29TMK6823098120";

const FORM = /^(\d{1,2})\s*([A-Z])\s*([A-Z])\s*([A-Z])\s*(\d*)\s*(\d*)$/;

/** Columns from 100 km east, by zone modulo 3 (from 0 for zone 1); rows from the equator, five letters on in even zones. */
const COLUMNS = ["ABCDEFGH", "JKLMNPQR", "STUVWXYZ"] as const;
const ROWS = "ABCDEFGHJKLMNPQRSTUV";
const EVEN_ZONE_SHIFT = 5;
const SQUARE_M = 100_000;
/** Row letters come again after this. */
const ROUND_M = ROWS.length * SQUARE_M;
const FALSE_NORTHING_M = 10_000_000;

const LEAST_PLACES = 2;
const MOST_PLACES = 5;
const DIGITS_ACCEPTED = `${2 * LEAST_PLACES} (1 km) to ${2 * MOST_PLACES} (1 m) digits, as many east as north`;

export function parseMgrs(text: string): GridResult {
  const written = text.trim().toUpperCase();
  const short = shortText(written);
  const [, zoneText, band = "", column = "", row = "", first = "", second = ""] = formOf(written);
  if (zoneText === undefined) return gridFault("E_TYPE", short, MGRS_ACCEPTED, formNext(written));
  const zone = Number(zoneText);
  const fault =
    zoneFault(zone, band) ??
    missingZone(zone, band) ??
    letterFault(zone, column, row) ??
    digitFault(first, second);
  if (fault !== null) return fault;
  const digits = first + second;
  const places = digits.length / 2;
  const squareM = SQUARE_M / 10 ** places;
  const middleM = (part: string): number => (Number(part) + 0.5) * squareM;
  const columnM = SQUARE_M * (1 + columnsOf(zone).indexOf(column));
  const rowIndex = (ROWS.indexOf(row) - (zone % 2 === 0 ? EVEN_ZONE_SHIFT : 0) + ROWS.length) % ROWS.length;
  const place = placeInBand(zone, band, {
    eastingM: columnM + middleM(digits.slice(0, places)),
    roundM: rowIndex * SQUARE_M + middleM(digits.slice(places)),
    squareM,
  });
  if (place === null) {
    const found = `${short}, whose square ${column}${row} lies outside band ${band}`;
    return gridFault("E_RANGE", found, `a square of zone and band ${zone}${band}`, "check the letters");
  }
  return placeFault(zone, place, short) ?? { ok: true, place: { ...place, squareM } };
}

const formOf = (written: string): readonly string[] =>
  (written.length <= MOST_GRID_CHARS ? FORM.exec(written) : null) ?? [];

/** References near the poles have no zone. */
const formNext = (written: string): string | null =>
  /^[ABYZ]\s*[A-Z]/.test(written) ? "nearer the poles give latitude and longitude" : null;

const columnsOf = (zone: number): string => COLUMNS[(zone - 1) % COLUMNS.length] ?? "";

function missingZone(zone: number, band: string): ReturnType<typeof gridFault> | null {
  if (zoneSpan(zone, band) !== null) return null;
  return gridFault("E_RANGE", `zone ${zone}${band}, which does not exist`, "31X, 33X, 35X or 37X");
}

function letterFault(zone: number, column: string, row: string): ReturnType<typeof gridFault> | null {
  const columns = columnsOf(zone);
  if (!columns.includes(column)) {
    return gridFault("E_CHOICE", `column letter ${column} in zone ${zone}`, [...columns].join(", "));
  }
  return ROWS.includes(row) ? null : gridFault("E_CHOICE", `row letter ${row}`, "A to V without I and O");
}

function digitFault(first: string, second: string): ReturnType<typeof gridFault> | null {
  const count = first.length + second.length;
  if (second !== "" && first.length !== second.length) {
    return gridFault("E_TYPE", `${first.length} digits east and ${second.length} north`, DIGITS_ACCEPTED);
  }
  if (count % 2 === 1) return gridFault("E_TYPE", `${count} digits`, DIGITS_ACCEPTED);
  if (count >= 2 * LEAST_PLACES && count <= 2 * MOST_PLACES) return null;
  return gridFault("E_RANGE", count === 0 ? "no digits" : `${count} digits`, DIGITS_ACCEPTED);
}

/** Degrees of latitude in a metre of northing, a little more than anywhere. */
const MOST_DEG_PER_M = 1 / 110_000;

/** The round of row letters that puts the middle of the square into the band; a square that its edge cuts counts. */
function placeInBand(
  zone: number,
  band: string,
  {
    eastingM,
    roundM,
    squareM,
  }: { readonly eastingM: number; readonly roundM: number; readonly squareM: number },
): GridPlace | null {
  const isSouth = band < "N";
  const [southDeg, northDeg] = bandSpan(band);
  const cutDeg = (squareM / 2) * MOST_DEG_PER_M;
  for (let northingM = roundM; northingM <= FALSE_NORTHING_M; northingM += ROUND_M) {
    const place = gridPlace({ zone, isSouth, eastingM, northingM });
    if (place.latitude >= southDeg - cutDeg && place.latitude <= northDeg + cutDeg) return place;
  }
  return null;
}
