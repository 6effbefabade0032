/** The same window on a run of days: wall time of the zone, moved a little each day when the target's orbit does so. */

import { PadstopError, type ProblemCode, problem } from "../base/problem.ts";
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE, MS_PER_SECOND } from "../base/units.ts";
import { shortText } from "./sourcePlaces.ts";
import type { Window } from "./types.ts";
import { parseInterval, utcOffsetMinutes } from "./zoneTime.ts";

/** Longest run of days. */
export const MAX_RUN_DAYS = 1100;
const DAY_SHIFT_LIMIT_MS = 12 * MS_PER_HOUR;

export interface DailyRun {
  /** First date, "2027-04-18". */
  readonly from: string;
  readonly days: number;
  /** "17:10/19:40" or "17:10/PT2H30M": wall time of the zone, or UTC or another offset when the times carry it. */
  readonly daily: string;
  /** Later (or earlier, below 0) each day, milliseconds. */
  readonly shiftMs: number;
}

/** A day whose window has no instant, or two: told, never left out silently. */
export interface SkippedDay {
  readonly date: string;
  readonly code: ProblemCode;
  readonly found: string;
  readonly accepted: string;
  /** What to write instead; null when nothing helps. */
  readonly next: string | null;
}

/** The zone's clocks change between the windows of two dates that follow each other. */
export interface ClockChange {
  /** First date with the new offset. */
  readonly date: string;
  readonly fromOffsetMinutes: number;
  readonly toOffsetMinutes: number;
}

export interface DailyWindows {
  readonly windows: readonly Window[];
  readonly skipped: readonly SkippedDay[];
  readonly clockChanges: readonly ClockChange[];
}

const TIME = String.raw`(\d{1,2}):(\d{2})(?::(\d{2}))?(Z|[+-]\d{2}:?\d{2})?`;
const DAILY = new RegExp(`^${TIME}/(?:${TIME}|(P[0-9A-Z.,]+))$`, "i");
const DAILY_ACCEPTED =
  "times of day such as 17:10/19:40 or 17:10/PT2H30M; with an offset at both ends or at the first";
const DATE_ACCEPTED = "a date such as 2027-04-18, years 1900 to 2100";

/** Windows of a run of days. Throws PadstopError for a run that cannot be read, or of which no day has a window. */
export function dailyWindows(run: DailyRun, zone: string): DailyWindows {
  const daily = readDaily(run.daily);
  const firstMs = dateMs(run.from);
  if (!(Number.isInteger(run.days) && run.days >= 1 && run.days <= MAX_RUN_DAYS)) {
    throw refusal("E_RANGE", "--days", String(run.days), `a whole number of days, 1 to ${MAX_RUN_DAYS}`);
  }
  const windows: Window[] = [];
  const skipped: SkippedDay[] = [];
  const changes: ClockChange[] = [];
  let offsetBefore: number | null = null;
  for (let day = 0; day < run.days; day++) {
    const text = intervalText(daily, firstMs + day * MS_PER_DAY, day * run.shiftMs);
    // The date on which it opens: with a shift that may be another than the run's.
    const date = text.slice(0, 10);
    const read = parseInterval(text, zone);
    if (!read.ok) {
      skipped.push({ date, code: read.code, found: read.found, accepted: read.accepted, next: read.next });
      continue;
    }
    windows.push({ name: null, opens: read.opens, closes: read.closes });
    const offset = utcOffsetMinutes(read.opens, zone);
    if (offsetBefore !== null && offset !== offsetBefore && !daily.hasOffset) {
      changes.push({ date, fromOffsetMinutes: offsetBefore, toOffsetMinutes: offset });
    }
    offsetBefore = offset;
  }
  const [first] = skipped;
  if (windows.length === 0) {
    throw refusal(first!.code, "--daily", first!.found, first!.accepted, first!.next);
  }
  return { windows, skipped, clockChanges: changes };
}

const refusal = (
  code: ProblemCode,
  key: string,
  found: string,
  accepted: string,
  next: string | null = null,
): PadstopError =>
  new PadstopError([problem(code, key, { found: shortText(found) || "nothing", accepted, next })]);

