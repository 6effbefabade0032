/** A page's charts over the window for one sky and one choice of settings. */

import { MS_PER_SECOND } from "../../base/units.ts";
import type { Instant } from "../../plan/instants.ts";
import { type ChartPlan, chartPlanOf } from "../../plan/live/chartPlan.ts";
import type { LiveWindow } from "../../plan/live/liveWindow.ts";
import { type SpareTable, spareTable } from "../../plan/live/windowSpares.ts";
import { instantsOf } from "../../plan/scene.ts";
import { type Chosen, settingAt } from "./liveRow.ts";
import type { PageData } from "./pageData.ts";

export interface WindowChartData {
  readonly plan: ChartPlan;
  readonly spares: SpareTable;
}

/** The margin along the sweep of a tracker at the chart's T-0 nearest to one; null for a fixed camera. */
export function sweepSparesNear(
  { plan, spares }: WindowChartData,
  instants: readonly Instant[],
  ms: number,
): (cameraIndex: number) => number | null {
  let nearest = 0;
  instants.forEach((instant, i) => {
    if (Math.abs(instant.ms - ms) < Math.abs(instants[nearest]!.ms - ms)) nearest = i;
  });
  return (cameraIndex) => (plan.cameras[cameraIndex]!.sweep === null ? null : spares(cameraIndex, nearest));
}

/** More T-0s than this no chart on a screen tells apart; a page that judged thousands would stand still for seconds. */
const MOST_STEPS = 720;

/** The T-0s of the charts: those of the plan, of very many every so many. */
export function chartInstants(
  live: LiveWindow,
  { window, stepS }: Pick<PageData, "window" | "stepS">,
): readonly Instant[] {
  const steps = (window.closes.getTime() - window.opens.getTime()) / (stepS * MS_PER_SECOND);
  const every = Math.max(1, Math.ceil(steps / MOST_STEPS));
  return instantsOf(window, stepS * every, null).map(live.scene.instantAt);
}

export function windowChartData(
  live: LiveWindow,
  data: PageData,
  instants: readonly Instant[],
  chosen: Pick<Chosen, "skyIndex" | "settingIndex">,
): WindowChartData {
  const { site, window, cameras } = data;
  const midTones = cameras.map((camera) => settingAt(camera, chosen)?.midToneLog2 ?? null);
  return {
    plan: chartPlanOf(
      live,
      site,
      window,
      instants,
      chosen.skyIndex,
      cameras.map(({ sun }) => sun),
    ),
    spares: spareTable(live, instants, chosen.skyIndex, midTones),
  };
}
