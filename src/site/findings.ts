/** Collects the problems of a file while it is read, and reads parts of it against the schema. */

import type * as z from "zod";
import { type FilePlace, PadstopError, type Problem, type ProblemCode, problem } from "../base/problem.ts";
import type { IssueParams } from "./fields.ts";
import { nearest } from "./nearest.ts";
import { describe } from "./quantity.ts";
import type { Path, Source } from "./source.ts";
import { safeText, shortText } from "./sourcePlaces.ts";
import type { TableReading } from "./tableReading.ts";

/** A value in a file: where to look for it. */
export interface Origin {
  readonly source: Source;
  readonly path: Path;
}

export type ProblemParts = Partial<Omit<Problem, "code" | "key" | "place">>;

/** The problems found so far, and how the tables beside the file were read. */
export interface Findings {
  readonly problems: Problem[];
  readonly tables: TableReading[];
  /** Adds a problem about the value at `path` below `origin`. */
  add(origin: Origin, path: Path, code: ProblemCode, parts: ProblemParts): void;
}

export function newFindings(): Findings {
  const problems: Problem[] = [];
  return {
    problems,
    tables: [],
    add: ({ source, path: base }, path, code, parts) => {
      const whole = [...base, ...path];
      problems.push(problem(code, source.labelOf(whole), { ...parts, place: source.placeOf(whole) }));
    },
  };
}

/** Throws all that was found, in the order of the files and of their lines. */
export function throwFound(problems: readonly Problem[], mainFile: string): void {
  if (problems.length === 0) return;
  const consequences = misspeltKeys(problems);
  const order = (place: FilePlace | null): string =>
    place === null || place.file === mainFile ? "" : place.file;
  const isCause = ({ code, key }: Problem): boolean =>
    !((code === "E_MISSING" || code === "E_EMPTY") && consequences.has(key));
  const sorted = problems
    .filter(isCause)
    .sort(
      (a, b) =>
        order(a.place).localeCompare(order(b.place), "en") ||
        (a.place?.line ?? 0) - (b.place?.line ?? 0) ||
        (a.place?.column ?? 0) - (b.place?.column ?? 0),
    );
  throw new PadstopError(sorted.map(safeProblem));
}

/** Names of the file may stand in any part of a problem: none may act on a terminal. */
function safeProblem(p: Problem): Problem {
  const safe = (part: string | null): string | null => (part === null ? null : safeText(part));
  const { found, accepted, suggestion, next } = p;
  const parts = {
    found: safe(found),
    accepted: safe(accepted),
    suggestion: safe(suggestion),
    next: safe(next),
  };
  return { ...p, key: safeText(p.key), ...parts };
}

/** The keys that were meant by unknown ones: that they are missing is no second mistake. */
function misspeltKeys(problems: readonly Problem[]): ReadonlySet<string> {
  const meant = new Set<string>();
  for (const { code, key, suggestion } of problems) {
    if (code !== "E_KEY") continue;
    // Also the map as a whole, when it says that none of its keys is there.
    meant.add(key.replace(/\.?[^.]*$/, ""));
    if (suggestion !== null) meant.add(key.replace(/[^.]*$/, () => suggestion));
  }
  return meant;
}

