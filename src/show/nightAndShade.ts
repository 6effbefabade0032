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
  const shadow = down.map(({ at, earthShadowKm }) => `${kmText(earthShadowKm)} at ${clock.at(at)}`);
  const moons = down.flatMap(({ at, moon }) =>
    moon === null ? [] : [`${moonWords(moon)} at ${clock.at(at)}`],
  );
  return [
    `a vehicle straight up meets the first sunlight above ${shadow.join(", ")}; full sun some 10 to 20 km higher (from memory)`,
    ...(moons.length === 0 ? [] : [`moon: ${moons.join(", ")}`]),
  ];
}

/** Refraction of a grazing ray makes tenths of a kilometre guesswork above the lowest heights. */
const kmText = (km: number): string => (km < 10 ? `${km.toFixed(1)} km` : `${Math.round(km)} km`);

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
    span: `${fromM.toFixed(0)}-${toM.toFixed(0)} m`,
    at: clock.at(at),
  }));
  if (texts.length === 0) return "less than can be told";
  const changes = texts.filter(({ span }, i) => span !== texts[i - 1]?.span);
  if (changes.length === 1) return `over ${changes[0]!.span}`;
  return `over ${changes.map(({ span, at }) => `${span} at ${at}`).join(", ")}`;
}
