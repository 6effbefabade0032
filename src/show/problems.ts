/** Problems as a person reads them: place, code, key, the source line with the spot marked, what is accepted, the next step. */

import type { Problem } from "../base/problem.ts";
import type { Paint } from "./paint.ts";

/** More than this many are counted, not printed. */
const MOST_PROBLEMS = 10;

export function problemsText(problems: readonly Problem[], paint: Paint): string {
  const shown = problems.slice(0, MOST_PROBLEMS).map((problem) => problemText(problem, paint));
  const more = problems.length - MOST_PROBLEMS;
  if (more > 0) shown.push(`... and ${more} more like these; mend the first and run again`);
  return `${shown.join("\n\n")}\n`;
}

function problemText(problem: Problem, paint: Paint): string {
  const { place } = problem;
  const where = place === null ? "" : `${place.file}:${place.line}:${place.column}  `;
  const lines = [`${where}${paint.alarm(problem.code)}  ${problem.key}`];
  const detail = detailText(problem);
  if (place?.sourceLine) lines.push(...markedLine(place.sourceLine, place, detail));
  else if (detail !== "") lines.push(`  ${detail}`);
  if (problem.suggestion !== null) lines.push(`  Did you mean ${problem.suggestion}?`);
  if (problem.next !== null) lines.push(`  Next: ${problem.next}.`);
  return lines.join("\n");
}

function detailText({ found, accepted }: Problem): string {
  const parts = [
    found === null ? null : `found ${found}`,
    accepted === null ? null : `accepted: ${accepted}`,
  ];
  return parts.filter((part) => part !== null).join("; ");
}

/** Columns of a source line that are shown; a longer line is cut around the spot. */
const SHOWN_COLUMNS = 70;

function markedLine(sourceLine: string, place: NonNullable<Problem["place"]>, detail: string): string[] {
  const from = place.column - 1 > SHOWN_COLUMNS - 10 ? place.column - 21 : 0;
  const shown = sourceLine.slice(from, from + SHOWN_COLUMNS);
  const gutter = `${place.line} | `;
  const start = place.column - 1 - from;
  const length = Math.max(1, Math.min(place.lengthChars, shown.length - start));
  const blank = `${" ".repeat(gutter.length - 2)}| `;
  const marked = `  ${gutter}${from > 0 ? `…${shown.slice(1)}` : shown}`;
  return [
    marked,
    `  ${blank}${" ".repeat(Math.max(0, start))}${"^".repeat(length)}`,
    ...(detail === "" ? [] : [`  ${detail}`]),
  ];
}
