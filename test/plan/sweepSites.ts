/** Small invented sites with an ascent and trackers, as text, for the tests of the sweep's jobs. */

import type { Place } from "../../src/base/place.ts";
import type { CameraPlan } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { type PreparedCamera, prepareCamera, shareScene } from "../../src/plan/prepareCamera.ts";
import { makeScene, type PlanOptions } from "../../src/plan/scene.ts";
import type { PreparedSweep } from "../../src/plan/sweep/prepareSweep.ts";
import { sweepTracker } from "../../src/plan/sweep/sweepTracker.ts";
import type { SweepOptions, SweepRow, TrackerSweep } from "../../src/plan/sweep/sweepTypes.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { AscentPoint, Site } from "../../src/site/types.ts";
import type { View } from "../../src/view/frame.ts";
import { lookAt, placeFrom } from "../../src/view/sightLine.ts";

export interface SweepParts {
  /** Keys of each camera. */
  readonly cameras: readonly string[];
  /** The value of `ascent`; null leaves it out. */
  readonly ascent?: string | null;
  /** Text of way.csv. */
  readonly way?: string;
  /** Further keys of `vehicle`. */
  readonly vehicle?: string;
  readonly place?: string;
  readonly more?: string;
  readonly defaults?: string;
}

/** A pad on the 45th parallel and the meridian, in UTC, so that noon is noon. */
export const PAD = { latitudeDeg: 45, longitudeDeg: 0, heightM: 20 };
const PLACE = "latitude: 45, longitude: 0, height: 20";
/** Foot 5 m above the pad datum; 40 m long. */
const VEHICLE = "height: 40, diameter: 3, base: 5, reflectance: 0.75";
export const FOOT_UP_M = 5;
export const LENGTH_M = 40;
const DEFAULTS =
  "medium: grain, lens: { stops: [2.8, 4, 5.6, 8, 11, 16, 22] }, filters: [0, 0.6, 0.9], gate: full-frame, rate: 96, shutter: { angle: [160, 80] }";
const MEDIA =
  "{ grain: { speed: 200, under: 3, over: 4, blur: 0.05 }, chip: { speed: 400, under: 5, over: 2.5 }, middling: { speed: 50, under: 0.9, over: 0.9 }, narrow: { speed: 50, under: 0.5, over: 0.5 }, thin: { speed: 50, under: 0.2, over: 0.2 } }";

export function sweepSite(parts: SweepParts): Site {
  const ascent = parts.ascent === undefined ? "way.csv" : parts.ascent;
  const lines = [
    `site: { name: Plover Ness, zone: UTC, ${parts.place ?? PLACE} }`,
    `vehicle: { ${VEHICLE}${ascent === null ? "" : `, ascent: ${ascent}`}${parts.vehicle ? `, ${parts.vehicle}` : ""} }`,
    `media: ${MEDIA}`,
    `defaults: { ${parts.defaults ?? DEFAULTS} }`,
    "cameras:",
    ...parts.cameras.map((keys) => `  - { ${keys} }`),
    ...(parts.more ? [parts.more] : []),
  ];
  return parseSite(`${lines.join("\n")}\n`, { "way.csv": parts.way ?? CLIMB.table });
}

/** A tracker at a bearing and range from the pad, two metres above its datum. */
export const tracking = (
  id: string,
  bearing: number,
  range: number,
  more = "lens: { focal: 800 }",
  track = "part: middle",
): string => `id: ${id}, at: { bearing: ${bearing}, range: ${range}, up: 2 }, track: { ${track} }, ${more}`;

/** Where a foot is after T-0: metres east, north and up of its place at rest. */
export type Way = (tPlusS: number) => readonly [number, number, number];

export const tableOf = (rows: readonly (readonly number[])[]): string =>
  ["t (s), east (m), north (m), up (m)", ...rows.map((row) => row.join(","))].join("\n");

/** A way given by formulas, and its table. */
function wayOf(way: Way, toS: number, everyS = 1): { way: Way; toS: number; table: string } {
  const count = Math.round(toS / everyS);
  const rows = Array.from({ length: count + 1 }, (_, i) => [i * everyS, ...way(i * everyS)]);
  return { way, toS, table: tableOf(rows) };
}

/** Up, then over to the east: 24 km high and 12 km out after 100 s. */
export const CLIMB = wayOf((t) => [0.012 * t ** 3, 0, 2.4 * t * t], 100);
/** Over to the north-west: 5 km high and as far out after a minute. */
export const LEAN = wayOf((t) => [-0.012 * t ** 3, 0.012 * t ** 3, 1.5 * t * t], 60);

/** Of a table of downrange and altitude: both at one speed from T+0 on, m/s. */
export const steady = (downrangeMS: number, altitudeMS: number, toS: number): string =>
  [
    "t_s,downrange_m,altitude_m",
    ...Array.from({ length: toS / 10 + 1 }, (_, i) =>
      [10 * i, 10 * i * downrangeMS, 10 * i * altitudeMS].join(","),
    ),
  ].join("\n");

/** At rest for a moment, away to the west and up, then level at 30 km, 1000 m/s due east over the pad at T+120 s. */
export const LEVEL_EAST: readonly AscentPoint[] = [
  [0, 0, 0],
  [20, -10_000, 7_500],
  [40, -20_000, 15_000],
  [60, -30_000, 22_500],
  [80, -40_000, 30_000],
  [90, -30_000, 30_000],
  [100, -20_000, 30_000],
  [110, -10_000, 30_000],
  [120, 0, 30_000],
  [130, 10_000, 30_000],
  [140, 20_000, 30_000],
].map(([tPlusS, eastM, upM]) => ({ tPlusS: tPlusS!, eastM: eastM!, northM: 0, upM: upM! }));

