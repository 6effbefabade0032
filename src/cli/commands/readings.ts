/** `padstop readings SITE FILE`: meter readings, or the settings that were set, against the model. */

import type { Command } from "commander";
import { compareReadings } from "../../plan/readings/compareReadings.ts";
import type { ReadingsReport } from "../../plan/readings/readingTypes.ts";
import { readingsCsv, readingsJson } from "../../show/readingsData.ts";
import { readingsSheet } from "../../show/readingsSheet.ts";
import type { Context } from "../context.ts";
import { readSite, readTable } from "../files.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver, sheetOptions } from "../output.ts";
import type { World } from "../world.ts";

type Options = Pick<CommonOptions, "format" | "output" | "quiet" | "color" | "width">;

export function addReadings(program: Command, { world }: Context): void {
  program
    .command("readings")
    .description("meter readings against the model, and the corrections that follow")
    .argument("<site>", "site file (YAML)")
    .argument("<file>", "table of readings (CSV): time, sky, what, camera or azimuth, value")
    .addOption(OPTIONS.format())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop readings sites/skerry-vane.yaml readings.csv\n")
    .action((path: string, file: string, options: Options) => {
      const report = compareReadings(readSite(path), readTable(file), file.replaceAll("\\", "/"));
      deliver(world, options, reportText(report, world, options), path);
    });
}

function reportText(report: ReadingsReport, world: World, options: Options): string {
  if (options.format === "json") return readingsJson(report);
  return options.format === "csv" ? readingsCsv(report) : readingsSheet(report, sheetOptions(world, options));
}
