/** Whether the rows of an ascent table can be the way of a vehicle's foot: order, gaps, start, range, speed. */

import { type Problem, type ProblemCode, problem } from "../base/problem.ts";
import type { AscentColumn, AscentHeader, ColumnName } from "./ascentColumns.ts";
import type { CsvRow } from "./csvCells.ts";
import { shortText } from "./sourcePlaces.ts";

/** A row in metres and seconds; null where the cell could not be read. */
export interface MeasuredRow {
  readonly row: CsvRow;
  readonly tPlusS: number | null;
  readonly coordinatesM: readonly (number | null)[];
}

const EARLIEST_S = -60;
const LATEST_S = 3600;
const LATEST_START_S = 10;
/** Between rows farther apart the way is no more known. */
const GAP_S = 30;
/** The foot's place on the pad, to this. */
const START_TOLERANCE_M = 1;
const FARTHEST_M = 2_000_000;
const LOWEST_M = -50;
const HEIGHTS: readonly ColumnName[] = ["up", "altitude"];
/** Above any speed of an ascent from the ground to orbit or beyond: more is a wrong unit. */
const FASTEST_KM_S = 15;

/** All that is wrong with the rows, up to `most` problems. */
export function ascentProblems(rows: readonly MeasuredRow[], columns: AscentHeader, most: number): Problem[] {
  const problems: Problem[] = [];
  let before: MeasuredRow | null = null;
  for (const row of rows) {
    if (problems.length >= most) break;
    if (before === null) problems.push(...startProblems(row, columns));
    const count = problems.length;
    checkTime(row, before, columns, problems);
    checkRange(row, before, columns, problems);
    if (before !== null && problems.length === count) checkSpeed(row, before, columns, problems);
    before = row;
  }
  if (before !== null) problems.push(...endProblems(before, columns));
  return problems;
}

type Parts = Readonly<Record<"found" | "accepted", string>> & { readonly next?: string };

const at = ({ row }: MeasuredRow, column: AscentColumn, code: ProblemCode, parts: Parts): Problem =>
  problem(code, shortText(column.written), { ...parts, place: row.placeOf(column.index) });

/** A figure for messages, without what binary fractions add. */
const figure = (value: number): number => Number(value.toPrecision(7));
const clock = (tPlusS: number): string => `T${tPlusS < 0 ? "" : "+"}${figure(tPlusS)} s`;

const inUnit = (valueM: number, { factor, unit }: AscentColumn): string =>
  `${figure(valueM / factor)} ${unit}`;

/** The table tells the way from the place at rest: it cannot begin elsewhere, nor in flight. */
function startProblems(first: MeasuredRow, { time, coordinates }: AscentHeader): Problem[] {
  const problems: Problem[] = [];
  if (first.tPlusS !== null && first.tPlusS > LATEST_START_S && first.tPlusS <= LATEST_S) {
    problems.push(
      at(first, time, "E_RANGE", {
        found: `${clock(first.tPlusS)} in the first row`,
        accepted: `a first row up to ${clock(LATEST_START_S)}: before it the vehicle would be taken to stand still`,
        next: "add rows from T+0 s on",
      }),
    );
  }
  coordinates.forEach((column, i) => {
    const startM = first.coordinatesM[i] ?? 0;
    if (Math.abs(startM) <= START_TOLERANCE_M) return;
    const [start, amount] = [startM, Math.abs(startM)].map((m) => inUnit(m, column));
    problems.push(
      at(first, column, "E_RANGE", {
        found: `${column.name} ${start} in the first row`,
        accepted: "0: the table gives the way of the vehicle's foot from its place on the pad",
        next:
          startM > 0
            ? `subtract ${amount} from every ${column.name}`
            : `add ${amount} to every ${column.name}`,
      }),
    );
  });
  return problems;
}

