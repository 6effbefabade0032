/** `padstop calendar SITE -o windows.ics`: the windows for a calendar, with their sun warnings. */

import type { Command } from "commander";
import { planWindow } from "../../plan/planWindow.ts";
import { planCalendar } from "../../show/planCalendar.ts";
import { chooseWindows } from "../../site/chooseWindow.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver } from "../output.ts";
import { stepOf } from "../stepOf.ts";
import { VERSION } from "../version.ts";

type Options = Pick<CommonOptions, "sky" | "step" | "output" | "quiet" | "color"> & {
  readonly window?: readonly string[];
};

export function addCalendar(program: Command, { world }: Context): void {
  program
    .command("calendar")
    .description("the windows as an iCalendar file: an event each, with the sun warnings as text")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.windows())
    .addOption(OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop calendar sites/skerry-vane.yaml -o windows.ics\n")
    .action((path: string, options: Options) => {
      const site = openSite(path, options, world);
      const plans = chooseWindows(site, options.window).map((window) =>
        planWindow(site, window, {
          sky: options.sky,
          ...stepOf(options),
        }),
      );
      deliver(world, options, planCalendar(plans, VERSION), sourcesOf(path, site));
    });
}
