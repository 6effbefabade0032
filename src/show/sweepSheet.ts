/** The sheet of the trackers: the sun along the sweep, the setting that serves it, what the mount must do, one T-0 by T+. */

import { changeNotes } from "../plan/sweep/sweepNotes.ts";
import type { SweepPlan } from "../plan/sweep/sweepTypes.ts";
import { bulleted, notesText, windowText } from "./planSheet.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { slewText, sweepSettingsText } from "./sweepSettings.ts";
import { sweepSunText } from "./sweepSunText.ts";
import { timelineText } from "./sweepTimeline.ts";
import { tPlusName } from "./sweepTimes.ts";
import { cutText, folded } from "./textTable.ts";

export interface SweepSheetOptions extends SheetOptions {
  /** Ready drawings that go before the notes. */
  readonly strips: readonly string[];
}

export function sweepSheet(plan: SweepPlan, options: SweepSheetOptions): string {
  const [only, ...others] = plan.trackers;
  const sections = [
    titleText(plan, options),
    sweepSunText(plan, options),
    sweepSettingsText(plan, options),
    slewText(plan, options),
    only !== undefined && others.length === 0 ? timelineText(plan, only, options) : "",
    ...options.strips,
    trackerNotes(plan, options),
    bulleted("CAUTIONS", plan.cautions, options),
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

const LONGEST_ID = 24;

function titleText(plan: SweepPlan, { paint, width }: SheetOptions): string {
  const { trackers, sky, stepS } = plan;
  const who = trackers.length === 1 ? cutText(trackers[0]!.id, LONGEST_ID) : "Trackers";
  const ascents = new Set(
    trackers.map(
      ({ ascent: { source, fromS, toS } }) => `ascent ${source}, ${tPlusName(fromS)} to ${tPlusName(toS)} s`,
    ),
  );
  const count = trackers.length === 1 ? "1 tracker" : `${trackers.length} trackers`;
  const lines = [windowText(plan), ...ascents, `${count} · sky ${sky.join(", ")} · a T-0 every ${stepS} s`];
  return [
    paint.strong(`${who} at ${plan.site.name}`),
    ...lines.map((line) => folded(line, width, "  ")),
  ].join("\n");
}

function trackerNotes({ trackers, notes }: SweepPlan, options: SheetOptions): string {
  // A change of setting stands below the settings already.
  const cameras = trackers.map(({ id, change, notes: own }) => {
    const told = change === null ? [] : changeNotes(change);
    return { id, notes: own.filter((note) => !told.includes(note)) };
  });
  const rest = [...notes, ...assumedNotes(trackers, notes)];
  return cameras.length === 1
    ? bulleted("NOTES", [...cameras[0]!.notes, ...rest], options)
    : notesText({ cameras, notes: rest }, options, "trackers");
}

/** What the ascent leaves open, where no other note tells it. */
function assumedNotes(trackers: SweepPlan["trackers"], notes: readonly string[]): string[] {
  const told = [...notes, ...trackers.flatMap((tracker) => tracker.notes)];
  return [...new Set(trackers.flatMap(({ ascent }) => ascent.assumed))]
    .filter((text) => !told.some((note) => note.includes(text)))
    .map((text) => `ascent: ${text}`);
}
