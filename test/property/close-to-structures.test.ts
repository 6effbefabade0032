/** Cases that once went wrong: cameras and bodies that all but touch a structure, and skylines on a knife's edge. */

import { describe, expect, it, test } from "vitest";
import { fromAzimuthElevation } from "../../src/base/vector.ts";
import { placeOf } from "../../src/plan/cameraView.ts";
import { cameraHiders, obstaclesOf } from "../../src/plan/obstacles.ts";
import { skylineOf } from "../../src/view/skyline.ts";
import { firstOf, planOf, siteOf } from "../plan/sites.ts";
import { inPadFrame, meets, solidsOf, turnedToPad } from "../support/rayCaster.ts";

const LOOK = "azimuth: 90, lens: { focal: 20 }";

test("a centimetre off a tank of 20 m the open sky is not hidden", () => {
  const camera = `id: A, at: { bearing: 90, range: 110.01, up: 2 }, ${LOOK}`;
  const tank = "structures: [{ name: tank, at: { bearing: 90, range: 100 }, diameter: 20, height: 30 }]";
  const { sun } = firstOf(siteOf({ cameras: [camera], more: tank }), "2027-03-20T05:30/07:30");
  expect(sun.risk).toBe("in-frame");
  expect(sun.hidden).toEqual([]);
});

describe("a structure beside the body", () => {
  const spanOf = (wall: string) => {
    const site = siteOf({
      cameras: [`id: A, ${LOOK}`],
      more: `structures: [{ name: wall, ${wall}, turn: 0 }]`,
    });
    return planOf(site, "2027-06-20T04:00/20:00", { stepS: 1200 }).shade[0]!;
  };
  it.each([6.5, 6.52])("%s m out, a wall in the east shades it until noon and no longer", (range) => {
    const { to } = spanOf(`at: { bearing: 90, range: ${range} }, width: 10, depth: 10, height: 100`);
    expect(to.getTime()).toBeLessThan(Date.UTC(2027, 5, 20, 12, 10));
  });
  it("a slab whose foot is at the body's top shades it until the sun is down", () => {
    const slab = spanOf("at: { bearing: 90, range: 15 }, width: 40, depth: 40, base: 45, height: 5");
    expect(slab.to.getTime()).toBeGreaterThan(Date.UTC(2027, 5, 20, 19, 40));
  });
  it("around it shades it all day", () => {
    const hall = spanOf("at: { bearing: 90, range: 0 }, width: 10, depth: 10, height: 60");
    expect(hall.from.getTime()).toBeLessThan(Date.UTC(2027, 5, 20, 4, 30));
    expect(hall.to.getTime()).toBeGreaterThan(Date.UTC(2027, 5, 20, 19, 30));
  });
});

test.each([0.002, 0.05, 2])(
  "%s m off a wall, near its end, every direction is told as rays tell it",
  (offM) => {
    const [east, north] = [200 + 5 + offM, -12];
    const bearing = (Math.atan2(east, north) * 180) / Math.PI;
    const camera = `id: A, at: { bearing: ${bearing}, range: ${Math.hypot(east, north)}, up: 30 }, ${LOOK}`;
    const site = siteOf({
      cameras: [camera],
      more: "structures: [{ name: wall, at: { bearing: 90, range: 200 }, width: 30, depth: 10, turn: 0, height: 60 }]",
    });
    const place = placeOf(site, site.cameras[0]!.at!);
    const hider = cameraHiders(site, obstaclesOf(site), place, true)[0]!;
    const solid = solidsOf(site)[0]!;
    const [from, turn] = [inPadFrame(site.place, place), turnedToPad(site.place, place)];
    for (let azimuthDeg = 1; azimuthDeg < 360; azimuthDeg += 3) {
      for (let elevationDeg = 1; elevationDeg < 90; elevationDeg += 3) {
        const direction = fromAzimuthElevation(azimuthDeg, elevationDeg);
        const edgeDeg = hider.fromEdgeDeg(direction);
        if (Math.abs(edgeDeg) < 0.01) continue;
        expect(edgeDeg < 0, `${azimuthDeg} ${elevationDeg}`).toBe(meets(solid, from, turn(direction)));
      }
    }
  },
);

describe("a skyline", () => {
  const at = (azimuthDeg: number, elevationDeg: number) => ({ azimuthDeg, elevationDeg });
  it("whose point lies one rounding step from a cut keeps its distances", () => {
    const skyline = skylineOf([at(55.00000000000001, 2), at(225, 2)])!;
    expect(skyline.fromEdgeDeg(fromAzimuthElevation(58, 8))).toBeCloseTo(6, 3);
  });
  it("that meets the level between two cuts has no step there", () => {
    const skyline = skylineOf([at(100, 20.5), at(110.5, -0.5), at(120.25, -0.5)])!;
    const besideDeg = (azimuthDeg: number): number =>
      skyline.fromEdgeDeg(fromAzimuthElevation(azimuthDeg, 0.0001));
    expect(Math.abs(besideDeg(110.25 - 1e-4) - besideDeg(110.25 + 1e-4))).toBeLessThan(0.001);
  });
});
