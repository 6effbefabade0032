/** Units in the header of a table: "range (m)", "range [m]", "range_m". What a column holds is left to the table's own reader. */

import { nearest } from "./nearest.ts";

/** What people write for a unit, for the near miss only. */
const LONG_UNITS: Readonly<Record<string, string>> = Object.freeze({
  seconds: "s",
  sec: "s",
  minutes: "min",
  metres: "m",
  meters: "m",
  kilometres: "km",
  kilometers: "km",
  millimetres: "mm",
  millimeters: "mm",
  feet: "ft",
  inches: "in",
  miles: "mi",
});

const IN_BRACKETS = /^(.*?)[\s_.]*[([]\s*(.*?)\s*[)\]]$/s;
const BEHIND = /^(.*?)[\s_.]+([^\s_.]+)$/s;

export interface HeaderParts {
  readonly name: string;
  readonly unit: string;
}

/** Name and unit of a header with brackets at its end; null without. */
export function inBrackets(header: string): HeaderParts | null {
  const [, name = "", unit = ""] = IN_BRACKETS.exec(header) ?? [];
  return name === "" ? null : { name, unit };
}

/** Name and last word of a header; null for a single word. */
export function lastWord(header: string): HeaderParts | null {
  const [, name = "", unit = ""] = BEHIND.exec(header) ?? [];
  return name === "" ? null : { name, unit };
}

/** The unit as written, or in another case; null when it is none of `units`. */
export const unitIn = (unit: string, units: readonly string[]): string | null =>
  units.find((one) => one === unit) ?? units.find((one) => one.toLowerCase() === unit.toLowerCase()) ?? null;

/** The one of `units` that was meant by a wrong spelling, in words or with a slip. */
export function unitMeant(wrong: string, units: readonly string[]): string | null {
  const words = Object.keys(LONG_UNITS).filter((word) => units.includes(LONG_UNITS[word] ?? ""));
  const word = nearest(wrong, words);
  return (word === null ? null : LONG_UNITS[word]) ?? nearest(wrong, units);
}

/** True for the full name of a unit, which is no spelling of it here. */
export const isLongUnit = (word: string): boolean => Object.hasOwn(LONG_UNITS, word.toLowerCase());
