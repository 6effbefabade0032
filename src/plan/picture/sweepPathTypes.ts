/** What pictures of a sweep are made of: plain values, directions from the camera. */

import type { SunRiskWord } from "../sunRisk.ts";
import type { TPlusSpan } from "../sweep/sweepTypes.ts";

/** A direction: azimuth 0..360 degrees clockwise from true north, elevation in degrees. */
export interface SkyPoint {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** The tracker's axis at a T+. */
export interface PathPoint extends SkyPoint {
  readonly tPlusS: number;
}

/** Where the frame is at a T+: its axis, and its border as a closed line. */
export interface PathFrame extends PathPoint {
  readonly outline: readonly SkyPoint[];
}

/** The sun as the camera sees it, refraction included. */
export interface SunPoint extends SkyPoint {
  readonly atMs: number;
}

/** The same for every T-0. */
export interface SweepPath {
  readonly id: string;
  readonly window: { readonly opens: Date; readonly closes: Date };
  readonly fromS: number;
  readonly toS: number;
  /** The ascent is made from parameters: times and angles along it are good to the minute and the degree. */
  readonly isRough: boolean;
  readonly fieldDeg: { readonly horizontal: number; readonly vertical: number };
  /** About half a degree apart, in the order of T+. */
  readonly points: readonly PathPoint[];
  /** Round seconds. */
  readonly ticks: readonly PathPoint[];
  readonly frames: readonly PathFrame[];
  /** While any of its disc is up, from the opening to the end of the last sweep: a line per stretch. */
  readonly sun: readonly (readonly SunPoint[])[];
}

/** One T-0. */
export interface SweepMoment {
  readonly atMs: number;
  /** At T-0 and at the end of the sweep; null with the sun down all along. */
  readonly sun: { readonly from: SunPoint; readonly to: SunPoint } | null;
  /** While any of the disc is up; null with the sun down all along. */
  readonly closest: MomentClosest | null;
  /** T+ with the sun in the frame. */
  readonly inFrame: readonly TPlusSpan[];
}

export interface MomentClosest {
  readonly tPlusS: number;
  /** Of the sun's centre. */
  readonly offAxisDeg: number;
  readonly fromEdgeDeg: number;
  readonly word: SunRiskWord;
  readonly frame: PathFrame;
  readonly sun: SunPoint;
  /** Its way through the neighbourhood of the frame; null where it never comes near. */
  readonly pass: SunPass | null;
}

/** The sun as the moving frame has it, in the order of T+. */
export interface SunPass {
  /** How far about the axis is looked at, degrees. */
  readonly withinDeg: number;
  readonly semidiameterDeg: number;
  readonly points: readonly PassPoint[];
}

/** Degrees from the axis, to the picture's right and to its top: the distance from the axis is true, and so is the direction. */
export interface PassPoint {
  readonly tPlusS: number;
  readonly rightDeg: number;
  readonly upDeg: number;
}
