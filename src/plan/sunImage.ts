/** What the sun's image does at a camera's gate: its size and its irradiance. */

import { CAUTION_SUN_IRRADIANCE_W_M2 } from "../base/constants.ts";
import { exactStop } from "../exposure/scales.ts";
import { sunImageMm, sunImageWCm2 } from "../exposure/sharpness.ts";
import type { Camera } from "../site/types.ts";

export interface SunImage {
  readonly diameterMm: number;
  /** Marked stop it is told for: the setting's or, without a setting, the widest; null when no stops are given. */
  readonly atStop: number | null;
  /** Under a high clear sun, before filters, in a lens that loses nothing: an upper figure. Null without a stop. */
  readonly irradianceWCm2: number | null;
}

export function sunImageOf({ lens }: Camera, setStop: number | null, semidiameterDeg: number): SunImage {
  const atStop = setStop ?? lens.stops[0] ?? null;
  return {
    diameterMm: sunImageMm(lens.focalMm, semidiameterDeg),
    atStop,
    irradianceWCm2:
      atStop === null
        ? null
        : sunImageWCm2(CAUTION_SUN_IRRADIANCE_W_M2, exactStop(atStop, lens.stops), semidiameterDeg),
  };
}
