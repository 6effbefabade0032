/** The settings a camera can be given, and what is missing when there are none. */

import { midToneLuminance } from "../exposure/exposureValue.ts";
import { densityStops, exactShutterS, exactStops, shutterAngleTimeS, timeName } from "../exposure/scales.ts";
import type { SettingChoice } from "../exposure/solver.ts";
import type { Camera, Shutter, Site } from "../site/types.ts";
import type { ImageMotion } from "./motion.ts";

export interface Choices {
  readonly choices: readonly SettingChoice[];
  /** In plain words; empty when everything is there. */
  readonly missing: readonly string[];
  /** Smear at the shortest time when no shutter keeps it under the limit, mm; else null. */
  readonly blurOverLimitMm: number | null;
  /** Names of the shutters left out because they smear more than the limit. */
  readonly leftOut: readonly string[];
}

/** A shutter as it is set and as it is computed with. */
export interface ShutterTime {
  readonly name: string;
  /** Null for a marked time. */
  readonly angleDeg: number | null;
  /** As set, seconds. */
  readonly markedS: number;
  readonly exactS: number;
}

export function shutterTime(shutter: Shutter, rateHz: number | null): ShutterTime | null {
  if (shutter.kind === "time") {
    return {
      name: timeName(shutter.markedS),
      angleDeg: null,
      markedS: shutter.markedS,
      exactS: exactShutterS(shutter.markedS),
    };
  }
  if (rateHz === null) return null;
  const exactS = shutterAngleTimeS(shutter.angleDeg, rateHz);
  return { name: timeName(exactS), angleDeg: shutter.angleDeg, markedS: exactS, exactS };
}

export function choicesFor(camera: Camera, motion: ImageMotion | null): Choices {
  const missing = whatIsMissing(camera);
  if (missing.length > 0) return { choices: [], missing, blurOverLimitMm: null, leftOut: [] };
  const times = camera.shutters
    .map((shutter) => shutterTime(shutter, camera.rateHz))
    .filter((time) => time !== null);
  const { usable, blurOverLimitMm } = sharpEnough(times, motion, camera.medium!.blurMm);
  const middle = (camera.lens.stops.length - 1) / 2;
  const marks = [...camera.lens.stops].sort((a, b) => a - b);
  const exacts = exactStops(marks);
  const choices = marks.flatMap((stop, index) => {
    const exact = exacts[index]!;
    const fromMiddle = Math.abs(index - middle);
    return usable.flatMap((time) =>
      camera.filterDensities.map((density) => choice(camera, { stop, exact, fromMiddle }, time, density)),
    );
  });
  const leftOut = times.filter((time) => !usable.includes(time)).map(({ name }) => name);
  return { choices, missing, blurOverLimitMm, leftOut };
}

/** The times that keep the smear under the limit; when none does, the shortest. */
function sharpEnough(
  times: readonly ShutterTime[],
  motion: ImageMotion | null,
  limitMm: number,
): { usable: readonly ShutterTime[]; blurOverLimitMm: number | null } {
  if (motion === null) return { usable: times, blurOverLimitMm: null };
  const sharp = times.filter((time) => motion.imageMmS * time.exactS <= limitMm);
  if (sharp.length > 0) return { usable: sharp, blurOverLimitMm: null };
  const shortest = times.reduce((a, b) => (b.exactS < a.exactS ? b : a));
  return { usable: [shortest], blurOverLimitMm: motion.imageMmS * shortest.exactS };
}

interface StopMark {
  readonly stop: number;
  readonly exact: number;
  readonly fromMiddle: number;
}

/** A camera's settings in one number: log2 of the luminance it renders as the mid-tone. */
function choice(camera: Camera, mark: StopMark, time: ShutterTime, filterDensity: number): SettingChoice {
  const midTone = midToneLuminance({
    stop: mark.exact,
    exposureS: time.exactS,
    speedIso: camera.medium!.speedIso,
    lossStops: lossStops(camera, filterDensity),
  });
  return {
    stop: mark.stop,
    shutterName: time.name,
    shutterAngleDeg: time.angleDeg,
    shutterS: time.markedS,
    filterDensity,
    midToneLog2: Math.log2(midTone),
    fromMiddle: mark.fromMiddle,
    filters: filterDensity > 0 ? 1 : 0,
  };
}

/** Whether a camera can be given a setting: choices, and a body where one is kept. */
export const canBeSet = (site: Site, camera: Camera, { choices }: Choices): boolean =>
  choices.length > 0 && (site.vehicle !== null || !camera.keep.includes("body"));

/** Everything between the light and the medium, stops. */
export const lossStops = (camera: Camera, filterDensity: number): number =>
  densityStops(filterDensity) + camera.lossStops + camera.lens.lossStops;

/** What a camera lacks for a setting, in plain words; without it there is light and sun risk only. */
export function whatIsMissing(camera: Camera): string[] {
  const missing: string[] = [];
  if (camera.lens.stops.length === 0) missing.push("lens stops");
  if (camera.shutters.length === 0) missing.push("shutter");
  if (camera.medium === null) missing.push("medium");
  if (camera.shutters.some(({ kind }) => kind === "angle") && camera.rateHz === null)
    missing.push("frame rate");
  return missing;
}
