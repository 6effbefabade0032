/**
 * The header of an ascent table: which column holds what, and in which unit. Names are taken in any case, with the unit in
 * brackets or behind a blank or an underscore; columns with other names are left aside. What the cells hold is not looked at.
 */

import { type Problem, problem } from "../base/problem.ts";
import { type CsvRow, twiceProblem } from "./csvCells.ts";
import { unitMeant } from "./headerUnits.ts";
import { nearest } from "./nearest.ts";
import { parseQuantity } from "./quantity.ts";
import { QUANTITIES } from "./quantityKinds.ts";
import { shortText } from "./sourcePlaces.ts";
import type { AscentTable } from "./types.ts";

export type ColumnName = "t" | "east" | "north" | "up" | "downrange" | "altitude";

export interface AscentColumn {
  readonly name: ColumnName;
  /** Counted from 0. */
  readonly index: number;
  /** As the user wrote it. */
  readonly written: string;
  /** Null with a problem of its own; the factor is then 1. */
  readonly unit: string | null;
  /** From the column's unit to metres or seconds. */
  readonly factor: number;
}

export interface AscentHeader {
  readonly kind: AscentTable["kind"];
  readonly time: AscentColumn;
  /** The coordinates in the order of the kind's names. */
  readonly coordinates: readonly AscentColumn[];
}

const SPELLINGS: Readonly<Record<string, ColumnName>> = Object.freeze({
  t: "t",
  "t+": "t",
  time: "t",
  east: "east",
  north: "north",
  up: "up",
  downrange: "downrange",
  altitude: "altitude",
  alt: "altitude",
});

/** The coordinates of each kind of table, in the order in which they are read. */
export const COORDINATES: Readonly<Record<AscentTable["kind"], readonly ColumnName[]>> = {
  enu: ["east", "north", "up"],
  downrange: ["downrange", "altitude"],
};

const TIME_UNITS = ["s", "ms", "min"];
const LENGTH_UNITS = Object.keys(QUANTITIES.lengthM.spellings);
const IN_BRACKETS = /^(.*?)[\s_]*[([]\s*(.*?)\s*[)\]]$/;
const BEHIND = /^(.*?)[\s_]+([^\s_]+)$/;

/** One cell of the header: what it is called, and the unit as written; null when there is none. */
interface Written {
  readonly name: ColumnName | null;
  readonly bareName: string;
  readonly index: number;
  readonly text: string;
  readonly unit: string | null;
  readonly isInBrackets: boolean;
}

/** The columns of a table (null when they are not all there, or of both kinds) and all that is wrong with its header. */
export function readAscentHeader(header: CsvRow): { columns: AscentHeader | null; problems: Problem[] } {
  const cells = header.texts.map(readHeaderCell);
  const claimed = cells.filter((cell) => cell.name !== null && !isOtherColumn(cell, cells));
  const names = new Set(claimed.map(({ name }) => name));
  const problems: Problem[] = [];
  const whole = (["enu", "downrange"] as const).filter((kind) =>
    COORDINATES[kind].every((n) => names.has(n)),
  );
  if (whole.length === 2) problems.push(bothKinds(header, claimed));
  if (!names.has("t")) problems.push(missing(header, cells, ["t"], "a column t (s)"));
  if (whole.length === 0) problems.push(missingWay(header, cells, names));
  const used = (name: ColumnName | null): boolean =>
    name === "t" || whole.length !== 1 || COORDINATES[whole[0] ?? "enu"].some((n) => n === name);
  const columns: AscentColumn[] = [];
  for (const cell of claimed.filter(({ name }) => used(name))) {
    const first = columns.find(({ name }) => name === cell.name);
    if (unitOf(cell) === null) problems.push(unitProblem(cell, header));
    if (first === undefined) columns.push(columnOf(cell));
    else problems.push(twiceProblem(first.name, header, first.index, cell.index));
  }
  const isClear = whole.length === 1 && names.has("t");
  return { columns: isClear ? ordered(whole[0] ?? "enu", columns) : null, problems };
}

function ordered(kind: AscentTable["kind"], columns: readonly AscentColumn[]): AscentHeader | null {
  const [time, ...coordinates] = (["t", ...COORDINATES[kind]] as const).flatMap((name) =>
    columns.filter((column) => column.name === name),
  );
  return time === undefined ? null : { kind, time, coordinates };
}

/** A table that begins with its numbers; null for what can be read as a header. */
export function notAHeader(header: CsvRow): Problem | null {
  const accepted = "a header such as t (s), east (m), north (m), up (m)";
  const place = header.placeOf(0);
  if (!header.texts.every((text) => /^[-+.\d][-+.,\de]*$/i.test(text))) return null;
  return problem("E_CSV", "table", { place, found: "numbers in the first line", accepted });
}

