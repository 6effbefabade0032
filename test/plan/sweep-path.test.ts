/** What a picture of a sweep is made of: the path by hand, the frame's size, one T-0 against the searches of the library. */

import { describe, expect, it } from "vitest";
import { angleBetweenDeg, fromAzimuthElevation } from "../../src/base/vector.ts";
import { sweepMomentMaker } from "../../src/plan/picture/sweepMoment.ts";
import { sweepPathOf } from "../../src/plan/picture/sweepPath.ts";
import type { SkyPoint } from "../../src/plan/picture/sweepPathTypes.ts";
import { sweepSky } from "../../src/show/draw/sweepSky.ts";
import { placeFrom } from "../../src/view/sightLine.ts";
import { sweepSun } from "../../src/view/sweepSun.ts";
import {
  FOOT_UP_M,
  LEVEL_EAST,
  PAD,
  preparedOf,
  sweepSite,
  tableOf,
  tableOfPoints,
  tracking,
} from "./sweepSites.ts";

const vectorOf = ({ azimuthDeg, elevationDeg }: SkyPoint) => fromAzimuthElevation(azimuthDeg, elevationDeg);
const apartDeg = (a: SkyPoint, b: SkyPoint): number => angleBetweenDeg(vectorOf(a), vectorOf(b));
const FULL_DAY = "2027-04-18T10:00/12:00";
const LENS = "lens: { focal: 300 }, keep: [sky]";

/** Straight up, 1.5 t^2. */
const UP = Array.from({ length: 61 }, (_, t) => [t, 0, 0, 1.5 * t * t]);
const RANGE_M = 2000;
const site = sweepSite({ cameras: [tracking("T", 90, RANGE_M, LENS, "part: base")], way: tableOf(UP) });

describe("the path of a vertical ascent", () => {
  const path = sweepPathOf(preparedOf(site, FULL_DAY).sweep);
  // The camera stands 2 m above the pad's datum, east of it.
  const elevationAt = (heightM: number): number =>
    (Math.atan((heightM + FOOT_UP_M - 2) / RANGE_M) * 180) / Math.PI;

  it.each([
    [0, 0],
    [20, 600],
    [40, 2400],
    [60, 5400],
  ])("at T+%d s stands over %d m", (tPlusS, heightM) => {
    const { azimuthDeg, elevationDeg } = path.ticks.find((tick) => tick.tPlusS === tPlusS)!;
    expect(azimuthDeg).toBeCloseTo(270, 1);
    // The ground falls away by 0.3 m in 2 km: 0.009 degree.
    expect(Math.abs(elevationDeg - elevationAt(heightM))).toBeLessThan(0.02);
  });

  it("starts and ends with the sweep, in small steps, with round ticks", () => {
    expect([path.points[0]!.tPlusS, path.points.at(-1)!.tPlusS]).toEqual([0, 60]);
    path.points.slice(1).forEach((point, i) => {
      expect(apartDeg(point, path.points[i]!)).toBeLessThan(0.8);
    });
    expect(path.ticks.map(({ tPlusS }) => tPlusS)).toEqual(Array.from({ length: 13 }, (_, i) => 5 * i));
    expect(path.frames.map(({ tPlusS }) => tPlusS)).toEqual([0, 15, 30, 45, 60]);
  });

  it("has frames of the lens's own field, level, about the axis", () => {
    expect(path.fieldDeg.horizontal).toBeCloseTo(6.867, 3);
    expect(path.fieldDeg.vertical).toBeCloseTo(4.581, 3);
    for (const { outline, ...axis } of path.frames) {
      const [below, right, above, left] = [3, 9, 15, 21].map((i) => outline[i]!) as [
        SkyPoint,
        SkyPoint,
        SkyPoint,
        SkyPoint,
      ];
      expect(apartDeg(left, right)).toBeCloseTo(path.fieldDeg.horizontal, 6);
      expect(apartDeg(below, above)).toBeCloseTo(path.fieldDeg.vertical, 6);
      expect(apartDeg(left, axis)).toBeCloseTo(path.fieldDeg.horizontal / 2, 6);
      expect(above.elevationDeg - axis.elevationDeg).toBeCloseTo(path.fieldDeg.vertical / 2, 6);
      expect(left.elevationDeg).toBeCloseTo(right.elevationDeg, 6);
    }
  });
});

