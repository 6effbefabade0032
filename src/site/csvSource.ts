/**
 * A camera table (CSV, RFC 4180) to nested values that know their cell. The only file that knows papaparse.
 * An empty cell is not given. Other separators than the comma, and comments in the table, are left out.
 */

import Papa from "papaparse";
import { type FilePlace, PadstopError, type Problem, problem } from "../base/problem.ts";
import { CAMERA_COLUMNS } from "./cameraColumns.ts";
import { nearest } from "./nearest.ts";
import { entryLabel, type Path, type Source } from "./source.ts";
import { type Places, placesIn, shortText } from "./sourcePlaces.ts";
import { refuseSize } from "./yamlSource.ts";

interface Cell {
  readonly text: string;
  readonly place: FilePlace;
}

/** A source per row of the table; throws all that is wrong with the table itself. */
export function readCameraTable(rawText: string, file: string): Source[] {
  refuseSize(rawText, file);
  const text = rawText.replace(/^\ufeff/, "").replace(/\r\n?/g, "\n");
  const places = placesIn(text, file);
  const table = splitCells(text, places);
  const [header, ...rows] = table;
  if (header === undefined) {
    throw new PadstopError([
      problem("E_CSV", file, {
        place: places(0, 1),
        found: "an empty table",
        accepted: "a header and a row per camera",
      }),
    ]);
  }
  const problems = [...headerProblems(header), ...rows.flatMap((row) => rowProblems(row, header))];
  if (problems.length > 0) throw new PadstopError(problems);
  return rows.map((row, index) => rowSource(header, row, index));
}

/** Cells with their places. Papa gives fields and where each row ends; the places inside a row are counted along. */
function splitCells(text: string, places: Places): Cell[][] {
  const rows: Cell[][] = [];
  const problems: Problem[] = [];
  let offset = 0;
  Papa.parse<string[]>(text, {
    delimiter: ",",
    step: ({ data, errors, meta }) => {
      const raw = text.slice(offset, meta.cursor);
      for (const error of errors) {
        problems.push(
          problem("E_CSV", "table", { place: places(offset, raw.length), found: shortText(error.message) }),
        );
      }
      const starts = cellStarts(raw);
      const cells = data.map((field, i) => {
        const from = starts[i] ?? 0;
        const length = (starts[i + 1] ?? raw.trimEnd().length + 1) - 1 - from;
        return { text: field.trim(), place: places(offset + from, length) };
      });
      if (cells.some((cell) => cell.text !== "")) rows.push(cells);
      offset = meta.cursor;
    },
  });
  if (problems.length > 0) throw new PadstopError(problems);
  return rows;
}

/** Offsets of the cells of one raw row: after each comma that is outside quotes. */
function cellStarts(raw: string): number[] {
  const starts = [0];
  let quoted = false;
  for (let at = 0; at < raw.length; at += 1) {
    if (raw[at] === '"') quoted = !quoted;
    else if (raw[at] === "," && !quoted) starts.push(at + 1);
  }
  return starts;
}

function headerProblems(header: readonly Cell[]): Problem[] {
  const problems: Problem[] = [];
  const known = Object.keys(CAMERA_COLUMNS);
  const seen = new Map<string, number>();
  header.forEach(({ text, place }, index) => {
    const first = seen.get(text);
    if (!Object.hasOwn(CAMERA_COLUMNS, text)) {
      const next = `columns: ${known.join(", ")}`;
      const parts = {
        place,
        found: `column ${shortText(text)}`,
        accepted: "a camera key",
        suggestion: nearest(text, known),
        next,
      };
      problems.push(problem("E_KEY", shortText(text) || `column ${index + 1}`, parts));
    } else if (first !== undefined) {
      const found = `column ${text} twice (columns ${first + 1} and ${index + 1})`;
      problems.push(problem("E_CSV", text, { place, found, accepted: "each column once" }));
    }
    seen.set(text, first ?? index);
  });
  return problems;
}

/** A row with more or fewer cells than the header, or with a gate both by name and by size. */
function rowProblems(row: readonly Cell[], header: readonly Cell[]): Problem[] {
  if (row.length !== header.length) {
    const place = (row[header.length] ?? row[0])?.place ?? null;
    const found = `${row.length} cells`;
    return [
      problem("E_CSV", "table", { place, found, accepted: `${header.length} cells, as in the header` }),
    ];
  }
  const given = header.flatMap(({ text }, i) => (row[i]?.text ? [text] : []));
  if (!given.includes("gate") || !given.some((column) => column.startsWith("gate."))) return [];
  const place = row[header.findIndex(({ text }) => text === "gate")]?.place ?? null;
  return [
    problem("E_CONFLICT", "gate", {
      place,
      found: "gate and gate.width",
      accepted: "a gate by name or by size",
    }),
  ];
}

function rowSource(header: readonly Cell[], row: readonly Cell[], index: number): Source {
  const value: Record<string, unknown> = {};
  const cells = new Map<string, Cell>();
  header.forEach(({ text: column }, i) => {
    const cell = row[i];
    if (cell === undefined || cell.text === "") return;
    cells.set(column, cell);
    setDeep(value, column.split("."), cellValue(column, cell.text));
  });
  const label = `cameras[${entryLabel(value, index)}]`;
  const start = (row[0] as Cell).place;
  return {
    value,
    placeOf: (path) => cellAt(cells, path)?.place ?? start,
    keyPlaceOf: (path) => cellAt(cells, path)?.place ?? start,
    has: (path) => cellAt(cells, path) !== null,
    labelOf: (path) => [label, ...path.filter((step) => typeof step === "string")].join("."),
  };
}

/** The cell of a path, or of the first column below or above it. */
function cellAt(cells: ReadonlyMap<string, Cell>, path: Path): Cell | null {
  const column = path.filter((step) => typeof step === "string").join(".");
  if (column === "") return null;
  for (const [name, cell] of cells) {
    if (name === column || name.startsWith(`${column}.`) || column.startsWith(`${name}.`)) return cell;
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
