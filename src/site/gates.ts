/** Image areas by name: nominal camera apertures and sensor sizes. A camera whose gate differs gives width and height. */

import type { Gate } from "./types.ts";

/**
 * Width and height in mm. Film: ISO 466 (16 mm), ISO 2906:2002 styles A, B and C (35 mm, 4 perforations; style C is
 * the full aperture, 0.980 x 0.735 in); Super 16 and 65 mm: common practice, sources differ by up to 0.2 mm. Sensors:
 * common sizes of the type, which vary by maker by a few tenths of a millimetre.
 */
const SIZES_MM: Readonly<Record<string, readonly [number, number]>> = {
  "16mm": [10.26, 7.49],
  "super 16": [12.52, 7.41],
  "35mm 4-perf": [24.89, 18.67],
  "35mm 4-perf sound": [22.0, 16.0],
  "35mm 4-perf anamorphic": [22.0, 18.59],
  "65mm 5-perf": [52.63, 23.01],
  "full-frame": [36, 24],
  "aps-c": [23.5, 15.6],
  "four-thirds": [17.3, 13.0],
  "1-inch": [13.2, 8.8],
  "1/2.3-inch": [6.17, 4.55],
  "medium format digital": [43.8, 32.9],
};

/** Every gate that has a name. */
export const GATE_NAMES: readonly string[] = Object.freeze(Object.keys(SIZES_MM));

/** The gate of that name, in any case and spacing; null when there is none. */
export function gateNamed(name: string): Gate | null {
  const wanted = name.trim().toLowerCase().replace(/\s+/g, " ");
  const size = Object.hasOwn(SIZES_MM, wanted) ? SIZES_MM[wanted] : undefined;
  return size === undefined ? null : { name: wanted, widthMm: size[0], heightMm: size[1] };
}
