/**
 * Wall times of a zone to instants, and days of a zone to their bounds. Zone rules by luxon; the only file of this
 * folder that knows it. A wall time that does not exist or happens twice is never settled silently.
 */

import { DateTime, Duration, IANAZone } from "luxon";
import { type ProblemCode, refuse } from "../base/problem.ts";
import { MS_PER_DAY, MS_PER_MINUTE } from "../base/units.ts";
import { shortText } from "./sourcePlaces.ts";

export interface TimeProblem {
  readonly ok: false;
  readonly code: ProblemCode;
  readonly found: string;
  readonly accepted: string;
  readonly next: string | null;
}
export type InstantResult = { readonly ok: true; readonly at: Date } | TimeProblem;
export type IntervalResult = { readonly ok: true; readonly opens: Date; readonly closes: Date } | TimeProblem;

const INSTANT_ACCEPTED = "an ISO 8601 date and time such as 2027-04-18T17:10, years 1900 to 2100";
const INTERVAL_ACCEPTED = "an ISO 8601 interval such as 2027-04-18T17:10/19:40 or 2027-04-18T17:10/PT2H30M";
/** Longest window of T-0s, wherever one is given. */
export const MAX_WINDOW_DAYS = 7;

const DATE = String.raw`(\d{4})-(\d{2})-(\d{2})`;
const TIME = String.raw`(\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?`;
const OFFSET = String.raw`(Z|[+-]\d{2}(?::?[0-5]\d)?)?`;
const INSTANT = new RegExp(`^${DATE}[T ]${TIME}${OFFSET}$`, "i");
const TIME_ONLY = new RegExp(`^T?${TIME}${OFFSET}$`, "i");

/** True for an IANA time zone that this runtime knows, and UTC. */
export function isZone(zone: string): boolean {
  return /^[A-Za-z][A-Za-z0-9+\-/_]*$/.test(zone) && IANAZone.create(zone).isValid;
}

/** The zones' names, for suggestions. */
export function zoneNames(): readonly string[] {
  return [...Intl.supportedValuesOf("timeZone"), "UTC"];
}

/** The instant of an ISO 8601 date-time: wall time of `zone` unless it carries an offset or Z. */
export function parseInstant(text: string, zone: string): InstantResult {
  const match = INSTANT.exec(text.trim());
  const fields = match ? fieldsOf(match) : null;
  if (!match || fields === null) return timeProblem(text, INSTANT_ACCEPTED);
  const offset = match[8];
  if (offset !== undefined) {
    const offsetMinutes = offsetMinutesOf(offset);
    if (Math.abs(offsetMinutes) > 18 * 60) return timeProblem(text, "an offset of up to 18 hours");
    return { ok: true, at: new Date(utcMs(fields) - offsetMinutes * MS_PER_MINUTE) };
  }
  return wallInstant(text, fields, zone);
}

/** The interval of "start/end", where end may be a time of the same date or a duration, or of "duration/end". */
export function parseInterval(text: string, zone: string): IntervalResult {
  const [startText = "", endText = "", ...more] = text.trim().split("/");
  if (more.length > 0 || startText === "" || endText === "") return timeProblem(text, INTERVAL_ACCEPTED);
  if (/^P/i.test(startText)) {
    const end = parseInstant(endText, zone);
    return end.ok ? withDuration(text, end.at, startText, -1, zone) : end;
  }
  const start = parseInstant(startText, zone);
  if (!start.ok) return start;
  if (/^P/i.test(endText)) return withDuration(text, start.at, endText, 1, zone);
  const end = parseInstant(wholeEnd(startText, endText), zone);
  return end.ok ? checkInterval(text, start.at, end.at) : end;
}

/** The interval when it is in order and at most seven days long. */
export function checkInterval(text: string, opens: Date, closes: Date): IntervalResult {
  const found = shortText(text);
  if (closes.getTime() <= opens.getTime()) {
    const next = "give the date of the end when it is after midnight";
    return { ok: false, code: "E_ORDER", found, accepted: "an end after the start", next };
  }
  if (closes.getTime() - opens.getTime() > MAX_WINDOW_DAYS * MS_PER_DAY) {
    const next = "split it into several windows";
    return { ok: false, code: "E_RANGE", found, accepted: `a window of up to ${MAX_WINDOW_DAYS} days`, next };
  }
  return { ok: true, opens, closes };
}

/** First instant of a local date, and of the date after it. */
export function localDayBounds(date: string, zone: string): { from: Date; to: Date } {
  if (!isZone(zone)) refuse("E_ZONE", "zone", zone, "an IANA time zone or UTC");
  const fields = fieldsOf(new RegExp(`^${DATE}$`).exec(date));
  if (fields === null) return refuse("E_TIME", "date", date, "a date such as 2027-04-18, years 1900 to 2100");
  const nextDay = new Date(utcMs(fields) + MS_PER_DAY);
  const after: Fields = {
    ...fields,
    year: nextDay.getUTCFullYear(),
    month: nextDay.getUTCMonth() + 1,
    day: nextDay.getUTCDate(),
  };
  return { from: firstInstant(fields, zone), to: firstInstant(after, zone) };
}

/** Zones change their offset on a minute. */
const OFFSET_STEP_MS = MS_PER_MINUTE;
/** Offsets asked for before: a lookup in the zone's rules costs more than all else that prints a time. */
const knownOffsets = new Map<string, number>();
const MOST_KNOWN_OFFSETS = 10_000;

