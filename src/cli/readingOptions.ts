/** The options of `readings` alone, and which of them go together. */

import { Option } from "commander";
import { PadstopError, problem } from "../base/problem.ts";
import { t0InWindow } from "../plan/t0InWindow.ts";
import type { Site, Window } from "../site/types.ts";
import { parseInstant } from "../site/zoneTime.ts";
import type { Sky } from "../sky/daylight.ts";
import { type CommonOptions, OPTIONS } from "./options.ts";
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
  window: () => OPTIONS.window(),
} as const;

/** Options of one job beside the other are refused. */
export function refuseReadingOptions(options: ReadingCommandOptions): void {
  const { asSet, write, sky, window, at, step } = options;
  if (asSet && write) {
    const accepted = "--write with a table of readings";
    throw new PadstopError([problem("E_CONFLICT", "--write", { found: "--write and --as-set", accepted })]);
  }
  const given = [
    ["--sky", sky],
    ["--window", window],
    ["--at", at],
    ["--step", step],
  ] as const;
  const alone = given.find(([, value]) => value !== undefined)?.[0];
  if (!asSet && alone !== undefined) {
    const accepted = "--as-set with it: readings carry their own time and sky";
    throw new PadstopError([problem("E_CONFLICT", alone, { found: `${alone} without --as-set`, accepted })]);
  }
}

/** A time of day lies in the window; a date and time may be any. */
export function t0ThatCame(site: Site, windowOf: () => Window, text: string): Date {
  if (/^\d{1,2}:/.test(text)) return t0InWindow(site, windowOf(), text);
  const read = parseInstant(text, site.zone);
  if (read.ok) return read.at;
  const { code, found, accepted, next } = read;
  throw new PadstopError([problem(code, "--at", { found, accepted, next })]);
}
