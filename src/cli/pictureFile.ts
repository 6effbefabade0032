/** A picture beside a command's normal output: a file of its own, whole or not at all. */

import { resolve } from "node:path";
import { writeWhole } from "./files.ts";
import { refuseTogether } from "./rankOptions.ts";
import type { World } from "./world.ts";

export interface PictureOptions {
  readonly picture?: string;
  readonly output?: string;
  readonly quiet: boolean;
}

/** Before any work: a picture must not take the place of the other output. */
export function refuseSameFile({ picture, output }: PictureOptions): void {
  refuseTogether(
    picture !== undefined && output !== undefined && resolve(picture) === resolve(output),
    "--picture",
    "--picture and --output to one file",
    "two files",
  );
}

/** Nothing unless a picture is asked for; never over `source`, the site file. */
export function writePicture(
  world: World,
  { picture, quiet }: PictureOptions,
  source: string,
  draw: () => string,
): void {
  if (picture === undefined) return;
  writeWhole(picture, draw(), { mayReplace: true, source });
  if (!quiet) world.err(`Wrote ${picture}\n`);
}
