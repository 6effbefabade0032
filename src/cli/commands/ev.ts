/** `padstop ev`: standard tables, and one light or setting in every unit. */

import { type Command, Option } from "commander";
import { PadstopError, problem } from "../../base/problem.ts";
import { type ConvertInput, convertExposure } from "../../exposure/convert.ts";
import { convertedJson, convertedText, evTables } from "../../show/evSheet.ts";
import type { Context } from "../context.ts";
import { numberOf, oneOf } from "../optionParsers.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver, sheetOptions } from "../output.ts";

type Options = Pick<CommonOptions, "output" | "quiet" | "color" | "width"> & {
  readonly format: string;
  readonly luminance?: number;
  readonly illuminance?: number;
  readonly ev?: number;
  readonly stop?: number;
  readonly time?: number;
  readonly iso?: number;
  readonly filter?: number;
};

export function addEv(program: Command, { world }: Context): void {
  program
    .command("ev")
    .description("standard exposure tables; with options, one light or setting in every unit")
    .addOption(ranged("--luminance <cd/m2>", "a luminance", 1e-9, 1e12, "cd/m2"))
    .addOption(ranged("--illuminance <lx>", "an illuminance", 1e-9, 1e12, "lx"))
    .addOption(ranged("--ev <EV>", "an EV at ISO 100", -20, 40, "EV"))
    .addOption(ranged("--stop <N>", "an f-number, with --time", 0.5, 128, "(f-number)"))
    .addOption(new Option("--time <s>", "a shutter time: 1/500 or 0.002, with --stop").argParser(parseTime))
    .addOption(ranged("--iso <speed>", "speed of the medium, default 100", 0.1, 1e6, "ISO"))
    .addOption(ranged("--filter <density>", "density of a filter, default 0", 0, 8, "(density)"))
    .addOption(
      new Option("--format <format>", "table or json")
        .argParser(oneOf("--format", ["table", "json"]))
        .default("table"),
    )
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop ev --stop 16 --time 1/125 --iso 200 --filter 0.6\n")
    .action((options: Options) => {
      const asked = [options.luminance, options.illuminance, options.ev, options.stop, options.time];
      const alone = asked.every((value) => value === undefined);
      if (alone && options.format === "table")
        return deliver(world, options, evTables(sheetOptions(world, options)));
      const converted = convertExposure(inputOf(options));
      const text =
        options.format === "json"
          ? convertedJson(converted)
          : convertedText(converted, sheetOptions(world, options));
      deliver(world, options, text);
    });
}

const ranged = (flags: string, help: string, low: number, high: number, unit: string): Option =>
  new Option(flags, help).argParser(numberOf(flags.split(" ")[0]!, low, high, unit));

function inputOf(options: Options): ConvertInput {
  const pairs = {
    luminanceCdM2: options.luminance,
    illuminanceLx: options.illuminance,
    ev: options.ev,
    stop: options.stop,
    timeS: options.time,
    speedIso: options.iso,
    filterDensity: options.filter,
  };
  return Object.fromEntries(Object.entries(pairs).filter(([, value]) => value !== undefined));
}

function parseTime(text: string): number {
  const fraction = /^1\/(\d+(?:\.\d+)?)$/.exec(text.trim());
  const timeS = fraction ? 1 / Number(fraction[1]) : Number(text.trim() === "" ? Number.NaN : text);
  if (timeS >= 1e-6 && timeS <= 3600) return timeS;
  throw new PadstopError([
    problem("E_OPTION", "--time", { found: text, accepted: "1/1000000 to 3600 s, as 1/500 or 0.002" }),
  ]);
}
