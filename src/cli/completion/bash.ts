/** The completion script for bash, 3.2 and later. */

import type { CommandTree, ToldOption, Values } from "./commandTree.ts";

export function bashCompletion(tree: CommandTree): string {
  const branches = tree.commands.flatMap(({ name, options, places }) => [
    ...options.flatMap((option) => optionBranch(name, option)),
    ...places.map(({ values }, i) => branch(`${name} ${i + 1}`, setting(values))),
    branch(`${name} options`, wordsSetting("words", namesOf(options))),
  ]);
  const ofProgram = [
    branch(
      " 1",
      wordsSetting(
        "words",
        tree.commands.map(({ name }) => name),
      ),
    ),
    branch(" options", wordsSetting("words", namesOf(tree.options))),
  ];
  const table = [...ofProgram, ...branches].map((line) => `    ${line}\n`).join("");
  return BASH.replace("@TABLE@", () => table.trimEnd());
}

const namesOf = (options: readonly ToldOption[]): string[] => options.flatMap(({ names }) => names);

const branch = (key: string, settings: string): string => `'${key}') ${settings} ;;`;

function optionBranch(command: string, { names, takes, values }: ToldOption): string[] {
  if (takes === "nothing") return [];
  const keys = names.map((name) => `'${command} ${name}'`).join(" | ");
  return [`${keys}) takes=${takes} ${setting(values)} ;;`];
}

function setting(values: Values): string {
  return "words" in values ? wordsSetting(values.kind, values.words) : `kind=${values.kind}`;
}

/** Words of ours, but quoted all the same. */
const wordsSetting = (kind: string, words: readonly string[]): string =>
  `kind=${kind} choices=(${words.map((word) => `'${word.replaceAll("'", "'\\''")}'`).join(" ")})`;

const BASH = `# Completion of padstop for bash. Names out of a site file are data here: nothing of them is expanded or run.

# What may stand at "COMMAND PLACE" or follow "COMMAND OPTION": sets kind, choices, takes.
_padstop_table() {
  kind=free takes='' choices=()
  case "$1 $2" in
@TABLE@
  esac
}

# The line up to the cursor: whole words without their quotes in words, the rest in typed, the quote still open in
# quote, and in kept what the shell will leave standing when it puts in the completed word.
_padstop_split() {
  local line=\${COMP_LINE:0:COMP_POINT} i char next word='' begun=''
  words=() kept='' quote='' closed=''
  for ((i = 0; i < \${#line}; i++)); do
    char=\${line:i:1}
    if [[ -n $quote && $char == "$quote" ]]; then
      quote='' closed=1
    elif [[ $quote == "'" ]]; then
      word+=$char
    elif [[ $char == "\\\\" ]]; then
      next=\${line:i+1:1}
      if [[ -n $quote && $next != ["\\\\\\"\\$\\\`"] ]]; then word+=$char; else word+=$next i=$((i + 1)) begun=1; fi
    elif [[ -n $quote ]]; then
      word+=$char
    elif [[ $char == "'" || $char == '"' ]]; then
      quote=$char kept=$word begun=1
    elif [[ $char == [[:space:]] ]]; then
      if [[ -n $word || -n $begun ]]; then words+=("$word"); fi
      word='' begun='' kept='' closed=''
    else
      word+=$char
      if [[ $COMP_WORDBREAKS == *"$char"* ]]; then kept=$word; fi
    fi
  done
  typed=$word
}

# Offers one word where it fits, quoted as the line needs it.
_padstop_offer() {
  local full=$head$1 i char out=''
  [[ $1 == "$part"* ]] || return 0
  full=\${full:\${#kept}}
  if [[ -z $quote ]]; then
    if [[ $full == *[!A-Za-z0-9_@%+=:,./-]* ]]; then printf -v out %q "$full"; else out=$full; fi
  elif [[ $quote == '"' && $full == *'!'* ]]; then
    return 0 # no way to write it there
  else
    for ((i = 0; i < \${#full}; i++)); do
      char=\${full:i:1}
      if [[ $quote == "'" && $char == "'" ]]; then char="'\\\\''"; fi
      if [[ $quote == '"' && $char == ["\\\\\\"\\$\\\`"] ]]; then char="\\\\$char"; fi
      out+=$char
    done
  fi
  COMPREPLY+=("$out")
}

# Folders and site files; the shell quotes them itself.
_padstop_sites() {
  local start=$part name
  if [[ $start == '~/'* ]]; then start=$HOME/\${start:2}; fi
  compopt -o filenames 2>/dev/null
  while IFS= read -r name; do
    if [[ $name != "$start"* ]] || [[ ! -d $name && ! -f $name ]]; then continue; fi
    name=$part\${name:\${#start}}
    COMPREPLY+=("\${name:\${#kept}}")
  done < <(shopt -u failglob; shopt -s nullglob; set +f
    for name in "$start"*/ "$start"*.yaml "$start"*.yml; do printf '%s\\n' "\${name%/}"; done)
}

_padstop_names() {
  local file=$site name
  if [[ $file == '~/'* ]]; then file=$HOME/\${file:2}; fi
  if [[ -z $file ]]; then return 0; fi
  while IFS= read -r name; do
    _padstop_offer "$name"
  done < <(padstop names "$kind" -- "$file" 2>/dev/null </dev/null)
}

# The words before the cursor: sets command, site, place, and option with what it takes.
_padstop_walk() {
  local i word last=''
  for ((i = 1; i < \${#words[@]}; i++)); do
    word=\${words[i]} last=$takes takes=''
    if [[ $last == value || ($last == maybe && $word != -*) ]]; then
      continue
    elif [[ -z $dashes && $word == -- ]]; then
      dashes=1
    elif [[ -z $dashes && $word == -* ]]; then
      option=$word
      _padstop_table "$command" "$word"
    elif [[ -z $command ]]; then
      command=$word
    else
      place=$((place + 1))
      if ((place == 1)); then site=$word; fi
    fi
  done
}

_padstop() {
  local words typed kept quote closed command='' site='' place=0 dashes='' option='' kind takes='' choices word
  local head='' part
  COMPREPLY=()
  _padstop_split
  if [[ -n $closed ]]; then return 0; fi
  _padstop_walk
  part=$typed
  if [[ $takes == value || ($takes == maybe && $typed != -*) ]]; then
    _padstop_table "$command" "$option"
  elif [[ -z $dashes && $typed == --*=* ]]; then
    head=\${typed%%=*}= part=\${typed#*=}
    _padstop_table "$command" "\${typed%%=*}"
    if [[ -z $takes ]]; then return 0; fi
  elif [[ -z $dashes && $typed == -* ]]; then
    _padstop_table "$command" options
  else
    _padstop_table "$command" $((place + 1))
  fi
  case $kind in
    list)
      if [[ $part == *,* ]]; then head+=\${part%,*}, part=\${part##*,}; fi
      compopt -o nospace 2>/dev/null
      ;;
    file) compopt -o default 2>/dev/null ;;
    yaml) _padstop_sites ;;
    cameras | trackers | windows) _padstop_names ;;
  esac
  for word in \${choices[@]+"\${choices[@]}"}; do _padstop_offer "$word"; done
  return 0
}

complete -F _padstop padstop
`;
