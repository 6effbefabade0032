/** What can hurt someone, said where it matters: access and the model's limits always, the sun when a camera meets it. */

import { CAUTION_SUN_IRRADIANCE_W_M2 } from "../base/constants.ts";
import { exactStop, stopName } from "../exposure/scales.ts";
import { sunImageMm, sunImageWCm2 } from "../exposure/sharpness.ts";
import type { Camera } from "../site/types.ts";
import type { CameraPlan } from "./planTypes.ts";

const ALWAYS: readonly string[] = [
  "Pad access, hazard zones and camera placement follow range safety and local rules; this sheet advises, licensed and responsible people decide.",
  "A plan is a model of a mean sky: meter when you can, and set by the meter where the two differ.",
];

export const SUN_CAUTION =
  "Never look at or near the sun through a finder or lens without a filter made for solar viewing in front of it.";

const BURN_CAUTION =
  "The sun's image can burn shutters, film and sensors within seconds, more so behind a long lens.";

/** The sun's caution when any camera meets it, the burn's when it enters a frame, and what always stands. */
export const cautionsForRisk = (meetsSun: boolean, entersFrame: boolean): string[] => [
  ...(meetsSun ? [SUN_CAUTION] : []),
  ...(entersFrame ? [BURN_CAUTION] : []),
  ...ALWAYS,
];

/** Cautions of a plan: the sun's first when any camera has it in or near its frame. */
export function cautionsFor(
  cameras: readonly Camera[],
  plans: readonly CameraPlan[],
  semidiameterDeg: number,
): string[] {
  const atRisk = plans.filter(({ sun }) => sun.risk === "in-frame" || sun.risk === "near-frame");
  if (atRisk.length === 0) return [...ALWAYS];
  const inFrame = cameras.filter((_, i) => plans[i]!.sun.risk === "in-frame");
  return [
    SUN_CAUTION,
    ...inFrame.slice(0, 1).flatMap(() => [burnCaution(inFrame, plans, semidiameterDeg)]),
    ...ALWAYS,
  ];
}

/** The worst of the cameras with the sun in the frame: irradiance of its image at the setting's stop, or wide open; for a high sun, whatever the hour. */
function burnCaution(
  cameras: readonly Camera[],
  plans: readonly CameraPlan[],
  semidiameterDeg: number,
): string {
  const worst = cameras
    .map((camera) => {
      const marked = plans.find(({ id }) => id === camera.id)!.setting?.stop ?? camera.lens.stops[0] ?? null;
      const wattsCm2 =
        marked === null
          ? 0
          : sunImageWCm2(CAUTION_SUN_IRRADIANCE_W_M2, exactStop(marked, camera.lens.stops), semidiameterDeg);
      return { camera, marked, wattsCm2 };
    })
    .reduce((a, b) => (b.wattsCm2 > a.wattsCm2 ? b : a));
  const { camera, marked, wattsCm2 } = worst;
  const figure =
    marked === null
      ? ""
      : ` ${camera.id} at ${stopName(marked)}: up to about ${Number(wattsCm2.toPrecision(2))} W/cm2 in an image ${Number(sunImageMm(camera.lens.focalMm, semidiameterDeg).toPrecision(2))} mm across, under a high sun and before filters.`;
  return `${BURN_CAUTION}${figure}`;
}
