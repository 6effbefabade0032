/** The sun's events on the dates on which a window opens and closes, to the second: more than any real horizon keeps. */

import { MS_PER_SECOND } from "../base/units.ts";
import type { Site, Window } from "../site/types.ts";
import { type SunEvents, sunEvents } from "../sky/sunEvents.ts";
import { localDate } from "./clock.ts";

export interface WindowEvents {
  readonly events: SunEvents;
  /** Null when the window closes on the date on which it opens; an end at midnight belongs to the day before. */
  readonly eventsAtClose: SunEvents | null;
}

export function windowEvents({ place, zone }: Site, { opens, closes }: Window): WindowEvents {
  const opening = localDate(opens, zone);
  const closing = localDate(new Date(closes.getTime() - 1), zone);
  return {
    events: toSeconds(sunEvents(place, opening, zone)),
    eventsAtClose: closing === opening ? null : toSeconds(sunEvents(place, closing, zone)),
  };
}

function toSeconds(events: SunEvents): SunEvents {
  const rounded = Object.entries(events).map(([name, at]: [string, Date | null]) => [
    name,
    at && new Date(Math.round(at.getTime() / MS_PER_SECOND) * MS_PER_SECOND),
  ]);
  return Object.fromEntries(rounded) as SunEvents;
}
