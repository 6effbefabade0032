/** What the page computes with: made once from what it carries. */

import { makeClock } from "../../plan/clock.ts";
import type { Instant } from "../../plan/instants.ts";
import type { LiveView } from "../../plan/live/liveView.ts";
import { liveWindowOf } from "../../plan/live/liveWindow.ts";
import { chartInstants } from "../../show/report/chartsOver.ts";
import type { Chosen, LiveRow } from "../../show/report/liveRow.ts";
import { type PageData, pageDataOf, settingTargets } from "../../show/report/pageData.ts";
import { skyName } from "../../sky/daylight.ts";
import { byId } from "./elements.ts";

export const data: PageData = pageDataOf(byId("data").textContent ?? "");
export const live = liveWindowOf(data.site, data.window, data.skies);
export const clock = makeClock(data.site.zone, data.window.opens, data.window.closes);
export const skyNames: readonly string[] = data.skies.map(skyName);
export const targets: readonly string[] = settingTargets(skyNames);

const kept: { instants: readonly Instant[] | null } = { instants: null };
/** The T-0s of the charts: hundreds, made when the first chart needs them. */
export const instants = (): readonly Instant[] => {
  kept.instants ??= chartInstants(live, data);
  return kept.instants;
};

/** What the page shows now. */
export interface Shown {
  readonly chosen: Chosen;
  readonly instant: Instant;
  readonly views: readonly LiveView[];
  readonly rows: readonly LiveRow[];
}

/** Drawings over the window change with these alone. */
export const chartKey = (chosen: Pick<Chosen, "skyIndex" | "settingIndex">): string =>
  `${chosen.skyIndex}/${chosen.settingIndex}`;
/** Of a page as it comes. */
export const FIRST_KEY = "0/0";
