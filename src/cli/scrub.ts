/** `padstop rank SITE --scrub DAYS`: the same window on later days, and what becomes of the settings. */

import { MS_PER_HOUR } from "../base/units.ts";
import { cautionsForRisk } from "../plan/cautions.ts";
import { dailyTimes, localDate } from "../plan/clock.ts";
import { listed, PLUME_NOTE } from "../plan/rank/rankNotes.ts";
import { type Scrub, scrubSettings } from "../plan/rank/scrub.ts";
import type { SunRiskWord } from "../plan/sunRisk.ts";
import { runNotes } from "../show/runNotes.ts";
import { type ScrubContext, scrubCsv, scrubJson, scrubSheet } from "../show/scrubSheet.ts";
import { chooseWindow } from "../site/chooseWindow.ts";
import { type DailyWindows, dailyWindows } from "../site/dailyWindows.ts";
import type { Site, Window } from "../site/types.ts";
import { skyName } from "../sky/daylight.ts";
import type { Context } from "./context.ts";
import { sourcesOf } from "./openSite.ts";
import { deliver, sheetOptions } from "./output.ts";
import type { RankCommandOptions } from "./rankOptions.ts";
import { refuseTogether } from "./refuseTogether.ts";
import { stepOf } from "./stepOf.ts";

export function deliverScrub(
  site: Site,
  path: string,
  days: number,
  { world }: Context,
  options: RankCommandOptions,
): void {
  refuseBeside(options);
  const first = chooseWindow(site, options.window?.[0] ?? null);
  const run = laterDays(site, first, days, options.shift ?? 0);
  const scrub = scrubSettings(site, first, run.windows, {
    sky: options.sky.skies,
    ...stepOf(options),
  });
  const context: ScrubContext = {
    site,
    sky: options.sky.skies.map(skyName),
    notes: [...runNotes(run, site.zone), ...(keepsPlume(site) ? [PLUME_NOTE] : []), ...unsetNotes(scrub)],
    cautions: cautionsForRisk(meets(scrub, ["in-frame", "near-frame"]), meets(scrub, ["in-frame"])),
  };
  const text =
    options.format === "json"
      ? scrubJson(scrub, context, run.skipped)
      : options.format === "csv"
        ? scrubCsv(scrub)
        : scrubSheet(scrub, context, sheetOptions(world, options));
  deliver(world, options, text, sourcesOf(path, site));
}

function refuseBeside({ days, from, daily, strip, picture, sky, window }: RankCommandOptions): void {
  const run = [
    ["--days", days],
    ["--from", from],
    ["--daily", daily],
  ].find(([, value]) => value !== undefined);
  const accepted = "--scrub with one --window and --shift: the days follow from it";
  refuseTogether(run !== undefined, "--scrub", `--scrub and ${run?.[0]}`, accepted);
  refuseTogether(strip !== undefined, "--strip", "--strip and --scrub", "one of them");
  refuseTogether(picture !== undefined, "--picture", "--picture and --scrub", "one of them");
  refuseTogether(
    (window ?? []).length > 1,
    "--window",
    `${window?.length} windows`,
    "the one window that slips",
  );
  refuseTogether(
    sky.weights !== null,
    "--sky",
    "weights of skies and --scrub",
    "sky states alone, as in --sky clear,haze: a setting must serve them all",
  );
}

/** The windows of the days behind the first. */
function laterDays(site: Site, first: Window, days: number, shiftMs: number): DailyWindows {
  const from = localDate(first.opens, site.zone);
  const daily = dailyTimes(first, site.zone);
  const run = dailyWindows({ from, days: days + 1, daily, shiftMs }, site.zone);
  return {
    windows: run.windows.filter(({ opens }) => opens.getTime() - first.opens.getTime() > MS_PER_HOUR),
    skipped: run.skipped.filter(({ date }) => date !== from),
    clockChanges: run.clockChanges,
  };
}

/** Cameras that cannot be given a setting. */
function unsetNotes({ cameras }: Scrub): string[] {
  const ids = cameras.filter(({ setting }) => setting === null).map(({ id }) => id);
  return ids.length === 0
    ? []
    : [`${listed(ids)}: no setting, as the site file lacks what it needs (see padstop check)`];
}

const keepsPlume = ({ cameras }: Site): boolean => cameras.some(({ keep }) => keep.includes("plume"));

const meets = ({ cameras }: Scrub, words: readonly SunRiskWord[]): boolean =>
  cameras.some(({ sun, days }) =>
    [sun, ...days.map((day) => day.sun)].some(({ risk }) => words.includes(risk)),
  );