function readHeaderCell(text: string, index: number): Written {
  const brackets = IN_BRACKETS.exec(text);
  const whole = nameIn(brackets?.[1] ?? text);
  const behind = whole.name === null && brackets === null ? BEHIND.exec(text) : null;
  const { name, bareName } = behind === null ? whole : nameIn(behind[1] ?? "");
  const unit = brackets?.[2] ?? behind?.[2] ?? "";
  return { name, bareName, index, text, unit: unit === "" ? null : unit, isInBrackets: brackets !== null };
}

function nameIn(text: string): { name: ColumnName | null; bareName: string } {
  const bareName = text.toLowerCase().replace(/[\s_]+/g, "");
  return { name: Object.hasOwn(SPELLINGS, bareName) ? (SPELLINGS[bareName] ?? null) : null, bareName };
}

const unitsOf = (name: ColumnName): readonly string[] => (name === "t" ? TIME_UNITS : LENGTH_UNITS);

/** The unit of a cell in our spelling: as written, or in another case. */
function unitOf({ name, unit }: Written): string | null {
  if (name === null || unit === null) return null;
  const units = unitsOf(name);
  return units.find((one) => one === unit) ?? units.find((one) => one === unit.toLowerCase()) ?? null;
}

/** "east_velocity" beside "east (m)" is another column; alone it is taken for east with a wrong unit. */
const isOtherColumn = (cell: Written, cells: readonly Written[]): boolean =>
  !cell.isInBrackets &&
  cell.unit !== null &&
  unitOf(cell) === null &&
  cells.some((other) => other.name === cell.name && unitOf(other) !== null);

function columnOf(cell: Written): AscentColumn {
  const name = cell.name ?? "t";
  const unit = unitOf(cell);
  const one = parseQuantity(`1 ${unit ?? ""}`, name === "t" ? "timeS" : "lengthM", 0, Number.MAX_VALUE);
  return { name, index: cell.index, written: cell.text, unit, factor: one.ok ? one.value : 1 };
}

function unitProblem(cell: Written, header: CsvRow): Problem {
  const name = cell.name ?? "t";
  const units = unitsOf(name);
  const wrong = cell.unit?.toLowerCase() ?? "";
  return problem("E_UNIT", shortText(cell.text), {
    place: header.placeOf(cell.index),
    found: cell.unit === null ? `column ${shortText(cell.text)} without a unit` : shortText(cell.unit),
    accepted: `a unit: ${units.join(", ")}`,
    suggestion: unitMeant(wrong, units),
    next: `write the unit into the header, for example ${name} (${name === "t" ? "s" : "m"})`,
  });
}

const WAY = "east, north and up; or downrange and altitude";

function bothKinds(header: CsvRow, claimed: readonly Written[]): Problem {
  const place = header.placeOf(claimed.find(({ name }) => name === "downrange")?.index ?? 0);
  const next = "leave the columns of one kind out";
  return problem("E_CONFLICT", "table", { place, found: "columns of both kinds", accepted: WAY, next });
}

/** Neither kind is whole: the one with more of its columns is what is meant. */
function missingWay(header: CsvRow, cells: readonly Written[], names: ReadonlySet<unknown>): Problem {
  const lacks = (kind: AscentTable["kind"]) => COORDINATES[kind].filter((name) => !names.has(name));
  const { enu, downrange } = { enu: lacks("enu"), downrange: lacks("downrange") };
  const isEnu = enu.length < COORDINATES.enu.length;
  const isDownrange = downrange.length < COORDINATES.downrange.length;
  const wanted = isEnu === isDownrange ? [...enu, ...downrange] : isEnu ? enu : downrange;
  return missing(header, cells, wanted, WAY);
}

/** Columns that are not there; at the column that comes nearest in name, when there is one. */
function missing(
  header: CsvRow,
  cells: readonly Written[],
  wanted: readonly ColumnName[],
  accepted: string,
): Problem {
  const spellings = Object.keys(SPELLINGS).filter((one) => wanted.some((name) => name === SPELLINGS[one]));
  for (const cell of cells.filter(({ name }) => name === null)) {
    const near = nearest(cell.bareName, spellings);
    if (near === null) continue;
    const found = `column ${shortText(cell.text)}`;
    const place = header.placeOf(cell.index);
    return problem("E_MISSING", shortText(cell.text), { place, found, accepted, suggestion: near });
  }
  const found = `no column ${wanted.join(", ")}`;
  return problem("E_MISSING", "table", { place: header.placeOf(0), found, accepted });
}
