/** The plan of the pad as geometry: fields and shadows by hand, drawings by range. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cosDeg, sinDeg, tanDeg } from "../../src/base/units.ts";
import { makeCameraView } from "../../src/plan/cameraView.ts";
import { cutToCircle, shadowLengthM, shadowOutline } from "../../src/plan/picture/groundShadow.ts";
import { fieldWidthDeg, levelFieldOf } from "../../src/plan/picture/levelField.ts";
import { padPlanOf } from "../../src/plan/picture/padPlan.ts";
import { zoomRadiiM } from "../../src/plan/picture/zooms.ts";
import { makeFrame } from "../../src/view/frame.ts";
import { heightsStopped, type Point2, prismOf, vehiclePrism } from "../../src/view/prism.ts";
import { between, FIXED } from "../support/seeded.ts";
import { siteOf, standing } from "./sites.ts";

const FULL_FRAME = { focalMm: 50, gateWidthMm: 36, gateHeightMm: 24 };
const fieldAt = (azimuthDeg: number, elevationDeg: number, rollDeg: number) =>
  levelFieldOf(makeFrame({ azimuthDeg, elevationDeg, rollDeg, ...FULL_FRAME }));

describe("level field", () => {
  it("is the width's angle either side of a level axis", () => {
    // atan(18 / 50) = 19.799 degrees.
    expect(fieldAt(270, 0, 0)!.leftDeg).toBeCloseTo(250.201, 3);
    expect(fieldAt(270, 0, 0)!.rightDeg).toBeCloseTo(289.799, 3);
  });

  it("is the height's for a camera on its side, and runs over north", () => {
    // atan(12 / 50) = 13.496 degrees.
    expect(fieldAt(5, 0, 90)!.leftDeg).toBeCloseTo(351.504, 3);
    expect(fieldAt(5, 0, 90)!.rightDeg).toBeCloseTo(18.496, 3);
  });

  it("widens looking up: the upper corners stand over less ground", () => {
    // 18 to the side and 50 cos 30 - 12 sin 30 = 37.301 ahead: 25.760 degrees.
    expect(fieldWidthDeg(fieldAt(100, 30, 0)!)).toBeCloseTo(2 * 25.76, 2);
    // Looking down the lower corners do the same.
    expect(fieldWidthDeg(fieldAt(100, -30, 0)!)).toBeCloseTo(2 * 25.76, 2);
  });

  it("is all round with the zenith or the nadir in the frame, and under half a turn else", () => {
    expect(fieldAt(40, 80, 0)).toBeNull();
    expect(fieldAt(40, -90, 20)).toBeNull();
    // The upper edge is 13.496 degrees over the axis: the zenith just outside.
    const widthDeg = fieldWidthDeg(fieldAt(40, 76, 0)!);
    expect(widthDeg).toBeGreaterThan(170);
    expect(widthDeg).toBeLessThan(180);
  });
});

describe("cameras on the plan", () => {
  it("look along the pad's own north: from 20 km east towards the pad is west", () => {
    const site = siteOf({
      cameras: ["id: far, at: { bearing: 90, range: 20 km, up: 5 }, aim: { up: 25 }, lens: { focal: 800 }"],
      place: "latitude: 71, longitude: 0, height: 20",
    });
    // At the camera itself the pad bears half a degree north of west: 20 km x tan(71) / Earth's radius.
    expect(makeCameraView(site, site.cameras[0]!).axis.azimuthDeg).toBeCloseTo(270.52, 1);
    const [camera] = padPlanOf(site).cameras;
    expect(camera!.azimuthDeg).toBeCloseTo(270, 2);
    expect(camera!.stand!.bearingDeg).toBeCloseTo(90, 6);
    expect(camera!.stand!.rangeM).toBeCloseTo(20_000, 6);
  });

  it("are fixed, trackers, or known by an axis only", () => {
    const site = siteOf({
      cameras: [
        standing("fixed", 10),
        "id: tracker, at: { bearing: 20, range: 900 }, track: { part: nose }, lens: { focal: 500 }",
        "id: axis, azimuth: 200, elevation: 3, lens: { focal: 50 }",
      ],
    });
    expect(padPlanOf(site).cameras.map(({ kind }) => kind)).toEqual(["fixed", "tracker", "axis-only"]);
    expect(padPlanOf(site).cameras[2]!.stand).toBeNull();
  });
});

describe("drawings by range", () => {
  it("are as few as leave nobody crowded in the middle", () => {
    expect(zoomRadiiM([100, 200, 900], [])).toEqual([980]);
    expect(zoomRadiiM([50, 80, 700, 900], [])).toEqual([87, 980]);
    expect(zoomRadiiM([12, 15, 400, 420, 18_000, 20_000], [])).toEqual([17, 460, 22_000]);
  });

  it("are three at most, and every camera lies in one of them", () => {
    const ranges = Array.from({ length: 300 }, (_, i) => 1.03 ** i * 2);
    const radii = zoomRadiiM(ranges, [40, 5e6]);
    expect(radii).toHaveLength(3);
    expect(radii.at(-1)!).toBeGreaterThan(ranges.at(-1)! * 1.05);
    expect(radii.at(-1)!).toBeLessThan(ranges.at(-1)! * 1.35);
  });

  it("take in a structure that stands a little farther out, and one stands for a site without cameras", () => {
    expect(zoomRadiiM([88], [101])).toEqual([110]);
    expect(zoomRadiiM([88], [400])).toEqual([96]);
    expect(zoomRadiiM([], [])).toEqual([17]);
    expect(zoomRadiiM([], [60])).toEqual([65]);
  });
});

const VEHICLE = vehiclePrism({
  name: null,
  heightM: 58,
  diameterM: 3.7,
  baseM: 6,
  reflectance: 0.8,
  plume: null,
  ascent: null,
});
/** Farthest along an azimuth. */
const along = (outline: readonly Point2[], azimuthDeg: number): number =>
  Math.max(...outline.map(([x, y]) => x * sinDeg(azimuthDeg) + y * cosDeg(azimuthDeg)));

