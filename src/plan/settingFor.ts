/** A camera's setting for some of the skies, with its margins and what clips. */

import {
  bestPossible,
  envelopeOf,
  type MediumRange,
  type Sample,
  type SettingChoice,
  type SolvedSetting,
  solveSetting,
  spareAt,
} from "../exposure/solver.ts";
import { type Sky, skyName } from "../sky/daylight.ts";
import type { Setting } from "./setting.ts";

export interface SettingInput {
  readonly samples: readonly Sample[];
  readonly choices: readonly SettingChoice[];
  readonly range: MediumRange;
  readonly comfortStops: number;
  readonly skies: readonly Sky[];
}

/** The chosen setting as the plan reports it; null without samples or choices. */
export function settingFor(input: SettingInput): { setting: Setting; solved: SolvedSetting } | null {
  const { samples, choices, range } = input;
  const solved = solveSetting(samples, choices, range, input.comfortStops);
  return solved && { setting: settingOf(input, solved), solved };
}

/** A judged setting with its margins. */
export function settingOf(
  input: Omit<SettingInput, "choices" | "comfortStops">,
  solved: SolvedSetting,
): Setting {
  const { samples, range, skies } = input;
  const { choice, worst } = solved;
  return {
    stop: choice.stop,
    shutterS: choice.shutterS,
    shutterName: choice.shutterName,
    shutterAngleDeg: choice.shutterAngleDeg,
    filterDensity: choice.filterDensity,
    holds: solved.holds,
    spareStops: solved.spareStops,
    worst: {
      at: new Date(worst.atMs),
      ...(worst.tPlusS === undefined ? {} : { tPlusS: worst.tPlusS }),
      sky: skyName(skies[worst.skyIndex]!),
      thing: worst.thing,
      stops: worst.stops,
      end: worst.end,
    },
    fromPlaceStops: solved.fromPlaceStops,
    bestPossibleSpareStops: bestPossible(envelopeOf(samples), range).spareStops,
    plumeRange: plumeRange(input, choice),
  };
}

/** Spare of the same setting when the plume is as dim or as bright as its range allows. */
function plumeRange(
  input: Pick<SettingInput, "samples" | "range">,
  choice: SettingChoice,
): Setting["plumeRange"] {
  if (!input.samples.some(({ spans }) => spans.some((span) => span.plumeRange !== undefined))) return null;
  const spareWith = (end: "low" | "high"): number =>
    spareAt(envelopeOf(input.samples, end), input.range, choice.midToneLog2);
  return { lowSpareStops: spareWith("low"), highSpareStops: spareWith("high") };
}
