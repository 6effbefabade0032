/**
 * Decimal commas and marks between thousands in the numbers of a table. A comma is a decimal one only where commas do not
 * part the columns, and only when the whole table leaves no doubt; a mark between thousands is refused, never guessed.
 */

import { type FilePlace, type Problem, problem } from "../base/problem.ts";
import { shortText } from "./sourcePlaces.ts";
import type { Separator } from "./tableReading.ts";

/** A cell of a column of numbers. */
export interface NumberCell {
  readonly text: string;
  /** What messages call it. */
  readonly key: string;
  /** True where blanks part several numbers. */
  readonly isList: boolean;
  readonly place: () => FilePlace;
}

export interface DecimalMarks {
  readonly decimalMark: "point" | "comma";
  readonly commaExample: string | null;
  readonly unclearPoint: string | null;
  readonly problems: readonly Problem[];
}

/** Blanks that spreadsheets put between thousands (no-break, thin, narrow no-break), and the apostrophes. */
const GROUP_MARKS = /['’\u00a0\u2009\u202f]/;
const NUMBERS = /\d(?:[\d.,'’\u00a0\u2009\u202f]*\d)?/g;
const GROUPED =
  /^\d{1,3}(?:(?:['’\u00a0\u2009\u202f]\d{3})+(?:[.,]\d+)?|(?:,\d{3})+\.\d+|(?:\.\d{3})+,\d+|(?:,\d{3}){2,}|(?:\.\d{3}){2,})$/;
/** "1 250 m"; in a list that is two numbers. */
const GROUPED_BY_BLANKS = /^[+\u2212-]?\d{1,3}(?: \d{3})+(?!\d)/;
const ONE_MARK = /^\d+([.,])\d+$/;
/** A decimal fraction, or thousands. */
const UNCLEAR = /^[1-9]\d{0,2}[.,]\d{3}$/;

interface Met {
  readonly written: string;
  readonly cell: NumberCell;
}

/** What was met of one mark. */
interface Marked {
  count: number;
  first: Met | null;
  clear: boolean;
}

/** Looks through all cells of numbers of one table. */
export function surveyDecimals(cells: Iterable<NumberCell>, separator: Separator): DecimalMarks {
  const commas: Marked = { count: 0, first: null, clear: false };
  const points: Marked = { count: 0, first: null, clear: false };
  const problems: Problem[] = [];
  for (const cell of cells) {
    const grouped = groupedNumber(cell);
    if (grouped !== null) problems.push(groupedProblem(grouped, cell, separator));
    else
      for (const written of numbersOf(cell.text))
        count(written, cell, written.includes(",") ? commas : points);
  }
  // Where commas part the columns a comma in a number is a mistake that the reader of the cell tells.
  if (separator === "comma")
    return { decimalMark: "point", commaExample: null, unclearPoint: null, problems };
  if (commas.first !== null && points.first !== null) problems.push(mixedProblem(commas, points));
  else if (commas.first !== null && !commas.clear) problems.push(unclearProblem(commas.first));
  return {
    decimalMark: commas.first === null ? "point" : "comma",
    commaExample: commas.first?.written ?? null,
    unclearPoint: points.first !== null && !points.clear ? points.first.written : null,
    problems,
  };
}

/** The cell's text with decimal points; only for a table whose decimal mark is the comma. */
export const withPoints = (text: string): string =>
  text.replace(NUMBERS, (number) =>
    number
      .split(/(['’\u00a0\u2009\u202f])/)
      .map((part) => (ONE_MARK.test(part) ? part.replace(",", ".") : part))
      .join(""),
  );

function groupedNumber({ text, isList }: NumberCell): string | null {
  const byBlanks = isList ? null : GROUPED_BY_BLANKS.exec(text);
  if (byBlanks !== null) return byBlanks[0];
  return text.match(NUMBERS)?.find((number) => GROUPED.test(number)) ?? null;
}

/** The numbers with one comma or one point; minutes and seconds of an angle one by one. */
const numbersOf = (text: string): string[] =>
  /[.,]/.test(text)
    ? (text.match(NUMBERS) ?? [])
        .flatMap((number) => number.split(GROUP_MARKS))
        .filter((part) => ONE_MARK.test(part))
    : [];

function count(written: string, cell: NumberCell, marked: Marked): void {
  marked.count += 1;
  marked.first ??= { written, cell };
  marked.clear ||= !UNCLEAR.test(written);
}

function groupedProblem(written: string, { text, key, place }: NumberCell, separator: Separator): Problem {
  const plain = plainNumber(written);
  const marks = separator === "comma" ? "a decimal point" : "one decimal mark";
  return problem("E_TYPE", key, {
    place: place(),
    found: `${shortText(text)}, with a mark between thousands`,
    accepted: `a number without marks between thousands, with ${marks} at most`,
    next: `write ${plain}, or set the column's format to plain numbers`,
  });
}

/** "1.234,5" as 1234,5: the last mark stays when it is another than the first. */
function plainNumber(written: string): string {
  const marks = written.replace(/[\d+\u2212-]/g, "");
  const last = marks.at(-1) ?? "";
  const isDecimal = /[.,]/.test(last) && last !== marks[0];
  const at = isDecimal ? written.lastIndexOf(last) : written.length;
  return written.slice(0, at).replace(/[^\d+\u2212-]/g, "") + written.slice(at);
}

/** At the mark met less often: that is where the slip is. */
function mixedProblem(commas: Marked, points: Marked): Problem {
  const [few, many] = commas.count < points.count ? [commas, points] : [points, commas];
  const [here, there] = [few.first, many.first];
  const where = there === null ? null : there.cell.place();
  return problem("E_CONFLICT", here?.cell.key ?? "table", {
    place: here?.cell.place() ?? null,
    found: `${here?.written} here and ${there?.written} in line ${where?.line}: decimal points and decimal commas`,
    accepted: "one decimal mark in all of a table",
  });
}

function unclearProblem({ written, cell }: Met): Problem {
  const [whole = "", rest = ""] = written.split(",");
  return problem("E_TYPE", cell.key, {
    place: cell.place(),
    found: `${written}, which may be ${whole}${rest} or ${whole}.${rest}; no other number of the table tells`,
    accepted: "a number of which that is clear",
    next: `write ${whole}${rest}, or with a decimal comma ${written}0`,
  });
}
