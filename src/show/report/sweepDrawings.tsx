/** A tracker's two drawings: its map of T-0 and T+, and its way over the sky. */

import type { LiveSweep } from "../../plan/live/liveWindow.ts";
import type { SweepMoment, SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { sweepMapFrom } from "../../plan/sweep/sweepMap.ts";
import type { SweepSun } from "../../plan/sweep/sweepTypes.ts";
import { SweepMapDrawing } from "../draw/sweepMapDrawing.tsx";
import { drawnMapSize } from "../draw/sweepMapPlan.ts";
import { SweepPathDrawing } from "../draw/sweepPathDrawing.tsx";
import { SweepPathLive } from "../draw/sweepPathLive.tsx";

export function SweepMapOf({
  sweep,
  sun,
  zone,
  skyIndex,
}: {
  readonly sweep: LiveSweep;
  readonly sun: SweepSun;
  readonly zone: string;
  readonly skyIndex: number;
}) {
  const { columns, rowS } = drawnMapSize(sweep.room);
  const map = sweepMapFrom(sweep, columns, rowS, skyIndex);
  return (
    <SweepMapDrawing map={map} sun={sun} zone={zone} isRough={sweep.room.ascent.kind === "parameters"} />
  );
}

export function SweepPathOf({
  path,
  moment,
  zone,
  index,
}: {
  readonly path: SweepPath;
  /** Null: the part that follows the T-0 is drawn later. */
  readonly moment: SweepMoment | null;
  readonly zone: string;
  readonly index: number;
}) {
  return (
    <SweepPathDrawing path={path} zone={zone}>
      <g data-sweep-live={index}>
        {moment !== null && <SweepPathLive path={path} moment={moment} zone={zone} />}
      </g>
    </SweepPathDrawing>
  );
}
