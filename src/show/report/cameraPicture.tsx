/** A camera's picture for a page, from what is known of the camera and one T-0. */

import type { Clock } from "../../plan/clock.ts";
import type { Instant } from "../../plan/instants.ts";
import type { LiveView } from "../../plan/live/liveView.ts";
import type { LiveCamera, LiveWindow } from "../../plan/live/liveWindow.ts";
import { type FrameLayout, frameLayoutOf } from "../../plan/picture/frameLayout.ts";
import { type FrameTones, frameTones } from "../../plan/picture/frameTones.ts";
import { type SunTrackPicture, sunTrackPicture } from "../../plan/picture/sunTrackPicture.ts";
import type { PictureExposure } from "../draw/frameProps.ts";
import { FrameSheet } from "../draw/frameSheet.tsx";
import { type Chosen, t0Text } from "./liveRow.ts";

/** What of a picture no T-0 changes. */
export interface StillPicture {
  readonly live: LiveWindow;
  readonly camera: LiveCamera;
  readonly layout: FrameLayout;
  readonly track: SunTrackPicture;
  readonly clock: Clock;
}

export function stillPicture(live: LiveWindow, camera: LiveCamera, clock: Clock): StillPicture {
  const layout = frameLayoutOf(live, camera);
  return { live, camera, layout, track: sunTrackPicture(live, camera, layout.reach), clock };
}

interface CameraPictureProps {
  readonly still: StillPicture;
  readonly instant: Instant;
  readonly view: LiveView;
  readonly chosen: Chosen;
  /** log2 of what the setting renders as the mid-tone; null without a setting. */
  readonly midToneLog2: number | null;
  /** Lines above the picture of a file of its own. */
  readonly head?: readonly string[];
}

export function CameraPicture({ still, instant, view, chosen, midToneLog2, head }: CameraPictureProps) {
  const { live, camera, layout, track, clock } = still;
  const tones = frameTones(live, camera, layout, instant, chosen.skyIndex);
  const { id, keep } = camera.view.camera;
  return (
    <FrameSheet
      title={`What ${id} sees at T-0 ${t0Text(chosen.ms, clock)}: ${view.light} light, sun ${view.sun.word}`}
      layout={layout}
      track={track}
      tones={tones}
      exposure={exposureOf(camera, tones, midToneLog2)}
      clock={clock}
      fromEdgeDeg={view.sun.fromEdgeDeg}
      readings={view.exposure?.readings ?? null}
      keep={keep}
      {...(head === undefined ? {} : { head })}
    />
  );
}

/** Range of a picture without a medium, stops: enough to show it. */
const SHOWN_RANGE = { underStops: 3, overStops: 4 } as const;
/** Without a setting the brightest of the body, or the sky, stands so far over the mid-tone, stops. */
const PLACED_STOPS = 2;

function exposureOf(camera: LiveCamera, tones: FrameTones, midToneLog2: number | null): PictureExposure {
  const range = camera.view.camera.medium ?? SHOWN_RANGE;
  if (midToneLog2 !== null) return { midToneLog2, range };
  const placed = tones.body.length > 0 ? tones.body.map(({ luminanceCdM2 }) => luminanceCdM2) : tones.skyCdM2;
  const brightest = Math.max(LEAST_CD_M2, ...placed);
  return { midToneLog2: Math.log2(brightest) - PLACED_STOPS, range };
}

const LEAST_CD_M2 = 1e-6;
