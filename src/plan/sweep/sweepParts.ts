/** What a plan and a sweep tell of a tracker: the sun along it for all T-0s of a window, the mount, the change of setting. */

import type { TimeSpan } from "../clock.ts";
import type { Setting } from "../setting.ts";
import type { SunRiskWord } from "../sunRisk.ts";

/** A stretch of T+, seconds. */
export interface TPlusSpan {
  readonly fromS: number;
  readonly toS: number;
}

/** A stretch of T-0s for which the sun meets the frame (or its flare margin) somewhere along the sweep. */
export interface SweepCrossing extends TimeSpan {
  /** All T+ at which it does, for at least one of these T-0s. */
  readonly tPlus: readonly TPlusSpan[];
  readonly closest: ClosestApproach;
}

export interface ClosestApproach {
  /** T-0. */
  readonly at: Date;
  readonly tPlusS: number;
  /** From the sun's centre to the frame's edge, negative inside. */
  readonly fromEdgeDeg: number;
  readonly offAxisDeg: number;
}

/** The sun along the sweep for every T-0 of the window. A sun hidden with the site's margin is in neither list. */
export interface SweepSun {
  readonly risk: SunRiskWord;
  readonly inFrame: readonly SweepCrossing[];
  /** Outside the gate but within the flare margin, for T-0s that do not have it in the frame. */
  readonly nearFrame: readonly SweepCrossing[];
  /** T-0s for which it is in or near the frame, but only ever hidden. */
  readonly hidden: readonly (TimeSpan & { readonly by: readonly string[] })[];
  /** While any of the disc is up; null when it is down throughout. */
  readonly closest: ClosestApproach | null;
}

/** How fast the mount has to turn. */
export interface SlewRates {
  readonly mostAzimuthDegS: number;
  readonly mostAzimuthAtS: number;
  readonly mostElevationDegS: number;
  readonly mostElevationAtS: number;
  /** Where the sweep needs more than the mount can do; empty too when no limit is given. */
  readonly beyond: readonly (TPlusSpan & {
    readonly turn: "azimuth" | "elevation";
    readonly neededDegS: number;
    readonly limitDegS: number;
  })[];
}

/** Where one setting does not hold the sweep: two that do, and when to change. */
export interface SettingChange {
  /** Holds every T-0 and sky from the first T+ to `untilS`; null when none holds even the first. */
  readonly first: { readonly setting: Setting; readonly untilS: number } | null;
  /** Holds from `fromS` to the end of the sweep; null when none holds even the last. */
  readonly second: { readonly setting: Setting; readonly fromS: number } | null;
  /** Any T+ in this stretch serves; null when the two leave a gap. */
  readonly changeAt: TPlusSpan | null;
}

/** What a plan tells of a tracker's sweep. */
export interface SweepSummary {
  /** What is followed, in words: "nose", "30 m above the foot", with the offset when there is one. */
  readonly follows: string;
  readonly ascent: {
    readonly kind: "table" | "parameters";
    readonly source: string;
    readonly fromS: number;
    readonly toS: number;
    readonly assumed: readonly string[];
  };
  readonly sun: SweepSun;
  readonly slew: SlewRates;
  /** Null while one setting holds everything, and without a setting. */
  readonly change: SettingChange | null;
}
