/** Where a result goes and how it is laid out. */

import { PLAIN } from "../show/paint.ts";
import type { SheetOptions } from "../show/sheetOptions.ts";
import { writeWhole } from "./files.ts";
import type { CommonOptions } from "./options.ts";
import { PLAIN_COLUMNS, paintFor, type World } from "./world.ts";

type OutputOptions = Partial<Pick<CommonOptions, "output" | "quiet" | "color" | "width">>;

/** The file asked for; "-" is stdout, as if none were. */
export const fileOf = ({ output }: OutputOptions): string | undefined =>
  output === "-" ? undefined : output;

/** To stdout, or whole into a file with a word on stderr; never over `sources`, the files the result was made from. */
export function deliver(
  world: World,
  options: OutputOptions,
  text: string,
  sources: readonly string[] = [],
): void {
  const file = fileOf(options);
  if (file === undefined) {
    world.out(text);
    return;
  }
  writeWhole(file, text, { mayReplace: true, sources });
  if (!options.quiet) world.err(`Wrote ${file}\n`);
}

/** A file is laid out plain and 80 columns wide unless told otherwise. */
export function sheetOptions(world: World, options: OutputOptions): SheetOptions {
  const toFile = fileOf(options) !== undefined;
  return {
    width: options.width ?? (toFile ? PLAIN_COLUMNS : world.columns),
    paint: toFile ? PLAIN : paintFor(world, options.color ?? true),
  };
}
