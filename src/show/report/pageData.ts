/** What the page's script is given: the site as resolved, and what only the planner knows. Read back by `pageDataOf`. */

import { makeClock } from "../../plan/clock.ts";
import type { Setting, WindowPlan } from "../../plan/planTypes.ts";
import { midToneLog2Of } from "../../plan/settingMidTone.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { PLAIN } from "../paint.ts";
import { riskTimes, riskWords, settingName } from "../settingText.ts";

/** A setting by what it renders as the mid-tone, and in words. */
export interface PageSetting {
  readonly midToneLog2: number;
  readonly words: string;
}

export interface PageCamera {
  readonly id: string;
  /** One for each sky and, with several, one for all of them; null where none can be given. */
  readonly settings: readonly (PageSetting | null)[];
  /** Over the whole window. */
  readonly risk: WindowPlan["cameras"][number]["sun"]["risk"];
  readonly riskWords: string;
}

export interface PageData {
  readonly site: Site;
  readonly window: Window;
  readonly skies: readonly Sky[];
  readonly cameras: readonly PageCamera[];
}

/** Names of what a setting can be chosen for: each sky, then all. */
export const settingTargets = (skyNames: readonly string[]): readonly string[] =>
  skyNames.length > 1 ? [...skyNames, "all skies"] : skyNames;

/** The settings of a camera in the order of `settingTargets`. */
export const settingsOf = ({
  bySky,
  setting,
}: Pick<WindowPlan["cameras"][number], "bySky" | "setting">): readonly (Setting | null)[] => {
  const each = bySky.map((one) => one.setting);
  return bySky.length > 1 ? [...each, setting] : each;
};

export function pageData(site: Site, window: Window, skies: readonly Sky[], plan: WindowPlan): PageData {
  const clock = makeClock(site.zone, window.opens, window.closes);
  return {
    site,
    window,
    skies,
    cameras: plan.cameras.map((camera, i) => ({
      id: camera.id,
      settings: settingsOf(camera).map(
        (setting) =>
          setting && {
            // A billionth of a stop: a page has hundreds of them.
            midToneLog2: Number(midToneLog2Of(site.cameras[i]!, setting).toFixed(9)),
            words: settingName(setting),
          },
      ),
      risk: camera.sun.risk,
      riskWords: `${riskWords(camera, PLAIN)} ${riskTimes(camera, clock)}`.trimEnd(),
    })),
  };
}

/** As text that can stand in a script element: no tag can end it. */
export const pageDataText = (data: PageData): string =>
  JSON.stringify(data)
    .replaceAll("<", "\\u003c")
    .replaceAll("\u2028", "\\u2028")
    .replaceAll("\u2029", "\\u2029");

/** The inverse: windows are dates again. */
export function pageDataOf(text: string): PageData {
  const data = JSON.parse(text) as PageData;
  const revived = ({ name, opens, closes }: Window): Window => ({
    name,
    opens: new Date(opens),
    closes: new Date(closes),
  });
  return {
    ...data,
    window: revived(data.window),
    site: { ...data.site, windows: data.site.windows.map(revived) },
  };
}
