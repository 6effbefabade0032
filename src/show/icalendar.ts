/**
 * The one door to ical-generator: events as an iCalendar file (RFC 5545), lines folded at 75 octets and ended by CR LF.
 *
 * The library takes its clock and chance only where no stamp and no UID are given; here they always are. It leaves out a GEO
 * whose latitude or longitude is 0 and the line end of the last line; both are put right here.
 */

import { ICalCalendar } from "ical-generator";

export interface CalendarEvent {
  /** Of ASCII letters, digits, dots, hyphens and colons: it is written as it is. */
  readonly uid: string;
  readonly stamp: Date;
  /** To the second. */
  readonly start: Date;
  readonly end: Date;
  readonly summary: string;
  /** Lines are kept. */
  readonly description: string;
  readonly location: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** `productName` and `version` name the program in PRODID. */
export function icalendarText(
  events: readonly CalendarEvent[],
  { productName, version }: { readonly productName: string; readonly version: string },
): string {
  const calendar = new ICalCalendar({ prodId: `//${productName}//${productName} ${version}//EN` });
  for (const event of events) {
    calendar.createEvent({
      id: event.uid,
      stamp: event.stamp,
      start: event.start,
      end: event.end,
      summary: printable(event.summary),
      description: printable(event.description),
      location: {
        title: printable(event.location),
        geo: { lat: geoFigure(event.latitudeDeg), lon: geoFigure(event.longitudeDeg) },
      },
    });
  }
  return `${calendar.toString()}\r\n`;
}

/** TEXT holds no control characters but line ends and tabs (RFC 5545, 3.3.11). */
const printable = (text: string): string =>
  text
    .replaceAll(/\r\n?/g, "\n")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the set of the standard.
    .replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, " ");

/** Six decimals (RFC 5545, 3.8.1.6). The library takes 0 for nothing given: one unit of the last figure, 0.11 m, stands for it. */
function geoFigure(angleDeg: number): number {
  const figure = Number(angleDeg.toFixed(6));
  return figure === 0 ? 1e-6 : figure;
}
