/** Rows as CSV (RFC 4180), safe to open in a spreadsheet: the second door to papaparse (the first reads). */

import Papa from "papaparse";
import { guarded } from "../site/formulaGuard.ts";

/**
 * `rows` share the keys of the first; lines end in CRLF as the standard says. A text cell that a spreadsheet would take for a
 * formula gets an apostrophe and quotes, as OWASP recommends ("CSV Injection"); a camera table is read back without it.
 * Numbers stay numbers.
 */
export function csvText(
  fields: readonly string[],
  rows: readonly Readonly<Record<string, unknown>>[],
): string {
  const cells = rows.map((row) => fields.map((field) => row[field] ?? ""));
  const data = cells.map((row) => row.map((cell) => (typeof cell === "string" ? guarded(cell) : cell)));
  const isGuarded = (row: number, column: number): boolean => cells[row]?.[column] !== data[row]?.[column];
  const quotes = data.map((row, i) => row.map((_, j) => isGuarded(i, j)));
  const head = Papa.unparse([[...fields]]);
  const lines = data.map((row, i) => Papa.unparse([row], { quotes: quotes[i] ?? false }));
  return `${[head, ...lines].join("\r\n")}\r\n`;
}
