/** The moon in a frame while no part of the sun is up: information, it harms nothing. */

import { horizonAxes } from "../base/earthFixed.ts";
import type { MoonTrack } from "../sky/moonTrack.ts";
import { type CameraSun, inFrameMeasure, seenBy, sunIntervals } from "../view/sunInFrame.ts";
import type { CameraView } from "./cameraView.ts";
import type { TimeSpan } from "./clock.ts";
import type { Instant } from "./instants.ts";
import { toTimeSpan } from "./sunRisk.ts";

/** Exact as the sun's spans are, within the T-0s with the sun gone. The moon moves no faster in the sky than the sun may. */
export function moonInFrame(view: CameraView, track: MoonTrack, instants: readonly Instant[]): TimeSpan[] {
  const axes = horizonAxes(view.place);
  const moonOf = (ms: number): CameraSun => {
    const { fixed, semidiameterDeg } = track.at(ms);
    return seenBy(axes, { fixed, semidiameterDeg, distanceAu: 1 }, view.air);
  };
  return nights(instants).flatMap(({ fromMs, toMs }) =>
    sunIntervals(moonOf, (moon) => inFrameMeasure(view.frame, moon), fromMs, toMs).map(toTimeSpan),
  );
}

/** Stretches of T-0s with the moon counted. */
function nights(instants: readonly Instant[]): { fromMs: number; toMs: number }[] {
  const found: { fromMs: number; toMs: number }[] = [];
  instants.forEach(({ ms, moon }, i) => {
    if (moon === null) return;
    const last = found.at(-1);
    if (last !== undefined && instants[i - 1]?.moon) last.toMs = ms;
    else found.push({ fromMs: ms, toMs: ms });
  });
  return found;
}