describe("shadow on the ground", () => {
  it("of 58 m on a base of 6 m ends 64 / tan 30 = 110.85 m away from the sun, and begins 10.39 m away", () => {
    const outline = shadowOutline(VEHICLE, { azimuthDeg: 240, apparentElevationDeg: 30 }, 500)!;
    expect(shadowLengthM(64, { azimuthDeg: 240, apparentElevationDeg: 30 })).toBeCloseTo(110.851, 3);
    expect(along(outline, 60)).toBeGreaterThan(110.85 + 1.84);
    expect(along(outline, 60)).toBeLessThan(110.86 + 1.85);
    expect(-along(outline, 240)).toBeCloseTo(6 / tanDeg(30) - 1.85, 1);
    expect(along(outline, 150)).toBeCloseTo(1.85, 1);
  });

  it("is the footprint under the zenith, none with the sun down, and never outside the drawing", () => {
    const under = (apparentElevationDeg: number) =>
      shadowOutline(VEHICLE, { azimuthDeg: 200, apparentElevationDeg }, 300);
    expect(along(under(90)!, 20)).toBeCloseTo(1.85, 1);
    expect(under(0)).toBeNull();
    expect(under(-4)).toBeNull();
    for (const elevationDeg of [1e-9, 1e-3, 0.5, 5]) {
      const outline = under(elevationDeg);
      for (const [x, y] of outline ?? []) expect(Math.hypot(x, y)).toBeLessThanOrEqual(300 + 1e-9);
    }
    expect(along(under(5)!, 20)).toBeGreaterThan(299);
    // So low that the shadow of its foot is outside already.
    expect(under(0.5)).toBeNull();
    expect(shadowLengthM(64, { azimuthDeg: 0, apparentElevationDeg: -1 })).toBeNull();
  });

  it("holds just the points from which a ray towards the sun meets the solid", () => {
    fc.assert(
      fc.property(
        between(0, 360),
        between(3, 89),
        between(-150, 150),
        between(-150, 150),
        between(0, 180),
        (azimuthDeg, apparentElevationDeg, east, north, turnDeg) => {
          const prism = boxPrism(turnDeg);
          const towards: Point2 = [sinDeg(azimuthDeg), cosDeg(azimuthDeg)];
          const outline = shadowOutline(prism, { azimuthDeg, apparentElevationDeg }, 1e6)!;
          const depthM = insideM(outline, [east, north]);
          if (Math.abs(depthM) < 1e-6) return;
          const met = heightsStopped(prism, east, north, towards, tanDeg(apparentElevationDeg));
          expect(met !== null && met.fromM < 0 && met.toM > 0).toBe(depthM > 0);
        },
      ),
      FIXED,
    );
  });

  it("is cut at the border as the border runs", () => {
    const square: Point2[] = [
      [-20, -20],
      [20, -20],
      [20, 20],
      [-20, 20],
    ];
    expect(cutToCircle(square, 30)).toBe(square);
    const round = cutToCircle(square, 10);
    expect(round.length).toBeGreaterThan(60);
    for (const [x, y] of round) expect(Math.hypot(x, y)).toBeCloseTo(10, 6);
    expect(
      cutToCircle(
        square.map(([x, y]): Point2 => [x + 200, y]),
        30,
      ),
    ).toEqual([]);
  });
});

/** A slab on legs, 40 x 12 m, between 15 and 60 m up, 20 m north-east of the pad. */
const boxPrism = (turnDeg: number) =>
  prismOf(
    { latitudeDeg: 0, longitudeDeg: 0, heightM: 0 },
    {
      name: "slab",
      shape: "box",
      at: { kind: "bearing", bearingDeg: 45, rangeM: 20, upM: 0 },
      widthM: 40,
      depthM: 12,
      turnDeg,
      diameterM: null,
      baseM: 15,
      heightM: 45,
      solidity: 1,
    },
  );

/** How deep a point lies inside a convex outline that runs counterclockwise; below zero outside. */
const insideM = (outline: readonly Point2[], [x, y]: Point2): number =>
  Math.min(
    ...outline.map(([ax, ay], i) => {
      const [bx, by] = outline[(i + 1) % outline.length]!;
      return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
    }),
  );
