/** Areas at the antimeridian and at the poles. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../src/base/vector.ts";
import { partsOf } from "../../src/plan/map/cutShapes.ts";
import { metresAround as at, type Metres } from "../support/metresAround.ts";
import { signedArea } from "../support/rfc7946.ts";
import { between, FIXED } from "../support/seeded.ts";

/** Counterclockwise. */
const SQUARE: readonly Metres[] = [
  [-1000, -1000],
  [1000, -1000],
  [1000, 1000],
  [-1000, 1000],
];

const ringsOf = (cornersM: readonly Vec3[]): [number, number][][] => {
  const parts = partsOf({ kind: "area", cornersM });
  if (parts.kind !== "areas") throw new Error(parts.kind);
  return parts.rings.map((ring) => ring.map(({ longitudeDeg, latitudeDeg }) => [longitudeDeg, latitudeDeg]));
};
/** Square metres of a ring near the ground of a latitude. */
const areaM2 = (ring: readonly [number, number][], latitudeDeg: number): number =>
  (signedArea([...ring, ring[0]!]) / 2) * 111_320 ** 2 * Math.cos((latitudeDeg * Math.PI) / 180);

describe("an area", () => {
  it("over the antimeridian is two, that meet at 180 and -180 and keep its size", () => {
    // Half a kilometre east of 180 degrees lies the middle of a square of 2 km: 1.5 km one side, 0.5 the other.
    const rings = ringsOf(at(0, -180 + 500 / 111_320, SQUARE));
    expect(rings).toHaveLength(2);
    const [east, west] = rings as [[number, number][], [number, number][]];
    expect(Math.max(...east.map(([longitude]) => longitude))).toBe(180);
    expect(Math.min(...west.map(([longitude]) => longitude))).toBe(-180);
    expect(Math.min(...east.map(([longitude]) => longitude))).toBeCloseTo(180 - 500 / 111_320, 6);
    // A degree of latitude at the equator is 110.574 km, so that both come out a little large.
    expect(areaM2(east, 0) / 1e6).toBeCloseTo(1 * (111_320 / 110_574), 3);
    expect(areaM2(west, 0) / 1e6).toBeCloseTo(3 * (111_320 / 110_574), 3);
  });

  it("that touches the antimeridian stays whole, on its own side", () => {
    const half = SQUARE.map(([east, north]): Metres => [(east + 1000) / 2, north]);
    for (const longitudeDeg of [180, -180]) {
      const [ring, ...more] = ringsOf(at(0, longitudeDeg, half)) as [[number, number][]];
      expect(more).toEqual([]);
      expect(Math.max(...ring.map(([longitude]) => longitude))).toBeLessThan(-179.9);
    }
  });

  it("over Greenwich stays whole", () => {
    expect(ringsOf(at(50, 0.001, SQUARE))).toHaveLength(1);
  });

  it.each([
    ["north", 89.999, 90],
    ["south", -89.999, -90],
  ])("with the %s pole inside has it as a corner of both halves", (_, latitudeDeg, poleDeg) => {
    const rings = ringsOf(at(latitudeDeg, 40, SQUARE));
    expect(rings).toHaveLength(2);
    for (const ring of rings) {
      const poles = ring
        .filter(([, latitude]) => latitude === poleDeg)
        .map(([longitude]) => Math.abs(longitude));
      expect(poles.sort()).toEqual([0, 180]);
      expect(signedArea([...ring, ring[0]!])).toBeGreaterThan(0);
    }
    expect(Math.max(...rings.flat().map(([longitude]) => longitude))).toBe(180);
  });

  it("beside the pole, far from the antimeridian, is one with bent sides", () => {
    const [ring, ...more] = ringsOf(at(89.98, 40, SQUARE));
    expect(more).toEqual([]);
    // Corners alone would leave the side nearest the pole by hundreds of metres.
    expect(ring!.length).toBeGreaterThan(20);
  });

  it("with a corner on the pole comes to it on one meridian and leaves on another", () => {
    const sector: readonly Metres[] = [
      [0, 0],
      [-500, -800],
      [500, -800],
    ];
    // Down the meridian of Greenwich, and down that of 180 degrees, where it is cut.
    const [ring, ...more] = ringsOf(at(90, 0, sector)) as [[number, number][]];
    expect(more).toEqual([]);
    const poles = ring.filter(([, latitude]) => latitude === 90).map(([longitude]) => Math.round(longitude));
    expect(poles).toEqual([32, -32]);
    const cut = ringsOf(at(90, 180, sector));
    expect(cut).toHaveLength(2);
    for (const half of cut) {
      const ends = half
        .filter(([, latitude]) => latitude === 90)
        .map(([longitude]) => Math.abs(Math.round(longitude)));
      expect(ends.sort()).toEqual([148, 180]);
      expect(signedArea([...half, half[0]!])).toBeGreaterThan(0);
    }
  });

  it("keeps its right hand and no part crosses, wherever it lies", () => {
    fc.assert(
      fc.property(
        between(-90, 90),
        between(-180, 180),
        between(1, 20_000),
        (latitudeDeg, longitudeDeg, sizeM) => {
          const square = SQUARE.map(
            ([east, north]): Metres => [(east * sizeM) / 1000, (north * sizeM) / 1000],
          );
          for (const ring of ringsOf(at(latitudeDeg, longitudeDeg, square))) {
            expect(signedArea([...ring, ring[0]!])).toBeGreaterThan(0);
            ring.forEach(([longitude, latitude], i) => {
              const [next, nextLatitude] = ring[(i + 1) % ring.length]!;
              const alongPole = Math.abs(latitude) === 90 && Math.abs(nextLatitude) === 90;
              expect(Math.abs(next - longitude) < 180 || alongPole).toBe(true);
            });
          }
        },
      ),
      FIXED,
    );
  });
});
