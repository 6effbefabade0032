/** The sky states of `--sky`, with turbidities and weights. */

import { PadstopError, problem } from "../base/problem.ts";
import { nearest } from "../site/nearest.ts";
import { SKY_STATES } from "../site/types.ts";
import { requireSky, type Sky, skyName } from "../sky/daylight.ts";
import { numberOf, withChoices } from "./optionParsers.ts";

/** Sky states and the weight of each; null when none is given. */
export interface WeightedSkies {
  readonly skies: readonly Sky[];
  readonly weights: readonly number[] | null;
}

const SKY_CHOICES = { words: SKY_STATES, isList: true } as const;

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

/** A parser for sky states without weights: "clear,haze:4.5". */
export const SKIES = withChoices(parseSkies, SKY_CHOICES);

/** A parser for sky states, with a weight each or none: "clear:0.6,haze:0.4". */
export const WEIGHTED_SKIES = withChoices(parseWeightedSkies, SKY_CHOICES);
