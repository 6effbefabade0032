/**
 * Building blocks of the schema: each reads one kind of value, and says what is accepted in its own words.
 * From zod; an issue carries code, found and accepted in its params, so that nothing depends on zod's texts.
 */

import * as z from "zod";
import type { ProblemCode } from "../base/problem.ts";
import { nearest } from "./nearest.ts";
import { acceptedText, describe, parseQuantity } from "./quantity.ts";
import { QUANTITIES, type QuantityKind } from "./quantityKinds.ts";
import { UNSAFE_CHARS } from "./sourcePlaces.ts";

/** What an issue of ours says. */
export interface IssueParams {
  readonly code: ProblemCode;
  readonly found?: string | null;
  readonly accepted?: string | null;
  readonly suggestion?: string | null;
  readonly next?: string | null;
  /** The key or entry inside the value that it is about, when it is not the value itself. */
  readonly key?: string | number;
}

interface IssueSink {
  readonly issues: z.core.$ZodRawIssue[];
}

/** Records an issue of ours and gives what a transform must return then. */
export function fail(sink: IssueSink, input: unknown, params: IssueParams): never {
  const path = params.key === undefined ? [] : [params.key];
  sink.issues.push({ code: "custom", input, path, params: { ...params } });
  return z.NEVER;
}

/** A map with these keys and no others. Its message lists the keys: that is how a wrong key finds its near miss. */
export function map<S extends z.ZodRawShape>(shape: S): z.ZodObject<S, z.core.$strict> {
  return z.strictObject(shape, { error: () => Object.keys(shape).join(", ") });
}

/** A number, or text with a unit, from `low` to `high` in the unit of the kind; `beyondNext` is the next step of one beyond. */
export function quantity(
  kind: QuantityKind,
  low: number,
  high: number,
  description: string,
  beyondNext: string | null = null,
) {
  return z
    .unknown()
    .transform((value, sink): number => {
      const accepted = acceptedText(kind, low, high);
      if (value === undefined) return fail(sink, value, { code: "E_MISSING", accepted });
      const read = parseQuantity(value, kind, low, high);
      if (read.ok) return read.value;
      return fail(sink, value, read.code === "E_RANGE" ? { ...read, next: read.next ?? beyondNext } : read);
    })
    .meta({
      description: `${description}: ${acceptedText(kind, low, high)}`,
      type: ["number", "string"],
      minimum: low,
      maximum: high,
      ...(Object.keys(QUANTITIES[kind].spellings).length > 0 ? { examples: exampleOf(kind, low) } : {}),
    });
}

function exampleOf(kind: QuantityKind, low: number): string[] {
  const unit = Object.keys(QUANTITIES[kind].spellings)[0] ?? "";
  return [`${Math.max(low, 1)} ${unit}`.trim()];
}

/** Text of 1 to `maxChars` characters without control characters; a number is taken as the text it is. */
export function text(description: string, maxChars = 200, severalLines = false) {
  const accepted = `text of 1 to ${maxChars} characters`;
  return z
    .unknown()
    .transform((value, sink): string => {
      if (value === undefined) return fail(sink, value, { code: "E_MISSING", accepted });
      if (typeof value !== "string" && typeof value !== "number") {
        return fail(sink, value, { code: "E_TYPE", found: describe(value), accepted, next: textNext(value) });
      }
      const written = String(value).trim();
      const checked = severalLines ? written.replace(/[\n\t]/g, " ") : written;
      if (UNSAFE_CHARS.test(checked)) return fail(sink, value, charsParams(checked, severalLines));
      if (written.length >= 1 && written.length <= maxChars) return written;
      return fail(sink, value, { code: "E_CHARS", found: `${written.length} characters`, accepted });
    })
    .meta({ description, type: ["string", "number"], minLength: 1, maxLength: maxChars });
}

const textNext = (value: unknown): string | null =>
  typeof value === "boolean" ? 'put it in quotes: "true" is text, true is not' : null;

function charsParams(written: string, severalLines: boolean): IssueParams {
  const code = written.codePointAt(written.search(UNSAFE_CHARS)) ?? 0;
  return {
    code: "E_CHARS",
    found: `the character U+${code.toString(16).toUpperCase().padStart(4, "0")}`,
    accepted: `text without control characters${severalLines ? " but line breaks" : ""}`,
  };
}

/** How spreadsheets name tables: .txt is what they write in UTF-16. */
export const TABLE_NAME = /\.(?:csv|tsv|txt)$/i;

/** The name of a table beside the site file. */
export const tableName = (what: string) =>
  text(`${what}: name of a .csv, .tsv or .txt file beside this one`).transform((name, sink): string => {
    if (TABLE_NAME.test(name)) return name;
    return fail(sink, name, {
      code: "E_FILE",
      found: describe(name),
      accepted: "a file name that ends in .csv, .tsv or .txt",
    });
  });

/** One word of a list. */
export function choice<const W extends string>(words: readonly W[], description: string) {
  return z
    .unknown()
    .transform((value, sink): W => {
      const accepted = words.join(", ");
      if (value === undefined) return fail(sink, value, { code: "E_MISSING", accepted });
      const word = typeof value === "string" ? value.trim() : value;
      const known = words.find((candidate) => candidate === word);
      if (known !== undefined) return known;
      const found = describe(value);
      if (typeof word !== "string") return fail(sink, value, { code: "E_TYPE", found, accepted });
      return fail(sink, value, { code: "E_CHOICE", found, accepted, suggestion: nearest(word, words) });
    })
    .meta({ description, enum: [...words] });
}

/** One value or a list of them; gives a list. */
export function oneOrList<T extends z.ZodType>(item: T, description: string) {
  return z
    .union([item, z.array(item).min(1).max(200)])
    .transform((value): z.output<T>[] =>
      Array.isArray(value) ? (value as z.output<T>[]) : [value as z.output<T>],
    )
    .meta({ description });
}
