/**
 * A camera table (CSV, RFC 4180, as spreadsheets write it) to nested values that know their cell. An empty cell is not given.
 * How a text is parted into cells is left to csvCells, its header to cameraHeader.
 */

import { PadstopError, type Problem, problem } from "../base/problem.ts";
import { type CameraColumn, dotted, readCameraHeader } from "./cameraHeader.ts";
import { type CsvRow, type CsvTable, cellCountProblem, readCsv } from "./csvCells.ts";
import { type DecimalMarks, type NumberCell, surveyDecimals, withPoints } from "./decimalMarks.ts";
import { unguarded } from "./formulaGuard.ts";
import { entryLabel, type Path, type Source } from "./source.ts";
import { shortText } from "./sourcePlaces.ts";
import type { TableReading } from "./tableReading.ts";

/** A pad has dozens of cameras; ten thousand are another kind of file. */
const MOST_CAMERAS = 10_000;
/** Reading stops here: a table so wrong is another kind of file. */
const MOST_PROBLEMS = 1000;

export interface CameraTable {
  /** A source per row. */
  readonly sources: readonly Source[];
  readonly reading: Omit<TableReading, "fileName" | "encoding">;
}

/** The rows of a table; throws all that is wrong with the table itself. */
export function readCameraTable(text: string, file: string): CameraTable {
  const table = readCsv(text, file, "a row per camera", { mostRows: MOST_CAMERAS });
  if (table.rows.length > MOST_CAMERAS) throw new PadstopError([sizeProblem(table)]);
  const { columns, problems } = readCameraHeader(table);
  problems.push(...table.rows.flatMap((row) => rowProblems(row, table.header, columns)));
  const marks = surveyDecimals(numberCells(table, columns), table.separator);
  problems.push(...marks.problems);
  if (problems.length > 0) throw new PadstopError(problems.slice(0, MOST_PROBLEMS));
  return {
    sources: table.rows.map((row, index) => rowSource(columns, row, index, marks)),
    reading: readingOf(table, columns, marks),
  };
}

function readingOf(
  { rows, separator }: CsvTable,
  columns: readonly CameraColumn[],
  { decimalMark, commaExample, unclearPoint }: DecimalMarks,
): CameraTable["reading"] {
  return {
    of: "cameras",
    rows: rows.length,
    separator,
    decimalMark,
    commaExample,
    unclearPoint,
    columns: columns
      .filter(({ header, key, unit }) => unit !== null || dotted(header) !== key)
      .map(({ header, key, unit }) => ({ header: shortText(header), key, unit })),
  };
}

function sizeProblem({ rows, header }: CsvTable): Problem {
  return problem("E_SIZE", "table", {
    place: (rows[MOST_CAMERAS] ?? header).placeOf(0),
    found: `more than ${MOST_CAMERAS} rows`,
    accepted: `up to ${MOST_CAMERAS} cameras`,
  });
}

/** A row with more or fewer cells than the header, with a gate both by name and by size, or a fraction of no second. */
function rowProblems(row: CsvRow, header: CsvRow, columns: readonly CameraColumn[]): Problem[] {
  const miscounted = cellCountProblem(row, header);
  if (miscounted !== null) return [miscounted];
  const given = columns.filter(({ index }) => row.texts[index]);
  const problems = given
    .filter((column) => isOddFraction(column, row))
    .map((column) => fractionProblem(column, row));
  const gate = given.find(({ key }) => key === "gate");
  if (gate === undefined || !given.some(({ key }) => key.startsWith("gate."))) return problems;
  const parts = { place: row.placeOf(gate.index), found: "gate and gate.width" };
  return [...problems, problem("E_CONFLICT", "gate", { ...parts, accepted: "a gate by name or by size" })];
}

/** 1/500 means seconds to everyone, whatever unit stands over it. */
const isOddFraction = ({ quantity, unit, index }: CameraColumn, { texts }: CsvRow): boolean =>
  quantity === "timeS" &&
  unit !== null &&
  unit !== "s" &&
  /\d\s*\/\s*\d[\d.,]*(?:\s*$|\s*;|\s+\d)/.test(texts[index] ?? "");

