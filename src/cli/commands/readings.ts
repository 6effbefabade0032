/** `padstop readings SITE FILE`: meter readings, or the settings that were set, against the model. */

import type { Command } from "commander";
import { judgeAsSet } from "../../plan/readings/asSet.ts";
import { compareReadings } from "../../plan/readings/compareReadings.ts";
import type { ReadingsReport } from "../../plan/readings/readingTypes.ts";
import { requireKind } from "../../plan/readings/tableKind.ts";
import { asSetCsv, asSetJson, asSetSheet } from "../../show/asSetSheet.ts";
import { readingsCsv, readingsJson } from "../../show/readingsData.ts";
import { readingsSheet } from "../../show/readingsSheet.ts";
import { chooseWindow } from "../../site/chooseWindow.ts";
import type { Site } from "../../site/types.ts";
import type { Context } from "../context.ts";
import { openToChange, readTable } from "../files.ts";
import { sourcesOf, tellTables } from "../openSite.ts";
import { OPTIONS } from "../options.ts";
import { tellOtherWindows } from "../otherWindows.ts";
import { deliver, fileOf, sheetOptions } from "../output.ts";
import {
  READING_OPTIONS,
  type ReadingCommandOptions,
  refuseReadingOptions,
  t0ThatCame,
} from "../readingOptions.ts";
import { stepOf } from "../stepOf.ts";
import type { World } from "../world.ts";
import { writeCorrections } from "../writeCorrections.ts";

const EXAMPLES = `
Examples:
  padstop readings sites/skerry-vane.yaml readings.csv
  padstop readings my-site.yaml readings.csv --write
  padstop readings sites/skerry-vane.yaml settings.csv --as-set --at 18:25
`;

export function addReadings(program: Command, context: Context): void {
  program
    .command("readings")
    .description("meter readings against the model, or what was set against the plan")
    .argument("<site>", "site file (YAML)")
    .argument(
      "<file>",
      "table (CSV) of readings: time, sky, what, camera or azimuth, value; or a filled-in form",
    )
    .addOption(READING_OPTIONS.write())
    .addOption(READING_OPTIONS.asSet())
    .addOption(OPTIONS.window())
    .addOption(READING_OPTIONS.at())
    .addOption(READING_OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.format())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", EXAMPLES)
    .action((path: string, file: string, options: ReadingCommandOptions) =>
      judgeTable(path, file, options, context),
    );
}

function judgeTable(path: string, file: string, options: ReadingCommandOptions, context: Context): void {
  const { world } = context;
  refuseReadingOptions(options);
  const opened = openToChange(path);
  const { site } = opened;
  // Readings cannot be taken a second time: their table is kept like the site file.
  const sources = [...sourcesOf(path, site), file];
  tellTables(site, options.quiet, world);
  if (options.asSet) {
    deliver(world, options, asSetText(site, file, world, options), sources);
    if (options.at === undefined) tellOtherWindows(site, "Judged", context, options);
    return;
  }
  const report = compared(site, file);
  const text = comparedText(report, world, options);
  // A file is written before the site is touched, stdout after: whatever fails, the site file then is as it was.
  const isFile = fileOf(options) !== undefined;
  if (isFile) deliver(world, options, text, sources);
  if (options.write) writeCorrections(path, opened, report, world, options.quiet);
  if (!isFile) deliver(world, options, text, sources);
}

const slashed = (file: string): string => file.replaceAll("\\", "/");

function compared(site: Site, file: string): ReadingsReport {
  const text = readTable(file);
  requireKind(text, file, "readings");
  return compareReadings(site, text, slashed(file));
}

function comparedText(report: ReadingsReport, world: World, options: ReadingCommandOptions): string {
  if (options.format === "json") return readingsJson(report);
  return options.format === "csv" ? readingsCsv(report) : readingsSheet(report, sheetOptions(world, options));
}

function asSetText(site: Site, file: string, world: World, options: ReadingCommandOptions): string {
  const text = readTable(file);
  requireKind(text, file, "form");
  const t0 = options.at === undefined ? null : t0ThatCame(site, options.window, options.at);
  const window =
    t0 === null ? chooseWindow(site, options.window ?? null) : { name: null, opens: t0, closes: t0 };
  const report = judgeAsSet(site, window, text, slashed(file), {
    ...(options.sky === undefined ? {} : { sky: options.sky }),
    ...stepOf(options),
    ...(t0 === null ? {} : { t0 }),
  });
  if (options.format === "json") return asSetJson(report);
  return options.format === "csv" ? asSetCsv(report) : asSetSheet(report, sheetOptions(world, options));
}
