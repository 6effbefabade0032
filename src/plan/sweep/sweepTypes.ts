/** What a sweep says: the sun along it for all T-0s of a window, one T-0 second by second, and the setting that serves it. */

import type { LightClass } from "../../light/lightClass.ts";
import type { Thing } from "../../site/types.ts";
import type { Setting, WindowPlan } from "../planTypes.ts";
import type { PlanOptions } from "../scene.ts";
import type { SunRiskWord } from "../sunRisk.ts";
import type { SweepSummary } from "./sweepParts.ts";

export type {
  ClosestApproach,
  SettingChange,
  SlewRates,
  SweepCrossing,
  SweepSummary,
  SweepSun,
  TPlusSpan,
} from "./sweepParts.ts";

/** One T-0, one T+, under one sky. */
export interface SweepRow {
  readonly tPlusS: number;
  /** Of the tracker's axis. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** To the followed point, metres. */
  readonly rangeM: number;
  readonly azimuthRateDegS: number;
  readonly elevationRateDegS: number;
  readonly altitudeM: number;
  readonly speedMS: number;
  readonly flightPathDeg: number;
  readonly light: LightClass;
  readonly phaseDeg: number;
  /** Sunlit share of the body's visible width. */
  readonly litShare: number;
  /** Between the body's axis and the line of sight, 0..90: small when it is seen end on. */
  readonly endOnDeg: number;
  /** EV at ISO 100 by incident light on the body; null in complete darkness. */
  readonly ev: number | null;
  /** As seen through the air between, cd/m2. */
  readonly bodyMeanCdM2: number;
  readonly skyCdM2: number;
  readonly plumeCdM2: number | null;
  /** Length of the vehicle's image, mm, and that as a share of the gate's height; more than 1: it does not fit. */
  readonly vehicleMm: number;
  readonly vehicleShare: number;
  /** Smear at the set shutter of what the tracker does not follow, sky and ground (or of all, should it stand still), mm; null without a setting. */
  readonly blurMm: number | null;
  /** Focused on the vehicle at the set stop; far is null when sharp to infinity; near is null without a setting. */
  readonly sharpNearM: number | null;
  readonly sharpFarM: number | null;
  /** The sun at T-0 + T+ as the camera sees it, refraction included. */
  readonly sunAzimuthDeg: number;
  readonly sunElevationDeg: number;
  /** Of the sun's centre. */
  readonly offAxisDeg: number;
  readonly fromEdgeDeg: number;
  readonly sun: SunRiskWord;
}

export interface TrackerSweep extends SweepSummary {
  readonly id: string;
  /** At T+0. */
  readonly axis: { readonly azimuthDeg: number; readonly elevationDeg: number; readonly rangeM: number };
  readonly fieldDeg: { readonly horizontal: number; readonly vertical: number };
  readonly lens: { readonly focalMm: number; readonly gateWidthMm: number; readonly gateHeightMm: number };
  readonly keep: readonly Thing[];
  /** One setting for all skies over the whole sweep and window; null with a reason in the notes. */
  readonly setting: Setting | null;
  readonly bySky: readonly { readonly sky: string; readonly setting: Setting | null }[];
  /** One T-0 under the first sky. */
  readonly timeline: { readonly at: Date; readonly sky: string; readonly rows: readonly SweepRow[] };
  readonly notes: readonly string[];
}

export interface SweepPlan extends Pick<WindowPlan, "site" | "window" | "sky" | "stepS"> {
  readonly trackers: readonly TrackerSweep[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** T-0 across, T+ down: where the sun meets the frame. */
export interface SweepMap {
  readonly id: string;
  readonly window: { readonly opens: Date; readonly closes: Date };
  /** Beginning of each stretch of T-0s, and the end of the last. */
  readonly edges: readonly Date[];
  readonly rows: readonly {
    readonly fromS: number;
    readonly toS: number;
    /** The sun at any T-0 and T+ of the cell, however short; else the light in its middle. */
    readonly cells: readonly { readonly sun: "in-frame" | "near-frame" | null; readonly light: LightClass }[];
  }[];
}

export interface SweepOptions {
  readonly sky?: PlanOptions["sky"];
  /** Spacing of the T-0s that the setting is judged at, seconds 1..3600. Default: 60, longer for a long window. */
  readonly stepS?: number;
  /** T-0 of the timeline: an instant, or a time of day in the window; the middle of the window when left out. */
  readonly at?: string;
  /** Spacing of the timeline in seconds, 0.1..600. Default 5. */
  readonly everyS?: number;
}
