/**
 * The plume's lamp against the inverse-square and cosine laws, the closed form for a disc on its axis, and luminous shapes added
 * up element by element (Lambert's law; no closed form was used for those).
 */

import { expect, test } from "vitest";
import { lampFaceLxPerCdM2 } from "../../src/light/plumeLamp.ts";
import { compare, type Sample } from "../support/compare.ts";

/** Where the lamp's middle lies, in radii of the lamp: in front of the face's plane, and aside from its normal. */
type Position = readonly [inFront: number, aside: number];
const grid = (inFront: readonly number[], aside: readonly number[]): Position[] =>
  inFront.flatMap((s) => aside.map((t) => [s, t] as const));

/** A middle that bisects 0 to `end` into `count` equal steps. */
const middles = (count: number, end: number): number[] =>
  Array.from({ length: count }, (_, i) => ((i + 0.5) / count) * end);
const TURNS = middles(240, 2 * Math.PI);

/** A disc of radius 1 turned to the face's place, element by element; what lies behind the face's plane does not count. */
function turnedDisc([inFront, aside]: Position): number {
  const distance = Math.hypot(inFront, aside);
  let sum = 0;
  for (const share of middles(240, 1)) {
    for (const turn of TURNS) {
      const [leaning, across] = [Math.sqrt(share) * Math.cos(turn), Math.sqrt(share) * Math.sin(turn)];
      const height = inFront - leaning * (aside / distance);
      const farSquared = distance ** 2 + leaning ** 2 + across ** 2;
      // Both cosines, at the face and at the disc, over the square of the distance.
      if (height > 0) sum += (height * distance) / farSquared ** 2;
    }
  }
  return (sum * Math.PI) / 240 / TURNS.length;
}

/** The part of an upright circle of radius 1 that lies in front, its elements turned to the face's place one by one. */
function turnedElements([inFront, aside]: Position): number {
  const cells = 400;
  let sum = 0;
  for (const fromFoot of middles(cells, 2)) {
    const height = inFront - 1 + fromFoot;
    if (height <= 0) continue;
    for (const fromSide of middles(cells, 2)) {
      const across = fromSide - 1;
      if ((fromFoot - 1) ** 2 + across ** 2 <= 1)
        sum += height * (height ** 2 + across ** 2 + aside ** 2) ** -1.5;
    }
  }
  return (sum * 4) / cells ** 2;
}

/** A ball of radius 1: the cosines of the directions it takes up, those above the face's horizon, added up. */
function ball([inFront, aside]: Position): number {
  const distance = Math.hypot(inFront, aside);
  const smallest = Math.sqrt(1 - 1 / distance ** 2);
  let sum = 0;
  for (const share of middles(240, 1)) {
    const cosine = smallest + (1 - smallest) * share;
    const sine = Math.sqrt(1 - cosine ** 2);
    for (const turn of TURNS)
      sum += Math.max(0, (cosine * inFront + sine * Math.cos(turn) * aside) / distance);
  }
  return (sum * 2 * Math.PI * (1 - smallest)) / 240 / TURNS.length;
}

/** In stops, so that a lamp twice too bright is 1 off. */
const inStops = (positions: readonly Position[], truth: (position: Position) => number): Sample[] =>
  positions.map((position) => ({
    name: `${position[0]} in front, ${position[1]} aside`,
    found: Math.log2(lampFaceLxPerCdM2(1, ...position)),
    expected: Math.log2(truth(position)),
  }));

test("on its axis: pi r^2 / (d^2 + r^2) of a disc, from contact with the half of the lamp outward", () => {
  for (const radiusM of [0.5, 10.7, 300]) {
    for (const d of [1, 1.5, 2, 5, 20, 100].map((radii) => radii * radiusM))
      expect(lampFaceLxPerCdM2(radiusM, d, 0)).toBeCloseTo(
        (Math.PI * radiusM ** 2) / (d ** 2 + radiusM ** 2),
        12,
      );
  }
});

test("beyond 15 radii twice the distance is a quarter of the light within 1 %, in any direction before the face", () => {
  for (const awayRadii of [15, 40, 200]) {
    for (const offDeg of [0, 20, 45, 70, 85]) {
      const cosine = Math.cos((offDeg * Math.PI) / 180);
      const sine = Math.sin((offDeg * Math.PI) / 180);
      const at = (radii: number): number => lampFaceLxPerCdM2(2, 2 * radii * cosine, 2 * radii * sine);
      expect(Math.abs(at(awayRadii) / at(2 * awayRadii) / 4 - 1)).toBeLessThan(0.01);
      // L A cos / d^2.
      const law = (Math.PI * 4 * cosine) / (2 * awayRadii) ** 2;
      expect(Math.abs(at(awayRadii) / law - 1)).toBeLessThan(0.01);
    }
  }
});

test("wholly in front of the face, it is a disc turned to it", () => {
  const positions = grid([1, 1.2, 1.5, 3, 8], [0, 0.3, 0.8, 1, 1.5, 3, 10, 30]);
  compare("lamp wholly in front, by elements", inStops(positions, turnedDisc));
});

const CLIPPED = [-0.8, -0.5, -0.17, 0, 0.28, 0.5, 0.8] as const;

test("cut by the face's plane, from a radius aside on: the part in front, its elements turned to the face", () => {
  compare(
    "lamp in part in front, by elements",
    inStops(grid(CLIPPED, [1, 1.2, 1.5, 2, 3, 5, 10]), turnedElements),
  );
});

test("other shapes with the same area to every side: a disc turned as a whole, and a ball, for body and deck", () => {
  const near = grid([-0.17, 0, 0.28, 0.5], [1.2, 1.5, 1.8]);
  const far = grid([-0.17, 0, 0.28, 0.5], [2, 3, 5, 10]);
  compare("lamp near by against a turned disc", inStops(near, turnedDisc));
  compare("lamp farther off against a turned disc", inStops(far, turnedDisc));
  compare("lamp near by against a ball", inStops(near, ball));
  compare("lamp farther off against a ball", inStops(far, ball));
  for (const { name, found, expected } of inStops([...near, ...far], ball))
    expect(found, name).toBeLessThan(expected);
});
