/** A picture beside a command's normal output: a file of its own, whole or not at all. */

import { isSameFile, writeWhole } from "./files.ts";
import { refuseTogether } from "./refuseTogether.ts";
import type { World } from "./world.ts";

export interface PictureOptions {
  readonly picture?: string;
  readonly output?: string;
  readonly quiet: boolean;
}

/** Before any work: a picture must not take the place of the other output. */
export function refuseSameFile({ picture, output }: PictureOptions): void {
  refuseTogether(
    picture !== undefined && output !== undefined && output !== "-" && isSameFile(picture, output),
    "--picture",
    "--picture and --output to one file",
    "two files",
  );
}

/** Nothing unless a picture is asked for; never over `sources`, the site file and its tables. */
export function writePicture(
  world: World,
  { picture, quiet }: PictureOptions,
  sources: readonly string[],
  draw: () => string,
): void {
  if (picture === undefined) return;
  writeWhole(picture, draw(), { mayReplace: true, sources });
  if (!quiet) world.err(`Wrote ${picture}\n`);
}
