/** `padstop record SITE`: the plan's settings as a form on which a crew writes down what it set. */

import type { Command } from "commander";
import { recordCsv } from "../../show/recordCsv.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { tellOtherWindows } from "../otherWindows.ts";
import { deliver } from "../output.ts";
import { planAsked } from "../planAsked.ts";

type Options = Pick<CommonOptions, "window" | "sky" | "step" | "output" | "quiet" | "color">;

export function addRecord(program: Command, context: Context): void {
  program
    .command("record")
    .description("the planned settings as a form (CSV) to write down what was set")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.window())
    .addOption(OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText(
      "after",
      "\nExample:\n  padstop record sites/skerry-vane.yaml --sky clear,haze -o settings.csv\n",
    )
    .action((path: string, options: Options) => {
      const site = openSite(path, options, context.world);
      const plan = planAsked(site, options);
      deliver(context.world, options, recordCsv(plan), sourcesOf(path, site));
      tellOtherWindows(site, "Recorded", context, options);
    });
}
