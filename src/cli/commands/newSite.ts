/** `padstop new NAME`: a commented starter file that plans at once. */

import type { Command } from "commander";
import { PadstopError, problem } from "../../base/problem.ts";
import { starterSite } from "../../site/starter.ts";
import type { Context } from "../context.ts";
import { writeWhole } from "../files.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";

const LONGEST_NAME = 60;

export function addNew(program: Command, { world }: Context): void {
  program
    .command("new")
    .description("writes a starter site file with comments")
    .argument("<name>", "name of the site; the file is named after it")
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addHelpText("after", '\nExample:\n  padstop new "Gannet Ledge"\n')
    .action((name: string, options: Pick<CommonOptions, "output" | "quiet">) => {
      const text = starterSite(name.trim());
      // The name makes the file, so that here stdout has to be asked for.
      if (options.output === "-") return world.out(text);
      const path = options.output ?? `${fileStem(name)}.yaml`;
      writeWhole(path, text, { mayReplace: false, source: null });
      if (!options.quiet) world.err(`Wrote ${path}. Next: padstop plan ${path}\n`);
    });
}

/** "Gannet Ledge" becomes "gannet-ledge"; letters of any script stay. */
function fileStem(name: string): string {
  const stem = name
    .normalize("NFC")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "");
  const printable = !/\p{Cc}|\p{Cf}/u.test(name);
  if (stem !== "" && printable && name.trim().length <= LONGEST_NAME) return stem;
  throw new PadstopError([
    problem("E_CHARS", "NAME", {
      found: JSON.stringify(name.slice(0, LONGEST_NAME)),
      accepted: `1 to ${LONGEST_NAME} printable characters with a letter or digit`,
    }),
  ]);
}
