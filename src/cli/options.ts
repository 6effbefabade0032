/** The options of the commands in one typed table: an option that is not in it does not compile. */

import { Option } from "commander";
import { PadstopError, problem } from "../base/problem.ts";
import { nearest } from "../site/nearest.ts";
import { SKY_STATES } from "../site/types.ts";
import { requireSky, type Sky, skyName } from "../sky/daylight.ts";

export interface CommonOptions {
  readonly window?: string;
  readonly sky: readonly Sky[];
  readonly step?: number;
  readonly format: string;
  readonly output?: string;
  readonly quiet: boolean;
  readonly color: boolean;
  readonly width?: number;
  readonly failOn: readonly string[];
  readonly explain: boolean;
  readonly at?: string;
  readonly date?: string;
}

const FAIL_ON = ["in-frame", "near-frame", "clipped", "unset"] as const;
const FORMATS = ["table", "json", "csv"] as const;

type OptionTable = { readonly [Name in keyof CommonOptions]-?: () => Option };

export const OPTIONS: OptionTable = {
  window: () =>
    new Option(
      "--window <name|interval>",
      "a window of the file, or an ISO 8601 interval: 2027-04-18T17:10/19:40",
    ),
  sky: () =>
    new Option("--sky <states>", `sky states, comma-separated: ${SKY_STATES.join(", ")}, haze:TURBIDITY`)
      .argParser(parseSkies)
      .default(["clear"], "clear"),
  step: () =>
    new Option("--step <seconds>", "spacing of the T-0s, 1 to 3600 s").argParser(
      numberOf("--step", 1, 3600, "s"),
    ),
  format: () =>
    new Option("--format <format>", "table, json or csv")
      .argParser(oneOf("--format", FORMATS))
      .default("table"),
  output: () => new Option("-o, --output <file>", "write to a file, whole or not at all"),
  quiet: () => new Option("-q, --quiet", "nothing on stderr but errors").default(false),
  color: () => new Option("--no-color", "no colour (NO_COLOR does the same)"),
  width: () =>
    new Option(
      "--width <columns>",
      "columns of the sheet; default the terminal's, 80 in a pipe or file",
    ).argParser(numberOf("--width", 80, 1000, "columns")),
  failOn: () =>
    new Option("--fail-on <what>", `exit 1 when any camera is ${FAIL_ON.join(", ")} (comma-separated)`)
      .argParser((text: string) => text.split(",").map((word) => oneOf("--fail-on", FAIL_ON)(word.trim())))
      .default([], "nothing"),
  explain: () =>
    new Option("--explain", "how the setting came about, line by line with sources").default(false),
  at: () => new Option("--at <T-0>", "the T-0 to explain: 2027-04-18T18:25 or 18:25"),
  date: () => new Option("--date <date>", "a whole day instead of a window: 2027-04-18"),
};

function parseSkies(text: string): Sky[] {
  const skies = text.split(",").map((word) => parseSky(word.trim()));
  const names = skies.map(skyName);
  const double = names.find((name, i) => names.indexOf(name) !== i);
  if (double !== undefined) {
    throw new PadstopError([
      problem("E_DUPLICATE", "--sky", { found: double, accepted: "each sky state once" }),
    ]);
  }
  return skies;
}

function parseSky(word: string): Sky {
  const [state, turbidity, ...more] = word.split(":");
  const accepted = `${SKY_STATES.join(", ")}, haze:TURBIDITY (1 to 12)`;
  const known = SKY_STATES.find((name) => name === state);
  if (known === undefined || more.length > 0 || (turbidity !== undefined && known !== "haze")) {
    const suggestion = nearest(state ?? "", SKY_STATES);
    throw new PadstopError([
      problem("E_CHOICE", "--sky", { found: word === "" ? "nothing" : word, accepted, suggestion }),
    ]);
  }
  if (turbidity === undefined) return known;
  return requireSky({
    state: "haze",
    linkeTurbidity: numberOf("--sky", 1, 12, "as Linke turbidity of haze")(turbidity),
  });
}

/** A parser for a number in a range. */
export function numberOf(key: string, low: number, high: number, unit: string): (text: string) => number {
  return (text) => {
    const value = text.trim() === "" ? Number.NaN : Number(text);
    if (Number.isFinite(value) && value >= low && value <= high) return value;
    throw new PadstopError([
      problem("E_OPTION", key, { found: text, accepted: `${low} to ${high} ${unit}`.trim() }),
    ]);
  };
}

/** A parser for one of some words, with a suggestion for a near miss. */
export function oneOf<Word extends string>(key: string, words: readonly Word[]): (text: string) => Word {
  return (text) => {
    const found = words.find((word) => word === text);
    if (found !== undefined) return found;
    throw new PadstopError([
      problem("E_CHOICE", key, { found: text, accepted: words.join(", "), suggestion: nearest(text, words) }),
    ]);
  };
}
