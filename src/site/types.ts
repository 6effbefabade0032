/**
 * A site as the rest of the program sees it: metres, millimetres (optics), degrees, seconds, UTC instants.
 * Made by `parseSite` only; nothing in it has a position in a file any more.
 */

import type { Air, Place } from "../base/place.ts";
import type { Ascent } from "./ascentTypes.ts";
import type { Bearings } from "./bearingTypes.ts";
import type { TableReading } from "./tableReading.ts";

export type { Ascent, AscentPoint, AscentTable, DownrangePoint, PitchPoint } from "./ascentTypes.ts";
export type { Bearings, MagneticBearings } from "./bearingTypes.ts";

/** The things in a picture that have a luminance. */
export const THINGS = ["body", "plume", "sky", "deck"] as const;
export type Thing = (typeof THINGS)[number];

export const PROPELLANTS = ["solid", "kerolox", "methalox", "hydrolox", "hypergolic"] as const;
export type Propellant = (typeof PROPELLANTS)[number];

/** The halves stand for their middles: of a pair of trackers one holds the upper half and one the lower. */
export const TRACK_PARTS = ["nose", "middle", "base", "upper-half", "lower-half"] as const;
export type TrackPart = (typeof TRACK_PARTS)[number];

/** The sky states a plan can be asked for, brightest beam first. */
export const SKY_STATES = ["clear", "haze", "bright-cloud", "overcast"] as const;
export type SkyState = (typeof SKY_STATES)[number];

export interface Plume {
  /** A family, or null when the luminance is given. */
  readonly propellant: Propellant | null;
  /** Given luminance in cd/m2, or null. */
  readonly luminanceCdM2: number | null;
  /** As seen from the side; null when not given. */
  readonly lengthM: number | null;
  readonly widthM: number | null;
}

export interface Vehicle {
  readonly name: string | null;
  readonly heightM: number;
  readonly diameterM: number;
  /** Foot of the body above the pad datum. */
  readonly baseM: number;
  /** Diffuse reflectance 0..1. */
  readonly reflectance: number;
  readonly plume: Plume | null;
  readonly ascent: Ascent | null;
}

/** On the ground: a bearing and horizontal range from the pad, or coordinates. Bearings are true here. */
export type Spot =
  | { readonly kind: "bearing"; readonly bearingDeg: number; readonly rangeM: number; readonly upM: number }
  | SpotPlace;

/** Coordinates; with the side of the square, metres, where one of a grid was given and its middle taken. */
export interface SpotPlace {
  readonly kind: "place";
  readonly place: Place;
  readonly squareM?: number;
}

/** Where a camera looks. */
export type Aim =
  /** At a height on the vehicle's axis, metres above the pad datum. */
  | { readonly kind: "vehicle"; readonly upM: number }
  | SpotPlace
  | { readonly kind: "axis"; readonly azimuthDeg: number; readonly elevationDeg: number };

export interface Structure {
  readonly name: string;
  readonly shape: "box" | "cylinder";
  readonly at: Spot;
  /** Box: sides in metres and the azimuth of the width. */
  readonly widthM: number | null;
  readonly depthM: number | null;
  readonly turnDeg: number;
  /** Cylinder: diameter in metres. */
  readonly diameterM: number | null;
  /** Foot above the height of its spot, top above its foot. */
  readonly baseM: number;
  readonly heightM: number;
  /** Share of the light it stops, 0..1. */
  readonly solidity: number;
}

export interface Medium {
  readonly name: string;
  /** ISO speed or exposure index. */
  readonly speedIso: number;
  /** Usable stops below and above the mid-tone, both positive. */
  readonly underStops: number;
  readonly overStops: number;
  /** Largest acceptable spread of a point on the image, mm. */
  readonly blurMm: number;
  /** True for a built-in range that is common practice, not measured for this stock. */
  readonly commonPractice: boolean;
}

export interface Hood {
  readonly lengthMm: number;
  readonly diameterMm: number;
}

export interface Lens {
  readonly focalMm: number;
  /** Marked stops, as engraved; empty when not given. */
  readonly stops: readonly number[];
  /** Light lost in the glass, stops. */
  readonly lossStops: number;
  readonly hood: Hood | null;
}

/** A shutter setting: an opening angle (needs a frame rate) or a marked time. */
export type Shutter =
  | { readonly kind: "angle"; readonly angleDeg: number }
  /** `markedS` is what is engraved: 1/500 is 0.002. */
  | { readonly kind: "time"; readonly markedS: number };

