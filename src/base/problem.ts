/** The one error class: what was found, where, what is accepted, and what to do next. */

/** Every code a user can meet. Each has a row in DEVELOPERS.md. */
export const PROBLEM_CODES = [
  "E_YAML",
  "E_SIZE",
  "E_KEY",
  "E_MISSING",
  "E_TYPE",
  "E_UNIT",
  "E_RANGE",
  "E_CHOICE",
  "E_TIME",
  "E_GAP",
  "E_TWICE",
  "E_ZONE",
  "E_ORDER",
  "E_DUPLICATE",
  "E_EMPTY",
  "E_CHARS",
  "E_AT_PAD",
  "E_CONFLICT",
  "E_CSV",
  "E_FILE",
  "E_WRITE",
  "E_OPTION",
  "E_NAME",
] as const;

export type ProblemCode = (typeof PROBLEM_CODES)[number];

/** Where in a file something stands; line and column count from 1. */
export interface FilePlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** The source line as it stands in the file (control characters replaced), if there is one. */
  readonly sourceLine: string | null;
  /** How many characters of the source line are meant. */
  readonly lengthChars: number;
}

/** One thing wrong with the input. */
export interface Problem {
  readonly code: ProblemCode;
  /** The key, option or column it is about, as the user wrote it ("lens.focal", "--step"). */
  readonly key: string;
  readonly place: FilePlace | null;
  readonly found: string | null;
  /** What is accepted, with unit and range. */
  readonly accepted: string | null;
  /** The nearest right word, when one is near. */
  readonly suggestion: string | null;
  /** One next step. */
  readonly next: string | null;
}

/** A problem from the parts that matter; the rest is null. */
export function problem(
  code: ProblemCode,
  key: string,
  parts: Partial<Omit<Problem, "code" | "key">> = {},
): Problem {
  return {
    code,
    key,
    place: parts.place ?? null,
    found: parts.found ?? null,
    accepted: parts.accepted ?? null,
    suggestion: parts.suggestion ?? null,
    next: parts.next ?? null,
  };
}

/** One line that says it all, for messages without layout. */
function problemLine(p: Problem): string {
  const where = p.place ? `${p.place.file}:${p.place.line}:${p.place.column}  ` : "";
  const what = [
    p.found === null ? null : `found ${p.found}`,
    p.accepted === null ? null : `accepted: ${p.accepted}`,
    p.suggestion === null ? null : `did you mean ${p.suggestion}?`,
    p.next,
  ].filter((part) => part !== null);
  return `${where}${p.code}  ${p.key}${what.length > 0 ? `: ${what.join("; ")}` : ""}`;
}

/** Wrong input; carries every problem found, never just the first. */
export class PadstopError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(problemLine).join("\n"));
    this.name = "PadstopError";
    this.problems = problems;
  }
}

/** Throws one problem of a library call's argument. */
export function refuse(code: ProblemCode, key: string, found: unknown, accepted: string): never {
  throw new PadstopError([problem(code, key, { found: String(found), accepted })]);
}

/** `value` when it is a finite number in `low`..`high`; otherwise our error, naming the range and unit. */
export function requireNumber(key: string, value: number, low: number, high: number, unit: string): number {
  if (typeof value === "number" && Number.isFinite(value) && value >= low && value <= high) return value;
  return refuse("E_RANGE", key, value, `${low} to ${high}${unit === "" ? "" : ` ${unit}`}`);
}

/** `value` when it is a valid date in the years 1900 to 2100 (a few days more, for the hours around a window); otherwise our error. */
export function requireDate(key: string, value: Date): Date {
  const ms = value instanceof Date ? value.getTime() : Number.NaN;
  if (ms >= Date.UTC(1899, 11, 28) && ms < Date.UTC(2101, 0, 5)) return value;
  return refuse(
    "E_TIME",
    key,
    Number.isNaN(ms) ? "no valid date" : value.toISOString(),
    "a date from 1900 to 2100",
  );
}
