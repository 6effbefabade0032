/** Notes about a camera's setting: what clips, what no setting or no kit could do, which two would, the plume's range. */

import type { Sample, SettingChoice, SolvedSetting, Worst } from "../exposure/solver.ts";
import { isClipped, worstOf } from "../exposure/solver.ts";
import { type HeldStretch, twoSettings } from "../exposure/twoSettings.ts";
import type { Thing } from "../site/types.ts";
import { skyName } from "../sky/daylight.ts";
import type { Clock } from "./clock.ts";
import { plumeNotes } from "./plumeNotes.ts";
import type { SettingNotesInput } from "./settingNotesInput.ts";
import { ONE_FOR_ALL, settingWords } from "./settingWords.ts";
import { clippedText, spanText } from "./stopsText.ts";

export function settingNotes(input: SettingNotesInput): string[] {
  const notes = [...clipNotes(input), ...plumeNotes(input)];
  // With several skies a camera has several settings: these notes are for one of them.
  return input.settingInput.skies.length > 1 ? notes.map((note) => `${ONE_FOR_ALL}: ${note}`) : notes;
}

/** Empty for a setting that holds everything. */
function clipNotes(input: SettingNotesInput): string[] {
  const { settingInput, solved, setting, view, clock } = input;
  if (!isClipped(solved.spareStops)) return [];
  const { samples, range, choices, comfortStops } = settingInput;
  const notes = [clippedWords(input)];
  if (isClipped(setting.bestPossibleSpareStops)) {
    const { keep } = view.camera;
    notes.push(
      `no setting could do better than ${clippedText(setting.bestPossibleSpareStops)} stops outside: ${keep.join(" and ")} ${keep.length === 1 ? "spans" : "span"} more than the medium's ${spanText(range.underStops + range.overStops)} stops`,
    );
  } else {
    notes.push(...kitWords(solved, choices));
  }
  notes.push(...leftOutWords(solved, choices, input.choices.leftOut));
  const two = twoSettings(samples, choices, range, comfortStops);
  const words = twoWords(two.first, two.second, samples, clock);
  return words === null ? notes : [...notes, words];
}

/** Only where the brightest setting is too dark: else a wider stop would do as well as a longer time. */
function leftOutWords(
  { choice, worst }: SolvedSetting,
  choices: readonly SettingChoice[],
  leftOut: readonly string[],
): string[] {
  if (leftOut.length === 0 || worst.end !== "under" || !isBrightest(choice, choices)) return [];
  return [`longer shutters left out, as they smear too much: ${leftOut.join(", ")}`];
}

const isBrightest = (choice: SettingChoice, choices: readonly SettingChoice[]): boolean =>
  choices.every(({ midToneLog2 }) => choice.midToneLog2 <= midToneLog2);

/** Where a setting inside the medium's range exists, but not on this camera. */
function kitWords({ choice, worst }: SolvedSetting, choices: readonly SettingChoice[]): string[] {
  if (worst.end === "under" && isBrightest(choice, choices)) {
    return [`the kit ends here: its brightest setting is ${clippedText(worst.stops)} stops too dark`];
  }
  if (worst.end === "over" && choices.every(({ midToneLog2 }) => choice.midToneLog2 >= midToneLog2)) {
    return [
      `the kit ends here: its darkest setting is ${clippedText(worst.stops)} stops too bright, a denser filter would help`,
    ];
  }
  return [];
}

/** The worst at either end of the range, where it clips. */
function clippedWords(input: SettingNotesInput): string {
  const ends = ["under", "over"] as const;
  return ends
    .map((end) => worstAtEnd(input, end))
    .filter((worst) => worst !== null && isClipped(worst.stops))
    .map((worst) => clipWords(worst!, input))
    .join("; ");
}

function worstAtEnd({ settingInput, solved }: SettingNotesInput, end: Worst["end"]): Worst | null {
  const { range, samples } = settingInput;
  // With the other end opened wide, only this one can clip.
  const open = end === "over" ? { ...range, underStops: 1000 } : { ...range, overStops: 1000 };
  let worst: Worst | null = null;
  for (const sample of samples as readonly Sample[]) {
    const candidate = worstOf(sample, solved.choice.midToneLog2, open);
    if (worst === null || candidate.stops < worst.stops) worst = candidate;
  }
  return worst;
}

function clipWords(worst: Worst, { settingInput, clock }: SettingNotesInput): string {
  const { skies } = settingInput;
  const under = skies.length > 1 ? ` under ${skyName(skies[worst.skyIndex]!)}` : "";
  const along = worst.tPlusS === undefined ? "" : ` T+${worst.tPlusS.toFixed(0)} s`;
  return `${thingWords(worst.thing, worst.end)} ${clippedText(worst.stops)} stops ${worst.end} at ${clock.at(new Date(worst.atMs))}${along}${under}`;
}

function thingWords(thing: Thing, end: Worst["end"]): string {
  if (thing !== "body") return thing;
  return end === "under" ? "body shadow side" : "body lit side";
}

function twoWords(
  first: HeldStretch | null,
  second: HeldStretch | null,
  samples: readonly Sample[],
  clock: Clock,
): string | null {
  const until =
    first && `${settingWords(first.choice)} holds until ${clock.at(new Date(first.toMs), "before")}`;
  const from =
    second && `${settingWords(second.choice)} holds from ${clock.at(new Date(second.fromMs), "after")}`;
  if (until === null) return from === null ? null : `${from}, nothing holds at the opening`;
  if (from === null) return `${until}, nothing holds at the close`;
  const both = `${until}, ${from}`;
  if (second!.fromMs > first!.toMs) {
    const isGap = samples.some(({ atMs }) => atMs > first!.toMs && atMs < second!.fromMs);
    return isGap ? `${both}; nothing holds in between` : both;
  }
  const change = clock.spanInside({ from: new Date(second!.fromMs), to: new Date(first!.toMs) });
  return change === null ? both : `${both}: change over ${change}`;
}
