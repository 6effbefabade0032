/**
 * The sight line between the ends of the classic geodesic of 54.972 km (Australian geodetic manual; the line of Vincenty
 * 1975, Survey Review 23(176) 88-93). A geodesic runs along the ellipsoid, a sight line straight through it: what lies
 * between the two is worked out here from the ellipsoid's radii.
 */

import { expect, test } from "vitest";
import { lookAt } from "../../src/view/sightLine.ts";
import { compare } from "../support/compare.ts";

/** Degrees of a reading in degrees, minutes, seconds. */
const dms = (degrees: number, minutes: number, seconds: number): number =>
  degrees + minutes / 60 + seconds / 3600;
const FROM = {
  latitudeDeg: -dms(37, 57, 3.7203),
  longitudeDeg: dms(144, 25, 29.5244),
  heightM: 0,
};
const TO = {
  latitudeDeg: -dms(37, 39, 10.1561),
  longitudeDeg: dms(143, 55, 35.3839),
  heightM: 0,
};
const GEODESIC_M = 54_972.271;
const AZIMUTH_DEG = dms(306, 52, 5.37);
const REVERSE_AZIMUTH_DEG = dms(127, 10, 25.07);

/** Radius of curvature of the ellipsoid along an azimuth at the middle of the line (Euler's formula; WGS 84). */
function radiusAlongM(latitudeDeg: number, azimuthDeg: number): number {
  const rad = Math.PI / 180;
  const a = 6_378_137;
  const f = 1 / 298.257223563;
  const e2 = f * (2 - f);
  const w2 = 1 - e2 * Math.sin(latitudeDeg * rad) ** 2;
  const meridianM = (a * (1 - e2)) / w2 ** 1.5;
  const crossM = a / Math.sqrt(w2);
  return 1 / (Math.cos(azimuthDeg * rad) ** 2 / meridianM + Math.sin(azimuthDeg * rad) ** 2 / crossM);
}

const radiusM = radiusAlongM((FROM.latitudeDeg + TO.latitudeDeg) / 2, AZIMUTH_DEG);

test("the straight range is the chord of the geodesic: 0.171 m shorter", () => {
  const chordM = 2 * radiusM * Math.sin(GEODESIC_M / (2 * radiusM));
  expect(GEODESIC_M - chordM).toBeGreaterThan(0.16);
  compare("Vincenty chord", [
    { name: "there", found: lookAt(FROM, TO).rangeM, expected: chordM },
    { name: "back", found: lookAt(TO, FROM).rangeM, expected: chordM },
  ]);
});

test("the azimuths are the geodesic's, both ways", () => {
  // A normal section leaves the geodesic's azimuth by about (e^2 / 12)(s / N)^2 cos^2 B sin 2A: 0.005" on this line.
  compare("Vincenty azimuth", [
    { name: "there", found: lookAt(FROM, TO).azimuthDeg, expected: AZIMUTH_DEG },
    { name: "back", found: lookAt(TO, FROM).azimuthDeg, expected: REVERSE_AZIMUTH_DEG },
  ]);
});

test("the far end lies below the horizontal by half the arc", () => {
  const dipDeg = ((GEODESIC_M / (2 * radiusM)) * 180) / Math.PI;
  compare("Vincenty dip", [
    { name: "there", found: lookAt(FROM, TO).elevationDeg, expected: -dipDeg },
    { name: "back", found: lookAt(TO, FROM).elevationDeg, expected: -dipDeg },
  ]);
});
