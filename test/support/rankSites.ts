/**
 * Random invented sites for ranking: any latitude, cameras of every kind, trackers with an ascent to follow and without, structures
 * that shade the body and hide the sun, skylines, corrections, floodlights, moved thresholds.
 */

import type { Instant } from "../../src/plan/instants.ts";
import type { RankView } from "../../src/plan/rank/wellLit.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";
import { seenBy } from "../../src/view/sunInFrame.ts";
import type { Random } from "./random.ts";

const KEEPS = [
  "[body]",
  "[body, plume]",
  "[body, sky]",
  "[body, deck]",
  "[plume]",
  "[sky, deck]",
  "[plume, deck]",
  "[body, plume, sky, deck]",
];
/** The last is dimmer than a body in the sun: then what the plume adds to the body decides. */
const PLUMES = [
  "propellant: kerolox",
  "propellant: hydrolox",
  "propellant: solid",
  "luminance: 90000",
  "luminance: 6000",
];
const LENSES = [
  "focal: 12",
  "focal: 35",
  "focal: 85",
  "focal: 400",
  "focal: 50, hood: { length: 60, diameter: 70 }",
];

const oneOf = <One>(random: Random, ones: readonly One[]): One => ones[random.whole(0, ones.length - 1)]!;
const numberOf = (random: Random, low: number, high: number, digits = 3): string =>
  random.between(low, high).toFixed(digits);
/** A line of the file, or none. */
const sometimes = (random: Random, share: number, lines: () => readonly string[]): readonly string[] =>
  random.next() < share ? lines() : [];

export function randomRankSite(random: Random, cameras = 8): Site {
  const pick = <One>(ones: readonly One[]): One => oneOf(random, ones);
  const number = (low: number, high: number, digits = 3): string => numberOf(random, low, high, digits);
  const medium = (): string =>
    `speed: ${pick([50, 200, 800])}, under: ${number(0.5, 5, 1)}, over: ${number(0.5, 5, 1)}`;
  const bearingsDeg = Array.from({ length: cameras }, () => random.between(0, 360));
  const flame = random.next() < 0.5 ? `, length: ${number(2, 80, 0)}, width: ${number(1, 8, 1)}` : "";
  const ascent = ascentOf(random);
  const lines = [
    `site: { name: Random Ness, zone: UTC, latitude: ${number(-75, 75)}, longitude: ${number(-180, 180)}, height: ${number(0, 1500, 0)}, ground: ${number(0.05, 0.8)} }`,
    `vehicle: { height: 45, diameter: 4, base: 5, reflectance: ${number(0.2, 0.9)}, plume: { ${pick(PLUMES)}${flame} }${ascent.key} }`,
    `media: { one: { ${medium()} }, two: { ${medium()} } }`,
    "defaults: { lens: { stops: [2.8, 5.6, 8, 11, 16] }, filters: [0, 0.6], gate: full-frame, rate: 100, shutter: { angle: [160, 40] } }",
    `settings: { lit: ${number(0.2, 0.8)}, spare: ${number(-0.5, 0.7)}, best: ${number(0.6, 1)}, flare: ${number(0, 12)}, shaded: ${number(0, 1)}, cover: ${number(0, 1)} }`,
    ...sometimes(random, 0.4, () => [`floodlights: { ${floodlights(random)} }`]),
    ...sometimes(random, 0.3, () => [
      `corrections: { sky: { clear: ${number(-1, 1)} }, cameras: { R1: ${number(-1, 1)} } }`,
    ]),
    ...sometimes(random, 0.3, () => [`horizon: ${skyline(random)}`]),
    ...sometimes(random, 0.6, () => structures(random, bearingsDeg)),
    "cameras:",
    ...bearingsDeg.map((bearingDeg, i) => {
      const setting = random.between(0, 1) < 0.1 ? "" : `, medium: ${pick(["one", "two"])}`;
      const where = `at: { bearing: ${bearingDeg.toFixed(1)}, range: ${pick([number(60, 300, 0), number(300, 30_000, 0)])}, up: ${number(0, 60, 0)} }`;
      const aim = random.next() < TRACKERS ? trackOf(random) : `aim: { up: ${number(0, 60, 0)} }`;
      return `  - { id: R${i}, ${where}, ${aim}, lens: { ${pick(LENSES)} }, keep: ${pick(KEEPS)}, roll: ${pick(["0", "90", number(-180, 180, 0)])}, weight: ${pick(["1", "2", "0.5"])}${setting} }`;
    }),
  ];
  return parseSite(`${lines.join("\n")}\n`, ascent.files);
}

/** Share of the cameras that follow the vehicle. */
const TRACKERS = 0.3;

const trackOf = (random: Random): string => {
  const what = oneOf(random, [
    "part: nose",
    "part: middle",
    "part: lower-half",
    `up: ${numberOf(random, 0, 45, 0)}`,
  ]);
  return `track: { ${[what, ...sometimes(random, 0.4, () => [`offset: ${numberOf(random, -0.4, 0.4, 2)}`])].join(", ")} }`;
};

/** Straight up, over a usual or a short burn, along a small table, or none. */
function ascentOf(random: Random): { key: string; files: Readonly<Record<string, string>> } {
  const kind = oneOf(random, ["none", "up", "turning", "turning", "table", "table"]);
  if (kind === "none") return { key: "", files: {} };
  if (kind === "table") return { key: ", ascent: climb.csv", files: { "climb.csv": climbTable(random) } };
  const heading = kind === "turning" ? `, heading: ${numberOf(random, 0, 359, 0)}` : "";
  const thrust = numberOf(random, 1.15, 2, 2);
  return {
    key: `, ascent: { thrustToWeight: ${thrust}${heading}, burn: ${random.whole(20, 150)} }`,
    files: {},
  };
}

