/** Rows as aligned text: the one door to the `table` library. */

import { table } from "table";

export interface Column {
  readonly head: string;
  readonly align?: "left" | "right";
}

/** Blanks between columns. */
const GAP = 2;

/** Columns a table takes: for choosing a layout before anything is drawn. */
export function tableWidth(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  gap = GAP,
): number {
  const widths = columns.map(({ head }, i) =>
    Math.max(
      ...head.split("\n").map(visibleLength),
      ...rows.map((row) => Math.max(...row[i]!.split("\n").map(visibleLength))),
    ),
  );
  return widths.reduce((sum, width) => sum + width, 0) + gap * (columns.length - 1);
}

/** At most so many characters, the last a mark that there were more; other outputs have such names whole. */
export function cutText(text: string, most: number): string {
  const letters = [...text];
  return letters.length > most ? `${letters.slice(0, most - 1).join("")}…` : text;
}

/** A table with a single blank between columns where two would be too wide. */
export const fittedTable = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
): string => textTable(columns, rows, tableWidth(columns, rows) <= width ? GAP : 1);

/** A cell may hold several lines. Control characters other than line ends are refused by the library, so they go first. */
export function textTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  gap = GAP,
): string {
  const head = columns.map((column) => column.head);
  const data = [head, ...rows.map((row) => row.map(printable))];
  const text = table(data, {
    border: {
      topBody: "",
      topJoin: "",
      topLeft: "",
      topRight: "",
      bottomBody: "",
      bottomJoin: "",
      bottomLeft: "",
      bottomRight: "",
      bodyLeft: "",
      bodyRight: "",
      bodyJoin: "",
      joinBody: "─",
      joinLeft: "",
      joinRight: "",
      joinJoin: "",
    },
    columnDefault: { paddingLeft: 0, paddingRight: gap, verticalAlignment: "top" },
    columns: columns.map((column, i) => ({
      alignment: column.align ?? "left",
      ...(i === columns.length - 1 ? { paddingRight: 0 } : {}),
    })),
    drawHorizontalLine: (index) => index === 1,
  });
  return text
    .split("\n")
    .map((line) => line.trimEnd())
    .join("\n");
}

/** Names come from files: what a terminal would obey is replaced before it is printed. Our own colours stay. */
function printable(text: string): string {
  return [...text].map((char) => (isObeyed(char) ? "�" : char)).join("");
}

function isObeyed(char: string): boolean {
  const code = char.codePointAt(0)!;
  if (char === "\n" || code === 0x1b) return false;
  return code < 0x20 || (code >= 0x7f && code < 0xa0);
}

/** Text folded at spaces to `width`; its own leading spaces stay, later lines start with `indent`. */
export function folded(text: string, width: number, indent: string): string {
  const [lead = ""] = /^ */.exec(text) ?? [];
  const [first = "", ...words] = text.slice(lead.length).split(" ");
  const lines: string[] = [];
  let line = `${lead}${first}`;
  for (const word of words) {
    if (visibleLength(line) + 1 + visibleLength(word) > width) {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = `${line} ${word}`;
  }
  return [...lines, line].join("\n");
}

/** Length without our colours. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the escape of our own colours
const COLOURS = /\u001b\[\d+m/g;
const visibleLength = (text: string): number => text.replace(COLOURS, "").length;
