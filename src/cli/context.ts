/** What every command shares: the world it runs in and how it ends. */

import type { World } from "./world.ts";

export const EXIT = { done: 0, failOn: 1, wrongInput: 2, ourBug: 70 } as const;

/** What a command is given besides its arguments. */
export interface Context {
  readonly world: World;
  /** Sets the exit code of a run that went well. */
  readonly exitWith: (code: number) => void;
}