function fractionProblem({ key, index, unit, header }: CameraColumn, row: CsvRow): Problem {
  const text = shortText(row.texts[index] ?? "");
  return problem("E_UNIT", shortText(header), {
    place: row.placeOf(index),
    found: `${text} in a column in ${unit}`,
    accepted: `numbers in ${unit}, or fractions with their unit, for ${key}`,
    next: "write 1/500 s, or s in the header",
  });
}

function* numberCells({ rows }: CsvTable, columns: readonly CameraColumn[]): Generator<NumberCell> {
  const numeric = columns.filter(({ quantity }) => quantity !== null);
  const id = columns.find(({ key }) => key === "id");
  for (const [index, row] of rows.entries()) {
    const label = rowLabel(id === undefined ? "" : (row.texts[id.index] ?? ""), index);
    for (const column of numeric) {
      const text = row.texts[column.index] ?? "";
      if (text === "") continue;
      const key = `${label}.${column.key}${headerWords(column)}`;
      yield { text, key, isList: column.cell === "list", place: () => row.placeOf(column.index) };
    }
  }
}

const rowLabel = (id: string, index: number): string =>
  `cameras[${entryLabel(id === "" ? {} : { id: unguarded(id) }, index)}]`;

/** Where a header is not the key itself people look for it by its own words. */
const headerWords = ({ header, key }: CameraColumn): string =>
  dotted(header) === key ? "" : `, column "${shortText(header, 40)}"`;

function rowSource(
  columns: readonly CameraColumn[],
  row: CsvRow,
  index: number,
  { decimalMark }: DecimalMarks,
): Source {
  const value: Record<string, unknown> = {};
  const given: CameraColumn[] = [];
  for (const column of columns) {
    const text = row.texts[column.index] ?? "";
    if (text === "") continue;
    given.push(column);
    const hasCommas = decimalMark === "comma" && column.quantity !== null;
    setDeep(value, column.key.split("."), cellValue(column, hasCommas ? withPoints(text) : text));
  }
  const label = `cameras[${entryLabel(value, index)}]`;
  const placeOf: Source["placeOf"] = (path) => row.placeOf(columnAt(given, path)?.index ?? 0);
  return {
    value,
    placeOf,
    keyPlaceOf: placeOf,
    has: (path) => columnAt(given, path) !== null,
    labelOf: (path) => {
      const steps = path.filter((step) => typeof step === "string");
      const column = given.find(({ key }) => key === steps.join("."));
      return `${[label, ...steps].join(".")}${column === undefined ? "" : headerWords(column)}`;
    },
  };
}

/** The column of a path, or the first one below or above it. */
function columnAt(given: readonly CameraColumn[], path: Path): CameraColumn | null {
  const wanted = path.filter((step) => typeof step === "string").join(".");
  if (wanted === "") return null;
  return (
    given.find(({ key }) => key === wanted || key.startsWith(`${wanted}.`) || wanted.startsWith(`${key}.`)) ??
    null
  );
}

function cellValue({ cell, quantity, unit }: CameraColumn, text: string): unknown {
  if (cell === "words") return text.split(/[\s;,]+/);
  // A list parts before the next number, so that "1/500 s 1/1000 s" keeps its units.
  if (cell === "list")
    return text.split(/\s*;\s*|,\s+|\s+(?=[\d.+-]|f\/|nd)/i).map((one) => withUnit(one, unit));
  return quantity === null ? unguarded(text) : withUnit(unguarded(text), unit);
}

/** A number alone, or a fraction. */
const BARE = /^[+\u2212-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?:\s*\/\s*\d+(?:\.\d+)?)?$/i;

const withUnit = (text: string, unit: string | null): string =>
  unit !== null && BARE.test(text) ? `${text} ${unit}` : text;

function setDeep(target: Record<string, unknown>, steps: readonly string[], value: unknown): void {
  const [step = "", ...rest] = steps;
  if (rest.length === 0) {
    target[step] = value;
    return;
  }
  const inner = target[step];
  const map = typeof inner === "object" && inner !== null ? (inner as Record<string, unknown>) : {};
  target[step] = map;
  setDeep(map, rest, value);
}
