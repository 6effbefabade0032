/** Lines of the sheet for what the sun's table does not hold: the Earth's shadow and the moon, and shadows on the body. */

import type { Clock } from "../plan/clock.ts";
import type { SunInstant, WindowPlan } from "../plan/planTypes.ts";
import type { ShadeSpan } from "../plan/shadeSpans.ts";
import { azimuthText, degreesText } from "./numbers.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { folded } from "./textTable.ts";

/** For the T-0s of the sun's table; none while the sun is up. */
export function nightLines(instants: readonly SunInstant[], clock: Clock): string[] {
  const down = instants.filter(({ apparentElevationDeg }) => apparentElevationDeg <= 0);
  if (down.length === 0) return [];
  const shadow = joined(
    down.map(({ at, earthShadowKm }) => ({ text: kmText(earthShadowKm), at: clock.at(at) })),
  );
  const moon = joined(
    down.flatMap(({ at, moon: one }) => (one ? [{ text: moonWords(one), at: clock.at(at) }] : [])),
  );
  return [
    `a vehicle straight up meets the first sunlight above ${shadow}; full sun 10 to 20 km higher (from memory)`,
    ...(moon === "" ? [] : [`moon: ${moon}`]),
  ];
}

/** "2.5 km at 20:30, 78 km at 21:00"; words that are always the same have no time. */
function joined(parts: readonly { readonly text: string; readonly at: string }[]): string {
  const [first] = parts;
  if (first === undefined) return "";
  return parts.every(({ text }) => text === first.text)
    ? first.text
    : parts.map(({ text, at }) => `${text} at ${at}`).join(", ");
}

/** No crew waits for a vehicle to light up so high. */
const FARTHEST_KM = 500;

/** Whole kilometres: what the air does to a grazing ray is known no better. */
const kmText = (km: number): string =>
  km > FARTHEST_KM ? `more than ${FARTHEST_KM} km` : `some ${Math.round(km)} km`;

function moonWords({ azimuthDeg, apparentElevationDeg, litShare }: NonNullable<SunInstant["moon"]>): string {
  if (apparentElevationDeg <= 0) return "down";
  return `azimuth ${azimuthText(azimuthDeg, 0)}°, ${degreesText(apparentElevationDeg, 0)}° up, ${Math.round(litShare * 100)} % lit`;
}

/** What throws its shadow on the body when, and over which heights. Empty without shadows. */
export function shadeText({ shade }: WindowPlan, clock: Clock, { paint, width }: SheetOptions): string {
  if (shade.length === 0) return "";
  const key =
    "Heights above the vehicle's foot, whatever the camera; what each sees of it stands in its light.";
  const lines = shade.map((span) =>
    folded(`${span.by}${solidityWords(span)} ${clock.span(span)}: ${heightWords(span, clock)}`, width, "  "),
  );
  return [paint.strong("SHADOW ON THE BODY"), folded(key, width, ""), ...lines].join("\n");
}

const solidityWords = ({ solidity }: ShadeSpan): string =>
  solidity === 1 ? "" : ` (stops ${Math.round(solidity * 100)} % of the light)`;

/** "0-41 m at 17:12, 22-58 m at 17:38": one figure where it does not change. */
function heightWords({ heights }: ShadeSpan, clock: Clock): string {
  const texts = heights.map(({ fromM, toM, at }) => ({
    span: spanText(fromM, toM),
    at: clock.at(at),
  }));
  if (texts.length === 0) return "less than can be told";
  const changes = texts.filter(({ span }, i) => span !== texts[i - 1]?.span);
  if (changes.length === 1) return `over ${changes[0]!.span}`;
  return `over ${changes.map(({ span, at }) => `${span} at ${at}`).join(", ")}`;
}

/** Whole metres; tenths for a shadow that is but a strip. */
function spanText(fromM: number, toM: number): string {
  const digits = toM - fromM < 2 ? 1 : 0;
  return `${fromM.toFixed(digits)}-${toM.toFixed(digits)} m`;
}
