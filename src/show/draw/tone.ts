/**
 * How light an exposure looks in a picture: from black to white over the medium's usable range, evenly to the eye. Stops are
 * those from the mid-tone.
 */

export interface Range {
  readonly underStops: number;
  readonly overStops: number;
}

/** Lightness (CIE 1976 L*) of the ends of the usable range: what is clipped lies beyond. */
const DARKEST = 6;
const LIGHTEST = 96;

/** Steps so small that no eye tells two neighbours apart. */
const LIGHTNESS_STEP = 1;

/** A grey as "#rrggbb"; black and white beyond the range. */
export function toneOf(stops: number, { underStops, overStops }: Range): string {
  if (stops > overStops) return "#ffffff";
  if (stops < -underStops) return "#000000";
  const share = (stops + underStops) / (underStops + overStops);
  const lightness = DARKEST + share * (LIGHTEST - DARKEST);
  return grey(Math.round(lightness / LIGHTNESS_STEP) * LIGHTNESS_STEP);
}

/** Relative luminance of a lightness (CIE 15, L* of 1976), written in sRGB (IEC 61966-2-1). */
function grey(lightness: number): string {
  const share = lightness > 8 ? ((lightness + 16) / 116) ** 3 : lightness / 903.3;
  const encoded = share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055;
  const byte = Math.round(encoded * 255)
    .toString(16)
    .padStart(2, "0");
  return `#${byte}${byte}${byte}`;
}
