/** `padstop new NAME`: a commented starter file that plans at once; with `--from` for the cameras of a table. */

import type { Command } from "commander";
import { PadstopError, problem } from "../../base/problem.ts";
import { starterSite } from "../../site/starter.ts";
import type { Context } from "../context.ts";
import { writeWhole } from "../files.ts";
import { newFromTable } from "../newFromTable.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { fileOf } from "../output.ts";

type Options = Pick<CommonOptions, "output" | "quiet" | "color"> & { readonly from?: string };

const LONGEST_NAME = 60;

export function addNew(program: Command, { world }: Context): void {
  program
    .command("new")
    .description("writes a starter site file with comments")
    .argument("<name>", "name of the site; the file is named after it")
    .addOption(OPTIONS.fromTable())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText(
      "after",
      '\nExamples:\n  padstop new "Gannet Ledge"\n  padstop new "Turnstone Ledge" --from cameras.csv\n',
    )
    .action((name: string, options: Options) => {
      // The name makes the file, so that here stdout has to be asked for.
      const named = `${fileStem(name)}.yaml`;
      const path = fileOf(options) ?? named;
      const { text, notes } =
        options.from === undefined
          ? { text: starterSite(name.trim()), notes: [] }
          : newFromTable(name.trim(), path, options.from);
      const toStdout = options.output === "-";
      if (toStdout) world.out(text);
      else writeWhole(path, text, { mayReplace: false, sources: [] });
      if (options.quiet) return;
      const told = toStdout ? notes : [...notes, `Wrote ${path}. Next: padstop plan ${path}`];
      world.err(told.map((line) => `${line}\n`).join(""));
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
