/** The sun along the sweep of each tracker: for which T-0s it meets the frame, at which T+, and how close it comes. */

import { makeClock } from "../plan/clock.ts";
import type { SunRiskWord } from "../plan/sunRisk.ts";
import type { ClosestApproach, SweepCrossing, SweepPlan, TrackerSweep } from "../plan/sweep/sweepTypes.ts";
import { degreesText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { makeSecondsClock, type SweepClock, tPlusSpansText, tPlusText } from "./sweepTimes.ts";
import { cutText, folded } from "./textTable.ts";

/** Worst first. */
const RISK_ORDER: readonly SunRiskWord[] = ["in-frame", "near-frame", "hidden", "clear", "down"];

export function sweepSunText({ site, window, trackers }: SweepPlan, { width, paint }: SheetOptions): string {
  // Times to the second of an ascent that is a guess would promise what no one can keep.
  const isRough = trackers.some(({ ascent }) => ascent.kind === "parameters");
  const clock = (isRough ? makeClock : makeSecondsClock)(site.zone, window.opens, window.closes);
  const times: Times = { clock, isRough };
  const ordered = RISK_ORDER.flatMap((risk) => trackers.filter(({ sun }) => sun.risk === risk));
  const meets = trackers.some(({ sun }) => sun.inFrame.length + sun.nearFrame.length > 0);
  const key = `T-0s for which the sun meets the frame, and the T+ at which it does for any of them, both rounded outward. ${isRough ? ROUGH_WORDS : EXACT_WORDS}`;
  const blocks = ordered.flatMap((tracker) => [
    folded(`${headWords(tracker, paint)}  ${riskWord(tracker.sun.risk, paint)}`, width, "    "),
    ...sunLines(tracker, times).map((parts) => laidOut(parts, width)),
  ]);
  return [paint.strong("SUN ALONG THE SWEEP"), ...(meets ? [folded(key, width, "")] : []), ...blocks].join(
    "\n",
  );
}

/** The sun goes a degree in four minutes; across its way there may be nothing to meet. */
const STRAYED = "a degree off is some 4 minutes of T-0, or no crossing at all";
const EXACT_WORDS = `Exact for the ascent as given: ${STRAYED}.`;
const ROUGH_WORDS = `Of an ascent made from parameters: ${STRAYED}.`;

export interface Times {
  readonly clock: SweepClock;
  readonly isRough: boolean;
}

const LONGEST_ID = 24;

/** "T1 (nose, 1200 mm, 1.2° x 0.9°)". */
function headWords({ id, follows, lens, fieldDeg }: TrackerSweep, paint: Paint): string {
  const field = `${fieldText(fieldDeg.horizontal)}° x ${fieldText(fieldDeg.vertical)}°`;
  return `${paint.strong(cutText(id, LONGEST_ID))} (${follows}, ${Number(lens.focalMm.toPrecision(5))} mm, ${field})`;
}

/** A tenth says little of a field that is one or two tenths wide. */
export const fieldText = (angleDeg: number): string => angleDeg.toFixed(angleDeg < 1 ? 2 : 1);

function riskWord(risk: SunRiskWord, paint: Paint): string {
  if (risk === "in-frame") return paint.alarm("IN FRAME");
  if (risk === "near-frame") return paint.warn("near frame");
  if (risk === "hidden") return paint.warn("hidden");
  return risk === "down" ? "sun down" : "clear";
}

/** A line of parts per crossing; one alone for a sun that stays clear. */
function sunLines({ sun }: TrackerSweep, times: Times): string[][] {
  const { clock } = times;
  const lines = [
    ...sun.inFrame.map((crossing) =>
      crossingParts("in frame", crossing, offAxisWords(crossing.closest, times), times),
    ),
    ...sun.nearFrame.map((crossing) =>
      // Beside T-0s that have it in the frame it comes as near as the edge, which says nothing.
      crossingParts(
        "near frame",
        crossing,
        isBeside(crossing, sun.inFrame) ? null : edgeWords(crossing.closest),
        times,
      ),
    ),
    ...sun.hidden.map((span) => {
      const inside = clock.spanInside(span);
      const when = inside === null ? `for a moment at T-0 ${clock.at(span.from, "before")}` : `T-0 ${inside}`;
      return [`hidden  ${when}`, `by ${span.by.join(" and ")}`];
    }),
  ];
  if (lines.length > 0 || sun.risk === "down" || sun.closest === null) return lines;
  return [[`closest ${edgeWords(sun.closest)}, ${whenWords(sun.closest, times)}`]];
}

const crossingParts = (
  word: string,
  { from, to, tPlus, closest }: SweepCrossing,
  howClose: string | null,
  times: Times,
): string[] => [
  `${word}  T-0 ${times.clock.span({ from, to })}`,
  tPlusSpansText(tPlus, times.isRough),
  ...(howClose === null ? [] : [`closest ${howClose}, ${whenWords(closest, times)}`]),
];

/** Ends of neighbouring spans are told to a tenth of a second, each for itself. */
const SAME_END_MS = 150;

export const isBeside = ({ from, to }: SweepCrossing, others: readonly SweepCrossing[]): boolean =>
  others.some(
    (other) =>
      Math.abs(other.to.getTime() - from.getTime()) < SAME_END_MS ||
      Math.abs(other.from.getTime() - to.getTime()) < SAME_END_MS,
  );

export const whenWords = ({ at, tPlusS }: ClosestApproach, { clock, isRough }: Times): string =>
  `T-0 ${clock.at(at)} ${tPlusText(tPlusS, isRough)}`;

/** Rounded towards the sun: no approach reads as farther than it is. */
const floorTo = (value: number, digits: number): number => Math.floor(value * 10 ** digits) / 10 ** digits;

export function offAxisWords(
  { offAxisDeg }: Pick<ClosestApproach, "offAxisDeg">,
  { isRough }: Pick<Times, "isRough">,
): string {
  const digits = isRough ? 1 : 2;
  return `${degreesText(floorTo(offAxisDeg, digits), digits)}° off the axis`;
}

export function edgeWords({ fromEdgeDeg }: Pick<ClosestApproach, "fromEdgeDeg">): string {
  const edge = floorTo(fromEdgeDeg, 1);
  return `${degreesText(Math.abs(edge))}° ${edge < 0 ? "inside" : "outside"} the edge`;
}

/** Parts side by side as far as they go, then on lines of their own, set in deeper. */
function laidOut([first = "", ...parts]: readonly string[], width: number): string {
  const lines: string[] = [];
  let line = `  ${first}`;
  for (const part of parts) {
    const longer = `${line}  ${part}`;
    if ([...longer].length <= width) line = longer;
    else {
      lines.push(line);
      line = `    ${part}`;
    }
  }
  return [...lines, line].map((text) => folded(text, width, "      ")).join("\n");
}
