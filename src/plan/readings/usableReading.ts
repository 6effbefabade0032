/** Which readings may correct the model: those that tell of sun and sky where the model of them holds. */

import type { Site } from "../../site/types.ts";
import { daylightInputFor, daylightThrough, isSunGone, LOW_SUN_DEG, skyState } from "../../sky/daylight.ts";
import type { ModelledReading } from "./readingModel.ts";

/** Less shade than this is none. */
const SHADE_SHARE = 0.001;
/** So near the sun the sky is its aureole, which the sky's model leaves out, and a meter flares. */
const AUREOLE_DEG = 15;

/** Why a reading is shown only; null for one that may be used. */
export function whyNotUsed(site: Site, reading: ModelledReading): string | null {
  const { instant, sky, keptShare, fromSunDeg } = reading;
  const { sun } = instant;
  const input = daylightInputFor(sun, instant.sample.distanceAu, site.place.heightM, site.air?.pressureHPa);
  if (isSunGone(input)) return "sun down: twilight and night are other models than the day's";
  if (sun.apparentElevationDeg < LOW_SUN_DEG) {
    return `sun under ${LOW_SUN_DEG}°: there the day's model fades into that of twilight`;
  }
  if (keptShare < 1 - SHADE_SHARE) return "in shade: a matter of where the meter stood";
  if (sky.hasBeam && fromSunDeg !== null && fromSunDeg < AUREOLE_DEG) {
    return `within ${AUREOLE_DEG}° of the sun: its aureole is not modelled`;
  }
  if (
    skyState(sky.sky) === "haze" &&
    sky.upright.groundLx < daylightThrough(input, "overcast").diffuseHorizontalLx
  ) {
    return "haze with so low a sun: the turbidity model is outside its range";
  }
  return reading.light > 0 ? null : "no light in the model";
}