/** A climb of one to four minutes that bends over to any side, in steps of several seconds. */
function climbTable(random: Random): string {
  const bearingRad = random.between(0, 2 * Math.PI);
  const upMS2 = random.between(3, 12);
  const bend = random.between(0, 0.02);
  const stepS = random.between(4, 12);
  const rows = Array.from({ length: random.whole(10, 20) }, (_, i) => {
    const tS = i * stepS;
    const upM = (upMS2 * tS * tS) / 2;
    const alongM = bend * upM * tS;
    return [tS, alongM * Math.sin(bearingRad), alongM * Math.cos(bearingRad), upM]
      .map((value) => value.toFixed(2))
      .join(",");
  });
  return `${["t_s,east_m,north_m,up_m", ...rows].join("\n")}\n`;
}

const floodlights = (random: Random): string =>
  [
    `illuminance: ${numberOf(random, 5, 5000, 0)}`,
    ...sometimes(random, 0.5, () => [`deck: ${numberOf(random, 1, 3000, 0)}`]),
  ].join(", ");

/** Low hills all round, or a ridge so high that the sun spends much of the day behind it. */
function skyline(random: Random): string {
  const highestDeg = oneOf(random, [2, 8, 30]);
  const points = random.whole(3, 9);
  const heights = Array.from({ length: points }, (_, i) => {
    const azimuthDeg = ((i + random.between(0.1, 0.9)) * 360) / points;
    return `[${azimuthDeg.toFixed(1)}, ${numberOf(random, -0.5, highestDeg, 1)}]`;
  });
  return `[${heights.join(", ")}]`;
}

function structures(random: Random, bearingsDeg: readonly number[]): readonly string[] {
  const count = random.whole(1, 4);
  return [
    "structures:",
    ...Array.from({ length: count }, (_, i) => `  - { name: S${i}, ${structure(random, bearingsDeg)} }`),
  ];
}

/** Anywhere near the pad, behind the body as a camera sees it, or around part of the body; no camera stands so near. */
function structure(random: Random, bearingsDeg: readonly number[]): string {
  const number = (low: number, high: number): string => numberOf(random, low, high, 1);
  const solidity = oneOf(random, ["1", "1", number(0.1, 0.9)]);
  const kind = oneOf(random, ["near", "behind", "around"]);
  if (kind === "around") {
    const wide =
      random.next() < 0.5 ? `diameter: ${number(5, 14)}` : `width: ${number(5, 14)}, depth: ${number(5, 14)}`;
    return `at: { bearing: 0, range: ${number(1, 3)} }, ${wide}, base: ${number(0, 30)}, height: ${number(5, 30)}, solidity: ${solidity}`;
  }
  const bearingDeg =
    kind === "near"
      ? random.between(0, 360)
      : (oneOf(random, bearingsDeg) + 180 + random.between(-15, 15)) % 360;
  const farM = random.between(8, 30);
  const shape =
    random.next() < 0.4
      ? `diameter: ${number(1, farM)}`
      : `width: ${number(1, farM)}, depth: ${number(1, farM)}, turn: ${number(0, 180)}`;
  const foot = oneOf(random, ["0", number(0, 40)]);
  return `at: { bearing: ${bearingDeg.toFixed(1)}, range: ${farM.toFixed(1)} }, ${shape}, base: ${foot}, height: ${number(5, 90)}, solidity: ${solidity}`;
}

/** A window somewhere in 2027, one hour to a day long. */
export function randomWindow(random: Random): { name: null; opens: Date; closes: Date } {
  const opensMs = Date.UTC(2027, 0, 1) + Math.round(random.between(0, 364 * 24 * 60)) * 60_000;
  const lengthMs = Math.round(random.between(60, 24 * 60)) * 60_000;
  return { name: null, opens: new Date(opensMs), closes: new Date(opensMs + lengthMs) };
}

const DAY_MS = 86_400_000;
/** A full moon of early 2027 and the mean time from one to the next: good to a day, and no test leans on more. */
const FULL_MOON_MS = Date.UTC(2027, 0, 22, 12);
const MONTH_DAYS = 29.53;

/** One to four hours about a site's midnight, every other time of a night about full moon. */
export function randomNight(random: Random, { place }: Site): { name: null; opens: Date; closes: Date } {
  const day =
    random.next() < 0.5
      ? (FULL_MOON_MS - Date.UTC(2027, 0, 1)) / DAY_MS + random.whole(0, 11) * MONTH_DAYS
      : random.between(1, 363);
  const midnightMs = Date.UTC(2027, 0, 1) + Math.round(day) * DAY_MS - (place.longitudeDeg / 360) * DAY_MS;
  const opensMs = Math.round((midnightMs - random.between(0.5, 2) * 3_600_000) / 60_000) * 60_000;
  return {
    name: null,
    opens: new Date(opensMs),
    closes: new Date(opensMs + random.whole(60, 240) * 60_000),
  };
}

/** Whether a tracker's axis at T+0 is clear of the sun: what it loses to the sun then is lost on its sweep. */
export const isOfSweepAlone = ({ sweep, flare, axes, view }: RankView, { sample }: Instant): boolean =>
  sweep !== null && flare(seenBy(axes, sample, view.air)) >= 0;
