/**
 * What stands between a camera and the sun, against rays: the sign of a silhouette's measure, its slope, its depth, the
 * shares of the disc.
 */

import { expect, test } from "vitest";
import { add, angleBetweenDeg, cross, scale, unit, type Vec3 } from "../../src/base/vector.ts";
import { sunBehind } from "../../src/view/hiders.ts";
import { anyDirection, beside, type Looking, manyLookings, towardsCorner } from "../support/lookings.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { LEAST_ROUND, MOST_ROUND, meets } from "../support/rayCaster.ts";

const LOOKINGS = manyLookings(418, 320);

/** About the silhouette: towards it or near it, then a short walk to its border. */
function directionsOf(random: Random, looking: Looking, count: number, steps = 6): Vec3[] {
  const { hider } = looking;
  return Array.from({ length: count }, (_, n) => {
    let direction = towardsCorner(looking, random.whole(0, 7), random.between(0, 1.5));
    for (let i = 0; i < (n % 2) * steps; i++) {
      const other = beside(random, direction, 2 * Math.min(10, Math.abs(hider.fromEdgeDeg(direction))));
      if (Math.abs(hider.fromEdgeDeg(other)) < Math.abs(hider.fromEdgeDeg(direction))) direction = other;
    }
    return direction;
  });
}

/** Directions this near to a border may fall either way by rounding. */
const ROUNDING_DEG = 1e-6;
/** Up to here a site with the usual margin tells distances. */
const CAP_DEG = 3;

test("below zero where a ray meets the solid, and only there", () => {
  const random = makeRandom(20_270_418);
  let [looked, met, nearEdge] = [0, 0, 0];
  for (const looking of LOOKINGS) {
    const { hider, solid, from, turn, says } = looking;
    for (const direction of directionsOf(random, looking, 12)) {
      const edgeDeg = hider.fromEdgeDeg(direction);
      const isMet = (round: number): boolean => meets(solid, from, turn(direction), round);
      looked++;
      if (isMet(1)) met++;
      if (Math.abs(edgeDeg) < 1) nearEdge++;
      if (edgeDeg < -ROUNDING_DEG)
        expect(isMet(MOST_ROUND), `${edgeDeg} to ${direction}: ${says}`).toBe(true);
      if (edgeDeg > ROUNDING_DEG)
        expect(isMet(LEAST_ROUND), `${edgeDeg} to ${direction}: ${says}`).toBe(false);
    }
  }
  process.stdout.write(
    `  silhouettes: ${looked} rays, ${met} stopped, ${nearEdge} within a degree of a border\n`,
  );
  expect(met).toBeGreaterThan(looked / 10);
  expect(nearEdge).toBeGreaterThan(looked / 3);
});

test("no two directions differ by more than the angle between them", () => {
  const random = makeRandom(7);
  let [capped, steepest] = [0, 0];
  for (const looking of LOOKINGS) {
    const { hider, says } = looking;
    for (let i = 0; i < 20; i++) {
      const one = i % 2 === 0 ? anyDirection(random) : directionsOf(random, looking, 1)[0]!;
      const other = beside(random, one, 10 ** random.between(-3, 1.5));
      const [a, b] = [hider.fromEdgeDeg(one), hider.fromEdgeDeg(other)];
      if ((a === CAP_DEG) !== (b === CAP_DEG)) capped++;
      const apartDeg = angleBetweenDeg(one, other);
      expect(Math.abs(a - b), `${one} to ${other}: ${says}`).toBeLessThan(apartDeg + 1e-6);
      steepest = Math.max(steepest, (Math.abs(a - b) - 1e-6) / apartDeg);
    }
  }
  process.stdout.write(
    `  silhouettes: steepest slope ${steepest.toFixed(6)}, ${capped} pairs across the cap\n`,
  );
  expect(capped).toBeGreaterThan(100);
  expect(steepest).toBeGreaterThan(0.99);
});

