/** One camera's picture as a file of its own. */

import { makeClock } from "../../plan/clock.ts";
import { liveWindowOf } from "../../plan/live/liveWindow.ts";
import type { WindowPlan } from "../../plan/planTypes.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { svgFile } from "../markup.ts";
import { windowText } from "../planSheet.ts";
import { CameraPicture, stillPicture } from "./cameraPicture.tsx";
import { chartInstants, sweepSparesNear, windowChartData } from "./chartsOver.ts";
import { liveRow, settingAt } from "./liveRow.ts";
import { nowLine } from "./nowLine.ts";
import { pageData, settingTargets } from "./pageData.ts";
import { firstChosen, shownT0 } from "./reportInput.ts";

/**
 * What the camera sees at a T-0 (null: the middle of the window) under the first sky, at the setting for all the skies. `plan` is
 * that of `site`, which has this camera alone.
 */
export function cameraFile(
  site: Site,
  window: Window,
  skies: readonly Sky[],
  plan: WindowPlan,
  at: Date | null,
): string {
  const clock = makeClock(site.zone, window.opens, window.closes);
  const live = liveWindowOf(site, window, skies);
  const data = pageData(site, window, skies, plan);
  const targets = settingTargets(plan.sky);
  const first = firstChosen(window);
  const chosen = { ...first, ms: at?.getTime() ?? first.ms, settingIndex: targets.length - 1 };
  const { instant, views } = shownT0(live, data, chosen);
  const [camera, view, pageCamera] = [live.cameras[0]!, views[0]!, data.cameras[0]!];
  const instants = chartInstants(live, data);
  const sweepSpareAt =
    camera.sweep === null
      ? () => null
      : sweepSparesNear(windowChartData(live, data, instants, chosen), instants, chosen.ms);
  const row = liveRow(view, pageCamera, 0, chosen, sweepSpareAt(0));
  const target = targets[chosen.settingIndex]!;
  return svgFile(
    <CameraPicture
      still={stillPicture(live, camera, clock)}
      instant={instant}
      view={view}
      chosen={chosen}
      midToneLog2={settingAt(pageCamera, chosen)?.midToneLog2 ?? null}
      head={[
        `${row.id} at ${site.name}`,
        windowText(plan),
        ...nowLine(row, chosen, plan.sky[0]!, target, clock).split(" · "),
      ]}
    />,
  );
}
