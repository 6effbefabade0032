/** Lines at the antimeridian and the poles, and those that bend on a map. */

import { describe, expect, it } from "vitest";
import type { Place } from "../../src/base/place.ts";
import type { Vec3 } from "../../src/base/vector.ts";
import { partsOf } from "../../src/plan/map/cutShapes.ts";
import { metresAround as at } from "../support/metresAround.ts";

const linesOf = (pathM: readonly Vec3[], isFlat = true): Place[][] => {
  const parts = partsOf({ kind: "line", pathM, isFlat });
  if (parts.kind !== "lines") throw new Error(parts.kind);
  return parts.lines.map((line) => [...line]);
};

describe("a line", () => {
  it("over the antimeridian is two, cut where it crosses", () => {
    const lines = linesOf(
      at(10, 179.999, [
        [0, 0],
        [1000, 0],
      ]),
    );
    expect(lines).toHaveLength(2);
    expect(lines[0]!.at(-1)).toMatchObject({ longitudeDeg: 180, latitudeDeg: expect.closeTo(10, 5) });
    expect(lines[1]![0]).toMatchObject({ longitudeDeg: -180 });
    // A degree of longitude at 10 degrees of latitude: a cos 10 / sqrt(1 - e^2 sin^2 10) pi / 180 = 109,639 m on WGS 84.
    expect(lines[1]!.at(-1)!.longitudeDeg).toBeCloseTo(-180 - 0.001 + 1000 / 109_639, 4);
  });

  it("that crosses, comes back and ends on the antimeridian is three", () => {
    const lines = linesOf(
      at(0, 180, [
        [-500, 0],
        [500, 10],
        [-500, 20],
        [0, 30],
      ]),
    );
    expect(lines.map((line) => line.map(({ longitudeDeg }) => Math.sign(longitudeDeg)))).toEqual([
      [1, 1],
      [-1, -1, -1],
      [1, 1, 1],
    ]);
    expect(lines[2]!.at(-1)!.longitudeDeg).toBe(180);
  });

  it("through a point on the antimeridian is cut there", () => {
    const lines = linesOf(
      at(0, 180, [
        [-500, 0],
        [0, 0],
        [500, 0],
      ]),
    );
    expect(lines.map((line) => line.length)).toEqual([2, 2]);
    expect(lines.map((line) => line.map(({ longitudeDeg }) => Math.abs(longitudeDeg) === 180))).toEqual([
      [false, true],
      [true, false],
    ]);
  });

  it("of 60 km has points between, one of 1 km none", () => {
    expect(
      linesOf(
        at(45, 20, [
          [0, 0],
          [1000, 0],
        ]),
      )[0],
    ).toHaveLength(2);
    const long = linesOf(
      at(45, 20, [
        [0, 0],
        [60_000, 0],
      ]),
    )[0]!;
    // Its sag of d^2 tan(45) / 8R = 71 m falls to a quarter with each halving: 5 halvings make it 0.07 m.
    expect(long.length).toBeGreaterThan(2 ** 4);
    expect(long.length).toBeLessThanOrEqual(2 ** 5 + 1);
  });

  it("with heights follows the straight line over the round Earth", () => {
    // At the equator to the east the map's line is straight, but its height rises 283 m on 60 km.
    const flat = linesOf(
      at(0, 20, [
        [0, 0],
        [60_000, 0],
      ]),
    )[0]!;
    const high = linesOf(
      at(0, 20, [
        [0, 0],
        [60_000, 0],
      ]),
      false,
    )[0]!;
    expect(flat.length).toBeLessThan(high.length);
    expect(high.at(-1)!.heightM).toBeCloseTo(60_000 ** 2 / 2 / 6_378_137, 0);
  });

  it("over the pole is two, each on its own meridian, and one from the pole keeps to its meridian", () => {
    const over = linesOf(
      at(89.99, 30, [
        [0, 0],
        [0, 5000],
      ]),
    );
    expect(over.map((line) => line.map(({ longitudeDeg }) => Math.round(longitudeDeg)))).toEqual([
      [30, 30],
      [-150, -150],
    ]);
    expect(over.map((line) => line.map(({ latitudeDeg }) => latitudeDeg === 90))).toEqual([
      [false, true],
      [true, false],
    ]);
    const from = linesOf(
      at(90, 0, [
        [0, 0],
        [3000, -4000],
      ]),
    );
    // East of a pole on meridian 0 is 90 degrees, south is 0.
    const longitudeDeg = (Math.atan2(3000, 4000) * 180) / Math.PI;
    expect(from.map((line) => line.map((place) => place.longitudeDeg))).toEqual([
      [expect.closeTo(longitudeDeg, 6), expect.closeTo(longitudeDeg, 6)],
    ]);
  });
});
