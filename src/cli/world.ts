/** The streams and the terminal, in one place, so that everything else can be given another. */

import { COLOURED, type Paint, PLAIN } from "../show/paint.ts";

export interface World {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly isTerminal: boolean;
  readonly isErrorTerminal: boolean;
  readonly columns: number;
  readonly noColour: boolean;
}

/** Columns assumed for files and pipes, so that their bytes do not depend on a terminal. */
export const PLAIN_COLUMNS = 80;

export function processWorld(): World {
  const isTerminal = process.stdout.isTTY === true;
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    isTerminal,
    isErrorTerminal: process.stderr.isTTY === true,
    columns: isTerminal ? (process.stdout.columns ?? PLAIN_COLUMNS) : PLAIN_COLUMNS,
    // https://no-color.org: present and not empty.
    noColour: (process.env["NO_COLOR"] ?? "") !== "",
  };
}

/** Colour only on a terminal, and only when nobody asked for none. */
export const paintFor = (world: World, colour: boolean, toErrors = false): Paint =>
  (toErrors ? world.isErrorTerminal : world.isTerminal) && colour && !world.noColour ? COLOURED : PLAIN;
