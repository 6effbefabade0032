/** The completion script for fish, 3.1 and later. */

import type { CommandTree, ToldCommand, ToldOption, Values } from "./commandTree.ts";

export function fishCompletion(tree: CommandTree): string {
  const takers = tree.commands.flatMap(({ name, options }) =>
    options
      .filter(({ takes }) => takes === "value")
      .flatMap(({ names }) => names.map((option) => `'${name} ${option}'`)),
  );
  const lines = [
    ...tree.options.map((option) => optionLine("__padstop_at ''", option)),
    ...tree.commands.map(
      ({ name, help }) => `complete -c padstop -n "__padstop_at ''" -a ${name} -d ${quoted(help)}`,
    ),
    ...tree.commands.flatMap(commandLines),
  ];
  return FISH.replace("@TAKERS@", () => takers.join(" ")).replace("@LINES@", () => lines.join("\n"));
}

const quoted = (text: string): string => `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;

function commandLines({ name, options, places }: ToldCommand): string[] {
  return [
    "",
    ...options.map((option) => optionLine(`__padstop_at ${name}`, option)),
    ...places.flatMap(({ values }, i) => {
      const offered = offers(values);
      return offered === "" ? [] : [`complete -c padstop -n "__padstop_at ${name} ${i + 1}" ${offered}`];
    }),
  ];
}

function optionLine(condition: string, { names, help, takes, values }: ToldOption): string {
  const ways = names.map((name) => (name.startsWith("--") ? `-l ${name.slice(2)}` : `-s ${name.slice(1)}`));
  const value =
    takes === "value" ? ` ${values.kind === "file" ? "-r" : "-x"} ${offers(values)}`.trimEnd() : "";
  return `complete -c padstop -n "${condition}" ${ways.join(" ")}${value} -d ${quoted(help)}`;
}

function offers(values: Values): string {
  if ("words" in values) {
    const words = values.words.join(" ");
    return values.kind === "list" ? `-a '(__padstop_list ${words})'` : `-a '${words}'`;
  }
  if (values.kind === "free") return "";
  if (values.kind === "file") return "-F";
  return values.kind === "yaml"
    ? "-k -a '(__fish_complete_suffix .yaml)'"
    : `-a '(__padstop_names ${values.kind})'`;
}

const FISH = `# Completion of padstop for fish. Names out of a site file are data here: nothing of them is expanded or run.

# The words before the cursor that are neither options nor their values: command, site, camera.
function __padstop_words
    set -l command ''
    set -l skip 0
    for word in (commandline -opc)[2..-1]
        if test $skip = 1
            set skip 0
        else if string match -q -- '-?*' $word
            contains -- "$command $word" @TAKERS@
            and set skip 1
        else
            test -z "$command"; and set command $word
            string unescape -- $word
        end
    end
end

# Is this the command, and this the place that is completed? Without a place: anywhere behind it.
function __padstop_at
    set -l words (__padstop_words)
    if test -z "$argv[1]"
        test (count $words) = 0
        return
    end
    test (count $words) -ge 1; and test "$words[1]" = "$argv[1]"
    or return 1
    test (count $argv) = 1; or test (count $words) = $argv[2]
end

# Names of a kind out of the site file.
function __padstop_names
    set -l site (__padstop_words)[2]
    test -n "$site"; or return
    set site (string replace -r '^~/' "$HOME/" -- $site)
    padstop names $argv[1] -- $site 2>/dev/null </dev/null
end

# Words of a list with commas: what stands before the last comma stays.
function __padstop_list
    set -l before (commandline -ct | string replace -r '^--[^=]*=' '' | string replace -r '[^,]*$' '')
    printf '%s\\n' "$before"$argv
end

complete -c padstop -f
@LINES@
`;
