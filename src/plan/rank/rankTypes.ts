/** What a ranking says. A null has its reason in `notes` or in the field beside it. */

import type { Sky } from "../../sky/daylight.ts";
import type { TimeSpan } from "../clock.ts";
import type { WindowPlan } from "../planTypes.ts";
import type { Loss } from "./wellLit.ts";

export interface RankOptions {
  /** Sky state or states to rank under. Default: clear. */
  readonly sky?: Sky | readonly Sky[];
  /** Weight of each sky, above 0, in the order of `sky`; they are scaled to a sum of 1. Default: all the same. */
  readonly skyWeights?: readonly number[];
  /** Spacing of the T-0s in seconds, 1..3600. Default 60. */
  readonly stepS?: number;
  /** Told after each window, for a line of progress. */
  readonly onWindow?: (done: number, total: number) => void;
}

/** One view over one window. Shares are of the window's T-0s, weighted over the skies. */
export interface ViewScore {
  readonly id: string;
  readonly weight: number;
  readonly wellLitShare: number;
  /** Under front light, whatever else. */
  readonly frontShare: number;
  /** Why the rest is not well lit. */
  readonly lostShare: Readonly<Record<Loss, number>>;
  /** How far the body's EV goes over the window, stops: the largest of the skies. */
  readonly driftStops: number;
  /** Most spare that one setting for all T-0s and skies can have, stops; null when the camera cannot be given a setting. */
  readonly spareStops: number | null;
  /** Whether one setting holds all of it; null as above. */
  readonly holds: boolean | null;
  readonly inFrame: readonly TimeSpan[];
  readonly nearFrame: readonly TimeSpan[];
}

/** A share, and where it is met: a stretch of T-0s that are alike, and the T-0 in its middle. */
export interface ShareAt {
  readonly at: Date;
  readonly share: number;
  readonly from: Date;
  readonly to: Date;
}

export interface RankedWindow {
  /** 1 is the best. */
  readonly rank: number;
  readonly name: string | null;
  readonly opens: Date;
  readonly closes: Date;
  /** Weighted share of well-lit views, mean over the T-0s, 0..1. */
  readonly share: number;
  /** The same in views, each that has a weight counted once: how many are well lit at a T-0, on average. */
  readonly wellLitViews: number;
  /** How many are under front light, and how many are lost to what, on average and counted so. */
  readonly frontViews: number;
  readonly lostViews: Readonly<Record<Loss, number>>;
  /** The share under each sky alone. */
  readonly bySky: readonly { readonly sky: string; readonly share: number }[];
  /** The highest share: of its T-0s those with least sun in and near the frames, their longest stretch. */
  readonly best: ShareAt;
  /** The lowest share: the longest stretch of its T-0s. */
  readonly worst: ShareAt;
  /** T-0s near the best share; empty when no view is well lit at any. */
  readonly nearBest: readonly TimeSpan[];
  /** Views whose single setting holds the whole window, of those that can be given one. */
  readonly holdingViews: number;
  readonly settableViews: number;
  /** Largest drift of any view, stops. */
  readonly driftStops: number;
  /** Views with the sun in the frame, and near it but never in, at some T-0. */
  readonly inFrameViews: number;
  readonly nearFrameViews: number;
  readonly duskShare: number;
  readonly nightShare: number;
  /** T-0s with the sun up but below 7 degrees. */
  readonly lowSunShare: number;
  /** What decides between windows of one share, in this order. */
  readonly ties: TieBreakers;
  readonly views: readonly ViewScore[];
}

export interface TieBreakers {
  /** Weighted share of view and time with the sun in the frame, and near it. */
  readonly inFrameShare: number;
  readonly nearFrameShare: number;
  /** Weighted mean over views of the single setting's spare, no more than the comfort margin counted; null without settings. */
  readonly spareStops: number | null;
}

/** The rule a ranking was made by. */
export interface RankRule {
  readonly litShare: number;
  readonly spareStops: number;
  readonly nearBestShare: number;
  readonly flareMarginDeg: number;
  readonly frontBelowDeg: number;
}

export interface Ranking {
  readonly site: WindowPlan["site"];
  readonly sky: readonly { readonly sky: string; readonly weight: number }[];
  readonly stepS: number;
  readonly rule: RankRule;
  readonly viewCount: number;
  /** Best first. */
  readonly windows: readonly RankedWindow[];
  /** Why the first beats the second; null with one window. */
  readonly why: string | null;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}
