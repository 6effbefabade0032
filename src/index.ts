/** The library's public names. */

export type { Air, Direction, Place } from "./base/place.ts";
export {
  type FilePlace,
  PadstopError,
  PROBLEM_CODES,
  type Problem,
  type ProblemCode,
} from "./base/problem.ts";
export { exposureValue } from "./exposure/exposureValue.ts";
export { bodyLuminance } from "./light/body.ts";
export type { LightClass } from "./light/lightClass.ts";
export { planckLuminance } from "./light/planck.ts";
export type { CameraPlan, LightSample, Setting, SunInstant, WindowPlan } from "./plan/planTypes.ts";
export { planWindow } from "./plan/planWindow.ts";
export type { RankedWindow, Ranking, RankOptions, RankRule, ViewScore } from "./plan/rank/rankTypes.ts";
export { rankWindows } from "./plan/rank/rankWindows.ts";
export { type AsSetOptions, judgeAsSet } from "./plan/readings/asSet.ts";
export { compareReadings } from "./plan/readings/compareReadings.ts";
export type { AsSetCamera, AsSetReport } from "./plan/readings/formTypes.ts";
export type {
  CameraVerdict,
  ComparedReading,
  Metered,
  ReadingsReport,
  SkyVerdict,
  SuggestedCorrections,
} from "./plan/readings/readingTypes.ts";
export type { Remedy } from "./plan/remedy.ts";
export type { PlanOptions } from "./plan/scene.ts";
export type { SunRisk } from "./plan/sunRisk.ts";
export { sweepMapOf } from "./plan/sweep/sweepMap.ts";
export { sweepTracker, sweepTrackers } from "./plan/sweep/sweepTracker.ts";
export type {
  ClosestApproach,
  SettingChange,
  SlewRates,
  SweepCrossing,
  SweepMap,
  SweepOptions,
  SweepPlan,
  SweepRow,
  SweepSun,
  TPlusSpan,
  TrackerSweep,
} from "./plan/sweep/sweepTypes.ts";
export { type ViewOptions, type ViewPlan, viewCamera } from "./plan/viewCamera.ts";
export { chooseWindow } from "./site/chooseWindow.ts";
export { parseSite, referencedFiles, type SiteFiles } from "./site/parseSite.ts";
export { decodeTable, type TableReading, type TableText } from "./site/tableReading.ts";
export type { AscentPoint, Camera, Site, SkyState, Window } from "./site/types.ts";
export { daylight, type Sky } from "./sky/daylight.ts";
export { earthShadowHeightM, litAboveM } from "./sky/earthShadow.ts";
export { type MoonPosition, moonAt } from "./sky/moon.ts";
export { type SunPosition, sunAt } from "./sky/sun.ts";
export { type SunEvents, sunEvents } from "./sky/sunEvents.ts";
export { makeSunTrack, type SunSample, type SunTrack } from "./sky/sunTrack.ts";
export type { Illuminances } from "./sky/turbidSky.ts";
export { type Located, locateInFrame, type View } from "./view/frame.ts";
export { lookAt, placeFrom, type SightLine } from "./view/sightLine.ts";
export { sunInFrame } from "./view/sunInFrame.ts";
export { type SweptView, sweepSun } from "./view/sweepSun.ts";
