/** A T-0 as people ask for it: an instant, or a time of day in a window. */

import { PadstopError, type Problem, problem } from "../base/problem.ts";
import { MS_PER_DAY } from "../base/units.ts";
import type { Site, Window } from "../site/types.ts";
import { parseInstant, type TimeProblem } from "../site/zoneTime.ts";
import { isoInterval, localDate } from "./clock.ts";

/** "18:25" and not a date and time. */
export const isTimeOfDay = (text: string): boolean => /^\d{1,2}:/.test(text);

/** A date and time, in a window or not. */
export function t0Anywhere(site: Site, text: string): Date {
  const read = parseInstant(text, site.zone);
  if (read.ok) return read.at;
  throw new PadstopError([unreadable(read)]);
}

const unreadable = ({ code, found, accepted, next }: TimeProblem): Problem =>
  problem(code, "--at", { found, accepted, next });

/** "2027-04-18T18:25" or "18:25" on a date of the window; must lie inside it. */
export function t0InWindow(site: Site, window: Window, text: string): Date {
  const candidates = isTimeOfDay(text)
    ? datesOf(site, window).map((date) => `${date}T${text.padStart(5, "0")}`)
    : [text];
  const read = candidates.map((candidate) => parseInstant(candidate, site.zone));
  const inside = read.find((one) => one.ok && one.at >= window.opens && one.at <= window.closes);
  if (inside?.ok) return inside.at;
  const [first] = read;
  const accepted = `a T-0 in the window, ${isoInterval(window, site.zone).replace("/", " to ")}`;
  const refused = first!.ok ? problem("E_RANGE", "--at", { found: text, accepted }) : unreadable(first!);
  throw new PadstopError([refused]);
}

/** The local dates a window touches; half a day at a time, as a date in spring is shorter than a day. */
function datesOf(site: Site, { opens, closes }: Window): string[] {
  const dates = new Set<string>([localDate(closes, site.zone)]);
  for (let ms = opens.getTime(); ms < closes.getTime(); ms += MS_PER_DAY / 2) {
    dates.add(localDate(new Date(ms), site.zone));
  }
  return [...dates].sort();
}
