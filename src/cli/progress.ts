/** A line of progress for work that takes longer than a second, on a terminal that nobody asked to be quiet. */

import type { World } from "./world.ts";

const WAIT_MS = 1000;
const EVERY_MS = 200;
/** Back to the line's start, and the rest of it blank (ECMA-48, erase in line). */
const CLEAR = "\r\u001b[K";

export interface Progress {
  readonly tell: (done: number, total: number) => void;
  /** Takes the line away again. */
  readonly end: () => void;
}

export function progressLine(world: World, quiet: boolean, words: string): Progress {
  const isSilent = quiet || !world.isErrorTerminal;
  const startedMs = performance.now();
  let toldMs = startedMs + WAIT_MS - EVERY_MS;
  let isShown = false;
  return {
    tell: (done, total) => {
      const nowMs = performance.now();
      if (isSilent || done === total || nowMs - toldMs < EVERY_MS) return;
      toldMs = nowMs;
      isShown = true;
      world.err(`${CLEAR}${words} ${done} of ${total}`);
    },
    end: () => {
      if (isShown) world.err(CLEAR);
    },
  };
}
