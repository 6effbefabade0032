/** The options of the commands in one typed table: an option that is not in it does not compile. Those of `readings` alone stand in `readingOptions.ts`. */

import { Option } from "commander";
import { MAX_RUN_DAYS, parseShift } from "../site/dailyWindows.ts";
import { SKY_STATES } from "../site/types.ts";
import type { Sky } from "../sky/daylight.ts";
import { fileBeside, numberOf, oneOf, someOf, wholeNumberOf, withChoices } from "./optionParsers.ts";
import { SKIES, WEIGHTED_SKIES, type WeightedSkies } from "./skyOption.ts";

export interface CommonOptions {
  readonly window?: string;
  readonly sky: readonly Sky[];
  readonly step?: number;
  readonly format: string;
  readonly planFormat: string;
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
  readonly fromTable?: string;
}

const FAIL_ON = ["in-frame", "near-frame", "clipped", "unset"] as const;
const FORMATS = ["table", "json", "csv"] as const;
const PLAN_FORMATS = [...FORMATS, "geojson"] as const;
const CARDS = oneOf("--cards", ["2", "4"]);

type OptionTable = { readonly [Name in keyof CommonOptions]-?: () => Option };

export const OPTIONS: OptionTable = {
  window: () =>
    new Option(
      "--window <name|interval>",
      "a window of the file, or an ISO 8601 interval: 2027-04-18T17:10/19:40",
    ),
  sky: () =>
    new Option("--sky <states>", `sky states, comma-separated: ${SKY_STATES.join(", ")}, haze:TURBIDITY`)
      .argParser(SKIES)
      .default(["clear"], "clear"),
  step: () =>
    new Option("--step <seconds>", "spacing of the T-0s, 1 to 3600 s").argParser(
      numberOf("--step", 1, 3600, "s"),
    ),
  format: () => formatOption("table, json or csv", FORMATS),
  planFormat: () => formatOption("table, json, csv or geojson", PLAN_FORMATS),
  output: () => new Option("-o, --output <file>", "write to a file, whole or not at all; - is stdout"),
  quiet: () => new Option("-q, --quiet", "nothing on stderr but errors").default(false),
  color: () => new Option("--no-color", "no colour (NO_COLOR does the same)"),
  width: () =>
    new Option(
      "--width <columns>",
      "columns of the sheet; default the terminal's, 80 in a pipe or file",
    ).argParser(numberOf("--width", 80, 1000, "columns")),
  failOn: () =>
    new Option("--fail-on <what>", `exit 1 when any camera is ${FAIL_ON.join(", ")} (comma-separated)`)
      .argParser(someOf("--fail-on", FAIL_ON))
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
      .argParser(WEIGHTED_SKIES)
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
    new Option(
      "--picture <file>",
      "the best windows as a picture, as many as --strip says: a file in SVG",
    ).argParser(fileBeside("--picture")),
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
      .argParser(SKIES)
      .default(SKY_STATES, SKY_STATES.join(",")),
  viewPicture: () =>
    new Option(
      "--picture <file>",
      "what the camera sees at the T-0 of --at, or in the middle: a file in SVG",
    ).argParser(fileBeside("--picture")),
  fromTable: () =>
    new Option("--from <file>", "a camera table (.csv) beside the new file or below: its cameras"),
  cards: () =>
    new Option("--cards <count>", "cards on a printed page: 2 or 4")
      .argParser(withChoices((text) => Number(CARDS(text)), CARDS.choices))
      .default(2),
};

const formatOption = (help: string, formats: readonly string[]): Option =>
  new Option("--format <format>", help).argParser(oneOf("--format", formats)).default("table");