export const tableOfPoints = (points: readonly AscentPoint[]): string =>
  tableOf(points.map(({ tPlusS, eastM, northM, upM }) => [tPlusS, eastM, northM, upM]));

export const sweepOf = (site: Site, window: string, options: SweepOptions = {}, id = "T"): TrackerSweep =>
  sweepTracker(site, id, chooseWindow(site, window), options);

export const rowAt = ({ timeline }: TrackerSweep, tPlusS: number): SweepRow =>
  timeline.rows.find((row) => row.tPlusS === tPlusS)!;

export const plannedOf = (site: Site, window: string, options: PlanOptions = {}, id = "T"): CameraPlan =>
  planWindow(site, chooseWindow(site, window), options).cameras.find((camera) => camera.id === id)!;

/** A camera of a site as a plan makes it ready: for searches of the tests' own. */
export function preparedOf(
  site: Site,
  window: string,
  options: PlanOptions = {},
  id = "T",
): PreparedCamera & { readonly sweep: PreparedSweep } {
  const camera = site.cameras.find((one) => one.id === id)!;
  const scene = makeScene({ ...site, cameras: [camera] }, chooseWindow(site, window), options);
  const prepared = prepareCamera(shareScene(scene), camera);
  return { ...prepared, sweep: prepared.sweep! };
}

/** A site with one tracker, and what a test needs to work it by hand. */
export interface Bench {
  readonly site: Site;
  readonly window: string;
  readonly pad: Place;
  readonly camera: Place;
  readonly way: Way;
  readonly toS: number;
  /** Above the foot along the body. */
  readonly alongM: number;
  readonly gate: Omit<View, "azimuthDeg" | "elevationDeg">;
  /** From the axis; without a hood none. */
  readonly cutoffDeg: number;
}

const FULL_FRAME = { gateWidthMm: 36, gateHeightMm: 24 };
const SOUTH = { latitudeDeg: -23.4, longitudeDeg: 10, heightM: 300 };

export const north = (window: string): Bench => ({
  site: sweepSite({ cameras: [tracking("T", 60, 2500, "lens: { focal: 300 }, keep: [sky]", "part: base")] }),
  window,
  pad: PAD,
  camera: placeFrom(PAD, 60, 2500, 2),
  way: CLIMB.way,
  toS: CLIMB.toS,
  alongM: 0,
  gate: { rollDeg: 0, focalMm: 300, ...FULL_FRAME },
  cutoffDeg: 180,
});
const HOODED = "lens: { focal: 200, hood: { length: 280, diameter: 40 } }, roll: 30, keep: [sky]";

/** Into the sunset: the camera stands in the east. */
export const sunset = (bearing: number, window: string): Bench => ({
  ...north(window),
  site: sweepSite({
    cameras: [tracking("T", bearing, 2500, "lens: { focal: 300 }, keep: [sky]", "part: base")],
  }),
  camera: placeFrom(PAD, bearing, 2500, 2),
});
export const south = (window: string): Bench => ({
  site: sweepSite({
    place: "latitude: -23.4, longitude: 10, height: 300",
    way: LEAN.table,
    cameras: [tracking("T", 60, 1500, HOODED, "part: nose")],
  }),
  window,
  pad: SOUTH,
  camera: placeFrom(SOUTH, 60, 1500, 2),
  way: LEAN.way,
  toS: LEAN.toS,
  alongM: LENGTH_M,
  gate: { rollDeg: 30, focalMm: 200, ...FULL_FRAME },
  cutoffDeg: (Math.atan(40 / 280) * 180) / Math.PI,
});

/** Along the flight from 30 m/s on, upright below 10, smoothly between (the ascent's rule). */
function bodyAxis(way: Way, tPlusS: number): readonly number[] {
  const [a, b] = [way(Math.max(0, tPlusS - 0.01)), way(tPlusS + 0.01)];
  const speeds = a.map((value, k) => (b[k]! - value) / (tPlusS < 0.01 ? tPlusS + 0.01 : 0.02));
  const speed = Math.hypot(...speeds);
  const x = Math.min(1, Math.max(0, (speed - 10) / 20));
  const share = x * x * (3 - 2 * x);
  const mixed = speeds.map((value, k) => (share * value) / Math.max(speed, 1e-9) + (k === 2 ? 1 - share : 0));
  return mixed.map((value) => value / Math.hypot(...mixed));
}

/** Where the tracker looks, by the library's public functions. */
export function viewAt({ pad, camera, way, alongM, gate }: Bench, tPlusS: number): View {
  const axis = alongM === 0 ? [0, 0, 1] : bodyAxis(way, tPlusS);
  const [east, north, up] = way(tPlusS).map((value, k) => value + alongM * axis[k]!) as [
    number,
    number,
    number,
  ];
  const bearingDeg = (Math.atan2(east, north) * 180) / Math.PI;
  const { azimuthDeg, elevationDeg } = lookAt(
    camera,
    placeFrom(pad, bearingDeg, Math.hypot(east, north), up + FOOT_UP_M),
  );
  return { ...gate, azimuthDeg, elevationDeg };
}
