/** The options of the commands in one typed table: an option that is not in it does not compile. */

import { Option } from "commander";
import { PadstopError, problem } from "../base/problem.ts";
import { MAX_RUN_DAYS, parseShift } from "../site/dailyWindows.ts";
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
  readonly windows?: readonly string[];
  readonly weightedSky: WeightedSkies;
  readonly from?: string;
  readonly days?: number;
  readonly daily?: string;
  readonly shift?: number;
  readonly top: number;
  readonly strip?: number | true;
  readonly picture?: string;
  readonly scrub?: number;
  readonly sweepAt?: string;
  readonly every?: number;
  readonly sweepStrip: boolean;
  readonly allSkies: readonly Sky[];
  readonly cards: 2 | 4;
  readonly viewPicture?: string;
}

/** Sky states and the weight of each; null when none is given. */
export interface WeightedSkies {
  readonly skies: readonly Sky[];
  readonly weights: readonly number[] | null;
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
  windows: () =>
    new Option(
      "--window <name|interval>",
      "a window of the file or an ISO 8601 interval; may be given several times",
    ).argParser((text: string, before: readonly string[] | undefined) => [...(before ?? []), text]),
  weightedSky: () =>
    new Option(
      "--sky <states>",
      `sky states with weights, such as clear:0.6,haze:0.4; ${SKY_STATES.join(", ")}, haze:TURBIDITY, haze:TURBIDITY:WEIGHT`,
    )
      .argParser(parseWeightedSkies)
      .default({ skies: ["clear"], weights: null } satisfies WeightedSkies, "clear"),
  from: () => new Option("--from <date>", "first day of a run of days; default the first window's"),
  days: () =>
    new Option("--days <count>", `a window a day, 1 to ${MAX_RUN_DAYS} days`).argParser(
      wholeNumberOf("--days", 1, MAX_RUN_DAYS, "days"),
    ),
  daily: () =>
    new Option(
      "--daily <times>",
      "the window of each day, wall time: 17:10/19:40 or 17:10/PT2H30M; default the first window's",
    ),
  shift: () =>
    new Option("--shift <duration>", "so much later each day, or earlier: -23m50s").argParser(parseShift),
  top: () =>
    new Option("--top <count>", "windows listed on the sheet")
      .argParser(wholeNumberOf("--top", 1, 10_000, "windows"))
      .default(10),
  strip: () =>
    new Option(
      "--strip [count]",
      "draw the best windows, T-0 across and a row per camera; default 1",
    ).argParser(wholeNumberOf("--strip", 1, 50, "windows")),
  picture: () =>
    new Option("--picture <file>", "the best windows as a picture, as many as --strip says: a file in SVG"),
  scrub: () =>
    new Option(
      "--scrub <days>",
      "what becomes of each camera's setting when the same window slips by 1 to 60 days",
    ).argParser(wholeNumberOf("--scrub", 1, 60, "days")),
  sweepAt: () =>
    new Option(
      "--at <T-0>",
      "T-0 of the timeline: 2027-04-18T18:25 or 18:25; default the middle of the window",
    ),
  every: () =>
    new Option("--every <seconds>", "spacing of the timeline, 0.1 to 600 s; default 5").argParser(
      numberOf("--every", 0.1, 600, "s"),
    ),
  sweepStrip: () => new Option("--strip", "draw each tracker's sun, T-0 across and T+ down").default(false),
  allSkies: () =>
    new Option("--sky <states>", `sky states of the page and its cards, comma-separated; haze:TURBIDITY too`)
      .argParser(parseSkies)
      .default(SKY_STATES, SKY_STATES.join(",")),
  viewPicture: () =>
    new Option(
      "--picture <file>",
      "what the camera sees at the T-0 of --at, or in the middle: a file in SVG",
    ),
  cards: () =>
    new Option("--cards <count>", "cards on a printed page: 2 or 4")
      .argParser((text: string) => Number(oneOf("--cards", ["2", "4"])(text)))
      .default(2),
};

function parseWeightedSkies(text: string): WeightedSkies {
  const read = text.split(",").map((word) => splitWeight(word.trim()));
  const skies = parseSkies(read.map(({ sky }) => sky).join(","));
  const given = read.filter(({ weight }) => weight !== null);
  if (given.length === 0) return { skies, weights: null };
  if (given.length < read.length) {
    const without = read.find(({ weight }) => weight === null)!.sky;
    const accepted = "a weight for every sky, or for none: clear:0.6,haze:0.4";
    throw new PadstopError([problem("E_CONFLICT", "--sky", { found: `no weight for ${without}`, accepted })]);
  }
  return { skies, weights: given.map(({ weight }) => weight!) };
}

/** "clear:0.6", "haze:0.4", "haze:4.5:0.4": below 1 the one number of haze is a weight, from 1 on a turbidity. */
function splitWeight(word: string): { sky: string; weight: number | null } {
  const [state = "", ...numbers] = word.split(":");
  const isTurbidity = state === "haze" && numbers.length === 1 && Number(numbers[0]) >= 1;
  if (numbers.length === 0 || isTurbidity || (state === "haze" ? numbers.length > 2 : numbers.length > 1)) {
    return { sky: word, weight: null };
  }
  const weight = numberOf("--sky", 0, 1, `as weight of ${state}`)(numbers.at(-1)!);
  if (weight === 0) {
    const accepted = "a weight above 0, up to 1";
    throw new PadstopError([
      problem("E_OPTION", "--sky", { found: word, accepted, next: `leave ${state} out` }),
    ]);
  }
  return { sky: [state, ...numbers.slice(0, -1)].join(":"), weight };
}

/** A parser for a whole number in a range. */
function wholeNumberOf(key: string, low: number, high: number, unit: string): (text: string) => number {
  const read = numberOf(key, low, high, unit);
  return (text) => {
    const value = read(text);
    if (Number.isInteger(value)) return value;
    throw new PadstopError([
      problem("E_OPTION", key, { found: text, accepted: `a whole number, ${low} to ${high} ${unit}` }),
    ]);
  };
}

export function parseSkies(text: string): Sky[] {
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
      problem("E_OPTION", key, {
        found: text.trim() || "nothing",
        accepted: `${low} to ${high} ${unit}`.trim(),
      }),
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
