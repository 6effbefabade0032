/** Which of the two tables of the field a text is: told by its header, and the wrong one refused with words. */

import { PadstopError, problem } from "../../base/problem.ts";
import { columnsOf } from "./fieldTable.ts";
import { READING_COLUMNS } from "./readReadings.ts";

/** Throws a PadstopError for a table of the other kind; one that is neither is left to its reader. */
export function requireKind(text: string, file: string, wanted: "readings" | "form"): void {
  const columns = columnsOf(text);
  const isForm = columns.some((name) => name.startsWith("set_"));
  const isReadings = READING_COLUMNS.every((name) => columns.includes(name));
  if (isForm === isReadings) return;
  if (wanted === "readings" && isForm) {
    const parts = {
      found: "a form of settings",
      accepted: "a table of readings",
      next: "add --as-set to judge the settings",
    };
    throw new PadstopError([problem("E_CSV", file, parts)]);
  }
  if (wanted === "form" && isReadings) {
    const parts = {
      found: "a table of readings",
      accepted: "a filled-in form, as padstop record writes it",
      next: "leave --as-set out to compare readings",
    };
    throw new PadstopError([problem("E_CSV", file, parts)]);
  }
}
