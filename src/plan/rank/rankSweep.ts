/** The sun along a tracker's sweep for the T-0s of a ranking: its frames are made once, its sun window by window. */

import { MS_PER_HOUR } from "../../base/units.ts";
import type { Site, Window } from "../../site/types.ts";
import type { SunTrack } from "../../sky/sunTrack.ts";
import type { SiteAscent } from "../../view/siteAscent.ts";
import type { CameraView } from "../cameraView.ts";
import type { CameraHides } from "../hiddenSun.ts";
import type { FlareRule } from "../sunRisk.ts";
import { type SweepSpans, sweepSpans } from "../sweep/sweepRisk.ts";
import {
  makeTracker,
  type SweepRoom,
  sweepRoomOf,
  type Tracker,
  type TrackingCamera,
  trackerFrames,
} from "../sweep/tracker.ts";

export interface RankSweep {
  /** T-0s of a window with the sun in or near the frame somewhere along the sweep. The track reaches to the end of the last sweep. */
  spansOf(window: Window, track: SunTrack): SweepSpans;
  /** Whether that is so for one T-0. */
  meetsSunAt(t0Ms: number): boolean;
}

/** T-0s about one that is asked for alone, for which a tracker is made ready. */
const AROUND_MS = MS_PER_HOUR;

interface Ready {
  readonly fromMs: number;
  readonly toMs: number;
  readonly tracker: Tracker;
}

export function rankSweepOf(
  site: Site,
  ascent: SiteAscent,
  camera: TrackingCamera,
  view: CameraView,
  rule: FlareRule,
  hides: CameraHides,
): RankSweep {
  const frames = trackerFrames(site, ascent, camera, view.place);
  let ready: Ready | null = null;
  const makeReady = (room: SweepRoom): Ready => {
    const [fromMs, toMs] = [room.window.opens.getTime(), room.window.closes.getTime()];
    ready = { fromMs, toMs, tracker: makeTracker(room, camera, view, frames, rule, hides) };
    return ready;
  };
  return {
    // Made anew for every window: one that another left behind has its sun at other knots, and other last digits.
    spansOf: (window, track) => {
      const { fromMs, toMs, tracker } = makeReady({
        site,
        window,
        ascent,
        track,
        fromS: 0,
        toS: ascent.path.toS,
      });
      return sweepSpans(tracker, fromMs, toMs);
    },
    meetsSunAt: (t0Ms) => {
      if (ready === null || t0Ms < ready.fromMs || t0Ms > ready.toMs) {
        const window = { name: null, opens: new Date(t0Ms - AROUND_MS), closes: new Date(t0Ms + AROUND_MS) };
        ready = makeReady(sweepRoomOf(site, window, ascent));
      }
      return ready.tracker.flare.signAt(t0Ms) < 0;
    },
  };
}