/** The value below `value` at `path`; undefined when it is not there. */
export function valueAt(value: unknown, path: Path): unknown {
  let here = value;
  for (const step of path) {
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

export const isMap = (value: unknown): value is object =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export const isGiven = ({ source, path }: Origin, key: string): boolean => source.has([...path, key]);

/** The entries of a list, or none (with a finding) when it is no list. */
export function entriesOf(source: Source, key: string, findings: Findings): Origin[] {
  if (!source.has([key])) return [];
  const list = valueAt(source.value, [key]);
  if (Array.isArray(list)) return list.map((_, index) => ({ source, path: [key, index] }));
  findings.add({ source, path: [] }, [key], "E_TYPE", { found: describe(list), accepted: "a list" });
  return [];
}

type Shape = z.ZodRawShape;
/** What a map gave: keys that are missing or wrong are undefined. */
export type Read<S extends Shape> = { readonly [K in keyof S]?: z.output<S[K]> | undefined };

/** Reads a map key by key, so that one wrong key does not hide the next. */
export function readKeys<S extends Shape>(
  schema: z.ZodObject<S>,
  origin: Origin,
  findings: Findings,
): Read<S> {
  const value = valueAt(origin.source.value, origin.path);
  const known = Object.keys(schema.shape);
  if (!isMap(value)) {
    const code = value === undefined ? "E_MISSING" : "E_TYPE";
    findings.add(origin, [], code, { found: describe(value), accepted: `a map with ${known.join(", ")}` });
    return {};
  }
  for (const key of Object.keys(value))
    if (!known.includes(key)) addUnknownKey(origin, [], key, known, findings);
  const read: Record<string, unknown> = {};
  for (const key of known) {
    const field = (schema.shape as unknown as Record<string, z.ZodType>)[key];
    if (field === undefined) continue;
    read[key] = readField(field, { source: origin.source, path: [...origin.path, key] }, findings);
  }
  return read as Read<S>;
}

/** Reads one value as a whole; undefined when it is left out or wrong. */
export function readField<T extends z.ZodType>(
  field: T,
  origin: Origin,
  findings: Findings,
): z.output<T> | undefined {
  const result = field.safeParse(valueAt(origin.source.value, origin.path));
  if (result.success) return result.data;
  for (const issue of result.error.issues) addIssue(issue, origin, [], findings);
  return undefined;
}

/** A key that is none, with its near miss. */
export function addUnknownKey(
  origin: Origin,
  path: Path,
  key: string,
  known: readonly string[],
  findings: Findings,
): void {
  const { source, path: base } = origin;
  const whole = [...base, ...path, key];
  findings.problems.push(
    problem("E_KEY", shortText(source.labelOf(whole)), {
      place: source.keyPlaceOf(whole),
      found: `unknown key ${shortText(key)}`,
      accepted: known.join(", "),
      suggestion: nearest(key, known),
      // In {up: 1,5} the comma ends the value, and 5 stands where a key is looked for.
      next: /^\d+$/.test(key) ? "write a decimal point where a comma stands" : null,
    }),
  );
}

type Issue = z.core.$ZodIssue;

function addIssue(issue: Issue, origin: Origin, base: Path, findings: Findings): void {
  const path = [...base, ...issue.path.filter((step) => typeof step !== "symbol")];
  if (issue.code === "invalid_union") {
    for (const inner of branchMeant(issue.errors)) addIssue(inner, origin, path, findings);
    return;
  }
  if (issue.code === "unrecognized_keys") {
    for (const key of issue.keys) addUnknownKey(origin, path, key, issue.message.split(", "), findings);
    return;
  }
  const { code, ...parts } =
    issue.code === "custom" ? customParts(issue.params) : plainParts(issue, origin, path);
  findings.add(origin, path, code, parts);
}

type CodeAndParts = ProblemParts & { readonly code: ProblemCode };

function customParts(params: unknown): CodeAndParts {
  const { code, found = null, accepted = null, suggestion = null, next = null } = params as IssueParams;
  return { code, found, accepted, suggestion, next };
}

/** Issues of zod's own: a map or list that is none, and lists too short or too long. */
function plainParts(issue: Issue, { source, path: base }: Origin, path: Path): CodeAndParts {
  const value = valueAt(source.value, [...base, ...path]);
  const found = describe(value);
  if (issue.code === "too_small" || issue.code === "too_big") {
    const count = Array.isArray(value) ? value.length : 0;
    if (count === 0) return { code: "E_EMPTY", found: "an empty list", accepted: "at least one entry" };
    if (issue.code === "too_big" && Number(issue.maximum) > 2) {
      return { code: "E_RANGE", found: `a list of ${count}`, accepted: `up to ${issue.maximum} entries` };
    }
    return { code: "E_TYPE", found: `a list of ${count}`, accepted: issue.message };
  }
  const code = value === undefined ? "E_MISSING" : "E_TYPE";
  if (issue.code !== "invalid_type") return { code, found, accepted: issue.message };
  const accepted = issue.expected === "array" ? "a list" : `a map with ${issue.message}`;
  return { code, found, accepted: issue.expected === "tuple" ? issue.message : accepted };
}

/** Of the branches of a union, the one whose shape the value has: the message must be about the real mistake. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  let best: readonly Issue[] = branches[0] ?? [];
  for (const branch of branches) if (misfit(branch) < misfit(best)) best = branch;
  return best;
}

/** How badly a branch fits: the wrong kind of value counts most, then unknown keys, then the rest. */
function misfit(branch: readonly Issue[]): number {
  let score = 0;
  for (const issue of branch) {
    if (issue.code === "invalid_union") score += misfit(branchMeant(issue.errors));
    else if (isWrongKind(issue) && issue.path.length === 0) score += 1000;
    else if (issue.code === "unrecognized_keys") score += 10 * issue.keys.length;
    else score += 1;
  }
  return score;
}

function isWrongKind(issue: Issue): boolean {
  if (issue.code === "invalid_type") return true;
  const found = issue.code === "custom" ? (issue.params as IssueParams | undefined) : undefined;
  return found?.code === "E_TYPE" && (found.found === "a map" || found.found === "a list");
}
