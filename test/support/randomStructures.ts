/** Random structures, written as a user would write them. */

import type { Random } from "./random.ts";

/** The pad of `test/plan/sites.ts`: metres of one degree of latitude and longitude there, to 0.1 %. */
const METRES_PER_DEG = [111_132, 78_847] as const;

const oneOf = <T>(random: Random, values: readonly T[]): T => values[random.whole(0, values.length - 1)]!;

/** Nearer than `leastM` to the pad's middle none stands. */
export function randomStructure(random: Random, name: string, leastM = 8): string {
  const farM = leastM * 50 ** random.next();
  const bearingDeg = random.between(0, 360);
  const isRound = random.next() < 0.4;
  const size = (): string => random.between(0.2, Math.min(60, farM / 2)).toFixed(2);
  const shape = isRound
    ? `diameter: ${size()}`
    : `width: ${size()}, depth: ${size()}, turn: ${random.between(-360, 360).toFixed(1)}`;
  const base = oneOf(random, ["0", "0", random.between(1, 60).toFixed(1), random.between(-20, 0).toFixed(1)]);
  const height = random.between(3, 40 + farM / 2).toFixed(1);
  const solidity = oneOf(random, ["1", "1", "1", random.between(0.05, 0.95).toFixed(2)]);
  const at =
    random.next() < 0.3 ? atCoordinates(bearingDeg, farM, random) : atBearing(bearingDeg, farM, random);
  return `{ name: ${name}, at: ${at}, ${shape}, base: ${base}, height: ${height}, solidity: ${solidity} }`;
}

const atBearing = (bearingDeg: number, farM: number, random: Random): string =>
  `{ bearing: ${bearingDeg.toFixed(2)}, range: ${farM.toFixed(2)}, up: ${random.between(-3, 3).toFixed(2)} }`;

function atCoordinates(bearingDeg: number, farM: number, random: Random): string {
  const rad = (bearingDeg * Math.PI) / 180;
  const latitude = 45 + (farM * Math.cos(rad)) / METRES_PER_DEG[0];
  const longitude = (farM * Math.sin(rad)) / METRES_PER_DEG[1];
  return `{ latitude: ${latitude.toFixed(8)}, longitude: ${longitude.toFixed(8)}, height: ${random.between(17, 23).toFixed(2)} }`;
}
