/** What a lens makes of angles and distances: rectilinear field, thin-lens depth of field, diffraction, smear, time. */

import { expect, test } from "vitest";
import { shutterAngleTimeS, slowing } from "../../src/exposure/scales.ts";
import {
  airyDiameterMm,
  depthOfField,
  hyperfocalM,
  motionBlurMm,
  sunImageMm,
} from "../../src/exposure/sharpness.ts";
import { coverageM, fieldDeg } from "../../src/view/frame.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Format {
  readonly name: string;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly diag_mm: number;
  readonly hfov_50mm_deg: number;
  readonly vfov_50mm_deg: number;
  readonly hfov_400mm_deg: number;
}
interface Truth {
  readonly formats: Format[];
  readonly checks: {
    readonly "hyperfocal_50mm_f8_c0.03_m": number;
    readonly near_far_50mm_f8_s5m: readonly [number, number];
    readonly hyperfocal_400mm_f8_m: number;
    readonly hyperfocal_1000mm_f11_m: number;
    readonly airy_um_550nm: Readonly<Record<string, number>>;
    readonly "shutter_172.8deg_24fps_s": number;
    readonly shutter_180deg_24fps_s: number;
    readonly blur_um_v100_D5000_f400_t1ms: number;
    readonly sun_image_mm_f400: number;
  };
}
const { formats, checks } = readTruth<Truth>("image-formats");
const FOOT_M = 0.3048;
const INCH_MM = 25.4;

test("field of view of twelve gates at 50 and 400 mm", () => {
  compare(
    "field of view",
    formats.flatMap((gate) => [
      { name: `${gate.name} across`, found: fieldDeg(gate.width_mm, 50), expected: gate.hfov_50mm_deg },
      { name: `${gate.name} up`, found: fieldDeg(gate.height_mm, 50), expected: gate.vfov_50mm_deg },
      { name: `${gate.name} long lens`, found: fieldDeg(gate.width_mm, 400), expected: gate.hfov_400mm_deg },
    ]),
  );
  // The diagonal of a still frame at 50 mm.
  expect(fieldDeg(43.267, 50)).toBeCloseTo(46.793, 3);
});

test("hyperfocal distances of 50 mm f/8, 400 mm f/8 and 1000 mm f/11 for 0.03 mm", () => {
  compare("hyperfocal", [
    { name: "50 mm", found: hyperfocalM(50, 8, 0.03), expected: checks["hyperfocal_50mm_f8_c0.03_m"] },
    { name: "400 mm", found: hyperfocalM(400, 8, 0.03), expected: checks.hyperfocal_400mm_f8_m },
    { name: "1000 mm", found: hyperfocalM(1000, 11, 0.03), expected: checks.hyperfocal_1000mm_f11_m },
  ]);
});

test("50 mm f/8 at 5 m is sharp from 3.389 to 9.527 m", () => {
  const { nearM, farM } = depthOfField(50, 8, 0.03, 5);
  expect(nearM).toBeCloseTo(checks.near_far_50mm_f8_s5m[0], 5);
  expect(farM).toBeCloseTo(checks.near_far_50mm_f8_s5m[1], 4);
});

test("US Army subcourse SS0507: a 2 inch lens at f/8 with 0.002 inch, focused at 20.8 feet, is sharp from 10.4 feet to infinity", () => {
  // The lesson's form leaves out one focal length (0.17 ft).
  const distanceFt = (hyperfocalM(2 * INCH_MM, 8, 0.002 * INCH_MM) - (2 * INCH_MM) / 1000) / FOOT_M;
  expect(distanceFt).toBeCloseTo(20.8, 1);
  const focusedM = hyperfocalM(2 * INCH_MM, 8, 0.002 * INCH_MM);
  const { nearM, farM } = depthOfField(2 * INCH_MM, 8, 0.002 * INCH_MM, focusedM);
  expect(farM).toBeNull();
  expect(Math.abs(nearM / FOOT_M - 10.4)).toBeLessThan(0.1);
});

test("radius of the Airy disc in green light from f/2.8 to f/32 (Born & Wolf 8.5.2: 1.21967 lambda N)", () => {
  compare(
    "Airy radius",
    Object.entries(checks.airy_um_550nm).map(([stop, radiusUm]) => ({
      name: `f/${stop}`,
      found: (airyDiameterMm(Number(stop)) / 2) * 1000,
      expected: radiusUm,
    })),
  );
});

test("100 m/s across a 400 mm lens 5 km away smears 8.0 um in 1/1000 s", () => {
  expect(motionBlurMm(100, 0.001, 400, 5000) * 1000).toBeCloseTo(checks.blur_um_v100_D5000_f400_t1ms, 6);
});

test("the sun is 3.722 mm wide behind 400 mm", () => {
  expect(sunImageMm(400, 959.63 / 3600)).toBeCloseTo(checks.sun_image_mm_f400, 3);
});

test("shutter angles: 180 degrees at 24 is 1/48 s, 172.8 is 1/50, 144 is 1/60", () => {
  expect(shutterAngleTimeS(180, 24)).toBeCloseTo(checks.shutter_180deg_24fps_s, 12);
  expect(shutterAngleTimeS(172.8, 24)).toBeCloseTo(checks["shutter_172.8deg_24fps_s"], 12);
  expect(shutterAngleTimeS(144, 24)).toBeCloseTo(1 / 60, 12);
});

/** Common practice, no source. */
test("a 105 mm lens 1270 feet away sees 69 m of height on the full 35 mm gate", () => {
  expect(Math.round(coverageM(18.67, 105, 1270 * FOOT_M))).toBe(69);
});

/** Common practice, no source. */
test("28 frames a second shown at 24 slow the picture 1.17 times; 120 shown at 24 show a fifth of the speed", () => {
  expect(slowing(28, 24)).toBeCloseTo(1.17, 2);
  expect(1 / slowing(120, 24)).toBeCloseTo(1 / 5, 12);
});
