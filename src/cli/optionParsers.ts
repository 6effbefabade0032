/** Parsers of options' values: numbers in a range, and words to choose from, which a parser carries for completion. */

import { PadstopError, problem } from "../base/problem.ts";
import { nearest } from "../site/nearest.ts";

/** The words a value is chosen from. */
export interface Choices {
  readonly words: readonly string[];
  /** Several, comma-separated. */
  readonly isList: boolean;
}

/** A parser that tells its choices. */
export interface ChoiceParser<Value> {
  (text: string): Value;
  readonly choices: Choices;
}

/** The parser with its choices beside it, so that nobody writes them down a second time. */
export const withChoices = <Value>(parse: (text: string) => Value, choices: Choices): ChoiceParser<Value> =>
  Object.assign((text: string): Value => parse(text), { choices });

/** The choices a parser tells, or null. */
export function choicesOf(parser: unknown): Choices | null {
  return typeof parser === "function" && "choices" in parser ? (parser.choices as Choices) : null;
}

/** A parser for a number in a range. */
export function numberOf(key: string, low: number, high: number, unit: string): (text: string) => number {
  return (text) => {
    const value = text.trim() === "" ? Number.NaN : Number(text);
    if (Number.isFinite(value) && value >= low && value <= high) return value;
    throw new PadstopError([
      problem("E_OPTION", key, {
        found: text.trim() || "nothing",
        accepted: `${low} to ${high} ${unit}`.trim(),
      }),
    ]);
  };
}

/** A parser for a whole number in a range. */
export function wholeNumberOf(
  key: string,
  low: number,
  high: number,
  unit: string,
): (text: string) => number {
  const read = numberOf(key, low, high, unit);
  return (text) => {
    const value = read(text);
    if (Number.isInteger(value)) return value;
    throw new PadstopError([
      problem("E_OPTION", key, { found: text, accepted: `a whole number, ${low} to ${high} ${unit}` }),
    ]);
  };
}

/** A parser for one of some words, with a suggestion for a near miss. */
export function oneOf<Word extends string>(key: string, words: readonly Word[]): ChoiceParser<Word> {
  const parse = (text: string): Word => {
    const found = words.find((word) => word === text);
    if (found !== undefined) return found;
    throw new PadstopError([
      problem("E_CHOICE", key, { found: text, accepted: words.join(", "), suggestion: nearest(text, words) }),
    ]);
  };
  return withChoices(parse, { words, isList: false });
}

/** A parser for some of these words, comma-separated. */
export function someOf<Word extends string>(key: string, words: readonly Word[]): ChoiceParser<Word[]> {
  const one = oneOf(key, words);
  const parse = (text: string): Word[] => text.split(",").map((word) => one(word.trim()));
  return withChoices(parse, { words, isList: true });
}

/** A parser for a file beside the other output, which may go to stdout itself. */
export function fileBeside(key: string): (text: string) => string {
  return (text) => {
    if (text !== "-") return text;
    const accepted = "the name of a file; stdout is for the other output";
    throw new PadstopError([problem("E_OPTION", key, { found: "-", accepted, next: `${key} picture.svg` })]);
  };
}