export interface Gate {
  /** Name of a built-in gate, or null when the size was given. */
  readonly name: string | null;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What a tracker follows: a part of the vehicle or a height along it above its foot; and what its mount can do. */
export type Track = TrackedPoint & {
  /** Where that point stands in the picture: share of the gate's height above its middle, -0.5..0.5. */
  readonly offsetShare: number;
  /** Fastest turns of the mount, degrees/s; null when not given. */
  readonly mostAzimuthDegS: number | null;
  readonly mostElevationDegS: number | null;
};

export type TrackedPoint =
  | { readonly kind: "part"; readonly part: TrackPart }
  | { readonly kind: "up"; readonly upM: number };

export interface Camera {
  readonly id: string;
  /** Null: stands where the site's place is (only an axis was given). */
  readonly at: Spot | null;
  readonly aim: Aim;
  readonly rollDeg: number;
  readonly lens: Lens;
  readonly gate: Gate;
  readonly rateHz: number | null;
  /** Shutter settings to choose from; empty when none is given. */
  readonly shutters: readonly Shutter[];
  /** Optical densities in the kit; [0] when none is given. */
  readonly filterDensities: readonly number[];
  /** Light lost in a housing window and alike, stops. */
  readonly lossStops: number;
  readonly medium: Medium | null;
  /** What must lie inside the medium's range. */
  readonly keep: readonly Thing[];
  /** Weight in rankings, 0 or more. */
  readonly weight: number;
  readonly track: Track | null;
  readonly notes: string | null;
}

/** An interval of possible T-0s. */
export interface Window {
  readonly name: string | null;
  readonly opens: Date;
  readonly closes: Date;
}

/** Thresholds a site may move. */
export interface Settings {
  /** Spare a setting should have before nearness to its place counts, stops. */
  readonly comfortStops: number;
  /** Near frame: this far outside the gate's edge, unless a hood keeps the sun off the glass, degrees. */
  readonly flareMarginDeg: number;
  /** Phase below which light is front light, degrees. */
  readonly frontBelowDeg: number;
  /** Phase above which light is back light, degrees. */
  readonly backAboveDeg: number;
  /** The two routes to an exposure may part by this much before a view is flagged, stops. */
  readonly routesPartStops: number;
  /** A view is well lit with the sun on at least this share of the body's visible width, 0..1. */
  readonly litShare: number;
  /** ... and with a setting that has at least this spare at the T-0, stops. */
  readonly litSpareStops: number;
  /** T-0s whose share of well-lit views reaches this part of the best count as near the best, 0..1. */
  readonly nearBestShare: number;
  /** Light is `shaded` when less than this share of the sunlit side that a camera sees stays in the sun, 0..1. */
  readonly shadedShare: number;
  /**
   * A sun in the frame counts as hidden only when its limb lies this deep behind an opaque structure or the skyline,
   * degrees 0..10.
   */
  readonly coverMarginDeg: number;
}

export const DEFAULT_SETTINGS: Settings = {
  comfortStops: 1,
  flareMarginDeg: 5,
  frontBelowDeg: 60,
  backAboveDeg: 120,
  routesPartStops: 1,
  litShare: 0.5,
  litSpareStops: 0,
  nearBestShare: 0.95,
  shadedShare: 0.5,
  // One disc of the sun.
  coverMarginDeg: 0.53,
};

/** Stops to add to the model's light, from readings: by sky state and by camera id. */
export interface Corrections {
  readonly bySky: Readonly<Partial<Record<SkyState, number>>>;
  readonly byCamera: Readonly<Record<string, number>>;
}

export interface HorizonPoint {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

export interface Site {
  readonly name: string;
  /** IANA time zone. */
  readonly zone: string;
  /** The pad datum. */
  readonly place: Place;
  /** Side of the square of a grid whose middle that is, metres; left out where it was given as a point. */
  readonly squareM?: number;
  /** What the bearings of the file were measured from; here all are true. */
  readonly bearings: Bearings;
  /** Given air; null means the standard atmosphere at the site's height. */
  readonly air: Air | null;
  readonly groundReflectance: number;
  readonly vehicle: Vehicle | null;
  readonly structures: readonly Structure[];
  readonly horizon: readonly HorizonPoint[];
  /** Floodlight on the body, lx; null when there is none. */
  readonly floodlightLx: number | null;
  /** Floodlight on the deck, lx; null when it is not given. */
  readonly floodlightDeckLx: number | null;
  readonly cameras: readonly Camera[];
  readonly windows: readonly Window[];
  readonly corrections: Corrections;
  readonly settings: Settings;
  /** How the tables that the file names were read. */
  readonly tables: readonly TableReading[];
}
