/** What the page's script is given: the site as resolved, and what only the planner knows. Read back by `pageDataOf`. */

import type { TimeSpan } from "../../plan/clock.ts";
import { makeClock } from "../../plan/clock.ts";
import type { ChartSun } from "../../plan/live/chartPlan.ts";
import type { Setting, WindowPlan } from "../../plan/planTypes.ts";
import { midToneLog2Of } from "../../plan/settingMidTone.ts";
import { ONE_FOR_ALL } from "../../plan/settingWords.ts";
import { isBlocking } from "../../plan/sightNotes.ts";
import type { SweepSun } from "../../plan/sweep/sweepTypes.ts";
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
  /** What hides the vehicle from it; null when nothing does. */
  readonly blockedBy: string | null;
  readonly sun: ChartSun;
  /** Of a tracker with an ascent to follow. */
  readonly sweepSun: SweepSun | null;
}

export interface PageData {
  readonly site: Site;
  readonly window: Window;
  readonly skies: readonly Sky[];
  /** Spacing of the charts' T-0s. */
  readonly stepS: number;
  readonly cameras: readonly PageCamera[];
}

/** Names of what a setting can be chosen for: each sky, then all. */
export const settingTargets = (skyNames: readonly string[]): readonly string[] =>
  skyNames.length > 1 ? [...skyNames, ONE_FOR_ALL] : skyNames;

/** "settings for clear", "settings one for all". */
export const targetWords = (target: string): string =>
  `settings ${target === ONE_FOR_ALL ? "" : "for "}${target}`;

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
    // The page reads no table again.
    site: { ...site, tables: [] },
    window,
    skies,
    stepS: plan.stepS,
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
      blockedBy: camera.inTheWay.find(isBlocking)?.by ?? null,
      sun: spansOf(camera.sun),
      sweepSun: camera.sweep?.sun ?? null,
    })),
  };
}

/** As text that can stand in a script element: no tag can end it. */
export const pageDataText = (data: PageData): string =>
  JSON.stringify(data)
    .replaceAll("<", "\\u003c")
    .replaceAll("\u2028", "\\u2028")
    .replaceAll("\u2029", "\\u2029");

const spansOf = ({ inFrame, nearFrame, hidden }: ChartSun): ChartSun => {
  const plain = (spans: readonly TimeSpan[]): TimeSpan[] => spans.map(({ from, to }) => ({ from, to }));
  return { inFrame: plain(inFrame), nearFrame: plain(nearFrame), hidden: plain(hidden) };
};

/** The inverse of `pageDataText`. */
export const pageDataOf = (text: string): PageData => datesRevived(JSON.parse(text)) as PageData;

/** Keys whose values are instants wherever they stand; in a site only windows have them. */
const INSTANTS = new Set(["opens", "closes", "from", "to", "at"]);

function datesRevived(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(datesRevived);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      INSTANTS.has(key) && typeof one === "string" ? new Date(one) : datesRevived(one),
    ]),
  );
}
