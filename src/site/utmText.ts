/**
 * "29 north 468230 4998120": zone, hemisphere or latitude band, easting and northing in metres, to a place. A lone S is a
 * band in the north (32 to 40 degrees) to some and the southern hemisphere to others: it is refused where both can be meant.
 */

import { type GridPlace, type GridPoint, gridPlace } from "./gridPlace.ts";
import {
  bandOf,
  bandSpan,
  type GridResult,
  gridFault,
  latitudeText,
  MOST_GRID_CHARS,
  placeFault,
  zoneFault,
} from "./gridZones.ts";
import { shortText } from "./sourcePlaces.ts";

export const UTM_ACCEPTED =
  "zone, north or south (or the latitude band), easting and northing in metres, such as 29 north 468230 4998120";

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const FORM = new RegExp(
  String.raw`^(\d{1,2})\s*([a-z]+)[\s,]+${NUMBER}\s*(?:m|m?e)?[\s,]+${NUMBER}\s*(?:m|m?n)?$`,
  "i",
);

/** Eastings that the grid has at any latitude, with room beside the zone. */
const EASTINGS_M = [100_000, 900_000] as const;
const MOST_NORTHING_M = 10_000_000;
/** A band's edge is told apart to a hundred metres. */
const BAND_EDGE_DEG = 0.001;

export function parseUtm(text: string): GridResult {
  const written = text.trim();
  const [, zoneText, word = "", easting, northing] = formOf(written);
  if (zoneText === undefined) return gridFault("E_TYPE", shortText(written), UTM_ACCEPTED, formNext(written));
  const zone = Number(zoneText);
  const letter = word.toUpperCase();
  const band = /^(N|S|NORTH|SOUTH)$/.test(letter) ? null : letter;
  const [eastingM, northingM] = [Number(easting), Number(northing)];
  const early = zoneFault(zone, band) ?? metresFault(eastingM, northingM);
  if (early !== null) return early;
  const point = { zone, eastingM, northingM };
  const isSouth = band === null ? letter.startsWith("S") : band < "N";
  const place = gridPlace({ ...point, isSouth });
  const fault =
    (letter === "S" ? bareFault(point) : null) ??
    placeFault(zone, place, shortText(written)) ??
    (band === null ? null : bandFault(band, place, northingM));
  return fault ?? { ok: true, place: { ...place, squareM: null } };
}

const formOf = (written: string): readonly string[] =>
  (written.length <= MOST_GRID_CHARS ? FORM.exec(written) : null) ?? [];

/** Two numbers after the zone and no letter is the form most often met. */
const formNext = (written: string): string | null =>
  /^\d{1,2}[\s,]+\d/.test(written) ? "write north or south after the zone" : null;

function metresFault(eastingM: number, northingM: number): ReturnType<typeof gridFault> | null {
  const [least, most] = EASTINGS_M;
  if (eastingM < least || eastingM > most) {
    const isSwapped = northingM >= least && northingM <= most;
    const next = isSwapped ? "write the easting before the northing" : null;
    return gridFault("E_RANGE", `easting ${eastingM} m`, `${least} to ${most} m`, next);
  }
  if (northingM <= MOST_NORTHING_M) return null;
  return gridFault("E_RANGE", `northing ${northingM} m`, `0 to ${MOST_NORTHING_M} m`);
}

/** A lone S, where the northing fits the band as well as the southern hemisphere. */
function bareFault(point: Omit<GridPoint, "isSouth">): ReturnType<typeof gridFault> | null {
  const north = gridPlace({ ...point, isSouth: false });
  if (bandOf(north.latitude) !== "S") return null;
  const south = gridPlace({ ...point, isSouth: true });
  const { zone } = point;
  return gridFault(
    "E_CONFLICT",
    `${zone}S, which can be latitude band S (${latitudeText(north.latitude)}) or the southern hemisphere (${latitudeText(south.latitude)})`,
    "north or south after the zone",
    `write ${zone} north or ${zone} south`,
  );
}

function bandFault(
  band: string,
  { latitude }: GridPlace,
  northingM: number,
): ReturnType<typeof gridFault> | null {
  const [southDeg, northDeg] = bandSpan(band);
  if (latitude >= southDeg - BAND_EDGE_DEG && latitude <= northDeg + BAND_EDGE_DEG) return null;
  return gridFault(
    "E_CONFLICT",
    `band ${band} and northing ${northingM} m, at ${latitudeText(latitude)} in band ${bandOf(latitude)}`,
    "the band of the northing, or north or south",
    "check letter and northing",
  );
}
