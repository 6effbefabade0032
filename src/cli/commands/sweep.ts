/** `padstop sweep SITE [TRACKER]`: the trackers along the ascent. */

import type { Command } from "commander";
import { sweepMapOf } from "../../plan/sweep/sweepMap.ts";
import { sweepTrackers } from "../../plan/sweep/sweepTracker.ts";
import type { SweepPlan } from "../../plan/sweep/sweepTypes.ts";
import { windowRangeText } from "../../show/dateText.ts";
import type { SheetOptions } from "../../show/sheetOptions.ts";
import { sweepCsv, sweepJson } from "../../show/sweepData.ts";
import { mapSize, sweepMapText } from "../../show/sweepMapText.ts";
import { sweepSheet } from "../../show/sweepSheet.ts";
import { chooseWindow } from "../../site/chooseWindow.ts";
import type { Site, Window } from "../../site/types.ts";
import { skyName } from "../../sky/daylight.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { tellOtherWindows } from "../otherWindows.ts";
import { deliver, sheetOptions } from "../output.ts";
import { refuseTogether } from "../refuseTogether.ts";
import { stepOf } from "../stepOf.ts";
import type { World } from "../world.ts";

type Options = Pick<
  CommonOptions,
  "window" | "sky" | "step" | "every" | "format" | "output" | "quiet" | "color" | "width"
> & { readonly at?: string; readonly strip: boolean };

export function addSweep(program: Command, context: Context): void {
  const { world } = context;
  program
    .command("sweep")
    .description("the trackers along the ascent: the sun, one setting for all of it, the turns of the mount")
    .argument("<site>", "site file (YAML)")
    .argument("[tracker]", "id of a tracker, with one T-0 of it by T+; default all trackers")
    .addOption(OPTIONS.window())
    .addOption(OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.sweepAt())
    .addOption(OPTIONS.every())
    .addOption(OPTIONS.sweepStrip())
    .addOption(OPTIONS.format())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop sweep sites/skerry-vane.yaml T1 --at 18:25 --strip\n")
    .action((path: string, id: string | undefined, options: Options) => {
      refuseTogether(
        options.strip && options.format !== "table",
        "--strip",
        `--strip and --format ${options.format}`,
        "--strip with --format table",
      );
      const site = openSite(path, options, world);
      const window = chooseWindow(site, options.window ?? null);
      const plan = sweepTrackers(site, window, id ?? null, {
        sky: options.sky,
        ...stepOf(options),
        ...(options.at === undefined ? {} : { at: options.at }),
        ...(options.every === undefined ? {} : { everyS: options.every }),
      });
      deliver(world, options, sweepText(site, window, plan, world, options), sourcesOf(path, site));
      if (!options.quiet) tellAside(site, plan, context, options);
    });
}

/** What was asked for and is not shown, and what was not asked for. */
function tellAside(site: Site, { trackers }: SweepPlan, context: Context, options: Options): void {
  tellOtherWindows(site, "Swept", context, options);
  const isAsked = options.at !== undefined || options.every !== undefined;
  if (isAsked && options.format === "table" && trackers.length > 1)
    context.world.err("--at and --every show with one tracker named, or in JSON and CSV.\n");
}

function sweepText(site: Site, window: Window, plan: SweepPlan, world: World, options: Options): string {
  if (options.format === "json") return sweepJson(plan);
  if (options.format === "csv") return sweepCsv(plan);
  const sheet = sheetOptions(world, options);
  const strips = options.strip ? stripsOf(site, window, plan, options, sheet) : [];
  return sweepSheet(plan, { ...sheet, strips });
}

/** A map per tracker, in the light of the first sky. */
function stripsOf(
  site: Site,
  window: Window,
  plan: SweepPlan,
  { sky }: Options,
  { width, paint }: SheetOptions,
): string[] {
  const drawn = sky[0]!;
  const title = windowRangeText(window, site.zone);
  return plan.trackers.map(({ id, ascent }) => {
    const { columns, rowS } = mapSize(ascent, width);
    const map = sweepMapOf(site, window, id, drawn, columns, rowS);
    return sweepMapText(map, { zone: site.zone, title, sky: skyName(drawn), width, paint });
  });
}
