/**
 * How fast a foot that rises at constant acceleration a crosses the image of a level camera a distance D off, with the small-angle
 * rule b = f v t / D (image-geometry.test.ts): f sqrt(2 a h) (D / r) / r with r^2 = D^2 + h^2. Greatest at h = D / sqrt(3).
 */

import { expect, test } from "vitest";
import { makeCameraView } from "../../src/plan/cameraView.ts";
import { imageMotion } from "../../src/plan/motion.ts";
import type { AscentPoint } from "../../src/site/types.ts";
import { makeAscentPath } from "../../src/view/ascentPath.ts";
import { siteOf } from "../plan/sites.ts";
import { compare } from "../support/compare.ts";

const A = 4;
/** A minute and 7.2 km of the climb. */
const RISING = Array.from(
  { length: 61 },
  (_, i): AscentPoint => ({ tPlusS: i, eastM: 0, northM: 0, upM: (A * i * i) / 2 }),
);
const ascent = { path: makeAscentPath(RISING), kind: "parameters" as const, source: "a table", assumed: [] };

/** The foot of the body (5 m above the pad) stands level with the camera; the gate is 24 mm high. */
function motionOf(rangeM: number, elevationDeg: number, focalMm: number) {
  const at = `at: { bearing: 90, range: ${rangeM}, up: 5 }, azimuth: 270, elevation: ${elevationDeg}`;
  const site = siteOf({ cameras: [`id: C, ${at}, lens: { focal: ${focalMm} }`] });
  return imageMotion(ascent, site, makeCameraView(site, site.cameras[0]!));
}

const byRule = (rangeM: number, heightM: number, focalMm: number): number =>
  (focalMm * Math.sqrt(2 * A * heightM) * rangeM) / (rangeM ** 2 + heightM ** 2);

test("the fastest is where it leaves the gate, where the rule has its top, or where the climb is no longer followed", () => {
  const upperEdgeM = 400 * Math.tan(Math.atan(12 / 85));
  compare("motion across a level camera", [
    { name: "upper edge", found: motionOf(400, 0, 85)!.imageMmS, expected: byRule(400, upperEdgeM, 85) },
    { name: "top", found: motionOf(400, 30, 15)!.imageMmS, expected: byRule(400, 400 / Math.sqrt(3), 15) },
    { name: "5 km up", found: motionOf(20_000, 10, 20)!.imageMmS, expected: byRule(20_000, 5000, 20) },
  ]);
});

test("across and along the line of sight add up to the speed", () => {
  const motion = motionOf(400, 30, 15)!;
  expect(motion.rangeM).toBeCloseTo(400 / Math.cos(Math.PI / 6), -1);
  expect(motion.acrossMS / motion.speedMS).toBeCloseTo(Math.cos(Math.PI / 6), 2);
});

test("a foot that never comes into the gate has none", () => {
  expect(motionOf(400, -20, 85)).toBeNull();
  const site = siteOf({ cameras: ["id: C, azimuth: 270, lens: { focal: 85 }"] });
  expect(imageMotion(ascent, site, makeCameraView(site, site.cameras[0]!))).toBeNull();
  expect(imageMotion(null, site, makeCameraView(site, site.cameras[0]!))).toBeNull();
});
