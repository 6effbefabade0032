/** What the reader knows of the origin of a value: its place, its text, its name in messages. YAML and CSV both give it. */

import type { FilePlace } from "../base/problem.ts";

/** Steps from the top of a file to a value. */
export type Path = readonly (string | number)[];

export interface Source {
  /** The content as plain values. */
  readonly value: unknown;
  /** Place of the value at `path`; of the nearest value above it when it is not written. */
  placeOf(path: Path): FilePlace;
  /** Place of the key of `path`, or of the value where there is no key. */
  keyPlaceOf(path: Path): FilePlace;
  /** True when something is written at `path`. */
  has(path: Path): boolean;
  /** The path as the user would look for it: cameras[P07].lens.focal. */
  labelOf(path: Path): string;
}

/** What a list's entry is called: its id or name when it has a usable one, else its count from 1. */
export function entryLabel(entry: unknown, index: number): string {
  if (typeof entry === "object" && entry !== null) {
    const named = entry as { id?: unknown; name?: unknown };
    const label = named.id ?? named.name;
    if (typeof label === "number") return String(label);
    if (typeof label === "string" && /^[\p{L}\p{N} ._-]{1,40}$/u.test(label)) return label;
  }
  return String(index + 1);
}

/** Keys with dots, list entries in brackets by name. */
export function pathLabel(value: unknown, path: Path): string {
  let label = "";
  let here: unknown = value;
  for (const step of path) {
    const next =
      typeof here === "object" && here !== null
        ? (here as Record<string | number, unknown>)[step]
        : undefined;
    if (typeof step === "number") label += `[${entryLabel(next, step)}]`;
    else label += label === "" ? step : `.${step}`;
    here = next;
  }
  return label;
}
