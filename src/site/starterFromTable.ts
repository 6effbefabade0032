/** What a starter site file takes from a camera table: its media, and a stand-in for the pad. Its cameras are left to parseSite. */

import { wrap180 } from "../base/units.ts";
import { readCameraTable } from "./csvSource.ts";
import { valueAt } from "./findings.ts";
import { parseQuantity } from "./quantity.ts";
import type { Source } from "./source.ts";
import type { StarterTable } from "./starter.ts";

/** Reads the table in `fileName`; throws a PadstopError with what is wrong with the table itself. */
export function starterFromTable(text: string, fileName: string): StarterTable {
  const { sources } = readCameraTable(text, fileName);
  const media = sources
    .map(({ value }) => valueAt(value, ["medium"]))
    .filter((name) => typeof name === "string");
  return { fileName, media: [...new Set(media)], pad: standIn(sources) };
}

/** Kept this far from a camera, so that none stands where the vehicle does, degrees. */
const APART_DEG = 0.005;
const KEPT_DIGITS = 3;

/** The middle of the cameras' coordinates, to a thousandth of a degree. */
function standIn(sources: readonly Source[]): StarterTable["pad"] {
  const spots = sources.flatMap(({ value }) => {
    const latitude = parseQuantity(valueAt(value, ["at", "latitude"]), "latitudeDeg", -90, 90);
    const longitude = parseQuantity(valueAt(value, ["at", "longitude"]), "longitudeDeg", -180, 180);
    return latitude.ok && longitude.ok ? [[latitude.value, longitude.value] as const] : [];
  });
  const [first] = spots;
  if (first === undefined) return null;
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const middle = mean(spots.map(([latitude]) => latitude));
  // From the first, so that the antimeridian does not matter.
  const east = mean(spots.map(([, longitude]) => wrap180(longitude - first[1])));
  const longitudeDeg = Number(wrap180(first[1] + east).toFixed(KEPT_DIGITS));
  const isClose = spots.some(
    ([latitude, longitude]) =>
      Math.abs(latitude - middle) < APART_DEG && Math.abs(wrap180(longitude - longitudeDeg)) < APART_DEG,
  );
  const aside = isClose ? 2 * APART_DEG * (middle > 0 ? -1 : 1) : 0;
  return { latitudeDeg: Number((middle + aside).toFixed(KEPT_DIGITS)), longitudeDeg };
}
