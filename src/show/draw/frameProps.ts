/** What a picture is drawn from. */

import type { Clock } from "../../plan/clock.ts";
import type { FrameLayout } from "../../plan/picture/frameLayout.ts";
import type { FrameTones } from "../../plan/picture/frameTones.ts";
import type { SunTrackPicture } from "../../plan/picture/sunTrackPicture.ts";
import type { FramePaper } from "./framePaper.ts";
import type { Range } from "./tone.ts";

/** Where tones come from: a setting, or, without one, the body's own place. */
export interface PictureExposure {
  /** log2 of the luminance that is rendered as the mid-tone, cd/m2. */
  readonly midToneLog2: number;
  readonly range: Range;
}

export interface FramePictureProps {
  readonly layout: FrameLayout;
  readonly track: SunTrackPicture;
  readonly tones: FrameTones;
  readonly exposure: PictureExposure;
  readonly clock: Clock;
  /** Smallest angle from the sun to the frame's edge, degrees. */
  readonly fromEdgeDeg: number;
}

export type PaperProps = FramePictureProps & { readonly paper: FramePaper };
