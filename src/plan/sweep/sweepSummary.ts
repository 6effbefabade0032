/** What a plan and a sweep tell alike of one tracker. */

import { isClipped } from "../../exposure/solver.ts";
import type { Track } from "../../site/types.ts";
import type { Setting } from "../setting.ts";
import type { SettingInput } from "../settingFor.ts";
import type { PreparedSweep } from "./prepareSweep.ts";
import { settingChange } from "./sweepLight.ts";
import type { SweepSummary } from "./sweepTypes.ts";

export const sweepSummary = (
  { tracker, room, sun, slew }: PreparedSweep,
  input: SettingInput | null,
  setting: Setting | null,
): SweepSummary => ({
  follows: followsWords(tracker.camera.track),
  ascent: {
    kind: room.ascent.kind,
    source: room.ascent.source,
    fromS: room.fromS,
    toS: room.toS,
    assumed: room.ascent.assumed,
  },
  sun,
  slew,
  change: input !== null && setting !== null && isClipped(setting.spareStops) ? settingChange(input) : null,
});

/** "nose", "upper half", "30 m above the foot, held 20 % of the frame's height above its middle". */
export function followsWords(track: Track): string {
  const point =
    track.kind === "part"
      ? track.part.replace("-", " ")
      : `point ${Number(track.upM.toFixed(2))} m above the foot`;
  if (track.offsetShare === 0) return point;
  const side = track.offsetShare > 0 ? "above" : "below";
  return `${point}, held ${Math.round(Math.abs(track.offsetShare) * 100)} % of the frame's height ${side} its middle`;
}
