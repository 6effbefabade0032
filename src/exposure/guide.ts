/**
 * The table route: daylight categories of the photographic exposure guide (ANSI PH2.7-1973 / 1986), front light,
 * typical scene, EV at ISO 100. One stop less for side light, two for back light; direct-sun rows only.
 */

import type { LightClass } from "../light/lightClass.ts";
import type { SkyState } from "../site/types.ts";

/** clear: full or slightly hazy sun; haze: hazy sun, soft shadows; bright-cloud: cloudy bright; overcast: heavy overcast. */
const FRONT_EV: Readonly<Record<SkyState, number>> = {
  clear: 15,
  haze: 14,
  "bright-cloud": 13,
  overcast: 12,
};
/** Open shade under clear sky. */
const OPEN_SHADE_EV = 12;

const ALLOWANCE: Readonly<Partial<Record<LightClass, number>>> = { front: 0, side: -1, back: -2 };

/** The guide holds from this long after sunrise to this long before sunset. */
export const GUIDE_MARGIN_HOURS = 2;
/** Where the sun neither rises nor sets the guide is used above this elevation (our reading of its two hours). */
export const GUIDE_LOWEST_SUN_DEG = 15;

/** EV at ISO 100 for a sky state and light, or null where the guide has no row. */
export function guideEv(state: SkyState, light: LightClass): number | null {
  if (light === "dusk" || light === "night") return null;
  if (light === "shaded") return OPEN_SHADE_EV;
  if (light === "flat") return FRONT_EV[state];
  return FRONT_EV[state] + (ALLOWANCE[light] ?? 0);
}
