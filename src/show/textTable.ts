/** Rows as aligned text: the one door to the `table` library. */

import { table } from "table";

export interface Column {
  readonly head: string;
  readonly align?: "left" | "right" | "center";
}

export interface TextTableOptions {
  /** A rule under every row, for rows of several lines. */
  readonly ruled?: boolean;
  readonly indent?: number;
}

/** A cell may hold several lines. Control characters other than line ends are refused by the library, so they go first. */
export function textTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  options: TextTableOptions = {},
): string {
  const head = columns.map((column) => column.head);
  const data = [head, ...rows.map((row) => row.map(printable))];
  const text = table(data, {
    border: {
      topBody: "", topJoin: "", topLeft: "", topRight: "",
      bottomBody: "", bottomJoin: "", bottomLeft: "", bottomRight: "",
      bodyLeft: "", bodyRight: "", bodyJoin: "",
      joinBody: "─", joinLeft: "", joinRight: "", joinJoin: "─",
    },
    columnDefault: { paddingLeft: 0, paddingRight: 2, wrapWord: true, verticalAlignment: "top" },
    columns: columns.map((column) => ({ alignment: column.align ?? "left" })),
    drawHorizontalLine: (index, size) => index === 1 || (options.ruled === true && index > 1 && index < size),
  });
  const pad = " ".repeat(options.indent ?? 0);
  return text
    .split("\n")
    .map((line) => (line === "" ? line : `${pad}${line}`.trimEnd()))
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

/** Text folded at spaces to `width`, later lines indented. */
export function folded(text: string, width: number, indent: string): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const candidate = line === "" ? word : `${line} ${word}`;
    if (visibleLength(candidate) > width && line !== "") {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = candidate;
  }
  return [...lines, line].join("\n");
}

/** Length without our colours. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the escape of our own colours
const COLOURS = /\u001b\[\d+m/g;
export const visibleLength = (text: string): number => text.replace(COLOURS, "").length;
