/**
 * The header of a camera table: which column holds which key, and the unit of its bare numbers. Case is set aside; blanks,
 * underscores and dots are the same; a unit may stand in brackets or behind. What the cells hold is not looked at.
 */

import { type Problem, problem } from "../base/problem.ts";
import { CAMERA_COLUMNS, CAMERA_HEADERS, type CameraColumnRule } from "./cameraColumns.ts";
import { type CsvRow, type CsvTable, twiceProblem } from "./csvCells.ts";
import { type HeaderParts, inBrackets, isLongUnit, lastWord, unitIn, unitMeant } from "./headerUnits.ts";
import { nearest } from "./nearest.ts";
import { QUANTITIES, type QuantityKind } from "./quantityKinds.ts";
import { shortText } from "./sourcePlaces.ts";
import type { ReadColumn } from "./tableReading.ts";

export interface CameraColumn extends ReadColumn, CameraColumnRule {
  /** Counted from 0. */
  readonly index: number;
}

/** What stands in brackets for a pure number of one kind without being a unit. */
const KIND_WORDS: Readonly<Partial<Record<QuantityKind, readonly string[]>>> = {
  fNumber: ["f", "f/", "f-number"],
  density: ["nd", "density"],
};
const EVERY_UNIT: ReadonlySet<string> = new Set(
  Object.values(QUANTITIES).flatMap(({ spellings }) => Object.keys(spellings)),
);

/** The columns of a table, without those that are empty from top to bottom, and all that is wrong with its header. */
export function readCameraHeader({ header, rows }: CsvTable): {
  columns: CameraColumn[];
  problems: Problem[];
} {
  const columns: CameraColumn[] = [];
  const problems: Problem[] = [];
  header.texts.forEach((text, index) => {
    if (text === "") {
      const filled = rows.find((row) => (row.texts[index] ?? "") !== "");
      if (filled !== undefined) problems.push(namelessProblem(header, index, filled));
      return;
    }
    const read = readCell(text, index, header);
    if ("code" in read) {
      problems.push(read);
      return;
    }
    const first = columns.find(({ key }) => key === read.key);
    if (first === undefined) columns.push(read);
    else problems.push(doubleProblem(first, read, header));
  });
  return { columns, problems };
}

function readCell(text: string, index: number, header: CsvRow): CameraColumn | Problem {
  const bracketed = inBrackets(text);
  const whole = keyOf(bracketed?.name ?? text);
  if (whole !== null) return columnOf(whole, bracketed, text, index, header);
  const behind = bracketed === null ? lastWord(text) : null;
  const key = behind === null ? null : keyOf(behind.name);
  if (key === null || behind === null || !isUnitLike(key, behind.unit))
    return unknownProblem(text, bracketed?.name ?? text, index, header);
  return columnOf(key, behind, text, index, header);
}

/** A header as it is compared: lower case, one dot for blanks, underscores and dots. */
export const dotted = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s_.]+/g, ".")
    .replace(/^\.|\.$/g, "");

const keyOf = (name: string): string | null => CAMERA_HEADERS.get(dotted(name)) ?? null;

/** "range_furlong" is another column, "range_s" one with a wrong unit. */
function isUnitLike(key: string, word: string): boolean {
  const quantity = CAMERA_COLUMNS[key]?.quantity ?? null;
  if (quantity === null) return false;
  return (
    unitsOf(quantity).some((one) => unitIn(word, [one]) !== null) || EVERY_UNIT.has(word) || isLongUnit(word)
  );
}

const unitsOf = (quantity: QuantityKind): string[] => [
  ...Object.keys(QUANTITIES[quantity].spellings),
  ...(KIND_WORDS[quantity] ?? []),
];

function columnOf(
  key: string,
  parts: HeaderParts | null,
  text: string,
  index: number,
  header: CsvRow,
): CameraColumn | Problem {
  const { cell, quantity } = CAMERA_COLUMNS[key] ?? { cell: "one", quantity: null };
  const column = { header: text, key, index, cell, quantity };
  // Beside text anything may stand in brackets.
  if (quantity === null || parts === null || parts.unit === "") return { ...column, unit: null };
  const unit = unitIn(parts.unit, unitsOf(quantity));
  if (unit === null) return unitProblem(column, parts.unit, header);
  return { ...column, unit: KIND_WORDS[quantity]?.includes(unit) ? null : unit };
}

function unitProblem(
  { header: text, key, index, quantity }: Omit<CameraColumn, "unit">,
  unit: string,
  header: CsvRow,
): Problem {
  const units = quantity === null ? [] : unitsOf(quantity);
  return problem("E_UNIT", shortText(text), {
    place: header.placeOf(index),
    found: `${shortText(unit)} as the unit of ${key}`,
    accepted: units.length === 0 ? "no unit" : `a unit: ${units.join(", ")}`,
    suggestion: unitMeant(unit.toLowerCase(), units),
  });
}

/** A shorter word is near to many. */
const LEAST_CHARS = 3;

function unknownProblem(text: string, name: string, index: number, header: CsvRow): Problem {
  return problem("E_KEY", shortText(text), {
    place: header.placeOf(index),
    found: `column ${shortText(text)}`,
    accepted: "a camera key",
    suggestion: name.length < LEAST_CHARS ? null : nearest(dotted(name), [...CAMERA_HEADERS.keys()]),
    next: `columns: ${Object.keys(CAMERA_COLUMNS).join(", ")}`,
  });
}

function namelessProblem(header: CsvRow, index: number, filled: CsvRow): Problem {
  const cell = shortText(filled.texts[index] ?? "", 30);
  return problem("E_KEY", `column ${index + 1}`, {
    place: header.placeOf(index),
    found: `no header over ${cell} in line ${filled.placeOf(index).line}`,
    accepted: "a camera key over each column with something in it",
  });
}

function doubleProblem(first: CameraColumn, second: CameraColumn, header: CsvRow): Problem {
  if (first.header === second.header) return twiceProblem(first.header, header, first.index, second.index);
  const columns = `columns ${first.index + 1} and ${second.index + 1}`;
  return problem("E_CSV", shortText(second.header), {
    place: header.placeOf(second.index),
    found: `${shortText(first.header)} and ${shortText(second.header)} (${columns}), both ${first.key}`,
    accepted: "each key once",
  });
}
