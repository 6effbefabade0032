/** The completion script for zsh, 5 and later. */

import type { CommandTree, ToldCommand, ToldOption, ToldPlace, Values } from "./commandTree.ts";

export function zshCompletion({ options, commands }: CommandTree): string {
  const list = commands.map(({ name, help }) => `    ${quoted(`${name}:${help}`)}\n`).join("");
  const branches = commands.map(({ name }) => `    ${name}) _padstop_${name} ;;\n`).join("");
  const ofProgram = options
    .flatMap(optionSpecs)
    .map((spec) => `    ${quoted(spec)} \\\n`)
    .join("");
  return ZSH.replace("@COMMANDS@", () => commands.map(commandFunction).join("\n"))
    .replace("@OPTIONS@", () => ofProgram.trim())
    .replace("@LIST@", () => list.trim())
    .replace("@BRANCHES@", () => branches.trim());
}

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

function commandFunction({ name, options, places }: ToldCommand): string {
  const specs = [...options.flatMap(optionSpecs), ...places.map(placeSpec)];
  return `_padstop_${name}() {
  local curcontext=$curcontext state state_descr line
  typeset -A opt_args
  _arguments \\
${specs.map((spec) => `    ${quoted(spec)} \\\n`).join("")}    && return 0
  case $state in
    cameras | trackers | windows) _padstop_names $state "$line[1]" ;;
  esac
}
`;
}

/** A line per way of writing an option; any of them may come again. */
function optionSpecs({ names, help, takes, valueName, values }: ToldOption): string[] {
  return names.map((name) => {
    if (takes === "nothing") return `*${name}[${help}]`;
    const sign = name.startsWith("--") ? "=" : "+";
    const colon = takes === "maybe" ? "::" : ":";
    return `*${name}${takes === "maybe" ? "" : sign}[${help}]${colon}${valueName}:${action(values)}`;
  });
}

const placeSpec = ({ name, values }: ToldPlace, i: number): string => `${i + 1}:${name}:${action(values)}`;

function action(values: Values): string {
  if ("words" in values) {
    return values.kind === "list"
      ? `_values -s , value ${values.words.join(" ")}`
      : `(${values.words.join(" ")})`;
  }
  if (values.kind === "file") return "_files";
  if (values.kind === "yaml") return '_files -g "*.(yaml|yml)(-.)"';
  return values.kind === "free" ? " " : `->${values.kind}`;
}

const ZSH = `#compdef padstop
# Completion of padstop for zsh. Names out of a site file are data here: nothing of them is expanded or run.

# Names of a kind out of the site file as it stands in the line, quotes and all.
_padstop_names() {
  local site=\${(Q)2} expl
  local -a names
  site=\${site/#\\~\\//$HOME/}
  if [[ -z $site ]]; then return 1; fi
  names=("\${(@f)$(padstop names $1 -- "$site" 2>/dev/null </dev/null)}")
  names=(\${names:#})
  _wanted names expl $1 compadd -a names
}

@COMMANDS@
_padstop() {
  local curcontext=$curcontext state state_descr line
  typeset -A opt_args
  local -a commands
  commands=(
    @LIST@
  )
  _arguments -C \\
    @OPTIONS@
    '1:command:->command' \\
    '*::argument:->arguments' \\
    && return 0
  if [[ $state == command ]]; then
    _describe command commands
    return
  fi
  case $words[1] in
    @BRANCHES@
  esac
}

# As a file of fpath, or sourced.
if [[ $funcstack[1] == _padstop ]]; then
  _padstop "$@"
else
  compdef _padstop padstop
fi
`;
