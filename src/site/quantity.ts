/**
 * Values as people write them ("1340 ft", "12°30'", "1/500 s") to numbers in the unit of the program.
 * From closed lists of unit spellings; conversion by js-quantities. Locale forms (decimal comma, 1'000) are left out:
 * they are refused, never guessed.
 */

import Qty from "js-quantities";
import type { ProblemCode } from "../base/problem.ts";
import { nearest } from "./nearest.ts";
import { QUANTITIES, type QuantityKind } from "./quantityKinds.ts";
import { parseSexagesimal } from "./sexagesimal.ts";
import { shortText } from "./sourcePlaces.ts";

export type QuantityResult =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      readonly code: ProblemCode;
      readonly found: string;
      readonly accepted: string;
      readonly suggestion: string | null;
      readonly next: string | null;
    };

const NUMBER_AND_UNIT = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(.*)$/i;
const FRACTION_AND_UNIT = /^(\d+(?:\.\d+)?)\s*\/\s*(\d+(?:\.\d+)?)\s*(.*)$/;

/** `value` (a number in the default unit, or text) as a number in the kind's unit, inside `low`..`high`. */
export function parseQuantity(value: unknown, kind: QuantityKind, low: number, high: number): QuantityResult {
  const accepted = acceptedText(kind, low, high);
  const refused = (code: ProblemCode, found: string, next: string | null = null): QuantityResult => ({
    ok: false,
    code,
    found,
    accepted,
    suggestion: null,
    next,
  });
  if (typeof value !== "number" && typeof value !== "string") return refused("E_TYPE", describe(value));
  const found = shortText(String(value).trim());
  const read = typeof value === "number" ? value : readText(value, kind);
  if (typeof read === "object") return { ok: false, found, next: decimalNext(found), ...read };
  if (!Number.isFinite(read)) return refused("E_TYPE", found);
  if (read < low || read > high) return refused("E_RANGE", found, rangeNext(kind, read, found));
  return { ok: true, value: read };
}

function decimalNext(written: string): string | null {
  if (!/\d,\d/.test(written)) return null;
  // 1,250 may be thousands: the advice must not make 1.25 of it.
  const isGrouped = /(?<![\d,.])[1-9]\d{0,2},\d{3}(?![\d,])/.test(written);
  return isGrouped
    ? "write a decimal point, and nothing between thousands"
    : "write a decimal point, not a comma";
}

/** A latitude beyond the pole is most often the longitude; a share of 2 or more a percentage without its sign. */
function rangeNext(kind: QuantityKind, value: number, written: string): string | null {
  if (kind === "latitudeDeg" && Math.abs(value) <= 180) return "are latitude and longitude swapped?";
  if (kind !== "ratio" || value <= 1) return null;
  if (written.endsWith("%")) return "100% is 1";
  return value >= 2 && value <= 100 ? `for a percentage write ${written}%` : null;
}

/** "1 to 20000 mm". */
export function acceptedText(kind: QuantityKind, low: number, high: number): string {
  const { unit } = QUANTITIES[kind];
  return `${low} to ${high}${unit === "" ? "" : ` ${unit}`}`;
}

/** What a value is, for "found ...". */
export function describe(value: unknown): string {
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a map";
  return shortText(String(value));
}

type ReadProblem = { code: ProblemCode; accepted: string; suggestion: string | null };

function readText(text: string, kind: QuantityKind): number | ReadProblem {
  const { sexagesimal, prefix, fraction } = QUANTITIES[kind];
  const plain = text.trim().replace("−", "-");
  if (sexagesimal !== undefined) {
    const angleDeg = parseSexagesimal(plain, sexagesimal);
    if (angleDeg !== null) return angleDeg;
  }
  const bare = prefix === undefined ? plain : plain.replace(prefix, "");
  const parts = fraction === true ? FRACTION_AND_UNIT.exec(bare) : null;
  if (parts) return convert(Number(parts[1]) / Number(parts[2]), parts[3] ?? "", kind);
  const match = NUMBER_AND_UNIT.exec(bare);
  if (!match) return { code: "E_TYPE", accepted: formText(kind), suggestion: null };
  return convert(Number(match[1]), match[2] ?? "", kind);
}

function convert(value: number, unit: string, kind: QuantityKind): number | ReadProblem {
  const { spellings, base } = QUANTITIES[kind];
  const written = unit.trim();
  if (written === "") return value;
  const known = Object.hasOwn(spellings, written) ? spellings[written] : undefined;
  if (known === undefined) {
    return { code: "E_UNIT", accepted: formText(kind), suggestion: nearest(written, Object.keys(spellings)) };
  }
  if (typeof known === "number") return value * known;
  return known === base ? value : Qty.swiftConverter(known, base)(value);
}

/** How a value of this kind may be written. */
function formText(kind: QuantityKind): string {
  const { unit, spellings, example } = QUANTITIES[kind];
  const others = Object.keys(spellings);
  const form = unit === "" ? "a number" : `a number in ${unit}`;
  const units = others.length === 0 ? "" : `, or with a unit: ${others.join(", ")}`;
  return `${form}${units}${example === undefined ? "" : `; for example ${example}`}`;
}
