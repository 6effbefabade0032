/** Small invented sites for the plan's tests, written as a user would write them. */

import type { CameraPlan, WindowPlan } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import type { PlanOptions } from "../../src/plan/scene.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";
import type { View } from "../../src/view/frame.ts";

export interface SiteParts {
  /** Further keys of `site`. */
  readonly head?: string;
  /** Keys of `vehicle`; null leaves it out. */
  readonly vehicle?: string | null;
  /** Lines of `cameras`, each the keys of one camera. */
  readonly cameras: readonly string[];
  /** Further lines at the top of the file. */
  readonly more?: string;
  readonly defaults?: string;
  readonly place?: string;
}

/** The pad of these tests: 45 degrees north on the meridian, in UTC, so that noon is noon. */
const PLACE = "latitude: 45, longitude: 0, height: 20";
const VEHICLE = "height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: kerolox }";
const DEFAULTS =
  "medium: grain, lens: { stops: [2.8, 4, 5.6, 8, 11, 16, 22] }, filters: [0, 0.6, 0.9], gate: full-frame, rate: 96, shutter: { angle: [160, 80] }";
const MEDIA =
  "{ grain: { speed: 200, under: 3, over: 4, blur: 0.05 }, chip: { speed: 400, under: 5, over: 2.5 } }";

export function siteOf(parts: SiteParts): Site {
  const vehicle = parts.vehicle === undefined ? VEHICLE : parts.vehicle;
  const lines = [
    `site: { name: Dotterel Flat, zone: UTC, ${parts.place ?? PLACE}${parts.head ? `, ${parts.head}` : ""} }`,
    ...(vehicle === null ? [] : [`vehicle: { ${vehicle} }`]),
    `media: ${MEDIA}`,
    `defaults: { ${parts.defaults ?? DEFAULTS} }`,
    "cameras:",
    ...parts.cameras.map((keys) => `  - { ${keys} }`),
    ...(parts.more ? [parts.more] : []),
  ];
  return parseSite(`${lines.join("\n")}\n`);
}

export const planOf = (site: Site, window: string, options: PlanOptions = {}): WindowPlan =>
  planWindow(site, chooseWindow(site, window), options);

/** The first camera of a plan. */
export function firstOf(site: Site, window: string, options: PlanOptions = {}): CameraPlan {
  return planOf(site, window, options).cameras[0]!;
}

/** A camera at a bearing, aimed at the vehicle's middle. */
export const standing = (id: string, bearing: number, more = "lens: { focal: 85 }", range = 400): string =>
  `id: ${id}, at: { bearing: ${bearing}, range: ${range}, up: 2 }, aim: { up: 25 }, ${more}`;

/** The sun goes down in the west behind the vehicle: cameras in the east look into it. */
export const EVENING = "2027-03-20T15:00/18:30";

/** The view of the first camera of a site, as planned. */
export const viewOf = (camera: CameraPlan, site: Site): View => ({
  azimuthDeg: camera.axis.azimuthDeg,
  elevationDeg: camera.axis.elevationDeg,
  rollDeg: site.cameras[0]!.rollDeg,
  focalMm: site.cameras[0]!.lens.focalMm,
  gateWidthMm: site.cameras[0]!.gate.widthMm,
  gateHeightMm: site.cameras[0]!.gate.heightMm,
});
