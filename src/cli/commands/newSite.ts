/** `padstop new NAME`: a commented starter file that plans at once; with `--from` for the cameras of a table. */

import type { Command } from "commander";
import { PadstopError, problem } from "../../base/problem.ts";
import { starterSite } from "../../site/starter.ts";
import type { Context } from "../context.ts";
import { writeWhole } from "../files.ts";
import { newFromTable } from "../newFromTable.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";

type Options = Pick<CommonOptions, "output" | "quiet"> & { readonly from?: string };

const LONGEST_NAME = 60;

export function addNew(program: Command, { world }: Context): void {
  program
    .command("new")
    .description("writes a starter site file with comments")
    .argument("<name>", "name of the site; the file is named after it")
    .addOption(OPTIONS.fromTable())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addHelpText(
      "after",
      '\nExamples:\n  padstop new "Gannet Ledge"\n  padstop new "Turnstone Ledge" --from cameras.csv\n',
    )
    .action((name: string, options: Options) => {
      // The name makes the file, so that here stdout has to be asked for.
      const toStdout = options.output === "-";
      const path = toStdout ? `${fileStem(name)}.yaml` : (options.output ?? `${fileStem(name)}.yaml`);
      const { text, notes } =
        options.from === undefined
          ? { text: starterSite(name.trim()), notes: [] }
          : newFromTable(name.trim(), path, options.from);
      if (toStdout) return world.out(text);
      writeWhole(path, text, { mayReplace: false, source: null });
      if (options.quiet) return;
      world.err([...notes, `Wrote ${path}. Next: padstop plan ${path}`].map((line) => `${line}\n`).join(""));
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