/** Minutes the zone's wall time is ahead of UTC at an instant. */
export function utcOffsetMinutes(at: Date, zone: string): number {
  const key = `${zone} ${Math.floor(at.getTime() / OFFSET_STEP_MS)}`;
  const known = knownOffsets.get(key);
  if (known !== undefined) return known;
  if (!isZone(zone)) refuse("E_ZONE", "zone", zone, "an IANA time zone or UTC");
  const offset = IANAZone.create(zone).offset(at.getTime());
  if (knownOffsets.size >= MOST_KNOWN_OFFSETS) knownOffsets.clear();
  knownOffsets.set(key, offset);
  return offset;
}

interface Fields {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  readonly millisecond: number;
}

/** The matched fields when they are a date of the calendar and a time of day. */
function fieldsOf(match: RegExpExecArray | null): Fields | null {
  if (match === null) return null;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match
    .slice(1, 7)
    .map((part) => Number(part ?? 0));
  const millisecond = Math.floor(Number(`0.${match[7] ?? 0}`) * 1000);
  const fields = { year, month, day, hour, minute, second, millisecond };
  const isReal =
    year >= 1900 && year <= 2100 && DateTime.fromObject(fields, { zone: "utc" }).isValid && hour < 24;
  return isReal ? fields : null;
}

function utcMs(f: Fields): number {
  return Date.UTC(f.year, f.month - 1, f.day, f.hour, f.minute, f.second, f.millisecond);
}

function offsetMinutesOf(offset: string): number {
  if (/^z$/i.test(offset)) return 0;
  const digits = offset.slice(1).replace(":", "");
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2) || 0);
  return offset.startsWith("-") ? -minutes : minutes;
}

function timeProblem(text: string, accepted: string): TimeProblem {
  return { ok: false, code: "E_TIME", found: shortText(text), accepted, next: null };
}

/** The instants at which the zone's clocks show these fields: none in a gap, two where the hour is repeated. */
function instantsOf(fields: Fields, zone: string): number[] {
  const made = DateTime.fromObject(fields, { zone });
  const wanted = utcMs(fields);
  // getPossibleOffsets also offers readings of a gap: only those count that read back as the fields asked for.
  const possible = made.getPossibleOffsets().map((candidate) => candidate.toMillis());
  return [...new Set(possible)].filter((ms) => ms + offsetMs(ms, zone) === wanted).sort((a, b) => a - b);
}

const offsetMs = (ms: number, zone: string): number => IANAZone.create(zone).offset(ms) * MS_PER_MINUTE;

function wallInstant(text: string, fields: Fields, zone: string): InstantResult {
  const instants = instantsOf(fields, zone);
  const [first, second] = instants;
  if (first !== undefined && second === undefined) return { ok: true, at: new Date(first) };
  const found = `${shortText(text)} in ${zone}`;
  if (first !== undefined && second !== undefined) {
    const next = `write ${withOffset(first, zone)} or ${withOffset(second, zone)}`;
    return {
      ok: false,
      code: "E_TWICE",
      found,
      accepted: "a wall time that happens once, or one with its offset",
      next,
    };
  }
  const { before, after } = gapReadings(fields, zone);
  const next = `write ${withOffset(before, zone)} or ${withOffset(after, zone)}`;
  return { ok: false, code: "E_GAP", found, accepted: "a wall time that the clocks do not skip", next };
}

/** What a skipped wall time would be with the offset after the gap (reads earlier) and before it (reads later). */
function gapReadings(fields: Fields, zone: string): { before: number; after: number } {
  const wall = utcMs(fields);
  const offsetBefore = offsetMs(wall - MS_PER_DAY, zone);
  const offsetAfter = offsetMs(wall + MS_PER_DAY, zone);
  return { before: wall - offsetAfter, after: wall - offsetBefore };
}

function withOffset(ms: number, zone: string): string {
  const at = DateTime.fromMillis(ms, { zone });
  return at.toFormat(
    at.second === 0 && at.millisecond === 0 ? "yyyy-MM-dd'T'HH:mmZZ" : "yyyy-MM-dd'T'HH:mm:ssZZ",
  );
}

/** "19:40" after "2027-04-18T17:10Z" is on the same date, with the same offset. */
function wholeEnd(start: string, end: string): string {
  if (!TIME_ONLY.test(end)) return end;
  const startOffset = INSTANT.exec(start.trim())?.[8] ?? "";
  const endOffset = TIME_ONLY.exec(end)?.[5] ?? "";
  return `${start.trim().slice(0, 10)}T${end.replace(/^T/i, "")}${endOffset === "" ? startOffset : ""}`;
}

function withDuration(text: string, at: Date, iso: string, sign: 1 | -1, zone: string): IntervalResult {
  const duration = Duration.fromISO(iso.toUpperCase());
  if (!duration.isValid) return timeProblem(text, INTERVAL_ACCEPTED);
  const here = DateTime.fromJSDate(at, { zone });
  const other = sign === 1 ? here.plus(duration) : here.minus(duration);
  if (!other.isValid) return timeProblem(text, INTERVAL_ACCEPTED);
  return sign === 1 ? checkInterval(text, at, other.toJSDate()) : checkInterval(text, other.toJSDate(), at);
}

/** The first instant of a local date; where midnight is skipped, the instant the clocks jump. */
function firstInstant(fields: Fields, zone: string): Date {
  const [first] = instantsOf(fields, zone);
  if (first !== undefined) return new Date(first);
  const wall = utcMs(fields);
  let { before: low, after: high } = gapReadings(fields, zone);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (middle + offsetMs(middle, zone) >= wall) high = middle;
    else low = middle;
  }
  return new Date(high);
}
