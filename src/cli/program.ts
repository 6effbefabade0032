/** The commands and what becomes of their results: files, exit codes, errors. */

import { type Command, CommanderError } from "commander";
import { PadstopError } from "../base/problem.ts";
import { problemsText } from "../show/problems.ts";
import { CodedCommand } from "./codedCommand.ts";
import { addCalendar } from "./commands/calendar.ts";
import { addCheck } from "./commands/check.ts";
import { addCompletion } from "./commands/completion.ts";
import { addEv } from "./commands/ev.ts";
import { addNew } from "./commands/newSite.ts";
import { addPlan } from "./commands/plan.ts";
import { addRank } from "./commands/rank.ts";
import { addReadings } from "./commands/readings.ts";
import { addRecord } from "./commands/record.ts";
import { addReport } from "./commands/report.ts";
import { addSun } from "./commands/sun.ts";
import { addSweep } from "./commands/sweep.ts";
import { addView } from "./commands/view.ts";
import { type Context, EXIT } from "./context.ts";
import { VERSION } from "./version.ts";
import { paintFor, type World } from "./world.ts";

/** Runs one command line; never throws. */
export async function run(args: readonly string[], world: World): Promise<number> {
  let exitCode: number = EXIT.done;
  const exitWith = (code: number): void => {
    exitCode = code;
  };
  const program = makeProgram({ world, exitWith });
  try {
    await program.parseAsync([...args], { from: "user" });
    return exitCode;
  } catch (thrown) {
    return codeOf(thrown, world, !args.includes("--no-color"));
  }
}

function makeProgram(context: Context): Command {
  const { world } = context;
  const program = new CodedCommand("padstop")
    .description("Plans exposure and lighting for launch photography from the geometry of the sun")
    .version(VERSION, "-V, --version")
    .configureOutput({ writeOut: world.out, writeErr: world.err })
    .showSuggestionAfterError(false)
    .exitOverride();
  for (const add of [
    addPlan,
    addRank,
    addView,
    addSweep,
    addReport,
    addCalendar,
    addReadings,
    addRecord,
    addSun,
    addEv,
    addCheck,
    addNew,
    addCompletion,
  ])
    add(program, context);
  return program;
}

function codeOf(thrown: unknown, world: World, colour: boolean): number {
  if (thrown instanceof CommanderError) return thrown.exitCode === 0 ? EXIT.done : EXIT.wrongInput;
  if (thrown instanceof PadstopError) {
    world.err(problemsText(thrown.problems, paintFor(world, colour, true)));
    return EXIT.wrongInput;
  }
  const what = thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown);
  world.err(
    `padstop has a fault of its own: ${what}\nPlease report it with the site file and the command.\n`,
  );
  return EXIT.ourBug;
}
