/**
 * A rocket without gravity: Tsiolkovsky's equation (1903; any textbook of astronautics), dv = c ln(m0 / m), and its integral,
 * the way: s = c t - (c / q)(1 - q t) ln(1 / (1 - q t)), with c the speed of the exhaust and q the share burned per second.
 */

import { expect, test } from "vitest";
import { makeAscentPath, type Triple } from "../../src/view/ascentPath.ts";
import { poweredAscent } from "../../src/view/poweredAscent.ts";
import { compare } from "../support/compare.ts";

const G0 = 9.80665;
const CASES = [
  { thrustToWeight: 1.2, massFlowPerS: 0.004, burnS: 150 },
  { thrustToWeight: 1.35, massFlowPerS: 0.0045, burnS: 120 },
  { thrustToWeight: 2.2, massFlowPerS: 0.0088, burnS: 80 },
  { thrustToWeight: 3, massFlowPerS: 0.01, burnS: 60 },
];

const flown = CASES.map(({ thrustToWeight, massFlowPerS, burnS }) => {
  const pitch = [{ tPlusS: 0, pitchDeg: 90 }];
  const flight = { latitudeDeg: 0, headingDeg: 0, thrustToWeight, massFlowPerS, burnS, pitch };
  const points = poweredAscent(flight, { gravity: false, turn: false });
  const exhaustMS = (thrustToWeight * G0) / massFlowPerS;
  const velocity: Triple = [0, 0, 0];
  makeAscentPath(points).velocityInto(burnS, velocity);
  const leftShare = 1 - massFlowPerS * burnS;
  const name = `thrust over weight ${thrustToWeight}`;
  return {
    speed: { name, found: velocity[2], expected: exhaustMS * Math.log(1 / leftShare) },
    way: {
      name,
      found: points.at(-1)!.upM,
      expected: exhaustMS * burnS - (exhaustMS / massFlowPerS) * leftShare * Math.log(1 / leftShare),
    },
    points,
  };
});

test("speed at the end of the burn", () => {
  compare(
    "rocket equation, speed",
    flown.map(({ speed }) => speed),
  );
});

test("way to the end of the burn", () => {
  compare(
    "rocket equation, way",
    flown.map(({ way }) => way),
  );
});

test("the path ends with the burn and goes nowhere but up", () => {
  flown.forEach(({ points }, i) => {
    expect(points.at(-1)!.tPlusS).toBeCloseTo(CASES[i]!.burnS, 9);
    for (const { eastM, northM } of points) expect(Math.hypot(eastM, northM)).toBeLessThan(1e-9);
  });
});
