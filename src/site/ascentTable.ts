/**
 * An ascent table (CSV) to points in metres and seconds: T+ with east, north and up, or with downrange and altitude.
 * The way between the rows is left to the view, as is what the heading of a downrange table makes of it.
 */

import { PadstopError, type Problem, problem } from "../base/problem.ts";
import { ascentProblems, type MeasuredRow } from "./ascentChecks.ts";
import { type AscentColumn, type AscentHeader, notAHeader, readAscentHeader } from "./ascentColumns.ts";
import { type CsvRow, type CsvTable, cellCountProblem, readCsv } from "./csvCells.ts";
import { type DecimalMarks, type NumberCell, surveyDecimals, withPoints } from "./decimalMarks.ts";
import { shortText } from "./sourcePlaces.ts";
import type { TableReading } from "./tableReading.ts";
import type { AscentTable } from "./types.ts";

/** A row at a hundredth of a second for a quarter of an hour. */
const MOST_ROWS = 100_000;
const LEAST_ROWS = 2;
const MOST_CHARS = 10_000_000;
/** Reading stops here: a table so wrong is another kind of file. */
const MOST_PROBLEMS = 1000;

export interface AscentFile {
  readonly table: AscentTable;
  readonly reading: Omit<TableReading, "fileName" | "encoding">;
}

/**
 * The points of the table in `file`, rising in time, the first at rest on the pad. Throws a PadstopError with what is wrong
 * (E_CSV, E_SIZE, E_EMPTY, E_UNIT, E_MISSING, E_CONFLICT, E_TYPE, E_ORDER, E_RANGE), each at its cell.
 */
export function readAscentTable(text: string, file: string): AscentFile {
  const table = readCsv(text, file, "a row for each time", { mostChars: MOST_CHARS, mostRows: MOST_ROWS });
  const misread = notAHeader(table.header);
  if (misread !== null) throw new PadstopError([misread]);
  const { columns, problems } = readAscentHeader(table.header);
  problems.push(...countProblems(table));
  if (columns === null || table.rows.length > MOST_ROWS) throw new PadstopError(problems);
  const marks = marksOf(table, columns);
  problems.push(...marks.problems);
  const isMeasured = problems.length === 0;
  const rows: MeasuredRow[] = [];
  for (const row of marks.decimalMark === "comma" ? table.rows.map(rowWithPoints) : table.rows) {
    if (problems.length >= MOST_PROBLEMS) break;
    rows.push(measured(row, table.header, columns, problems));
  }
  // Without units no order of magnitude can be judged.
  if (isMeasured) problems.push(...ascentProblems(rows, columns, MOST_PROBLEMS));
  if (problems.length > 0) throw new PadstopError(problems);
  const { decimalMark, commaExample, unclearPoint } = marks;
  const { separator } = table;
  const read = { of: "ascent", rows: rows.length, separator, columns: [] } as const;
  return { table: tableOf(rows, columns), reading: { ...read, decimalMark, commaExample, unclearPoint } };
}

const PLAIN_MARKS: DecimalMarks = {
  decimalMark: "point",
  commaExample: null,
  unclearPoint: null,
  problems: [],
};

/** Between commas no number can have another; each cell is judged alone. */
const marksOf = (table: CsvTable, columns: AscentHeader): DecimalMarks =>
  table.separator === "comma"
    ? PLAIN_MARKS
    : surveyDecimals(numberCells(table, [columns.time, ...columns.coordinates]), table.separator);

function* numberCells({ rows }: CsvTable, columns: readonly AscentColumn[]): Generator<NumberCell> {
  for (const row of rows) {
    for (const { index, written } of columns) {
      const text = row.texts[index] ?? "";
      yield { text, key: shortText(written), isList: false, place: () => row.placeOf(index) };
    }
  }
}

const rowWithPoints = (row: CsvRow): CsvRow => ({ ...row, texts: row.texts.map(withPoints) });

function countProblems({ header, rows }: CsvTable): Problem[] {
  const place = (rows[MOST_ROWS] ?? rows[0] ?? header).placeOf(0);
  if (rows.length > MOST_ROWS) {
    const found = `more than ${MOST_ROWS} rows`;
    const next = "leave rows out: ten a second are plenty";
    return [problem("E_SIZE", "table", { place, found, accepted: `up to ${MOST_ROWS} rows`, next })];
  }
  if (rows.length >= LEAST_ROWS) return [];
  const few = rows.length === 1 ? "one row" : "a header without rows";
  return [problem("E_EMPTY", "table", { place, found: few, accepted: `at least ${LEAST_ROWS} rows` })];
}

function measured(row: CsvRow, header: CsvRow, columns: AscentHeader, problems: Problem[]): MeasuredRow {
  const hasComma = row.texts.length > header.texts.length;
  const next = hasComma ? "if a comma stands for a decimal point, write a point" : null;
  const miscounted = cellCountProblem(row, header, next);
  if (miscounted !== null) {
    problems.push(miscounted);
    return { row, tPlusS: null, coordinatesM: columns.coordinates.map(() => null) };
  }
  const tPlusS = numberIn(row, columns.time, problems);
  return { row, tPlusS, coordinatesM: columns.coordinates.map((column) => numberIn(row, column, problems)) };
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

function numberIn(row: CsvRow, column: AscentColumn, problems: Problem[]): number | null {
  const text = row.texts[column.index] ?? "";
  const plain = text.replace("−", "-");
  const value = NUMBER.test(plain) ? Number(plain) * column.factor : null;
  if (value !== null && Number.isFinite(value)) return value;
  problems.push(
    problem("E_TYPE", shortText(column.written), {
      place: row.placeOf(column.index),
      found: text === "" ? "an empty cell" : shortText(text),
      accepted: `a number${column.unit === null ? "" : ` in ${column.unit}`}`,
      next: /\d,\d/.test(text) ? "write a decimal point, not a comma" : null,
    }),
  );
  return null;
}

/** Only for rows without a problem: no number is missing then. */
function tableOf(rows: readonly MeasuredRow[], { kind }: AscentHeader): AscentTable {
  if (kind === "enu") {
    const points = rows.map(({ tPlusS, coordinatesM: [eastM, northM, upM] }) => ({
      tPlusS: tPlusS ?? 0,
      eastM: eastM ?? 0,
      northM: northM ?? 0,
      upM: upM ?? 0,
    }));
    return { kind, points };
  }
  const points = rows.map(({ tPlusS, coordinatesM: [downrangeM, altitudeM] }) => ({
    tPlusS: tPlusS ?? 0,
    downrangeM: downrangeM ?? 0,
    altitudeM: altitudeM ?? 0,
  }));
  return { kind, points };
}
