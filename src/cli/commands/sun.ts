/** `padstop sun SITE`: the sun's table. */

import type { Command } from "commander";
import { refuse } from "../../base/problem.ts";
import { dayWindow, type SunTable, sunTable } from "../../plan/sunTable.ts";
import { sunCsv, sunJson, sunSheet } from "../../show/sunSheet.ts";
import { chooseWindow } from "../../site/chooseWindow.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver, sheetOptions } from "../output.ts";
import type { World } from "../world.ts";

type Options = Pick<
  CommonOptions,
  "window" | "date" | "sky" | "step" | "format" | "output" | "quiet" | "color" | "width"
>;

/** A table for people: coarser than the plan's T-0s. */
const TABLE_STEP_S = 600;

export function addSun(program: Command, { world }: Context): void {
  program
    .command("sun")
    .description("the sun's table: positions, air mass, light, events")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.window())
    .addOption(OPTIONS.date().conflicts("window"))
    .addOption(OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.format())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop sun sites/skerry-vane.yaml --date 2027-04-18 --step 3600\n")
    .action((path: string, options: Options) => {
      const site = openSite(path, options, world);
      const window =
        options.date === undefined
          ? chooseWindow(site, options.window ?? null)
          : dayWindow(site, options.date);
      if (options.sky.length > 1)
        refuse(
          "E_OPTION",
          "--sky",
          `${options.sky.length} states`,
          "one sky state: the table shows one light",
        );
      const table = sunTable(site, window, { sky: options.sky, stepS: options.step ?? TABLE_STEP_S });
      deliver(world, options, sunText(table, world, options), sourcesOf(path, site));
    });
}

function sunText(table: SunTable, world: World, options: Options): string {
  if (options.format === "json") return sunJson(table);
  return options.format === "csv" ? sunCsv(table) : sunSheet(table, sheetOptions(world, options));
}
