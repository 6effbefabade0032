/** What stands in a picture, worked by similar triangles: far off, lattices, the plume, land, a hood's border. */

import { describe, expect, it } from "vitest";
import { LEVEL, layoutAlone, layoutOf, liveOf, RAD, range } from "./frames.ts";

it("a camera far off has the body in its own horizon", () => {
  // 20 km east of a pad at 71 degrees north the meridians differ by 0.52 degrees: 7.3 mm at 800 mm.
  const camera = "id: F, at: { bearing: 90, range: 20 km, up: 25 }, aim: { up: 25 }, lens: { focal: 800 }";
  const live = liveOf({ cameras: [camera], place: "latitude: 71, longitude: 0, height: 20" });
  const [left, right] = range(layoutOf(live).vehicle, 0);
  expect(left + right).toBeCloseTo(0, 4);
  expect(right - left).toBeCloseTo((3 * 800) / 20_000, 3);
});

it("a lattice is drawn where it stands, and stops what its solidity says", () => {
  const more =
    "structures: [{ name: mast, at: { bearing: 0, range: 20 }, width: 4, depth: 4, height: 30, solidity: 0.3 }]";
  const { structures } = layoutAlone(LEVEL, more);
  expect(structures).toMatchObject([{ name: "mast", solidity: 0.3 }]);
  // North of the pad is to the right of a camera in the east; its near face stands 398 m off.
  const [left, right] = range(structures[0]!.outline, 0);
  expect(left).toBeCloseTo((18 * 100) / 402, 3);
  expect(right).toBeCloseTo((22 * 100) / 398, 3);
});

it("what is larger than the picture is cut at all of its borders", () => {
  const more =
    "structures: [{ name: wall, at: { bearing: 270, range: 300 }, width: 900, depth: 900, height: 500 }]";
  const layout = layoutAlone(LEVEL, more);
  const [wall] = layout.structures;
  // Its near face stands 250 m off: 900 m across are 360 mm, 475 m over the camera 190 mm.
  expect(range(wall!.outline, 0)).toEqual([
    expect.closeTo(-layout.reach.xMm, 9),
    expect.closeTo(layout.reach.xMm, 9),
  ]);
  expect(range(wall!.outline, 1)[1]).toBeCloseTo(layout.reach.yMm, 9);
  expect(range(layout.ground, 0)).toEqual([-layout.reach.xMm, layout.reach.xMm]);
});

describe("a plume of 30 m and 6 m across", () => {
  const vehicle =
    "height: 40, diameter: 3, base: 5, plume: { propellant: kerolox, length: 30, width: 6 }, ascent: { heading: 90, thrustToWeight: 1.3 }";
  const tracker = LEVEL.replace("id: C", "id: T").replace("aim: { up: 25 }", "track: { part: middle }");
  const live = liveOf({ cameras: [LEVEL, tracker], vehicle });
  const layout = layoutOf(live);

  it("reaches from the foot to the deck at T+0", () => {
    // Foot 20 m under the axis, deck 25 m: 5 and 6.25 mm; the near edges of its round stand 3 m nearer.
    const [low, high] = range(layout.plume, 1);
    expect(low).toBeCloseTo((-25 * 100) / 397, 2);
    expect(high).toBeCloseTo((-20 * 100) / 403, 2);
    const [left, right] = range(layout.plume, 0);
    expect(right - left).toBeCloseTo((6 * 100) / 400, 2);
  });

  it("is out when the vehicle has risen 25 m, which stands that much higher", () => {
    const moved: [number, number, number] = [0, 0, 0];
    live.scene.ascent!.path.positionInto(layout.risen!.tPlusS, moved);
    expect(moved[2]).toBeGreaterThanOrEqual(25);
    const upMm = (moved[2] * 100) / 400;
    expect(range(layout.risen!.vehicle, 1)[1] - range(layout.vehicle, 1)[1]).toBeCloseTo(upMm, 1);
    expect(range(layout.risen!.plume, 1)[1]).toBeCloseTo(upMm - 5, 1);
    // A tracker goes with it.
    expect(layoutOf(live, 1).risen).toBeNull();
  });
});

it("land stands as high as the site's horizon says, azimuth by azimuth", () => {
  const { land } = layoutAlone(LEVEL, "horizon: [[0, 1], [250, 1], [260, 2], [280, 6], [290, 1]]");
  const tops = land.flatMap((piece) => piece.filter(([, y]) => y > 1));
  expect(tops.length).toBeGreaterThan(20);
  const xMm = layoutAlone(LEVEL).reach.xMm;
  for (const [x, y] of tops.filter(([left]) => Math.abs(left) < Math.min(17, xMm))) {
    const azimuthDeg = 270 + Math.atan(x / 100) / RAD;
    const elevationDeg = Math.atan(y / Math.hypot(100, x)) / RAD;
    // From 2 degrees at 260 to 6 at 280; the camera aims 0.0036 degrees under its own level.
    expect(elevationDeg).toBeCloseTo(2 + (azimuthDeg - 260) / 5, 1);
  }
});

it("a hood that is reached before the margin's end is the border of flare", () => {
  const hood = LEVEL.replace("focal: 100", "focal: 50, hood: { length: 70, diameter: 30 }");
  // atan(30 / 70) = 23.2 degrees off the axis, inside of the 24.8 of the margin: 50 x 30 / 70 = 21.43 mm.
  const beside = [...layoutAlone(hood).flare]
    .filter(([x]) => x > 0)
    .sort((a, b) => Math.abs(a[1]) - Math.abs(b[1]))[0]!;
  expect(beside[0]).toBeCloseTo((50 * 30) / 70, 3);
});
