/** Rows as CSV (RFC 4180), safe to open in a spreadsheet: the second door to papaparse (the first reads). */

import Papa from "papaparse";

/** `rows` share the keys of the first; lines end in CRLF as the standard says. */
export function csvText(
  fields: readonly string[],
  rows: readonly Readonly<Record<string, unknown>>[],
): string {
  const data = rows.map((row) => fields.map((field) => row[field] ?? ""));
  const body = Papa.unparse({ fields: [...fields], data }, { escapeFormulae: true, newline: "\r\n" });
  return `${body}\r\n`;
}
