/** The options of `readings` alone, and which of them go together. */

import { Option } from "commander";
import { isTimeOfDay, t0Anywhere, t0InWindow } from "../plan/t0InWindow.ts";
import { chooseWindow } from "../site/chooseWindow.ts";
import type { Site } from "../site/types.ts";
import type { Sky } from "../sky/daylight.ts";
import type { CommonOptions } from "./options.ts";
import { refuseTogether } from "./refuseTogether.ts";
import { SKIES } from "./skyOption.ts";

export interface ReadingCommandOptions
  extends Pick<CommonOptions, "window" | "step" | "format" | "output" | "quiet" | "color" | "width" | "at"> {
  readonly asSet: boolean;
  readonly write: boolean;
  readonly sky?: readonly Sky[];
}

export const READING_OPTIONS = {
  asSet: () =>
    new Option("--as-set", "the file is a filled-in form of `padstop record`: judge what was set").default(
      false,
    ),
  write: () =>
    new Option("--write", "put the suggested corrections into the site file, all else in it kept").default(
      false,
    ),
  sky: () =>
    new Option("--sky <states>", "with --as-set: skies to judge by; default those of the form").argParser(
      SKIES,
    ),
  at: () =>
    new Option(
      "--at <T-0>",
      "with --as-set: the T-0 that came, instead of a window: 2027-04-18T18:25 or 18:25",
    ),
} as const;

/** Options of one job beside the other are refused. */
export function refuseReadingOptions(options: ReadingCommandOptions): void {
  const { asSet, write, sky, window, at, step } = options;
  refuseTogether(asSet && write, "--write", "--write and --as-set", "--write with a table of readings");
  const given = [
    ["--sky", sky],
    ["--window", window],
    ["--at", at],
    ["--step", step],
  ] as const;
  const alone = given.find(([, value]) => value !== undefined)?.[0];
  if (asSet || alone === undefined) return;
  const accepted = "--as-set with it: readings carry their own time and sky";
  refuseTogether(true, alone, `${alone} without --as-set`, accepted);
}

/** A time of day lies in the window, and so does a date and time beside `--window`; alone it may be any. */
export function t0ThatCame(site: Site, asked: string | undefined, text: string): Date {
  if (asked === undefined && !isTimeOfDay(text)) return t0Anywhere(site, text);
  return t0InWindow(site, chooseWindow(site, asked ?? null), text);
}
