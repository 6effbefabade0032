/** What parts the columns of a table: comma, semicolon or tab, by its header; or as a first line "sep=;" says. */

import type { Separator } from "./tableReading.ts";

const MARKS: Readonly<Record<Separator, string>> = Object.freeze({ comma: ",", semicolon: ";", tab: "\t" });

export const markOf = (separator: Separator): string => MARKS[separator];

/** A line of its own by which spreadsheets tell each other the separator. */
const TOLD = /^(\s*"?sep=([,;\t])"?[,;\t]*)(?=\n|$)/i;

/** The separator, and the text with the line that told it blanked, so that every other place stays. */
export function separatorOf(text: string): { separator: Separator; body: string } {
  const told = TOLD.exec(text);
  if (told === null) return { separator: inHeader(text), body: text };
  const [, line = "", mark] = told;
  const separator = mark === ";" ? "semicolon" : mark === "\t" ? "tab" : "comma";
  return { separator, body: line.replace(/[^\n]/g, " ") + text.slice(line.length) };
}

/** The mark that stands most often outside quotes in the first line with something else in it; commas before the others. */
function inHeader(text: string): Separator {
  const counts = { comma: 0, semicolon: 0, tab: 0 };
  let isQuoted = false;
  let hasText = false;
  for (const char of text) {
    if (char === '"') isQuoted = !isQuoted;
    if (isQuoted || char === '"') hasText = true;
    else if (char === ",") counts.comma++;
    else if (char === ";") counts.semicolon++;
    else if (char === "\t") counts.tab++;
    else if (char !== "\n") hasText ||= char.trim() !== "";
    else if (hasText) break;
    else Object.assign(counts, { comma: 0, semicolon: 0, tab: 0 });
  }
  const most = Math.max(counts.comma, counts.semicolon, counts.tab);
  if (counts.comma === most) return "comma";
  return counts.semicolon === most ? "semicolon" : "tab";
}
