/** `padstop completion SHELL`: a script for the shell's completion; `padstop names` is what the scripts ask. */

import { Argument, type Command } from "commander";
import { PadstopError } from "../../base/problem.ts";
import type { Site } from "../../site/types.ts";
import { bashCompletion } from "../completion/bash.ts";
import { type CommandTree, commandTree, NAME_KINDS, type NameKind } from "../completion/commandTree.ts";
import { fishCompletion } from "../completion/fish.ts";
import { zshCompletion } from "../completion/zsh.ts";
import type { Context } from "../context.ts";
import { readSite } from "../files.ts";
import { oneOf } from "../optionParsers.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver } from "../output.ts";

const SHELLS = ["bash", "zsh", "fish"] as const;
type Shell = (typeof SHELLS)[number];

const SCRIPTS: Readonly<Record<Shell, (tree: CommandTree) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
};

const INSTALL = `
Into the start-up file of the shell, once; it then completes commands, options,
site files, cameras and windows:
  bash, ~/.bashrc                   eval "$(padstop completion bash)"
  zsh, ~/.zshrc, behind compinit    eval "$(padstop completion zsh)"
  fish, ~/.config/fish/config.fish  padstop completion fish | source
`;

export function addCompletion(program: Command, { world }: Context): void {
  program
    .command("completion")
    .description("a script that lets the shell complete commands, options, cameras and windows")
    .addArgument(new Argument("<shell>", SHELLS.join(", ")).argParser(oneOf("SHELL", SHELLS)))
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", `${INSTALL}\nExample:\n  padstop completion bash\n`)
    .action((shell: Shell, options: Pick<CommonOptions, "output" | "quiet">) => {
      deliver(world, options, SCRIPTS[shell](commandTree(program)));
    });
  program
    .command("names", { hidden: true })
    .description("names out of a site file, one a line, for completion; silent where there are none")
    .addArgument(new Argument("<kind>", NAME_KINDS.join(", ")).argParser(oneOf("KIND", NAME_KINDS)))
    .argument("<site>", "site file (YAML)")
    .action((kind: NameKind, path: string) => {
      world.out(
        namesIn(path, kind)
          .map((name) => `${name}\n`)
          .join(""),
      );
    });
}

/** None where the file cannot be read: a shell has no place for a complaint. */
function namesIn(path: string, kind: NameKind): readonly string[] {
  try {
    return namesOf(readSite(path), kind).filter((name) => !/\p{Cc}/u.test(name));
  } catch (thrown) {
    if (thrown instanceof PadstopError) return [];
    throw thrown;
  }
}

function namesOf({ cameras, windows }: Site, kind: NameKind): readonly string[] {
  if (kind === "windows") return windows.flatMap(({ name }) => (name === null ? [] : [name]));
  return cameras.filter(({ track }) => kind === "cameras" || track !== null).map(({ id }) => id);
}
