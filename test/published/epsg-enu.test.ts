/** Earth-fixed and horizon coordinates: IOGP Guidance Note 7-2, methods 9602 (geocentric) and 9836/9837 (topocentric). */

import { expect, test } from "vitest";
import { fromEarthFixed, toEarthFixed } from "../../src/base/earthFixed.ts";
import type { Place } from "../../src/base/place.ts";
import { carryTo, lookAt, placeAtEnu, placeFrom } from "../../src/view/sightLine.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Point {
  readonly lat_deg: number;
  readonly lon_deg: number;
  readonly h_m: number;
  readonly XYZ_m: readonly [number, number, number];
}
interface Truth {
  readonly wgs84: { readonly b_m: number };
  readonly epsg_example: {
    readonly point: Point;
    readonly origin: Point;
    readonly ENU_m: readonly [number, number, number];
    readonly azimuth_deg: number;
    readonly elevation_deg: number;
    readonly range_m: number;
  };
}
const { epsg_example: example, wgs84 } = readTruth<Truth>("geodesy");
const placeOf = (point: Point): Place => ({
  latitudeDeg: point.lat_deg,
  longitudeDeg: point.lon_deg,
  heightM: point.h_m,
});
const point = placeOf(example.point);
const origin = placeOf(example.origin);

const axes = ["x", "y", "z"] as const;
const byAxis = (name: string, found: readonly number[], expected: readonly number[]) =>
  axes.map((axis, i) => ({ name: `${name} ${axis}`, found: found[i]!, expected: expected[i]! }));

test("geographic to Earth-fixed: both points of the example to the millimetre", () => {
  compare("EPSG Earth-fixed", [
    ...byAxis("point", toEarthFixed(point), example.point.XYZ_m),
    ...byAxis("origin", toEarthFixed(origin), example.origin.XYZ_m),
  ]);
});

test("Earth-fixed to geographic: the printed metres lead back to the printed degrees", () => {
  for (const { XYZ_m, ...given } of [example.point, example.origin]) {
    const place = fromEarthFixed(XYZ_m);
    expect(place.latitudeDeg).toBeCloseTo(given.lat_deg, 7);
    expect(place.longitudeDeg).toBeCloseTo(given.lon_deg, 7);
    expect(Math.abs(place.heightM - given.h_m)).toBeLessThan(0.001);
  }
});

test("the pole stands the semi-minor axis from the centre", () => {
  expect(toEarthFixed({ latitudeDeg: 90, longitudeDeg: 0, heightM: 0 })[2]).toBeCloseTo(wgs84.b_m, 5);
});

test("east, north and up of the point from the origin to the millimetre", () => {
  compare("EPSG topocentric", byAxis("point", carryTo(point, origin)([0, 0, 0]), example.ENU_m));
});

test("azimuth, elevation and range from the origin", () => {
  const sight = lookAt(origin, point);
  compare("EPSG direction", [
    { name: "azimuth", found: sight.azimuthDeg, expected: example.azimuth_deg },
    { name: "elevation", found: sight.elevationDeg, expected: example.elevation_deg },
  ]);
  compare("EPSG range", [{ name: "range", found: sight.rangeM, expected: example.range_m }]);
});

test("a bearing, a horizontal range and a height in the tangent plane lead to the point", () => {
  const [east, north, up] = example.ENU_m;
  const found = placeFrom(origin, example.azimuth_deg, Math.hypot(east, north), up);
  compare("EPSG bearing and range", byAxis("by bearing", toEarthFixed(found), example.point.XYZ_m));
  const exact = placeAtEnu(origin, example.ENU_m);
  compare("EPSG by east, north, up", byAxis("by metres", toEarthFixed(exact), example.point.XYZ_m));
});
