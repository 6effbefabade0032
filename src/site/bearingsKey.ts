/** `site.bearings`: true, a declination, or magnetic: then the World Magnetic Model at the site and a date makes them true. */

import * as z from "zod";
import type { Place } from "../base/place.ts";
import { MS_PER_MINUTE } from "../base/units.ts";
import type { Bearings } from "./bearingTypes.ts";
import { fail } from "./fields.ts";
import type { Findings, Origin } from "./findings.ts";
import {
  BLACKOUT_NT,
  CAUTION_NT,
  declinationErrorDeg,
  FIELD_FROM,
  FIELD_TO,
  magneticField,
} from "./magneticField.ts";
import { describe, parseQuantity } from "./quantity.ts";
import type { Window } from "./types.ts";
import { utcOffsetMinutes } from "./zoneTime.ts";

const ACCEPTED =
  "true, magnetic (a date may follow: magnetic 2026-11-03), or the declination in degrees east (-180 to 180)";

export type WrittenBearings =
  | { readonly kind: "turned"; readonly declinationDeg: number }
  /** The date as written, 2026-11-03; null when there is none. */
  | { readonly kind: "magnetic"; readonly date: string | null };

export const bearingsSchema = z
  .unknown()
  .transform((value, sink): WrittenBearings => {
    if (value === true || value === "true") return { kind: "turned", declinationDeg: 0 };
    const [word, date = null] =
      (typeof value === "string" && /^magnetic(?:\s+(\S+))?$/.exec(value.trim())) || [];
    if (word !== undefined) {
      if (date === null || isDate(date)) return { kind: "magnetic", date };
      return fail(sink, value, { code: "E_TIME", found: date, accepted: "a date such as 2026-11-03" });
    }
    const read = parseQuantity(value, "angleDeg", -180, 180);
    return read.ok
      ? { kind: "turned", declinationDeg: read.value }
      : fail(sink, value, { ...read, found: describe(value), accepted: ACCEPTED });
  })
  .meta({
    description: `What the bearings of this file refer to: ${ACCEPTED}`,
    type: ["boolean", "number", "string"],
  });

const isDate = (text: string): boolean => {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  return Number.isFinite(ms) && new Date(ms).toISOString().startsWith(text);
};

/** What bearings need to be made true; `windows` are those that could be read, `hasWindows` whether any are written. */
export interface BearingsPlace {
  readonly place: Place;
  readonly zone: string;
  readonly windows: readonly Window[];
  readonly hasWindows: boolean;
}

export function bearingsOf(
  written: WrittenBearings | undefined,
  around: BearingsPlace,
  origin: Origin,
  findings: Findings,
): Bearings {
  if (written === undefined) return TRUE;
  if (written.kind === "turned") {
    const { declinationDeg } = written;
    return declinationDeg === 0 ? TRUE : { kind: "given", declinationDeg };
  }
  const dated = dateOf(written.date, around, origin, findings);
  return dated === null ? TRUE : magneticBearings(dated, around.place, origin, findings);
}

const TRUE: Bearings = { kind: "true" };

interface Dated {
  readonly at: Date;
  readonly date: string;
  readonly dateFrom: "window" | "file";
}

/** The date beside the word, else that of the first window: nothing here knows today's. */
function dateOf(
  written: string | null,
  { windows, hasWindows, zone }: BearingsPlace,
  origin: Origin,
  findings: Findings,
): Dated | null {
  if (written !== null) return { at: new Date(`${written}T12:00:00Z`), date: written, dateFrom: "file" };
  const opens = windows.map((window) => window.opens.getTime());
  if (opens.length > 0) {
    const at = new Date(Math.min(...opens));
    const local = new Date(at.getTime() + utcOffsetMinutes(at, zone) * MS_PER_MINUTE);
    return { at, date: local.toISOString().slice(0, 10), dateFrom: "window" };
  }
  // A window that cannot be read has its own finding.
  if (!hasWindows) {
    findings.add(origin, ["bearings"], "E_MISSING", {
      found: "magnetic, without a date: the file has no window",
      accepted: "a window, a date, or the declination in degrees east",
      next: "write the date on which the bearings were taken: bearings: magnetic 2026-11-03",
    });
  }
  return null;
}

/** Nearer a magnetic pole the declination is whatever it is; outside its years the model is not to be used. */
function magneticBearings(
  { at, date, dateFrom }: Dated,
  place: Place,
  origin: Origin,
  findings: Findings,
): Bearings {
  const field = magneticField(place, at);
  if (field === null) {
    const of = dateFrom === "window" ? "the first window" : "the file";
    findings.add(origin, ["bearings"], "E_RANGE", {
      found: `magnetic, and the date ${date} of ${of}`,
      accepted: `dates from ${FIELD_FROM.toISOString().slice(0, 10)} to the end of ${FIELD_TO.getUTCFullYear() - 1}, the years of the World Magnetic Model 2025`,
      next: "give the declination as a number of degrees east",
    });
    return TRUE;
  }
  const { declinationDeg, horizontalNT } = field;
  if (horizontalNT < BLACKOUT_NT) {
    findings.add(origin, ["bearings"], "E_RANGE", {
      found: `magnetic, where the horizontal field is ${Math.round(horizontalNT)} nT: a blackout zone of the World Magnetic Model`,
      accepted: `magnetic bearings from ${BLACKOUT_NT} nT on; a compass is of no use here`,
      next: "measure true bearings another way, or give the declination as a number of degrees east",
    });
    return TRUE;
  }
  const errorDeg = declinationErrorDeg(horizontalNT);
  return { kind: "magnetic", declinationDeg, errorDeg, date, dateFrom, isWeak: horizontalNT < CAUTION_NT };
}
