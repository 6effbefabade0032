/** The same window on later days: whether each camera's setting still holds, or someone must go out again. */

import { refuse } from "../../base/problem.ts";
import { envelopeOf, isClipped, type SettingChoice, spareAt } from "../../exposure/solver.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Setting } from "../planTypes.ts";
import { type PreparedCamera, prepareCamera, shareScene } from "../prepareCamera.ts";
import { DEFAULT_STEP_S, makeScene, type PlanOptions, requireInstants } from "../scene.ts";
import { settingFor } from "../settingFor.ts";
import type { SunRisk } from "../sunRisk.ts";

/**
 * `keep`: the first day's setting is as good as that day's own. `thin`: it holds, but another has more spare. `change`:
 * it clips, and another holds. `lost`: no setting holds that day. `unset`: the camera cannot be given one.
 */
type ScrubWord = "keep" | "thin" | "change" | "lost" | "unset";

/** One camera on one later day. */
export interface ScrubDay {
  readonly word: ScrubWord;
  /** Of the first day's setting, stops; null when there is none. */
  readonly spareStops: number | null;
  /** What the plan of this day would set. */
  readonly setting: Setting | null;
  readonly sun: Pick<SunRisk, "risk" | "inFrame" | "nearFrame">;
}

export interface ScrubCamera {
  readonly id: string;
  /** Of the first day. */
  readonly setting: Setting | null;
  readonly sun: Pick<SunRisk, "risk" | "inFrame" | "nearFrame">;
  /** In the order of the later windows. */
  readonly days: readonly ScrubDay[];
}

export interface Scrub {
  readonly first: Window;
  readonly later: readonly Window[];
  readonly cameras: readonly ScrubCamera[];
}

/** Spares closer than this are one. */
const SAME_SPARE_STOPS = 0.1;

/** More T-0s than this, over all windows, are refused: a step too fine for so many days. */
const MOST_SCRUB_INSTANTS = 100_000;

/**
 * Plans `first` and asks of each later window what becomes of its settings. One window after the other is held in
 * memory. Throws PadstopError as `planWindow`, and for a step too fine for so many windows.
 */
export function scrubSettings(
  site: Site,
  first: Window,
  later: readonly Window[],
  options: PlanOptions = {},
): Scrub {
  const stepS = options.stepS ?? DEFAULT_STEP_S;
  const instants = [first, ...later].reduce((sum, window) => sum + requireInstants(window, stepS), 0);
  if (instants > MOST_SCRUB_INSTANTS) {
    const found = `${stepS} s over ${later.length + 1} windows`;
    refuse("E_RANGE", "--step", found, `at most ${MOST_SCRUB_INSTANTS} T-0s; a longer step or fewer days`);
  }
  const started = prepareAll(site, first, options).map((prepared) => {
    const solved = prepared.settingInput && settingFor(prepared.settingInput);
    return { sun: sunOf(prepared), setting: solved?.setting ?? null, choice: solved?.solved.choice ?? null };
  });
  const perDay = later.map((window) =>
    prepareAll(site, window, options).map((prepared, i) => dayOf(site, prepared, started[i]!.choice)),
  );
  return {
    first,
    later,
    cameras: site.cameras.map(({ id }, i) => ({
      id,
      setting: started[i]!.setting,
      sun: started[i]!.sun,
      days: perDay.map((day) => day[i]!),
    })),
  };
}

function prepareAll(site: Site, window: Window, options: PlanOptions): PreparedCamera[] {
  const shared = shareScene(makeScene(site, window, options));
  return site.cameras.map((camera) => prepareCamera(shared, camera));
}

const sunOf = ({ sun }: PreparedCamera): ScrubDay["sun"] => ({
  risk: sun.risk,
  inFrame: sun.inFrame,
  nearFrame: sun.nearFrame,
});

function dayOf(site: Site, prepared: PreparedCamera, choice: SettingChoice | null): ScrubDay {
  const input = prepared.settingInput;
  const own = (input && settingFor(input)?.setting) ?? null;
  const sun = sunOf(prepared);
  if (input === null || own === null || choice === null)
    return { word: "unset", spareStops: null, setting: own, sun };
  const envelope = envelopeOf(input.samples);
  const spareStops = spareAt(envelope, input.range, choice.midToneLog2);
  return {
    word: wordFor(spareStops, own.spareStops, site.settings.comfortStops),
    spareStops,
    setting: own,
    sun,
  };
}

function wordFor(spareStops: number, ownStops: number, comfortStops: number): ScrubWord {
  if (isClipped(spareStops)) return isClipped(ownStops) ? "lost" : "change";
  return spareStops >= Math.min(ownStops, comfortStops) - SAME_SPARE_STOPS ? "keep" : "thin";
}
