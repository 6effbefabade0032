/** A table that people fill in by hand: columns by name, cells with their place, every fault kept. What the cells mean is left to its reader. */

import { type FilePlace, PadstopError, type Problem, type ProblemCode, problem } from "../../base/problem.ts";
import { type CsvRow, type CsvTable, cellCountProblem, readCsv, twiceProblem } from "../../site/csvCells.ts";
import { nearest } from "../../site/nearest.ts";
import { shortText } from "../../site/sourcePlaces.ts";

/** The parts of a problem but code, key and place. */
export interface CellFault {
  readonly code: ProblemCode;
  readonly found?: string;
  readonly accepted: string;
  readonly suggestion?: string | null;
  readonly next?: string | null;
}

/** One row by its columns. */
export interface FieldRow {
  readonly line: number;
  /** "" where the table has no such column. */
  readonly textOf: (column: string) => string;
  /** Keeps a fault of a cell; gives null, so that a reader can return it. */
  readonly refuse: (column: string, fault: CellFault) => null;
}

export interface FieldTable {
  /** Columns as named in the header, in lower case, without units. */
  readonly columns: readonly string[];
  /** What stands behind a column's name; null when nothing does. */
  readonly unitOf: (column: string) => string | null;
  readonly header: CsvRow;
  readonly rows: readonly FieldRow[];
  /** Filled by the rows' `refuse`. */
  readonly problems: Problem[];
}

/** What a table of this kind has. */
export interface FieldTableKind {
  /** "a row per reading". */
  readonly rowsOf: string;
  readonly columns: readonly string[];
  readonly needed: readonly string[];
  readonly mostRows: number;
  readonly mostChars: number;
}

/** Which kind of table a text is: the columns of its header, as `FieldTable.columns`; empty when it cannot be read. */
export function columnsOf(text: string): string[] {
  const [first = ""] = text.replace(/^\ufeff/, "").split(/\r?\n/, 1);
  return first.split(",").map((cell) => bareName(cell.replaceAll('"', "")).name);
}

/** Reads a table; throws what is wrong with the table itself. */
export function readFieldTable(text: string, file: string, kind: FieldTableKind): FieldTable {
  const { mostChars, mostRows, rowsOf } = kind;
  const table = readCsv(text, file, rowsOf, { mostChars, mostRows });
  if (table.rows.length > mostRows) throw new PadstopError([tooMany(table, mostRows)]);
  const names = table.header.texts.map(bareName);
  const columns = names.map(({ name }) => name);
  const problems = [
    ...headerProblems(table.header, columns, kind),
    ...table.rows.flatMap((row) => cellCountProblem(row, table.header) ?? []),
  ];
  if (problems.length > 0) throw new PadstopError(problems);
  const indexOf = new Map(columns.map((name, index) => [name, index]));
  const found: Problem[] = [];
  return {
    columns,
    unitOf: (column) => names[indexOf.get(column) ?? -1]?.unit ?? null,
    header: table.header,
    rows: table.rows.map((row) => fieldRow(row, indexOf, found)),
    problems: found,
  };
}

function fieldRow(row: CsvRow, indexOf: ReadonlyMap<string, number>, problems: Problem[]): FieldRow {
  let place: FilePlace | null = null;
  const placeOf = (column: string): FilePlace => {
    const index = indexOf.get(column);
    return row.placeOf(index === undefined || row.texts[index] === "" ? 0 : index);
  };
  return {
    get line() {
      place ??= row.placeOf(0);
      return place.line;
    },
    textOf: (column) => row.texts[indexOf.get(column) ?? -1] ?? "",
    refuse: (column, { code, ...parts }) => {
      problems.push(problem(code, column, { place: placeOf(column), ...parts }));
      return null;
    },
  };
}

function tooMany({ rows }: CsvTable, mostRows: number): Problem {
  return problem("E_SIZE", "table", {
    place: rows[mostRows]!.placeOf(0),
    found: "more rows",
    accepted: `up to ${mostRows} rows`,
    next: "split the table",
  });
}

/** "value (klx)", "value_klx" and "Value klx" are the column value in klx. */
function bareName(text: string): { name: string; unit: string | null } {
  const lower = text.trim().toLowerCase();
  const [, name, unit] = /^(value)[\s_]*[[(]?\s*(.*?)\s*[)\]]?$/.exec(lower) ?? [];
  if (name === undefined) return { name: lower, unit: null };
  // As written: "EV" and "lx" differ in their case.
  return {
    name,
    unit:
      unit === ""
        ? null
        : text
            .trim()
            .slice(lower.indexOf(unit!, name.length))
            .replace(/\s*[)\]]$/, ""),
  };
}

function headerProblems(header: CsvRow, columns: readonly string[], kind: FieldTableKind): Problem[] {
  const problems: Problem[] = [];
  columns.forEach((name, index) => {
    const first = columns.indexOf(name);
    if (!kind.columns.includes(name)) {
      const parts = {
        place: header.placeOf(index),
        found: `column ${shortText(name) || index + 1}`,
        accepted: kind.columns.join(", "),
        suggestion: nearest(name, kind.columns),
      };
      problems.push(problem("E_KEY", shortText(name) || `column ${index + 1}`, parts));
    } else if (first !== index) problems.push(twiceProblem(name, header, first, index));
  });
  const missing = kind.needed.filter((name) => !columns.includes(name));
  if (missing.length > 0) {
    const accepted = `columns ${kind.needed.join(", ")}`;
    const found = `no column ${missing.join(", ")}`;
    problems.push(problem("E_MISSING", "table", { place: header.placeOf(0), found, accepted }));
  }
  return problems;
}
