/** The skyline of a site file: rows of azimuth and elevation that go round once. Looks at order and number; the line between is the view's. */

import { wrap360 } from "../base/units.ts";
import { type Findings, type Origin, readField, valueAt } from "./findings.ts";
import { describe } from "./quantity.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import { horizonPoint, LEAST_HORIZON_POINTS } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import type { HorizonPoint } from "./types.ts";

/** Azimuths are told apart to this: -359.9 and 0.1 differ by rounding only. */
const SAME_AZIMUTH_DEG = 1e-8;

interface Row {
  readonly origin: Origin;
  /** As written, not yet true. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** The skyline, in the order of its true azimuths; empty when there is none. */
export function readHorizon(source: Source, head: SiteHead, findings: Findings): HorizonPoint[] {
  const rows = readRows(source, findings);
  checkTurn(rows, findings);
  return rows
    .map(({ azimuthDeg, elevationDeg }) => ({
      azimuthDeg: wrap360(azimuthDeg + head.bearingOffsetDeg),
      elevationDeg,
    }))
    .sort((a, b) => a.azimuthDeg - b.azimuthDeg);
}

/** The rows that can be read, one by one, so that a wrong one does not hide the order of the rest. */
function readRows(source: Source, findings: Findings): Row[] {
  const path = ["horizon"];
  if (!source.has(path)) return [];
  const top = { source, path };
  const written = valueAt(source.value, path);
  if (!Array.isArray(written)) {
    findings.add(top, [], "E_TYPE", {
      found: describe(written),
      accepted: "a list of [azimuth, elevation] in degrees",
      next: "for example horizon: [[0, 2], [90, 5], [180, 1]]",
    });
    return [];
  }
  const rows: Row[] = [];
  for (let index = 0; index < written.length; index++) {
    const origin = { source, path: [...path, index] };
    const read = readField(horizonPoint, origin, findings);
    if (read) rows.push({ origin, azimuthDeg: read[0], elevationDeg: read[1] });
  }
  if (written.length < LEAST_HORIZON_POINTS) addTooFew(top, written.length, rows[0], findings);
  return rows;
}

function addTooFew(top: Origin, count: number, only: Row | undefined, findings: Findings): void {
  if (count > 0 && only === undefined) return;
  const level = "leave horizon out where nothing stands above the level";
  const heightDeg = only?.elevationDeg ?? 0;
  findings.add(top, [], "E_EMPTY", {
    found: only === undefined ? "an empty list" : "one point",
    accepted: `at least ${LEAST_HORIZON_POINTS} points [azimuth, elevation], as the skyline runs from one to the next`,
    next:
      heightDeg === 0
        ? level
        : `for the same height all round write [[0, ${heightDeg}], [180, ${heightDeg}]]`,
  });
}

/** Azimuths rise from row to row and stay within a turn; of a list in another order the first row is named, as one sorting mends all. */
function checkTurn(rows: readonly Row[], findings: Findings): void {
  const seen = new Map<number, Row>();
  let isInOrder = true;
  for (const [index, row] of rows.entries()) {
    const [first, previous] = [rows[0], rows[index - 1]];
    const twin = seen.get(cellOf(row));
    if (twin === undefined) seen.set(cellOf(row), row);
    else addTwin(row, twin, findings);
    if (first === undefined || previous === undefined || twin !== undefined || !isInOrder) continue;
    isInOrder = row.azimuthDeg > previous.azimuthDeg && row.azimuthDeg - first.azimuthDeg < 360;
    if (isInOrder) continue;
    if (row.azimuthDeg < previous.azimuthDeg) addDisorder(row, previous, findings);
    else addSecondTurn(row, first, findings);
  }
}

/** The same number for the same direction, however many turns it is written with. */
const cellOf = ({ azimuthDeg }: Row): number =>
  Math.round(wrap360(azimuthDeg) / SAME_AZIMUTH_DEG) % Math.round(360 / SAME_AZIMUTH_DEG);

function addTwin(row: Row, twin: Row, findings: Findings): void {
  const { file, line, column } = twin.origin.source.placeOf(twin.origin.path);
  const isTurned = row.azimuthDeg !== twin.azimuthDeg;
  findings.add(row.origin, [0], "E_DUPLICATE", {
    found: `azimuth ${row.azimuthDeg}, also at ${file}:${line}:${column}${isTurned ? ` as ${twin.azimuthDeg}` : ""}`,
    accepted: "each azimuth once; the last point is joined to the first",
    next: "leave one of the two out",
  });
}

const RISING = "azimuths that rise from row to row, clockwise, within one turn";

/** A list that ends high and starts again low most often goes on past north. */
function addDisorder(row: Row, previous: Row, findings: Findings): void {
  const goesOn = previous.azimuthDeg > 180 && row.azimuthDeg < 180;
  findings.add(row.origin, [0], "E_ORDER", {
    found: `azimuth ${row.azimuthDeg} after ${previous.azimuthDeg}`,
    accepted: RISING,
    next: goesOn
      ? "put the row of the least azimuth first, or write those before north as negative: 350 is -10"
      : "sort the rows by azimuth",
  });
}

/** More than a turn after the first row: sorted as written, but not round the site. */
function addSecondTurn(row: Row, first: Row, findings: Findings): void {
  const turnedDeg = Number((row.azimuthDeg - 360).toFixed(6));
  findings.add(row.origin, [0], "E_ORDER", {
    found: `azimuth ${row.azimuthDeg}, more than a full turn after ${first.azimuthDeg}`,
    accepted: RISING,
    next: `write ${turnedDeg} for ${row.azimuthDeg}, and sort the rows again`,
  });
}
