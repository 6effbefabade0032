/** What a setting renders as the mid-tone. */

import { midToneLuminance } from "../exposure/exposureValue.ts";
import { exactStop } from "../exposure/scales.ts";
import type { Camera } from "../site/types.ts";
import { lossStops } from "./choices.ts";
import type { Setting } from "./setting.ts";
import { exactTimeS } from "./settingWords.ts";

/** log2 of that luminance (cd/m2); the camera must have a medium, as one with a setting has. */
export const midToneLog2Of = (camera: Camera, setting: Setting): number =>
  Math.log2(
    midToneLuminance({
      stop: exactStop(setting.stop, camera.lens.stops),
      exposureS: exactTimeS(setting),
      speedIso: camera.medium!.speedIso,
      lossStops: lossStops(camera, setting.filterDensity),
    }),
  );
