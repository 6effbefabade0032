/** One camera's keys over the defaults', with where each is written. What the keys mean together is not looked at here. */

import type { cameraDefaultsSchema } from "./cameraSchema.ts";
import { isGiven, type Origin, type Read } from "./findings.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import type { WrittenStructure } from "./readStructures.ts";
import type { Medium, Vehicle } from "./types.ts";

/** The ways to say where a camera looks. */
export const DIRECTION_KEYS = ["aim", "azimuth", "track"] as const;

/** Keys of a camera that are read well; what is missing or wrong is undefined. */
export type CameraKeys = Read<typeof cameraDefaultsSchema.shape>;

/** A camera with its defaults, and where each came from. */
export interface Merged {
  readonly keys: CameraKeys;
  readonly own: Origin;
  readonly defaults: Origin;
  /** A lens is written but could not be read: what it lacks is not known. */
  readonly lensIsWrong: boolean;
}

/** What cameras refer to. */
export interface Surroundings {
  readonly head: SiteHead;
  readonly vehicle: Vehicle | null;
  /** True when the file has a vehicle, even a wrong one. */
  readonly hasVehicle: boolean;
  readonly hasPlume: boolean;
  /** Null: a medium of that name is written but wrong. */
  readonly media: ReadonlyMap<string, Medium | null>;
  readonly structures: readonly WrittenStructure[];
}

/** True when the camera itself says where it looks: the defaults' direction is then left aside. */
export const ownDirection = (own: Origin): boolean => DIRECTION_KEYS.some((key) => isGiven(own, key));

/** True when a key is written at the camera or in the defaults, be it right or wrong. */
export const isGivenAnywhere = ({ own, defaults }: Merged, key: string): boolean =>
  isGiven(own, key) || isGiven(defaults, key);

/** The camera's keys over the defaults'; the lens key by key, the direction as a whole. */
export function mergeCamera(
  read: CameraKeys,
  own: Origin,
  defaultKeys: CameraKeys,
  defaults: Origin,
): Merged {
  const { aim, azimuth, elevation, track, ...others } = defaultKeys;
  const direction = ownDirection(own) ? {} : { aim, azimuth, elevation, track };
  const lens = read.lens ? { ...defaultKeys.lens, ...dropUndefined(read.lens) } : defaultKeys.lens;
  const keys = { ...others, ...dropUndefined(direction), ...dropUndefined(read), ...(lens ? { lens } : {}) };
  const lensIsWrong =
    (isGiven(own, "lens") && read.lens === undefined) ||
    (isGiven(defaults, "lens") && defaultKeys.lens === undefined);
  return { keys, own, defaults, lensIsWrong };
}

function dropUndefined<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
}

/** Where a key of a merged camera is written: at the camera, else in the defaults. */
export function originOf({ own, defaults }: Merged, key: string): Origin {
  return !isGiven(own, key) && isGiven(defaults, key) ? defaults : own;
}
