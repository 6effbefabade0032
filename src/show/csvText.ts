/** Rows as CSV (RFC 4180), safe to open in a spreadsheet: the second door to papaparse (the first reads). */

import Papa from "papaparse";

/**
 * Text that a spreadsheet would take for a formula, by the beginnings OWASP lists ("CSV Injection": = + - @, tab, carriage
 * return, line feed, and the wide forms); such text with apostrophes before it too, so that one can be taken away again.
 */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;

/**
 * `rows` share the keys of the first; lines end in CRLF as the standard says. A text cell that begins like a formula gets an
 * apostrophe and quotes, as OWASP recommends; a camera table is read back without it. Numbers stay numbers.
 */
export function csvText(
  fields: readonly string[],
  rows: readonly Readonly<Record<string, unknown>>[],
): string {
  const data = rows.map((row) => fields.map((field) => row[field] ?? ""));
  const body = Papa.unparse({ fields: [...fields], data }, { escapeFormulae: FORMULA, newline: "\r\n" });
  return `${body}\r\n`;
}
