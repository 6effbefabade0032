/** Random invented sites for ranking: any latitude, cameras of every kind, corrections, floodlights, moved thresholds. */

import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";
import type { Random } from "./random.ts";

const KEEPS = [
  "[body]",
  "[body, plume]",
  "[body, sky]",
  "[body, deck]",
  "[plume]",
  "[sky, deck]",
  "[body, plume, sky, deck]",
];
const PLUMES = [
  "{ propellant: kerolox }",
  "{ propellant: hydrolox }",
  "{ propellant: solid }",
  "{ luminance: 90000 }",
];
const LENSES = [
  "focal: 12",
  "focal: 35",
  "focal: 85",
  "focal: 400",
  "focal: 50, hood: { length: 60, diameter: 70 }",
];

export function randomRankSite(random: Random, cameras = 8): Site {
  const pick = <One>(ones: readonly One[]): One => ones[Math.floor(random.between(0, ones.length))]!;
  const number = (low: number, high: number, digits = 3): string => random.between(low, high).toFixed(digits);
  const medium = (): string =>
    `speed: ${pick([50, 200, 800])}, under: ${number(0.5, 5, 1)}, over: ${number(0.5, 5, 1)}`;
  const lines = [
    `site: { name: Random Ness, zone: UTC, latitude: ${number(-75, 75)}, longitude: ${number(-180, 180)}, height: ${number(0, 1500, 0)}, ground: ${number(0.05, 0.8)} }`,
    `vehicle: { height: 45, diameter: 4, base: 5, reflectance: ${number(0.2, 0.9)}, plume: ${pick(PLUMES)}, ascent: { thrustToWeight: 1.4 } }`,
    `media: { one: { ${medium()} }, two: { ${medium()} } }`,
    "defaults: { lens: { stops: [2.8, 5.6, 8, 11, 16] }, filters: [0, 0.6], gate: full-frame, rate: 100, shutter: { angle: [160, 40] } }",
    `settings: { lit: ${number(0.2, 0.8)}, spare: ${number(-0.5, 0.7)}, best: ${number(0.6, 1)}, flare: ${number(0, 12)} }`,
    ...(random.between(0, 1) < 0.3 ? [`floodlights: { illuminance: ${number(5, 5000, 0)} }`] : []),
    ...(random.between(0, 1) < 0.3
      ? [`corrections: { sky: { clear: ${number(-1, 1)} }, cameras: { R1: ${number(-1, 1)} } }`]
      : []),
    "cameras:",
    ...Array.from({ length: cameras }, (_, i) => {
      const setting = random.between(0, 1) < 0.1 ? "" : `, medium: ${pick(["one", "two"])}`;
      const where = `at: { bearing: ${number(0, 360, 1)}, range: ${pick([number(20, 300, 0), number(300, 30_000, 0)])}, up: ${number(0, 60, 0)} }`;
      return `  - { id: R${i}, ${where}, aim: { up: ${number(0, 60, 0)} }, lens: { ${pick(LENSES)} }, keep: ${pick(KEEPS)}, roll: ${pick(["0", "90", number(-180, 180, 0)])}, weight: ${pick(["1", "2", "0.5"])}${setting} }`;
    }),
  ];
  return parseSite(`${lines.join("\n")}\n`);
}

/** A window somewhere in 2027, one hour to a day long. */
export function randomWindow(random: Random): { name: null; opens: Date; closes: Date } {
  const opensMs = Date.UTC(2027, 0, 1) + Math.round(random.between(0, 364 * 24 * 60)) * 60_000;
  const lengthMs = Math.round(random.between(60, 24 * 60)) * 60_000;
  return { name: null, opens: new Date(opensMs), closes: new Date(opensMs + lengthMs) };
}
