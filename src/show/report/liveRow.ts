/** One camera at one T-0 as the words of a row. */

import { isClipped } from "../../exposure/solver.ts";
import type { LightClass } from "../../light/lightClass.ts";
import type { Clock } from "../../plan/clock.ts";
import type { LiveView } from "../../plan/live/liveView.ts";
import { spareText } from "../../plan/stopsText.ts";
import type { SunRiskWord } from "../../plan/sunRisk.ts";
import { degreesText, percentText, stopsText } from "../numbers.ts";
import type { PageCamera, PageSetting } from "./pageData.ts";

/** The T-0, sky and setting that a page shows. */
export interface Chosen {
  readonly ms: number;
  readonly skyIndex: number;
  /** Index into the settings of a camera: for a sky, or for all. */
  readonly settingIndex: number;
}

export interface LiveRow {
  /** In the site file, from 0. */
  readonly index: number;
  readonly id: string;
  readonly light: LightClass;
  /** "157° 4 %": phase and sunlit share of what is seen. */
  readonly phase: string;
  /** "12.2/13": model and guide, EV at ISO 100. */
  readonly ev: string;
  /** "+0.4..+2.1": the body's darkest and brightest, stops from the mid-tone. */
  readonly body: string;
  readonly spare: string;
  readonly isClipped: boolean;
  readonly spareStops: number | null;
  readonly sun: SunRiskWord;
  readonly sunWords: string;
  readonly setting: string;
  readonly risk: PageCamera["risk"];
  readonly riskWords: string;
  readonly blockedBy: string | null;
}

/** `sweepSpareStops`: of a tracker, the margin along its sweep from about this T-0 on; null for a fixed camera. */
export function liveRow(
  view: LiveView,
  camera: PageCamera,
  index: number,
  chosen: Chosen,
  sweepSpareStops: number | null,
): LiveRow {
  const { exposure, ev, tableEv, sun } = view;
  const spareStops =
    exposure === null ? null : Math.min(exposure.spareStops, sweepSpareStops ?? Number.POSITIVE_INFINITY);
  const body = exposure?.readings.find(({ thing }) => thing === "body");
  return {
    index,
    id: camera.id,
    light: view.light,
    phase: `${degreesText(view.phaseDeg, 0)}° ${percentText(view.litShare)}`,
    ev: `${ev === null ? "-" : ev.toFixed(1)}/${tableEv ?? "-"}`,
    body: body === undefined ? "-" : `${stopsText(body.darkStops)}..${stopsText(body.brightStops)}`,
    spare: spareStops === null ? "-" : spareText(spareStops),
    isClipped: spareStops !== null && isClipped(spareStops),
    spareStops,
    sun: sun.word,
    sunWords: sunWords(sun),
    setting: settingAt(camera, chosen)?.words ?? "none",
    risk: camera.risk,
    riskWords: camera.riskWords,
    blockedBy: camera.blockedBy,
  };
}

export const settingAt = (
  camera: PageCamera,
  { settingIndex }: Pick<Chosen, "settingIndex">,
): PageSetting | null => camera.settings[settingIndex] ?? null;

/** "IN FRAME", "near frame 3.2°", "hidden", "clear 24°", "sun down"; of a tracker with its T+. */
function sunWords({ word, fromEdgeDeg, tPlus }: LiveView["sun"]): string {
  const when = tPlus.map(({ fromS, toS }) => `${Math.floor(fromS)}-${Math.ceil(toS)}`).join(", ");
  const along = when === "" ? "" : ` T+${when} s`;
  if (word === "in-frame") return `IN FRAME${along}`;
  if (word === "near-frame")
    return `near frame${along === "" ? ` ${degreesText(Math.max(0, fromEdgeDeg))}°` : along}`;
  if (word === "hidden") return "hidden";
  return word === "down" ? "sun down" : `clear ${degreesText(Math.floor(fromEdgeDeg), 0)}°`;
}

/** A T-0 to the second: "18:25:30". */
export function t0Text(ms: number, clock: Clock): string {
  const seconds = String(Math.floor(ms / 1000) % 60).padStart(2, "0");
  return clock.at(new Date(ms), "before").replace(/\d\d:\d\d/, (minutes) => `${minutes}:${seconds}`);
}
