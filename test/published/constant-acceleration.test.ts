/**
 * Closed forms of mechanics for a flight straight up with no mass burned (any textbook): s = a t^2 / 2; the energy in a field
 * that falls off with the square of the distance; the drift to the west on a turning Earth, -omega cos(latitude) a t^3 / 3.
 */

import { test } from "vitest";
import type { AscentPoint } from "../../src/site/types.ts";
import { makeAscentPath, type Triple } from "../../src/view/ascentPath.ts";
import { poweredAscent } from "../../src/view/poweredAscent.ts";
import { compare } from "../support/compare.ts";

const G0 = 9.80665;
const RADIUS_M = 6_371_008.77;
/** Of the Earth under the stars (IERS Conventions 2010). */
const TURN_RAD_S = 7.292115e-5;

const straightUp = (thrustToWeight: number, burnS: number, latitudeDeg = 45) => ({
  ...{ latitudeDeg, headingDeg: 0, thrustToWeight, massFlowPerS: 0, burnS },
  pitch: [{ tPlusS: 0, pitchDeg: 90 }],
});

test("the first seconds: half the acceleration times the square of the time", () => {
  const samples = [1.2, 1.5, 2.2].flatMap((thrustToWeight) => {
    const path = makeAscentPath(poweredAscent(straightUp(thrustToWeight, 12), { turn: false }));
    const at: Triple = [0, 0, 0];
    return [1, 2.2, 5, 10].map((tPlusS) => {
      path.positionInto(tPlusS, at);
      const expected = ((thrustToWeight - 1) * G0 * tPlusS ** 2) / 2;
      return { name: `thrust over weight ${thrustToWeight} at ${tPlusS} s`, found: at[2], expected };
    });
  });
  compare("constant acceleration", samples);
});

test("high up: thrust times height is the energy of speed and height", () => {
  const samples = [1.2, 1.5, 2.2].map((thrustToWeight) => {
    const points = poweredAscent(straightUp(thrustToWeight, 150), { turn: false });
    const velocity: Triple = [0, 0, 0];
    makeAscentPath(points).velocityInto(150, velocity);
    const heightM = points.at(-1)!.upM;
    const gained = thrustToWeight * G0 * heightM - (G0 * RADIUS_M * heightM) / (RADIUS_M + heightM);
    return { name: `${thrustToWeight}`, found: velocity[2], expected: Math.sqrt(2 * gained) };
  });
  compare("energy of a climb", samples);
});

test("the turning Earth leaves the vehicle behind to the west", () => {
  const samples = [0, 45, -60].map((latitudeDeg) => {
    const end = poweredAscent(straightUp(1.5, 20, latitudeDeg)).at(-1)!;
    const cosine = Math.cos((latitudeDeg * Math.PI) / 180);
    const expected = (-TURN_RAD_S * cosine * 0.5 * G0 * 20 ** 3) / 3;
    return { name: `latitude ${latitudeDeg}`, found: end.eastM, expected };
  });
  compare("drift of a climb", samples);
});

test("without gravity, a level thrust: to the right of its way in the north, to the left in the south", () => {
  const samples = [45, -30].flatMap((latitudeDeg) => {
    const bent = (TURN_RAD_S * Math.sin((latitudeDeg * Math.PI) / 180) * 1.5 * G0 * 20 ** 3) / 3;
    const endOf = (headingDeg: number) => {
      const pitch = [{ tPlusS: 0, pitchDeg: 0 }];
      return poweredAscent({ ...straightUp(1.5, 20, latitudeDeg), headingDeg, pitch }, { gravity: false }).at(
        -1,
      )!;
    };
    return [
      { name: `north at ${latitudeDeg}`, found: endOf(0).eastM, expected: bent },
      { name: `east at ${latitudeDeg}`, found: endOf(90).northM, expected: -bent },
      { name: `way east at ${latitudeDeg}`, found: endOf(90).eastM, expected: (1.5 * G0 * 20 ** 2) / 2 },
    ];
  });
  compare("drift of a level flight", samples);
});

test("without gravity and turn, a level thrust follows the curve of the Earth: down by a^2 t^4 / (24 R)", () => {
  const samples = [0, 123, 260].map((headingDeg) => {
    const pitch = [{ tPlusS: 0, pitchDeg: 0 }];
    const flight = { ...straightUp(1.5, 60), headingDeg, pitch };
    const found = poweredAscent(flight, { gravity: false, turn: false }).at(-1)!.upM;
    return {
      name: `heading ${headingDeg}`,
      found,
      expected: (-((1.5 * G0) ** 2) * 60 ** 4) / (24 * RADIUS_M),
    };
  });
  compare("level thrust on a sphere", samples);
});

test("a path through rows of a parabola is the parabola", () => {
  const points = Array.from(
    { length: 21 },
    (_, i): AscentPoint => ({ tPlusS: i, eastM: 0, northM: -(i ** 2) / 2, upM: 1.7 * i ** 2 }),
  );
  const path = makeAscentPath(points);
  const [at, velocity]: [Triple, Triple] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  const samples = [0.1, 0.5, 3.3, 9.99, 15, 19.7, 20].flatMap((tPlusS) => {
    path.positionInto(tPlusS, at);
    path.velocityInto(tPlusS, velocity);
    return [
      { name: `up at ${tPlusS}`, found: at[2], expected: 1.7 * tPlusS ** 2 },
      { name: `north at ${tPlusS}`, found: at[1], expected: -(tPlusS ** 2) / 2 },
      { name: `rising at ${tPlusS}`, found: velocity[2], expected: 3.4 * tPlusS },
      { name: `northward at ${tPlusS}`, found: velocity[1], expected: -tPlusS },
    ];
  });
  compare("path through a parabola", samples);
});
