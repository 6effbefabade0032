/**
 * A camera table (CSV, RFC 4180) to nested values that know their cell. An empty cell is not given.
 * How a text is parted into cells is left to csvCells.
 */

import { type FilePlace, PadstopError, type Problem, problem } from "../base/problem.ts";
import { CAMERA_COLUMNS } from "./cameraColumns.ts";
import { type CsvRow, cellCountProblem, readCsv, twiceProblem } from "./csvCells.ts";
import { nearest } from "./nearest.ts";
import { entryLabel, type Path, type Source } from "./source.ts";
import { shortText } from "./sourcePlaces.ts";

/** A source per row of the table; throws all that is wrong with the table itself. */
export function readCameraTable(text: string, file: string): Source[] {
  const { header, rows } = readCsv(text, file, "a row per camera");
  const problems = [...headerProblems(header), ...rows.flatMap((row) => rowProblems(row, header))];
  if (problems.length > 0) throw new PadstopError(problems);
  return rows.map((row, index) => rowSource(header, row, index));
}

function headerProblems(header: CsvRow): Problem[] {
  const problems: Problem[] = [];
  const known = Object.keys(CAMERA_COLUMNS);
  const seen = new Map<string, number>();
  header.texts.forEach((text, index) => {
    const first = seen.get(text);
    if (!Object.hasOwn(CAMERA_COLUMNS, text)) {
      const next = `columns: ${known.join(", ")}`;
      const parts = {
        place: header.placeOf(index),
        found: `column ${shortText(text)}`,
        accepted: "a camera key",
        suggestion: nearest(text, known),
        next,
      };
      problems.push(problem("E_KEY", shortText(text) || `column ${index + 1}`, parts));
    } else if (first !== undefined) {
      problems.push(twiceProblem(text, header, first, index));
    }
    seen.set(text, first ?? index);
  });
  return problems;
}

/** A row with more or fewer cells than the header, or with a gate both by name and by size. */
function rowProblems(row: CsvRow, header: CsvRow): Problem[] {
  const miscounted = cellCountProblem(row, header);
  if (miscounted !== null) return [miscounted];
  const given = header.texts.filter((_, i) => row.texts[i]);
  if (!given.includes("gate") || !given.some((column) => column.startsWith("gate."))) return [];
  return [
    problem("E_CONFLICT", "gate", {
      place: row.placeOf(header.texts.indexOf("gate")),
      found: "gate and gate.width",
      accepted: "a gate by name or by size",
    }),
  ];
}

function rowSource(header: CsvRow, row: CsvRow, index: number): Source {
  const value: Record<string, unknown> = {};
  const cells = new Map<string, FilePlace>();
  header.texts.forEach((column, i) => {
    const text = row.texts[i] ?? "";
    if (text === "") return;
    cells.set(column, row.placeOf(i));
    setDeep(value, column.split("."), cellValue(column, text));
  });
  const label = `cameras[${entryLabel(value, index)}]`;
  const start = row.placeOf(0);
  return {
    value,
    placeOf: (path) => cellAt(cells, path) ?? start,
    keyPlaceOf: (path) => cellAt(cells, path) ?? start,
    has: (path) => cellAt(cells, path) !== null,
    labelOf: (path) => [label, ...path.filter((step) => typeof step === "string")].join("."),
  };
}

/** Place of the cell of a path, or of the first column below or above it. */
function cellAt(cells: ReadonlyMap<string, FilePlace>, path: Path): FilePlace | null {
  const column = path.filter((step) => typeof step === "string").join(".");
  if (column === "") return null;
  for (const [name, place] of cells) {
    if (name === column || name.startsWith(`${column}.`) || column.startsWith(`${name}.`)) return place;
  }
  return null;
}

function cellValue(column: string, text: string): unknown {
  const kind = CAMERA_COLUMNS[column];
  if (kind === "words") return text.split(/[\s;]+/);
  // A list parts before the next number, so that "1/500 s 1/1000 s" keeps its units.
  if (kind === "list") return text.split(/\s*;\s*|\s+(?=[\d.+-]|f\/|nd)/i);
  return text;
}

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
