/**
 * Rise, set and the twilights of a civil day.
 *
 * Rise and set: the sun's centre 0.8333 degree below the airless horizon (Reda & Andreas 2003, A.2); twilights at
 * 6, 12 and 18 degrees. Real refraction moves rise and set by up to minutes in high latitudes; the height of the
 * place does not lower the horizon here.
 */

import { RISE_SET_ELEVATION_DEG } from "../base/constants.ts";
import { signChanges } from "../base/crossings.ts";
import { horizonAxes } from "../base/earthFixed.ts";
import type { Place } from "../base/place.ts";
import { asinDeg } from "../base/units.ts";
import { dot } from "../base/vector.ts";
import { localDayBounds } from "../site/zoneTime.ts";
import { requirePlace } from "./ephemeris.ts";
import { makeSunTrack, SUN_MAX_RATE_DEG_PER_MS, type SunTrack } from "./sunTrack.ts";

/** Each is the first of its kind between local midnights, or null when it does not happen that day. */
export interface SunEvents {
  readonly sunrise: Date | null;
  readonly sunset: Date | null;
  readonly civilDawn: Date | null;
  readonly civilDusk: Date | null;
  readonly nauticalDawn: Date | null;
  readonly nauticalDusk: Date | null;
  readonly astronomicalDawn: Date | null;
  readonly astronomicalDusk: Date | null;
}

/** Events of `date` (YYYY-MM-DD) in `zone` (IANA) at `place`. Throws PadstopError for a bad date, zone or place. */
export function sunEvents(place: Place, date: string, zone: string): SunEvents {
  requirePlace(place);
  const day = localDayBounds(date, zone);
  const track = makeSunTrack(place, day.from, day.to);
  const [sunrise, sunset] = passages(track, RISE_SET_ELEVATION_DEG);
  const [civilDawn, civilDusk] = passages(track, -6);
  const [nauticalDawn, nauticalDusk] = passages(track, -12);
  const [astronomicalDawn, astronomicalDusk] = passages(track, -18);
  return {
    sunrise,
    sunset,
    civilDawn,
    civilDusk,
    nauticalDawn,
    nauticalDusk,
    astronomicalDawn,
    astronomicalDusk,
  };
}

/** All passages of the airless centre through an elevation over a track, ms, and whether it starts below. */
export function passagesThrough(
  track: SunTrack,
  elevationDeg: number,
): { edges: readonly number[]; startsBelow: boolean } {
  const { up } = horizonAxes(track.place);
  const above = (ms: number): number => asinDeg(dot(up, track.at(ms).fixed)) - elevationDeg;
  const edges = signChanges(above, track.fromMs, track.toMs, SUN_MAX_RATE_DEG_PER_MS);
  return { edges, startsBelow: above(track.fromMs) < 0 };
}

/** First upward and first downward passage of the airless centre through an elevation. */
function passages(track: SunTrack, elevationDeg: number): [Date | null, Date | null] {
  const { edges, startsBelow } = passagesThrough(track, elevationDeg);
  const rises = edges.filter((_, i) => (i % 2 === 0) === startsBelow);
  const sets = edges.filter((_, i) => (i % 2 === 0) !== startsBelow);
  return [toDate(rises[0]), toDate(sets[0])];
}

const toDate = (ms: number | undefined): Date | null => (ms === undefined ? null : new Date(Math.round(ms)));
