/** The sun's events on the date on which a window closes. */

import type { Site, Window } from "../site/types.ts";
import { type SunEvents, sunEvents } from "../sky/sunEvents.ts";
import { localDate } from "./clock.ts";

/** Null when the window closes on the date on which it opens; an end at midnight belongs to the day before. */
export function eventsAtClose({ place, zone }: Site, { opens, closes }: Window): SunEvents | null {
  const date = localDate(new Date(closes.getTime() - 1), zone);
  return date === localDate(opens, zone) ? null : sunEvents(place, date, zone);
}