describe("one T-0", () => {
  const { sweep } = preparedOf(site, FULL_DAY);
  const momentAt = sweepMomentMaker(sweep);
  const { opens } = sweep.room.window;

  it.each([0, 33, 60, 91, 120])("%d minutes after the opening is as near as the library says", (minutes) => {
    const t0 = new Date(opens.getTime() + minutes * 60_000);
    const view = {
      pad: PAD,
      camera: placeFrom(PAD, 90, RANGE_M, 2),
      ascent: UP.map(([tPlusS, , , upM]) => ({
        tPlusS: tPlusS!,
        eastM: 0,
        northM: 0,
        upM: upM! + FOOT_UP_M,
      })),
      focalMm: 300,
      gateWidthMm: 36,
      gateHeightMm: 24,
    };
    const { closest } = sweepSun(view, t0);
    const moment = momentAt(t0.getTime());
    expect(moment.closest!.offAxisDeg).toBeCloseTo(closest.offAxisDeg, 2);
    expect(moment.closest!.tPlusS).toBeCloseTo(closest.tPlusS, 0);
    expect(apartDeg(moment.closest!.frame, moment.closest!.sun)).toBeCloseTo(moment.closest!.offAxisDeg, 3);
  });

  it("of the nearest of all is the sweep's own, in the frame where that is", () => {
    const evening = preparedOf(site, "2027-04-18T15:00/19:00").sweep;
    const { inFrame } = evening.sun;
    expect(inFrame.length).toBe(1);
    const { at, tPlusS, offAxisDeg } = inFrame[0]!.closest;
    const { closest, inFrame: spans } = sweepMomentMaker(evening)(at.getTime());
    expect(closest!.word).toBe("in-frame");
    expect(closest!.offAxisDeg).toBeCloseTo(offAxisDeg, 2);
    expect(Math.abs(closest!.tPlusS - tPlusS)).toBeLessThan(0.2);
    expect(spans.some(({ fromS, toS }) => fromS <= tPlusS && tPlusS <= toS)).toBe(true);
  });

  it("passes the frame at the true distance from the axis, within what a close-up shows", () => {
    const evening = preparedOf(site, "2027-04-18T15:00/19:00").sweep;
    const { at } = evening.sun.inFrame[0]!.closest;
    const t0Ms = at.getTime() + 240_000;
    const { pass, offAxisDeg } = sweepMomentMaker(evening)(t0Ms).closest!;
    const distances = pass!.points.map(({ rightDeg, upDeg }) => Math.hypot(rightDeg, upDeg));
    expect(Math.min(...distances)).toBeCloseTo(offAxisDeg, 6);
    expect(Math.max(...distances)).toBeLessThan(pass!.withinDeg * 1.01);
    pass!.points.forEach(({ tPlusS }, i) => {
      expect(distances[i]).toBeCloseTo(evening.tracker.offAxis.valueAt(t0Ms, tPlusS * 1000), 6);
    });
  });

  it("is told while the disc is up only", () => {
    const dusk = preparedOf(site, "2027-04-18T18:30/19:30").sweep;
    const at = sweepMomentMaker(dusk);
    const setMs = sweepPathOf(dusk).sun[0]!.at(-1)!.atMs;
    const t0Ms = setMs - 10_000;
    // It sets ten seconds into the sweep.
    const { closest } = at(t0Ms);
    expect(closest!.tPlusS).toBeLessThanOrEqual(10);
    expect(closest!.pass!.points.every(({ tPlusS }) => tPlusS < 10.1)).toBe(true);
    const tried = Array.from({ length: 100 }, (_, i) => dusk.tracker.offAxis.valueAt(t0Ms, i * 100));
    expect(closest!.offAxisDeg).toBeCloseTo(Math.min(...tried), 1);
    expect(at(setMs + 1000)).toEqual({ atMs: setMs + 1000, sun: null, closest: null, inFrame: [] });
  });
});

describe("paths that are hard to draw", () => {
  const stepsPx = (points: readonly SkyPoint[]): number[] => {
    const sky = sweepSky({ points: points as never });
    const places = points.map(sky.at);
    return places.slice(1).map(([x, y], i) => Math.hypot(x - places[i]![0], y - places[i]![1]));
  };

  it("go through north without a jump", () => {
    const way = Array.from({ length: 61 }, (_, t) => [t, 40 * t - 1200, 0, 30 * t]);
    const across = sweepSite({
      cameras: [tracking("T", 180, 2000, LENS)],
      way: tableOf([[0, 0, 0, 0], ...way.slice(1)]),
    });
    const { points } = sweepPathOf(preparedOf(across, FULL_DAY).sweep);
    expect(points.some(({ azimuthDeg }) => azimuthDeg > 340)).toBe(true);
    expect(points.some(({ azimuthDeg }) => azimuthDeg < 20)).toBe(true);
    expect(Math.max(...stepsPx(points))).toBeLessThan(4);
  });

  it("go over the zenith without a jump", () => {
    const over = sweepSite({ cameras: [tracking("T", 180, 20, LENS)], way: tableOfPoints(LEVEL_EAST) });
    const { points } = sweepPathOf(preparedOf(over, FULL_DAY).sweep);
    expect(Math.max(...points.map(({ elevationDeg }) => elevationDeg))).toBeGreaterThan(89.5);
    expect(Math.max(...stepsPx(points.slice(8)))).toBeLessThan(4);
  });

  it("have no sun at night", () => {
    const night = preparedOf(site, "2027-04-18T22:00/23:30").sweep;
    expect(sweepPathOf(night).sun).toEqual([]);
    expect(sweepMomentMaker(night)(night.room.window.opens.getTime()).closest).toBeNull();
  });
});
