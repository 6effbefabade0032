/** `padstop record SITE`: the plan's settings as a form on which a crew writes down what it set. */

import type { Command } from "commander";
import { planWindow } from "../../plan/planWindow.ts";
import { recordCsv } from "../../show/recordCsv.ts";
import { chooseWindow } from "../../site/chooseWindow.ts";
import type { Context } from "../context.ts";
import { openSite } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { tellOtherWindows } from "../otherWindows.ts";
import { deliver } from "../output.ts";
import { stepOf } from "../stepOf.ts";

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
      const window = chooseWindow(site, options.window ?? null);
      const plan = planWindow(site, window, {
        sky: options.sky,
        ...stepOf(options),
      });
      deliver(context.world, options, recordCsv(plan), path);
      tellOtherWindows(site, "Recorded", context, options);
    });
}
