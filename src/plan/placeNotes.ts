/** What must be said of places and bearings as they were given: the declination used, and squares of a grid that are wide. */

import { atan2Deg } from "../base/units.ts";
import { padDistanceM } from "../site/padDistance.ts";
import type { Camera, Site } from "../site/types.ts";

/** Nearer to the pad than this a wide square turns the view; a square up to this width is no wider than a paced place. */
const NEAR_M = 1000;
const FINE_SQUARE_M = 10;

/** What the bearings of the file were, and how they were made true; nothing for true ones. */
export function bearingNotes({ bearings }: Site): string[] {
  if (bearings.kind === "true") return [];
  const { declinationDeg } = bearings;
  if (bearings.kind === "given") {
    return [`bearings in the site file are turned by its declination of ${eastText(declinationDeg)}`];
  }
  const { errorDeg, date, dateFrom, isWeak } = bearings;
  const from = dateFrom === "window" ? `${date}, the first window,` : date;
  return [
    `bearings in the site file are magnetic: declination ${eastText(declinationDeg)} on ${from} by the World Magnetic Model 2025, good to about ${goodToText(errorDeg)}; iron near the compass not counted`,
    ...(isWeak
      ? [
          "near a magnetic pole: a caution zone of the World Magnetic Model, where a compass turns weakly and its bearings may be degrees off",
        ]
      : []),
  ];
}

/** "8.4° W". */
const eastText = (declinationDeg: number): string =>
  `${Math.abs(declinationDeg).toFixed(1)}° ${declinationDeg < 0 ? "W" : "E"}`;

/** Rounded up to half a degree: a compass is read no better. */
function goodToText(errorDeg: number): string {
  const halves = Math.ceil(errorDeg * 2);
  return halves === 1 ? "half a degree" : `${halves / 2} degree${halves === 2 ? "" : "s"}`;
}

/** A camera near the pad whose square is wide: how far its view may be turned. */
export function squareNotes(site: Site, { at, aim }: Camera): string[] {
  if (at?.kind !== "place" || aim.kind === "axis") return [];
  const squareM = Math.max(at.squareM ?? 0, site.squareM ?? 0);
  const distanceM = padDistanceM(at, site.place);
  if (squareM <= FINE_SQUARE_M || distanceM >= NEAR_M) return [];
  const turnDeg = Math.ceil(atan2Deg(squareM * Math.SQRT1_2, distanceM));
  return [
    `placed by an MGRS square ${squareText(squareM)} wide, ${distanceM.toFixed(0)} m from the pad: its azimuth is good to some ${turnDeg} degrees; give more digits`,
  ];
}

/** "100 m", "1 km". */
const squareText = (squareM: number): string => (squareM < 1000 ? `${squareM} m` : `${squareM / 1000} km`);

/** Which places are middles of squares, and how wide these are. */
export function squareWords(site: Site): string[] {
  const byWidth = new Map<number, string[]>();
  const add = (squareM: number | undefined, who: string): void => {
    if (squareM !== undefined) byWidth.set(squareM, [...(byWidth.get(squareM) ?? []), who]);
  };
  add(site.squareM, "pad");
  for (const { name, at } of site.structures) if (at.kind === "place") add(at.squareM, `structure ${name}`);
  for (const { id, at, aim } of site.cameras) {
    if (at?.kind === "place") add(at.squareM, id);
    if (aim.kind === "place") add(aim.squareM, `aim of ${id}`);
  }
  return [...byWidth]
    .sort(([one], [other]) => one - other)
    .map(
      ([squareM, who]) =>
        `taken at the middle of an MGRS square ${squareText(squareM)} wide: ${who.join(", ")}`,
    );
}
