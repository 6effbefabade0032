/** The skyline: elevation by interpolation by hand, sign, slope, and distance against a fine walk along it. */

import { expect, test } from "vitest";
import { angleBetweenDeg, fromAzimuthElevation, type Vec3 } from "../../src/base/vector.ts";
import type { HorizonPoint } from "../../src/site/types.ts";
import { FARTHEST_DEG, skylineOf } from "../../src/view/skyline.ts";
import { makeRandom, type Random } from "../support/random.ts";

/** Two to twelve points, some masks high, some with steep steps; the lowest at `lowest` times the highest. */
function pointsOf(random: Random, lowest: number): HorizonPoint[] {
  const highest = [3, 10, 30, 60][random.whole(0, 3)]!;
  const azimuths = Array.from({ length: random.whole(2, 12) }, () => random.between(0, 360));
  if (random.next() < 0.3) azimuths.push((azimuths[0]! + 0.01) % 360);
  return azimuths
    .sort((a, b) => a - b)
    .map((azimuthDeg) => ({ azimuthDeg, elevationDeg: random.between(lowest, 1) * highest }));
}

/** Straight between neighbours, by hand: the points laid out over three turns, so that north is nothing special. */
function byHand(points: readonly HorizonPoint[], azimuthDeg: number): number {
  const turns = [-360, 0, 360].flatMap((turn) =>
    points.map((p) => [p.azimuthDeg + turn, p.elevationDeg] as const),
  );
  for (let i = 1; i < turns.length; i++) {
    const [[x0, y0], [x1, y1]] = [turns[i - 1]!, turns[i]!];
    if (azimuthDeg >= x0 && azimuthDeg <= x1)
      return Math.max(0, y0 + ((y1 - y0) * (azimuthDeg - x0)) / (x1 - x0));
  }
  return Number.NaN;
}

function manySkylines(lowest: number): HorizonPoint[][] {
  const random = makeRandom(20_270_418);
  return Array.from({ length: 30 }, () => pointsOf(random, lowest)).filter((p) => skylineOf(p) !== null);
}
const SKYLINES = manySkylines(0);

test("elevations, across north too", () => {
  const random = makeRandom(1);
  for (const points of [...SKYLINES, ...manySkylines(-0.5)]) {
    const skyline = skylineOf(points)!;
    const azimuths = [0, 1e-9, 359.999999, 0.25, 359.75, ...points.map((p) => p.azimuthDeg)];
    for (const azimuthDeg of [...azimuths, ...Array.from({ length: 40 }, () => random.between(0, 360))])
      expect(skyline.elevationDeg(azimuthDeg)).toBeCloseTo(byHand(points, azimuthDeg), 9);
  }
});

interface Walk {
  readonly azimuthsDeg: readonly number[];
  readonly points: readonly Vec3[];
}

/** The skyline every 0.05 degree of azimuth, and up and down every steep step. */
function walkAlong(points: readonly HorizonPoint[]): Walk {
  const azimuthsDeg: number[] = [];
  for (let i = 0; i < 7200; i++) azimuthsDeg.push(i / 20);
  points.forEach(({ azimuthDeg }, i) => {
    const nextDeg = points[i + 1]?.azimuthDeg ?? azimuthDeg;
    for (let k = 0; k <= 400 && nextDeg - azimuthDeg < 0.1; k++)
      azimuthsDeg.push(azimuthDeg + ((nextDeg - azimuthDeg) * k) / 400);
  });
  return { azimuthsDeg, points: azimuthsDeg.map((deg) => fromAzimuthElevation(deg, byHand(points, deg))) };
}

test("distances against a fine walk, and the sign", () => {
  const random = makeRandom(2);
  let [worst, count] = [0, 0];
  for (const points of SKYLINES) {
    const skyline = skylineOf(points)!;
    const walk = walkAlong(points);
    for (let i = 0; i < 6; i++) {
      const azimuthDeg = random.between(0, 360);
      const aboveDeg = random.between(-1, 1) ** 3 * 25;
      const elevationDeg = Math.max(-20, Math.min(89, byHand(points, azimuthDeg) + aboveDeg));
      const direction = fromAzimuthElevation(azimuthDeg, elevationDeg);
      const walkedDeg = Math.min(
        FARTHEST_DEG,
        ...walk.points.map((point) => angleBetweenDeg(point, direction)),
      );
      const found = skyline.fromEdgeDeg(direction);
      const says = `azimuth ${azimuthDeg}, elevation ${elevationDeg}, ${JSON.stringify(points)}`;
      if (Math.abs(elevationDeg - byHand(points, azimuthDeg)) > 1e-9)
        expect(found < 0, says).toBe(elevationDeg < byHand(points, azimuthDeg));
      expect(Math.abs(found), says).toBeGreaterThan(walkedDeg - 0.1);
      // A walk is never nearer than the skyline: what is found beyond it is the view's own error.
      worst = Math.max(worst, Math.abs(found) - walkedDeg);
      count++;
    }
  }
  process.stdout.write(
    `  skyline: n ${count}, found at most ${worst.toFixed(5)} degree farther than the walk\n`,
  );
  // Cliffs of 10 degrees in half a degree of azimuth are 0.007 off their great circle; gentle slopes 0.001.
  expect(worst).toBeLessThan(0.012);
});

test("no two directions differ by more than the angle between them", () => {
  const random = makeRandom(3);
  let [capped, steepest] = [0, 0];
  for (const points of SKYLINES) {
    const skyline = skylineOf(points)!;
    for (let i = 0; i < 200; i++) {
      const azimuthDeg = random.between(0, 360);
      const elevationDeg = Math.min(89, byHand(points, azimuthDeg) + random.between(-20, 20));
      const awayDeg = 10 ** random.between(-3, 1.5);
      const one = fromAzimuthElevation(azimuthDeg, elevationDeg);
      const up = Math.max(-89, Math.min(90, elevationDeg + random.between(-1, 1) * awayDeg));
      const other = fromAzimuthElevation(azimuthDeg + random.between(-1, 1) * awayDeg, up);
      const [a, b] = [skyline.fromEdgeDeg(one), skyline.fromEdgeDeg(other)];
      const apartDeg = angleBetweenDeg(one, other);
      if ((a === FARTHEST_DEG) !== (b === FARTHEST_DEG)) capped++;
      const says = `${azimuthDeg}, ${elevationDeg}: ${a}, ${b} ${apartDeg} apart, ${JSON.stringify(points)}`;
      // Great circles for straight stretches: 0.001 degree.
      expect(Math.abs(a - b), says).toBeLessThan(apartDeg + 0.002);
      if (apartDeg > 0.5) steepest = Math.max(steepest, Math.abs(a - b) / apartDeg);
    }
  }
  process.stdout.write(`  skyline: steepest slope ${steepest.toFixed(5)}, ${capped} pairs across the cap\n`);
  expect(capped).toBeGreaterThan(100);
  expect(steepest).toBeGreaterThan(0.95);
});
