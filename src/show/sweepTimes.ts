/** Times of a sweep: T-0 to the second, as the sun crosses a long lens in a few of them, and T+ to a tenth. */

import { MS_PER_MINUTE, MS_PER_SECOND } from "../base/units.ts";
import { makeClock, type Rounding, type TimeSpan } from "../plan/clock.ts";
import type { TPlusSpan } from "../plan/sweep/sweepTypes.ts";

export interface SweepClock {
  /** "18:42:10", with day and offset where the window's other times carry them. */
  at(at: Date, rounding?: Rounding): string;
  /** "18:42:10-18:57:01", rounded outward. */
  span(span: TimeSpan): string;
  /** The same rounded inward; null when less than a second is left. */
  spanInside(span: TimeSpan): string | null;
}

/** So that 31.2 stays 31.2 when it comes as 31.200000000000003. */
const SLACK = 1e-6;
const ROUND: Readonly<Record<Rounding, (value: number) => number>> = {
  nearest: Math.round,
  before: (value) => Math.floor(value + SLACK),
  after: (value) => Math.ceil(value - SLACK),
};

/** A clock for the T-0s between `from` and `to`. */
export function makeSecondsClock(zone: string, from: Date, to: Date): SweepClock {
  const clock = makeClock(zone, from, to);
  const at = (time: Date, rounding: Rounding = "nearest"): string => {
    const ms = ROUND[rounding](time.getTime() / MS_PER_SECOND) * MS_PER_SECOND;
    const minuteMs = Math.floor(ms / MS_PER_MINUTE) * MS_PER_MINUTE;
    const seconds = String((ms - minuteMs) / MS_PER_SECOND).padStart(2, "0");
    return clock.at(new Date(minuteMs), "before").replace(/\d\d:\d\d/, `$&:${seconds}`);
  };
  return {
    at,
    span: ({ from: start, to: end }) => `${at(start, "before")}-${at(end, "after")}`,
    spanInside: ({ from: start, to: end }) => {
      const isEmpty = Math.ceil(start.getTime() / MS_PER_SECOND) >= Math.floor(end.getTime() / MS_PER_SECOND);
      return isEmpty ? null : `${at(start, "after")}-${at(end, "before")}`;
    },
  };
}

/** Tenths of a second. */
const TENTHS = 10;

/** To a tenth, or another part of a second. */
const roundedS = (tPlusS: number, rounding: Rounding, perS = TENTHS): number =>
  ROUND[rounding](tPlusS * perS) / perS;

/** "T+33.8 s", or "T+34 s" where no tenth can be defended. */
export const tPlusText = (tPlusS: number, isRough = false): string =>
  `T+${isRough ? roundedS(tPlusS, "nearest", 1).toFixed(0) : roundedS(tPlusS, "nearest").toFixed(1)} s`;

/** "T+62", "T+62.5": without a unit, and without a tenth that is none. */
export const tPlusName = (tPlusS: number, rounding: Rounding = "nearest"): string =>
  `T+${roundedS(tPlusS, rounding)}`;

/** "T+31.2-36.4 s", "T+31.2-36.4, 80.0-81.5 s": rounded outward, to whole seconds where no tenth can be defended. */
export function tPlusSpansText(spans: readonly TPlusSpan[], isRough = false): string {
  const end = (tPlusS: number, rounding: Rounding): string =>
    isRough ? roundedS(tPlusS, rounding, 1).toFixed(0) : roundedS(tPlusS, rounding).toFixed(1);
  return `T+${spans.map(({ fromS, toS }) => `${end(fromS, "before")}-${end(toS, "after")}`).join(", ")} s`;
}
