/** `padstop rank SITE`: which day, which window, which T-0. */

import type { Command } from "commander";
import { PadstopError, problem } from "../../base/problem.ts";
import { dailyTimes, localDate } from "../../plan/clock.ts";
import { rankWindows } from "../../plan/rank/rankWindows.ts";
import { rankCsv, rankJson } from "../../show/rankData.ts";
import { rankSheet } from "../../show/rankSheet.ts";
import { chooseWindows } from "../../site/chooseWindow.ts";
import { type DailyWindows, dailyWindows } from "../../site/dailyWindows.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { OPTIONS } from "../options.ts";
import { deliver, sheetOptions } from "../output.ts";
import { refuseSameFile, writePicture } from "../pictureFile.ts";
import { progressLine } from "../progress.ts";
import type { RankCommandOptions } from "../rankOptions.ts";
import { stripsFile, stripsOf } from "../rankPicture.ts";
import { refuseTogether } from "../refuseTogether.ts";
import { deliverScrub } from "../scrub.ts";
import { stepOf } from "../stepOf.ts";

export function addRank(program: Command, context: Context): void {
  program
    .command("rank")
    .description("which day, which window, which T-0 gives the most well-lit views")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.windows())
    .addOption(OPTIONS.from())
    .addOption(OPTIONS.days())
    .addOption(OPTIONS.daily())
    .addOption(OPTIONS.shift())
    .addOption(OPTIONS.weightedSky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.top())
    .addOption(OPTIONS.strip())
    .addOption(OPTIONS.picture())
    .addOption(OPTIONS.scrub())
    .addOption(OPTIONS.format())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText(
      "after",
      "\nExample:\n  padstop rank sites/skerry-vane.yaml --from 2027-04-12 --days 14 --daily 17:10/19:40 --shift -4m --strip\n",
    )
    .action((path: string, options: RankCommandOptions) => {
      const site = openSite(path, options, context.world);
      if (options.scrub !== undefined) deliverScrub(site, path, options.scrub, context, options);
      else deliverRanking(site, path, context, options);
    });
}

function deliverRanking(site: Site, path: string, { world }: Context, options: RankCommandOptions): void {
  refuseTogether(
    options.strip !== undefined && options.picture === undefined && options.format !== "table",
    "--strip",
    `--strip and --format ${options.format}`,
    "--strip with --format table, or --picture",
  );
  refuseSameFile(options);
  const run = runOf(site, options);
  const windows = run?.windows ?? chooseWindows(site, options.window);
  const progress = progressLine(world, options.quiet, "Ranked windows:");
  const ranking = rankWindows(site, windows, {
    sky: options.sky.skies,
    ...(options.sky.weights === null ? {} : { skyWeights: options.sky.weights }),
    ...stepOf(options),
    onWindow: progress.tell,
  });
  progress.end();
  const sources = sourcesOf(path, site);
  writePicture(world, options, sources, () => stripsFile(site, ranking, options));
  if (options.format === "json") deliver(world, options, rankJson(ranking, run), sources);
  else if (options.format === "csv") deliver(world, options, rankCsv(ranking, run), sources);
  else {
    const sheet = sheetOptions(world, options);
    const strips = stripsOf(site, ranking, options, sheet);
    deliver(world, options, rankSheet(ranking, { ...sheet, top: options.top, run, strips }), sources);
  }
}

/** The run of days asked for, or null. */
function runOf(site: Site, options: RankCommandOptions): DailyWindows | null {
  const { from, days, daily, shift } = options;
  const asked = [
    ["--from", from],
    ["--daily", daily],
    ["--shift", shift],
  ] as const;
  if (days === undefined) {
    const alone = asked.find(([, value]) => value !== undefined)?.[0];
    if (alone === undefined) return null;
    const accepted = "--days with it: how many days";
    throw new PadstopError([
      problem("E_MISSING", "--days", { found: `${alone} alone`, accepted, next: `${alone} ... --days 30` }),
    ]);
  }
  refuseTogether(
    options.window !== undefined,
    "--window",
    "--window and --days",
    "windows by name, or a run of days, not both",
  );
  const first = from === undefined || daily === undefined ? firstWindowFor(site) : null;
  return dailyWindows(
    {
      from: from ?? localDate(first!.opens, site.zone),
      days,
      daily: daily ?? dailyTimes(first!, site.zone),
      shiftMs: shift ?? 0,
    },
    site.zone,
  );
}

/** What is left out of a run of days comes from the file's first window. */
function firstWindowFor(site: Site): Window {
  const [first] = site.windows;
  if (first !== undefined) return first;
  const accepted = "--from and --daily with --days, as the site file gives no window to take them from";
  const next = "--from 2027-04-18 --daily 17:10/19:40";
  throw new PadstopError([problem("E_MISSING", "--daily", { found: "no window", accepted, next })]);
}
