/** What can hurt someone, said where it matters: access and the model's limits always, the sun when a camera meets it. */

import { stopName } from "../exposure/scales.ts";
import type { CameraPlan } from "./planTypes.ts";

const ALWAYS: readonly string[] = [
  "Pad access, hazard zones and camera placement follow range safety and local rules; this sheet advises, licensed and responsible people decide.",
  "A plan is a model of a mean sky: meter when you can, and set by the meter where the two differ.",
];

export const SUN_CAUTION =
  "Never look at or near the sun through a finder or lens without a filter made for solar viewing in front of it.";

const BURN_CAUTION =
  "The sun's image can burn shutters, film and sensors within seconds, more so behind a long lens.";

const HIDDEN_CAUTION =
  "A sun hidden behind a structure comes out within minutes, and a structure that moves or leans hides nothing: treat such a camera as one with the sun in its frame.";

/** The sun's caution when any camera meets it, the burn's when it enters a frame, and what always stands. */
export const cautionsForRisk = (meetsSun: boolean, entersFrame: boolean): string[] => [
  ...(meetsSun ? [SUN_CAUTION] : []),
  ...(entersFrame ? [BURN_CAUTION] : []),
  ...ALWAYS,
];

/** Cautions of a plan: the sun's first when any camera has it in or near its frame, or hidden there. */
export function cautionsFor(plans: readonly CameraPlan[]): string[] {
  const meetsSun = plans.some(
    ({ sun }) => sun.risk === "in-frame" || sun.risk === "near-frame" || sun.risk === "hidden",
  );
  const worst = worstImage(plans);
  return [
    ...(meetsSun ? [SUN_CAUTION] : []),
    ...(plans.some(({ sun }) => sun.risk === "hidden") ? [HIDDEN_CAUTION] : []),
    ...(worst === null ? [] : [`${BURN_CAUTION}${imageWords(worst)}`]),
    ...ALWAYS,
  ];
}

/** The same in few words for the card of one camera. */
export const cardCautions = (plan: CameraPlan): string[] => shortCautions([plan]);

/** The same in few words for several cameras. */
export function shortCautions(plans: readonly CameraPlan[]): string[] {
  const meetsSun = plans.some(({ sun }) => sun.risk !== "clear" && sun.risk !== "down");
  return [
    ...(meetsSun ? [SUN_CAUTION] : []),
    ...(plans.some(({ sun }) => sun.risk === "hidden") ? [HIDDEN_CAUTION] : []),
    ...(plans.every(({ sunImage }) => sunImage === null) ? [] : [BURN_CAUTION]),
    "Pad access follows range safety and local rules. Meter when you can.",
  ];
}

/** The camera whose gate gets most; null when none has the sun in its frame. */
function worstImage(plans: readonly CameraPlan[]): CameraPlan | null {
  let worst: CameraPlan | null = null;
  for (const plan of plans) {
    if (plan.sunImage === null) continue;
    const most = worst?.sunImage?.irradianceWCm2 ?? -1;
    if (worst === null || (plan.sunImage.irradianceWCm2 ?? 0) > most) worst = plan;
  }
  return worst;
}

function imageWords({ id, sunImage }: CameraPlan): string {
  if (sunImage?.irradianceWCm2 == null) return "";
  const { atStop, irradianceWCm2, diameterMm } = sunImage;
  return ` ${id} at ${stopName(atStop!)}: up to about ${Number(irradianceWCm2.toPrecision(2))} W/cm2 in an image ${Number(diameterMm.toPrecision(2))} mm across, under a high sun and before filters.`;
}
