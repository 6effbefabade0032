/** A command whose complaints about the command line are problems like all others: code, found, accepted, next step. */

import { Command, type ErrorOptions } from "commander";
import { PadstopError, type Problem, problem } from "../base/problem.ts";
import { nearest } from "../site/nearest.ts";
import { shortText } from "../site/sourcePlaces.ts";

/** Used for the program; its commands are made by it and are of the same kind. */
export class CodedCommand extends Command {
  override createCommand(name?: string): CodedCommand {
    return new CodedCommand(name);
  }

  /** Where commander's own complaints pass, but for `help` with a word that is no command: that prints the help. */
  override error(message: string, options?: ErrorOptions): never {
    throw new PadstopError([usageProblem(this, message, options?.code ?? "")]);
  }
}

/** Commander tells what was wrong by a code, and names it in quotes. */
function usageProblem(command: Command, message: string, code: string): Problem {
  const named = /'(.*)'/s.exec(message)?.[1] ?? "";
  switch (code) {
    case "commander.unknownCommand":
      return unknownCommand(command, named);
    case "commander.unknownOption":
      return unknownOption(command, named);
    case "commander.missingArgument":
      return missingArgument(command, named);
    case "commander.optionMissingArgument":
      return problem("E_OPTION", longName(named), {
        found: "nothing",
        accepted: `${placeholder(named)} (${command.options.find(({ flags }) => flags === named)?.description})`,
        next: helpOf(command),
      });
    case "commander.conflictingOption":
      return conflict(named);
    case "commander.excessArguments":
      return tooManyArguments(command);
    default:
      return problem("E_OPTION", calledName(command), { found: shortText(message), next: helpOf(command) });
  }
}

function unknownCommand(program: Command, found: string): Problem {
  const words = program
    .createHelp()
    .visibleCommands(program)
    .map((command) => command.name());
  return problem("E_CHOICE", "COMMAND", {
    found: shortText(found),
    accepted: words.join(", "),
    suggestion: nearest(found, words),
    next: helpOf(program),
  });
}

function unknownOption(command: Command, found: string): Problem {
  const flags = command
    .createHelp()
    .visibleOptions(command)
    .flatMap(({ long }) => (long === undefined || long === null ? [] : [long]));
  return problem("E_OPTION", shortText(found), {
    found: "an unknown option",
    accepted: flags.join(", "),
    suggestion: nearest(found.replace(/=.*/s, ""), flags),
    next: helpOf(command),
  });
}

function missingArgument(command: Command, name: string): Problem {
  const argument = command.registeredArguments.find((one) => one.name() === name);
  return problem("E_MISSING", name.toUpperCase(), {
    found: "nothing",
    accepted: argument?.description ?? null,
    next: `${calledName(command)} ${command.registeredArguments.map((one) => one.name().toUpperCase()).join(" ")}`,
  });
}

/** "option '--date <date>' cannot be used with option '--window <name|interval>'". */
function conflict(named: string): Problem {
  const [one = "", other = ""] = named.split("' cannot be used with option '").map(longName);
  return problem("E_CONFLICT", one, { found: `${one} and ${other}`, accepted: "one of them" });
}

function tooManyArguments(command: Command): Problem {
  const places = command.registeredArguments.map((one) => one.name().toUpperCase());
  const extra = command.args[places.length] ?? "";
  return problem("E_OPTION", calledName(command), {
    found: `${shortText(extra)} as well`,
    accepted: places.length === 0 ? "options alone" : places.join(" "),
    next: extra.startsWith("-") ? helpOf(command) : "put a name with spaces in quotes",
  });
}

/** "-o, --output <file>" becomes "<file>". */
const placeholder = (flags: string): string => flags.replace(/^.*?(?=[<[])/, "");

/** "-o, --output <file>" becomes "--output". */
const longName = (flags: string): string => /--[\w-]+/.exec(flags)?.[0] ?? flags;

const calledName = (command: Command): string =>
  command.parent === null ? command.name() : `${command.parent.name()} ${command.name()}`;

const helpOf = (command: Command): string => `${calledName(command)} --help`;
