/** A setting, a light and a sun risk as the words of a sheet's cells. */

import { stopName } from "../exposure/scales.ts";
import { isClipped } from "../exposure/solver.ts";
import type { Clock } from "../plan/clock.ts";
import type { CameraPlan, LightSample, Setting } from "../plan/planTypes.ts";
import { spareText } from "../plan/stopsText.ts";
import type { SweepCrossing, SweepSun } from "../plan/sweep/sweepTypes.ts";
import { degreesText, percentText } from "./numbers.ts";
import type { Paint } from "./paint.ts";

/** "f/5.6 1/288" and "ND0.9 +1.1 100 %" as the lines of a cell. */
export function settingLines(setting: Setting | null, paint: Paint): string[] {
  if (setting === null) return ["none"];
  const filter = setting.filterDensity > 0 ? `ND${setting.filterDensity} ` : "";
  const margin = `${spareText(setting.spareStops)} ${percentText(setting.holds)}`;
  return [
    `${stopName(setting.stop)} ${shutterText(setting)}`,
    `${filter}${isClipped(setting.spareStops) ? paint.alarm(margin) : margin}`,
  ];
}

/** "1/500", or "120° 1/288" where the shutter is set by its angle. */
export const shutterText = ({ shutterAngleDeg, shutterName }: Setting): string =>
  shutterAngleDeg === null ? shutterName : `${shutterAngleDeg}° ${shutterName}`;

/** "f/5.6 120° 1/288 ND0.9". */
export const settingName = (setting: Setting): string =>
  `${stopName(setting.stop)} ${shutterText(setting)}${setting.filterDensity > 0 ? ` ND${setting.filterDensity}` : ""}`;

/** "front 14.7/15": light, model EV, guide EV. */
export function lightWords(sample: LightSample): string {
  const ev = sample.ev === null ? "-" : sample.ev.toFixed(1);
  return `${sample.light} ${ev}/${sample.tableEv ?? "-"}`;
}

/** "IN FRAME", "near frame", "hidden", "clear 52°" (its smallest angle from the edge), "sun down". */
export function riskWords({ sun }: CameraPlan, paint: Paint): string {
  if (sun.risk === "in-frame") return paint.alarm("IN FRAME");
  if (sun.risk === "near-frame") return paint.warn("near frame");
  if (sun.risk === "hidden") return paint.warn("hidden");
  if (sun.risk === "down" || sun.closest === null) return "sun down";
  return `${sun.risk} ${degreesText(Math.floor(sun.closest.fromEdgeDeg), 0)}°`;
}

/** Clock times of the disc in the frame, of the flare around it, or of the sun hidden there; empty for a camera without a warning. */
export function riskTimes({ sun, sweep }: CameraPlan, clock: Clock): string {
  if (sweep !== null && sun.risk !== "hidden") return crossingTimes(sweep.sun, clock);
  // A hidden sun is told inward: what can be counted on.
  if (sun.risk === "hidden")
    return sun.hidden
      .map((span) => clock.spanInside(span) ?? `${clock.at(span.from)}, under a minute`)
      .join(", ");
  return (sun.risk === "in-frame" ? sun.inFrame : sun.nearFrame).map((span) => clock.span(span)).join(", ");
}

/** "T+31-36 s for T-0 18:42-18:57" of the worse of a tracker's two kinds. */
function crossingTimes({ risk, inFrame, nearFrame }: SweepSun, clock: Clock): string {
  const crossings = risk === "in-frame" ? inFrame : nearFrame;
  return crossings.map((crossing) => crossingText(crossing, clock)).join(", ");
}

/** "T+31-36 s for T-0 18:42-18:57", both rounded outward. */
export function crossingText({ tPlus, ...span }: SweepCrossing, clock: Clock): string {
  const spans = tPlus.map(({ fromS, toS }) => `${Math.floor(fromS)}-${Math.ceil(toS)}`);
  return `T+${spans.join(", ")} s for T-0 ${clock.span(span)}`;
}
