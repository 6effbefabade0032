/** What a shell needs to know of the commands, read from commander's own tree: nothing is listed a second time. */

import type { Command, Option } from "commander";
import { choicesOf } from "../optionParsers.ts";

/** Lists of names that a site file gives. */
export const NAME_KINDS = ["cameras", "trackers", "windows"] as const;
export type NameKind = (typeof NAME_KINDS)[number];

/** What may stand in one place of a command line. */
export type Values =
  | { readonly kind: "free" | "file" | "yaml" | NameKind }
  | { readonly kind: "words" | "list"; readonly words: readonly string[] };

export interface ToldOption {
  /** As typed: "-o", "--output". */
  readonly names: readonly string[];
  readonly help: string;
  readonly takes: "nothing" | "value" | "maybe";
  /** What the value is called: "file". */
  readonly valueName: string;
  readonly values: Values;
}

export interface ToldPlace {
  readonly name: string;
  readonly values: Values;
}

export interface ToldCommand {
  readonly name: string;
  readonly help: string;
  readonly options: readonly ToldOption[];
  readonly places: readonly ToldPlace[];
}

/** The program itself (its options) and its commands; hidden ones are left out. */
export interface CommandTree {
  readonly options: readonly ToldOption[];
  readonly commands: readonly ToldCommand[];
}

export function commandTree(program: Command): CommandTree {
  const helper = program.createHelp();
  const shown = helper.visibleCommands(program);
  const names = shown.map((command) => command.name());
  const optionsOf = (command: Command): ToldOption[] => helper.visibleOptions(command).map(toldOption);
  return {
    options: optionsOf(program),
    commands: shown.map((command) => ({
      name: command.name(),
      help: briefly(command.description()),
      options: optionsOf(command),
      places: command.registeredArguments.map((argument) => ({
        name: argument.name(),
        values: placeValues(argument.name(), choicesOf(argument.parseArg)?.words ?? null, names),
      })),
    })),
  };
}

function toldOption(option: Option): ToldOption {
  const valueName = /[<[](.+)[>\]]/.exec(option.flags)?.[1] ?? "";
  const names = [option.short, option.long].filter((name) => name !== undefined && name !== null);
  const takes = option.required ? "value" : option.optional ? "maybe" : "nothing";
  return { names, help: briefly(option.description), takes, valueName, values: valuesOf(option, valueName) };
}

/** What an option's value is stands in its own flags, `--picture <file>`, and in its parser. */
function valuesOf(option: Option, valueName: string): Values {
  const choices = choicesOf(option.parseArg);
  if (choices !== null) return { kind: choices.isList ? "list" : "words", words: choices.words };
  if (valueName === "file") return { kind: "file" };
  return { kind: valueName === "name|interval" ? "windows" : "free" };
}

function placeValues(name: string, choices: readonly string[] | null, commands: readonly string[]): Values {
  if (choices !== null) return { kind: "words", words: choices };
  if (name === "command") return { kind: "words", words: commands };
  const kinds: Readonly<Record<string, "yaml" | "file" | NameKind>> = {
    site: "yaml",
    camera: "cameras",
    tracker: "trackers",
    file: "file",
  };
  return { kind: kinds[name] ?? "free" };
}

/** The first part of a sentence, without what would end a text in a shell. */
const briefly = (text: string): string =>
  (/^.*?(?=; |: |, such as| \(|$)/s.exec(text)?.[0] ?? text).replaceAll(/['"`$\\[\]:]/g, "");