/** A table that ends before T-0 shows no ascent. */
function endProblems(last: MeasuredRow, { time }: AscentHeader): Problem[] {
  if (last.tPlusS === null || last.tPlusS > 0) return [];
  const found = `${clock(last.tPlusS)} in the last row`;
  const next = "count the time from T-0, negative before it";
  return [at(last, time, "E_RANGE", { found, accepted: "rows after T+0 s", next })];
}

function checkTime(
  row: MeasuredRow,
  before: MeasuredRow | null,
  { time }: AscentHeader,
  problems: Problem[],
): void {
  const { tPlusS } = row;
  if (tPlusS === null) return;
  const add = (code: ProblemCode, parts: Parts): void => void problems.push(at(row, time, code, parts));
  if (tPlusS < EARLIEST_S || tPlusS > LATEST_S) {
    add("E_RANGE", { found: clock(tPlusS), accepted: `${clock(EARLIEST_S)} to ${clock(LATEST_S)}` });
    return;
  }
  const beforeS = before?.tPlusS ?? null;
  if (before === null || beforeS === null) return;
  if (tPlusS <= beforeS) {
    const found = `${clock(tPlusS)} after ${clock(beforeS)} in line ${before.row.placeOf(time.index).line}`;
    const next = tPlusS === beforeS ? "leave one of the two rows out" : "sort the rows by time";
    add("E_ORDER", { found, accepted: "times that rise from row to row", next });
  } else if (tPlusS - beforeS >= GAP_S) {
    const found = `a gap of ${figure(tPlusS - beforeS)} s after ${clock(beforeS)}`;
    const next = "add rows in between, or end the table before the gap";
    add("E_RANGE", { found, accepted: `rows less than ${GAP_S} s apart`, next });
  }
}

function checkRange(
  { row, coordinatesM }: MeasuredRow,
  before: MeasuredRow | null,
  { coordinates }: AscentHeader,
  problems: Problem[],
): void {
  for (const [i, column] of coordinates.entries()) {
    const valueM = coordinatesM[i] ?? 0;
    const isFar = Math.abs(valueM) > FARTHEST_M;
    // The first row has its own problem when it is not at the pad's height.
    const isLow = valueM < LOWEST_M && before !== null && HEIGHTS.includes(column.name);
    if (!isFar && !isLow) continue;
    problems.push(
      problem("E_RANGE", shortText(column.written), {
        place: row.placeOf(column.index),
        found: `${column.name} ${inUnit(valueM, column)}`,
        accepted: isFar ? `up to ${FARTHEST_M / 1000} km from the pad` : `not lower than ${LOWEST_M} m`,
        next: isFar ? "check the unit in the header" : "heights count upwards from the foot's place at rest",
      }),
    );
  }
}

function checkSpeed(
  row: MeasuredRow,
  before: MeasuredRow,
  { time, coordinates }: AscentHeader,
  problems: Problem[],
): void {
  if (row.tPlusS === null || before.tPlusS === null) return;
  const seconds = row.tPlusS - before.tPlusS;
  let squareM2 = 0;
  let widest = { stepM: 0, column: time };
  for (const [i, column] of coordinates.entries()) {
    const [fromM = null, toM = null] = [before.coordinatesM[i], row.coordinatesM[i]];
    if (fromM === null || toM === null) continue;
    const stepM = Math.abs(toM - fromM);
    squareM2 += stepM * stepM;
    if (stepM > widest.stepM) widest = { stepM, column };
  }
  const wayKm = Math.sqrt(squareM2) / 1000;
  if (wayKm <= FASTEST_KM_S * seconds) return;
  const [way, speed] = [wayKm, wayKm / seconds].map((value) => Number(value.toPrecision(3)));
  problems.push(
    at(row, widest.column, "E_RANGE", {
      found: `${way} km in ${figure(seconds)} s, a speed of ${speed} km/s`,
      accepted: `up to ${FASTEST_KM_S} km/s between rows`,
      next: "a wrong unit? Check those in the header",
    }),
  );
}
