/** What a report is made from, and the pieces its static page shows. */

import type { Clock } from "../../plan/clock.ts";
import { makeClock } from "../../plan/clock.ts";
import type { Instant } from "../../plan/instants.ts";
import { type LiveView, liveView } from "../../plan/live/liveView.ts";
import { type LiveWindow, liveWindowOf } from "../../plan/live/liveWindow.ts";
import type { WindowPlan } from "../../plan/planTypes.ts";
import { planWindow } from "../../plan/planWindow.ts";
import type { Ranking } from "../../plan/rank/rankTypes.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { type Chosen, settingAt } from "./liveRow.ts";
import { type PageData, pageData } from "./pageData.ts";

export interface ReportInput {
  readonly plan: WindowPlan;
  readonly live: LiveWindow;
  readonly data: PageData;
  readonly clock: Clock;
  /** Null where there is one window to choose from. */
  readonly ranking: Ranking | null;
}

export function reportInput(
  site: Site,
  window: Window,
  skies: readonly Sky[],
  options: { readonly stepS?: number; readonly ranking?: Ranking | null } = {},
): ReportInput {
  const { stepS, ranking = null } = options;
  const plan = planWindow(site, window, { sky: skies, ...(stepS === undefined ? {} : { stepS }) });
  return {
    plan,
    live: liveWindowOf(site, window, skies),
    data: pageData(site, window, skies, plan),
    clock: makeClock(site.zone, window.opens, window.closes),
    ranking,
  };
}

/** What a page shows at first: the middle of the window to the second, the first sky and its settings. */
export function firstChosen({ opens, closes }: Window): Chosen {
  const middleS = Math.round((opens.getTime() + closes.getTime()) / 2000);
  return { ms: middleS * 1000, skyIndex: 0, settingIndex: 0 };
}

export interface ShownT0 {
  readonly instant: Instant;
  /** In the order of the site's cameras. */
  readonly views: readonly LiveView[];
}

/** All cameras at one T-0. */
export function shownT0(live: LiveWindow, data: PageData, chosen: Chosen): ShownT0 {
  const instant = live.scene.instantAt(chosen.ms);
  const views = live.cameras.map((camera, i) =>
    liveView(
      live,
      camera,
      instant,
      chosen.skyIndex,
      settingAt(data.cameras[i]!, chosen)?.midToneLog2 ?? null,
    ),
  );
  return { instant, views };
}
