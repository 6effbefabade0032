/**
 * A table (CSV, RFC 4180) to rows of cells that know their place. The only file of the reading side that knows papaparse.
 * What the cells mean is left to the table's own reader. Comments are left out.
 */

import Papa from "papaparse";
import { type FilePlace, PadstopError, type Problem, problem } from "../base/problem.ts";
import { markOf, separatorOf } from "./csvSeparator.ts";
import { type Places, placesIn, shortText } from "./sourcePlaces.ts";
import type { Separator } from "./tableReading.ts";
import { refuseSize } from "./yamlSource.ts";

export interface CsvRow {
  /** The cells, trimmed. */
  readonly texts: readonly string[];
  /** Place of the cell in this column, from 0; of the row when it has no such cell. */
  placeOf(column: number): FilePlace;
}

export interface CsvTable {
  readonly header: CsvRow;
  /** Rows with something in them, without the header. */
  readonly rows: readonly CsvRow[];
  readonly separator: Separator;
}

/**
 * The header and rows of a table. `rowsOf` says what an empty one lacks ("a row per camera"); of more than `mostRows`
 * rows one or two more are read.
 * Throws a PadstopError: E_SIZE above `mostChars` (when given; else the limit of a site file), E_CSV for one that is not
 * well formed or empty.
 */
export function readCsv(
  rawText: string,
  file: string,
  rowsOf: string,
  { mostChars, mostRows = Number.POSITIVE_INFINITY }: { mostChars?: number; mostRows?: number } = {},
): CsvTable {
  refuseSize(rawText, file, mostChars);
  const text = rawText.replace(/^\ufeff/, "").replace(/\r\n?/g, "\n");
  const places = placesIn(text, file);
  refuseNulls(text, places);
  const { separator, body } = separatorOf(text);
  const rows = splitRows(body, markOf(separator), places, mostRows);
  const header = rows.shift();
  if (header !== undefined) return { header, rows, separator };
  throw new PadstopError([
    problem("E_CSV", file, {
      place: places(0, 1),
      found: "an empty table",
      accepted: `a header and ${rowsOf}`,
    }),
  ]);
}

/** UTF-16 without a mark reads as text full of nulls. */
function refuseNulls(text: string, places: Places): void {
  const at = text.indexOf("\0");
  if (at === -1) return;
  const parts = { place: places(at, 1), found: "the character U+0000", accepted: "plain text" };
  throw new PadstopError([problem("E_CSV", "table", { ...parts, next: "save the table as CSV in UTF-8" })]);
}

/** Papa gives fields and where each row ends; the places inside a row are counted along when they are asked for. */
function splitRows(text: string, mark: string, places: Places, mostRows: number): CsvRow[] {
  const rows: CsvRow[] = [];
  const problems: Problem[] = [];
  let offset = 0;
  let blank = 0;
  Papa.parse<string[]>(text, {
    delimiter: mark,
    step: ({ data, errors, meta }, parser) => {
      const [from, to] = [offset, meta.cursor];
      offset = to;
      for (const error of errors) {
        const place = places(from, to - from);
        problems.push(problem("E_CSV", "table", { place, found: shortText(error.message) }));
      }
      const texts = data.map((field) => field.trim());
      if (texts.every((cell) => cell === "")) {
        blank++;
        if (blank > mostRows) parser.abort();
        return;
      }
      // One row more than may be is enough to tell that there are too many.
      if (rows.length > mostRows + 1) parser.abort();
      rows.push({
        texts,
        placeOf: (column) => cellPlace(text.slice(from, to), from, column, { mark, places }),
      });
    },
  });
  if (blank > mostRows) {
    const accepted = `up to ${mostRows} blank lines`;
    problems.push(
      problem("E_SIZE", "table", { place: places(offset, 1), found: "more blank lines", accepted }),
    );
  }
  if (problems.length > 0) throw new PadstopError(problems);
  return rows;
}

function cellPlace(
  raw: string,
  offset: number,
  column: number,
  { mark, places }: { readonly mark: string; readonly places: Places },
): FilePlace {
  const starts = cellStarts(raw, mark);
  const wanted = column < starts.length ? column : 0;
  const from = starts[wanted] ?? 0;
  const length = (starts[wanted + 1] ?? raw.trimEnd().length + 1) - 1 - from;
  return places(offset + from, length);
}

/** Offsets of the cells of one raw row: after each separator that is outside quotes. */
function cellStarts(raw: string, mark: string): number[] {
  const starts = [0];
  let quoted = false;
  for (let at = 0; at < raw.length; at += 1) {
    if (raw[at] === '"') quoted = !quoted;
    else if (raw[at] === mark && !quoted) starts.push(at + 1);
  }
  return starts;
}

/** A row with more or fewer cells than the header; null when it has as many, or only empty ones more. */
export function cellCountProblem(row: CsvRow, header: CsvRow, next: string | null = null): Problem | null {
  const wanted = header.texts.length;
  const isLonger = row.texts.length > wanted;
  if (row.texts.length === wanted || (isLonger && row.texts.slice(wanted).every((text) => text === "")))
    return null;
  return problem("E_CSV", "table", {
    place: row.placeOf(wanted),
    found: `${row.texts.length} cells`,
    accepted: `${wanted} cells, as in the header`,
    next,
  });
}

/** A column that stands in the header a second time; columns count from 0. */
export function twiceProblem(name: string, header: CsvRow, first: number, second: number): Problem {
  return problem("E_CSV", name, {
    place: header.placeOf(second),
    found: `column ${name} twice (columns ${first + 1} and ${second + 1})`,
    accepted: "each column once",
  });
}