/** The deepest direction that a walk uphill finds. */
function deepestDeg(random: Random, looking: Looking): number {
  const { hider, solid, from, turn } = looking;
  let best = towardsCorner(looking, 0, 0);
  for (let i = 0; i < 60; i++) {
    const other = beside(random, best, 60 / (1 + i));
    if (hider.fromEdgeDeg(other) < hider.fromEdgeDeg(best)) best = other;
  }
  for (let awayDeg = 10; awayDeg > 1e-4; awayDeg *= 0.8) {
    for (let i = 0; i < 3; i++) {
      const other = beside(random, best, awayDeg);
      if (hider.fromEdgeDeg(other) < hider.fromEdgeDeg(best)) best = other;
    }
  }
  const depthDeg = -hider.fromEdgeDeg(best);
  if (depthDeg > ROUNDING_DEG) expect(meets(solid, from, turn(best), MOST_ROUND)).toBe(true);
  return depthDeg;
}

test("no direction lies deeper than the depth that is told", () => {
  const random = makeRandom(11);
  let [tightest, found] = [Number.POSITIVE_INFINITY, 0];
  for (const looking of LOOKINGS) {
    const depthDeg = deepestDeg(random, looking);
    if (depthDeg <= 0.01) continue;
    found++;
    expect(looking.hider.mostDepthDeg, looking.says).toBeGreaterThanOrEqual(depthDeg - 1e-9);
    tightest = Math.min(tightest, looking.hider.mostDepthDeg / depthDeg);
  }
  process.stdout.write(
    `  silhouettes: told depth over found depth at least ${tightest.toFixed(4)}, n ${found}\n`,
  );
  expect(found).toBeGreaterThan(80);
});

test("shares of the disc, against 20,000 rays", () => {
  const random = makeRandom(3);
  let [worst, partly] = [0, 0];
  for (const looking of LOOKINGS) {
    const direction = directionsOf(random, looking, 2, 12)[1]!;
    if (partly === 110) break;
    if (direction[2] < 0 || Math.abs(looking.hider.fromEdgeDeg(direction)) > 0.26) continue;
    const sun = {
      direction,
      apparentElevationDeg: (Math.asin(direction[2]) * 180) / Math.PI,
      semidiameterDeg: 0.266,
    };
    const found = sunBehind([looking.hider], sun)[0]?.share ?? 0;
    const [least, most] = [shareByRays(looking, sun, LEAST_ROUND), shareByRays(looking, sun, MOST_ROUND)];
    const off = Math.max(found - most, least - found);
    expect(off, `${direction}: ${looking.says}`).toBeLessThan(0.012);
    worst = Math.max(worst, off);
    partly++;
  }
  process.stdout.write(
    `  shares of the disc: n ${partly}, worst ${(100 * worst).toFixed(2)} % of the disc\n`,
  );
  expect(partly).toBeGreaterThan(60);
});

/** A grid over the disc, about 20,000 rays inside it; circles of solids as wide as `round`. */
function shareByRays(
  { solid, from, turn }: Looking,
  { direction, semidiameterDeg }: Disc,
  round: number,
): number {
  const side = unit(cross(direction, [0, 0, 1]));
  const upper = cross(side, direction);
  const wide = Math.tan((semidiameterDeg * Math.PI) / 180);
  let [hits, rays] = [0, 0];
  for (let x = -1 + STEP / 2; x < 1; x += STEP) {
    for (let y = -1 + STEP / 2; y < 1; y += STEP) {
      if (x * x + y * y > 1) continue;
      rays++;
      const offset = add(scale(side, x * wide), scale(upper, y * wide));
      if (meets(solid, from, turn(add(direction, offset)), round)) hits++;
    }
  }
  return hits / rays;
}
const STEP = 0.0125;

interface Disc {
  readonly direction: Vec3;
  readonly semidiameterDeg: number;
}
