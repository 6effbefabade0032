/** Meter readings at the pad, what the model says of each, and what follows for the model. Stops: positive is brighter than the model. */

import type { SkyState } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";

/** What can be metered: light that falls on a flat receptor, and light that a thing sends. */
export const METERED = ["incident", "horizontal", "body", "grey-card", "sky"] as const;
export type Metered = (typeof METERED)[number];

/** The unit a reading was written in, and is shown in. */
export type ReadingUnit = "lx" | "cd/m2" | "EV";

/** One row of a table of readings. */
export interface Reading {
  /** Line of the table. */
  readonly line: number;
  readonly at: Date;
  readonly sky: Sky;
  readonly what: Metered;
  /** Null for a direction of its own, and on the horizontal. */
  readonly camera: string | null;
  /** The way the metered side faces, true; of the sky the way the meter looks. Null with a camera, and on the horizontal. */
  readonly azimuthDeg: number | null;
  /** Of the sky without a camera; else null. */
  readonly elevationDeg: number | null;
  readonly unit: ReadingUnit;
  /** Illuminance in lx (incident, horizontal) or luminance in cd/m2 (the others). */
  readonly light: number;
  readonly note: string;
}

/** `used` for a correction, an `outlier` that is named and left out, or only `shown`. */
export type ReadingUse = "used" | "outlier" | "shown";

/** A reading beside the model. */
export interface ComparedReading extends Reading {
  /** Apparent. */
  readonly sunElevationDeg: number;
  /** As `light`; the model without floodlights and without corrections of the file. */
  readonly modelLight: number;
  /** Reading over model, stops. */
  readonly stops: number;
  readonly use: ReadingUse;
  /** Why it is not used; null for one that is. */
  readonly why: string | null;
}

/** Figures of the used readings of one sky or camera, stops. */
export interface ReadingFigures {
  readonly used: number;
  /** Null without used readings, as the two below. */
  readonly medianStops: number | null;
  /** Median absolute deviation from the median, times 1.4826: the standard deviation of a normal scatter. */
  readonly spreadStops: number | null;
  /** Standard error of the median, stops; null with fewer than three. */
  readonly errorStops: number | null;
}

/** What the readings say of one sky state or one camera. */
export interface ReadingVerdict extends ReadingFigures {
  readonly readings: number;
  readonly outliers: number;
  /** In the site file now; null when it says nothing. */
  readonly inFileStops: number | null;
  /** To stand in the site file instead, to a tenth; null with the reason in `why`. */
  readonly suggestedStops: number | null;
  readonly why: string | null;
}

export interface SkyVerdict extends ReadingVerdict {
  readonly sky: SkyState;
}

export interface CameraVerdict extends ReadingVerdict {
  readonly id: string;
}

/** Stops for the `corrections` of the site file. */
export interface SuggestedCorrections {
  readonly bySky: Readonly<Partial<Record<SkyState, number>>>;
  readonly byCamera: Readonly<Record<string, number>>;
}

export interface ReadingsReport {
  readonly site: { readonly name: string; readonly zone: string };
  /** In the order of the table. */
  readonly readings: readonly ComparedReading[];
  /** In the order of the states; those that were metered. */
  readonly skies: readonly SkyVerdict[];
  /** In the order of the site; those that were metered. Their figures are what is left over the sky's. */
  readonly cameras: readonly CameraVerdict[];
  readonly suggested: SuggestedCorrections;
  readonly notes: readonly string[];
}
