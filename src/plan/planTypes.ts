/** What a plan says: the fields that outside checks rely on, and ours beside them. A null has its reason in `notes`, in the field beside it, or in what the field says. */

import type { LightClass } from "../light/lightClass.ts";
import type { MagneticBearings, Thing } from "../site/types.ts";
import type { SunEvents } from "../sky/sunEvents.ts";
import type { HiddenShare } from "../view/hiders.ts";
import type { TimeSpan } from "./clock.ts";
import type { Remedy } from "./remedy.ts";
import type { Setting } from "./setting.ts";
import type { ShadeSpan } from "./shadeSpans.ts";
import type { InTheWay } from "./sightNotes.ts";
import type { SunImage } from "./sunImage.ts";
import type { SunRisk } from "./sunRisk.ts";
import type { SweepSummary } from "./sweep/sweepParts.ts";

export type { Setting } from "./setting.ts";

export interface SunInstant {
  readonly at: Date;
  readonly azimuthDeg: number;
  /** Airless. */
  readonly elevationDeg: number;
  readonly apparentElevationDeg: number;
  /** Height above the pad from which a vehicle straight up stands in the first (or last) sunlight; 0 with the sun up. */
  readonly earthShadowKm: number;
  /** With no part of the sun up; null before. */
  readonly moon: {
    readonly azimuthDeg: number;
    readonly apparentElevationDeg: number;
    /** Of its disc. */
    readonly litShare: number;
  } | null;
  /** On the body, metres above the vehicle's foot; empty while it all stands in the sun, and with the sun down. */
  readonly shadows: readonly ShadowOnBody[];
}

export interface ShadowOnBody {
  readonly by: string;
  readonly fromM: number;
  readonly toM: number;
  /** Share of the beam that passes all the same. */
  readonly passesShare: number;
}

/** One camera at one T-0 under one sky. */
export interface LightSample {
  readonly at: Date;
  readonly sky: string;
  readonly light: LightClass;
  readonly phaseDeg: number;
  /** Sunlit share of the body's visible width, shadows taken off. */
  readonly litShare: number;
  /** Share of the direct light on what the camera sees of the body that shadows leave; 1 without a beam. */
  readonly keptShare: number;
  /** What stands before the sun's disc, and before what share of it. */
  readonly sunBehind: readonly HiddenShare[];
  readonly offAxisDeg: number;
  readonly fromEdgeDeg: number;
  /** Model: EV at ISO 100 by incident light on the body. */
  readonly ev: number | null;
  /** Exposure guide; null outside its hours. */
  readonly tableEv: number | null;
  /** Null without a vehicle. */
  readonly bodyMeanCdM2: number | null;
  readonly bodyBrightestCdM2: number | null;
  readonly bodyDarkestCdM2: number | null;
  readonly skyCdM2: number;
  readonly deckCdM2: number;
  readonly plumeCdM2: number | null;
}

export interface CameraPlan {
  readonly id: string;
  readonly axis: {
    readonly azimuthDeg: number;
    readonly elevationDeg: number;
    readonly rangeM: number | null;
  };
  readonly fieldDeg: { readonly horizontal: number; readonly vertical: number };
  /** Every T-0 under the first sky, then under the next; made when first asked for. */
  readonly light: readonly LightSample[];
  /** One of them, without making the rest. */
  readonly lightAt: (index: number) => LightSample;
  readonly sun: SunRisk;
  /** Structures between the camera and what its gate sees of the body: not counted in light and setting. */
  readonly inTheWay: readonly InTheWay[];
  /** The sun's image on the gate; null while it is never in the frame. */
  readonly sunImage: SunImage | null;
  /** The moon in the frame while no part of the sun is up: information. */
  readonly moonInFrame: readonly TimeSpan[];
  /** What clears the warning; null when there is none. */
  readonly remedy: Remedy | null;
  /** A tracker's; null for a fixed camera, and where the site file gives no ascent. */
  readonly sweep: SweepSummary | null;
  /** One setting for all skies asked for. */
  readonly setting: Setting | null;
  /** The setting for each sky alone, in the order asked for. */
  readonly bySky: readonly { readonly sky: string; readonly setting: Setting | null }[];
  readonly keep: readonly Thing[];
  readonly notes: readonly string[];
}

export interface WindowPlan {
  readonly site: {
    readonly name: string;
    readonly zone: string;
    readonly latitudeDeg: number;
    readonly longitudeDeg: number;
    readonly heightM: number;
    /** How magnetic bearings of the file were made true; left out where they were not magnetic. */
    readonly bearings?: MagneticBearings;
  };
  readonly window: {
    readonly name: string | null;
    readonly opens: Date;
    readonly closes: Date;
    readonly zone: string;
  };
  readonly sky: readonly string[];
  readonly stepS: number;
  /** Index into `sun` (and into each sky's stretch of `light`) of the window's middle. */
  readonly middleIndex: number;
  readonly sun: readonly SunInstant[];
  /** Of the local date on which the window opens. */
  readonly events: SunEvents;
  /** Of the date on which it closes; null when that is the same. */
  readonly eventsAtClose: SunEvents | null;
  /** What throws its shadow on the body when. */
  readonly shade: readonly ShadeSpan[];
  readonly cameras: readonly CameraPlan[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}