interface Daily {
  /** From midnight. */
  readonly opensMs: number;
  readonly opensOffset: string;
  /** Null when the end is a duration. */
  readonly closesMs: number | null;
  readonly closesOffset: string;
  readonly duration: string;
  readonly hasOffset: boolean;
}

function readDaily(text: string): Daily {
  const match = DAILY.exec(text.trim());
  const [opensMs, closesMs] = [timeOfDayMs(match, 1), timeOfDayMs(match, 5)];
  if (match === null || opensMs === null || (closesMs === null && match[9] === undefined)) {
    throw refusal("E_TIME", "--daily", text, DAILY_ACCEPTED);
  }
  const opensOffset = match[4] ?? "";
  // An end that follows UTC behind a beginning that follows the clocks would change its length with them.
  if (opensOffset === "" && match[8] !== undefined) throw refusal("E_TIME", "--daily", text, DAILY_ACCEPTED);
  return {
    opensMs,
    opensOffset,
    closesMs,
    closesOffset: match[8] ?? opensOffset,
    duration: match[9] ?? "",
    hasOffset: opensOffset !== "",
  };
}

/** Hours, minutes and seconds of three groups of a match; null when they are missing or no time of day. */
function timeOfDayMs(match: RegExpExecArray | null, group: number): number | null {
  if (match?.[group] === undefined) return null;
  const [hours = 0, minutes = 0, seconds = 0] = [0, 1, 2].map((i) => Number(match[group + i] ?? 0));
  if (hours > 23 || minutes > 59 || seconds > 59) return null;
  return hours * MS_PER_HOUR + minutes * MS_PER_MINUTE + seconds * MS_PER_SECOND;
}

function dateMs(text: string): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00Z`) : Number.NaN;
  const isReal = !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(text);
  const year = Number(text.slice(0, 4));
  if (!isReal || year < 1900 || year > 2100) throw refusal("E_TIME", "--from", text, DATE_ACCEPTED);
  return ms;
}

/** ISO 8601 interval of one day; an end that is not after its start is on the next date. */
function intervalText(daily: Daily, midnightMs: number, shiftMs: number): string {
  const wall = (ms: number): string => new Date(midnightMs + ms + shiftMs).toISOString().slice(0, 19);
  const opens = `${wall(daily.opensMs)}${daily.opensOffset}`;
  if (daily.closesMs === null) return `${opens}/${daily.duration}`;
  // Two offsets: what is later is told by UTC, not by the digits.
  const behindMs =
    daily.opensMs - offsetMs(daily.opensOffset) - (daily.closesMs - offsetMs(daily.closesOffset));
  const daysMs = (Math.floor(behindMs / MS_PER_DAY) + 1) * MS_PER_DAY;
  return `${opens}/${wall(daily.closesMs + daysMs)}${daily.closesOffset}`;
}

/** "+03:00", "-0330", "Z" or nothing, in milliseconds ahead of UTC. */
function offsetMs(offset: string): number {
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(offset) ?? [];
  const ms = Number(hours ?? 0) * MS_PER_HOUR + Number(minutes ?? 0) * MS_PER_MINUTE;
  return sign === "-" ? -ms : ms;
}

const SHIFT = /^([+-]?)(?:PT?)?(?:(\d+)h)?(?:(\d+)m(?:in)?)?(?:(\d+(?:\.\d+)?)s)?$/i;

/** "-23m50s", "+4m", "1h30m", "-PT23M50S" in milliseconds. Throws PadstopError for anything else. */
export function parseShift(text: string): number {
  const match = SHIFT.exec(text.trim());
  const [, sign, hours, minutes, seconds] = match ?? [];
  const hasPart = hours !== undefined || minutes !== undefined || seconds !== undefined;
  const ms =
    Number(hours ?? 0) * MS_PER_HOUR +
    Number(minutes ?? 0) * MS_PER_MINUTE +
    Number(seconds ?? 0) * MS_PER_SECOND;
  if (!hasPart || ms > DAY_SHIFT_LIMIT_MS) {
    throw refusal("E_OPTION", "--shift", text, "a duration such as -23m50s or +4m, up to 12h");
  }
  return sign === "-" ? -ms : ms;
}
