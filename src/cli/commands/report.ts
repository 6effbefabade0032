/** `padstop report SITE -o plan.html`: the pages people look at. */

import type { Command } from "commander";
import { PadstopError, problem } from "../../base/problem.ts";
import { MOST_SKIES, rankWindows } from "../../plan/rank/rankWindows.ts";
import { reportInput } from "../../show/report/reportInput.ts";
import { reportPage } from "../../show/report/reportPage.tsx";
import { chooseWindow } from "../../site/chooseWindow.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { tellOtherWindows } from "../otherWindows.ts";
import { deliver, fileOf } from "../output.ts";
import { pageProgram, sha256Base64 } from "../pageProgram.ts";
import { stepOf } from "../stepOf.ts";
import { VERSION } from "../version.ts";

type Options = Pick<CommonOptions, "window" | "sky" | "step" | "cards" | "output" | "quiet" | "color">;

export function addReport(program: Command, context: Context): void {
  program
    .command("report")
    .description("one page to look at and print: the pad, every frame, a card per camera, a T-0 to move")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.window())
    .addOption(OPTIONS.allSkies())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.cards())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop report sites/skerry-vane.yaml -o plan.html\n")
    .action((path: string, options: Options) => {
      refuseTerminal(options, context);
      const site = openSite(path, options, context.world);
      const window = chooseWindow(site, options.window ?? null);
      refuseTooManySkies(options.sky.length);
      // Without a view that counts there is nothing to rank by.
      const isRanked = site.windows.length > 1 && site.cameras.some(({ weight }) => weight > 0);
      const ranking = isRanked
        ? rankWindows(site, site.windows, { sky: options.sky, ...stepOf(options) })
        : null;
      const input = reportInput(site, window, options.sky, {
        ranking,
        ...stepOf(options),
      });
      const page = reportPage(input, {
        script: pageProgram(),
        sha256: sha256Base64,
        cardsAPage: options.cards,
        madeBy: `padstop ${VERSION}`,
      });
      deliver(context.world, options, page, sourcesOf(path, site));
      tellOtherWindows(site, "Reported", context, options);
    });
}

/** As many as a ranking takes: a card has a row for each. */
function refuseTooManySkies(count: number): void {
  if (count <= MOST_SKIES) return;
  const parts = { found: `${count} skies`, accepted: `up to ${MOST_SKIES}` };
  throw new PadstopError([problem("E_RANGE", "--sky", parts)]);
}

/** A page is nothing to read in a terminal. */
function refuseTerminal(options: Options, { world }: Context): void {
  if (fileOf(options) !== undefined || !world.isTerminal) return;
  const accepted = "a file for the page, or a pipe";
  throw new PadstopError([
    problem("E_MISSING", "--output", { found: "a terminal", accepted, next: "-o plan.html" }),
  ]);
}
