/** `padstop check SITE`: the file alone. */

import type { Command } from "commander";
import { siteViews } from "../../plan/siteViews.ts";
import type { SheetOptions } from "../../show/sheetOptions.ts";
import { siteSummary } from "../../show/siteSummary.ts";
import type { Context } from "../context.ts";
import { readSite } from "../files.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver, sheetOptions } from "../output.ts";

type Options = Pick<CommonOptions, "color" | "width">;

export function addCheck(program: Command, { world }: Context): void {
  program
    .command("check")
    .description("reads a site file and says what is wrong with it, or what it understood")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop check sites/skerry-vane.yaml\n")
    .action((path: string, options: Options) => {
      deliver(world, {}, summaryOf(path, sheetOptions(world, options)));
    });
}

function summaryOf(path: string, options: SheetOptions): string {
  const site = readSite(path);
  return siteSummary(site, siteViews(site), options);
}
