/** How a sheet is laid out. */

import type { Paint } from "./paint.ts";

export interface SheetOptions {
  /** Columns of the terminal. */
  readonly width: number;
  readonly paint: Paint;
}
