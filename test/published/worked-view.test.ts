/**
 * One view worked by hand with a pocket calculator, from the sources the steps name, to the digits written down.
 *
 * Sun 40 degrees up, clear; white body 0.80 over ground 0.20, phase 30 degrees; ISO 200, -3 / +4 stops; 96 frames/s at
 * 120 degrees; stops 8, 11, 16, 22.
 */

import { expect, test } from "vitest";
import {
  exposureValue,
  incidentMidTone,
  midToneLuminance,
  settingEv,
} from "../../src/exposure/exposureValue.ts";
import { densityStops, exactStop, shutterAngleTimeS } from "../../src/exposure/scales.ts";
import {
  bestPossible,
  envelopeOf,
  type Sample,
  type SettingChoice,
  solveSetting,
  type ThingSpan,
} from "../../src/exposure/solver.ts";
import { bodySpan, cylinderMean, fillLx, totalHorizontalLx } from "../../src/light/body.ts";
import { familyLuminance } from "../../src/light/plume.ts";
import { airMassKastenYoung1989 } from "../../src/sky/atmosphere.ts";
import { daylight } from "../../src/sky/daylight.ts";
import { compare } from "../support/compare.ts";

const STOPS = [8, 11, 16, 22];
const RANGE = { underStops: 3, overStops: 4 };
const EXPOSURE_S = shutterAngleTimeS(120, 96);
const light = { ...daylight(40, "clear"), sunElevationDeg: 40, groundReflectance: 0.2, floodlightLx: 0 };
const body = bodySpan(light, 0.8, 30);
const placeCdM2 = incidentMidTone(body.meanLx);

const midToneOf = (stop: number, density: number): number =>
  midToneLuminance({
    stop: exactStop(stop, STOPS),
    exposureS: EXPOSURE_S,
    speedIso: 200,
    lossStops: densityStops(density),
  });

function choicesWith(densities: readonly number[]): SettingChoice[] {
  return STOPS.flatMap((stop, index) =>
    densities.map((filterDensity) => ({
      stop,
      shutterName: "120 degrees",
      shutterAngleDeg: null,
      shutterS: EXPOSURE_S,
      filterDensity,
      midToneLog2: Math.log2(midToneOf(stop, filterDensity)),
      fromMiddle: Math.abs(index - (STOPS.length - 1) / 2),
      filters: filterDensity > 0 ? 1 : 0,
    })),
  );
}

function sampleOf(spans: readonly ThingSpan[]): Sample {
  return { atMs: 0, skyIndex: 0, spans, placeLog2: Math.log2(placeCdM2) };
}

const bodySpanLog2: ThingSpan = {
  thing: "body",
  darkLog2: Math.log2(body.darkestCdM2),
  brightLog2: Math.log2(body.brightestCdM2),
};
const plumeLog2 = Math.log2(familyLuminance("solid").nominalCdM2);
const plumeSpan: ThingSpan = { thing: "plume", darkLog2: plumeLog2, brightLog2: plumeLog2 };

const spareOf = (samples: readonly Sample[], stop: number, density: number) =>
  solveSetting(
    samples,
    choicesWith([density]).filter((choice) => choice.stop === stop),
    RANGE,
    1,
  )!;

test("from the air to the body's luminances", () => {
  expect(airMassKastenYoung1989(40)).toBeCloseTo(1.55341, 5);
  expect(cylinderMean(30)).toBeCloseTo(0.691812, 6);
  compare("worked view, light", [
    { name: "beam", found: light.directNormalLx, expected: 92_010 },
    { name: "sky", found: light.diffuseHorizontalLx, expected: 13_227 },
    { name: "ground", found: totalHorizontalLx(light), expected: 72_370 },
    { name: "fill", found: fillLx(light), expected: 13_850 },
    { name: "brightest", found: body.brightestCdM2, expected: 21_476 },
    { name: "darkest", found: body.darkestCdM2, expected: 3527 },
    { name: "mean", found: body.meanCdM2, expected: 15_944 },
    { name: "mid-tone", found: placeCdM2, expected: 3131 },
  ]);
});

test("EV of its place at ISO 100 and 200", () => {
  expect(exposureValue({ luminanceCdM2: placeCdM2 })).toBeCloseTo(14.61, 2);
  expect(exposureValue({ luminanceCdM2: placeCdM2 }) + 1).toBeCloseTo(15.61, 2);
  // The same thing from the setting's side: the luminance f/16 and 1/288 s render as the mid-tone at ISO 200.
  expect(settingEv(16, EXPOSURE_S) - 1).toBeCloseTo(exposureValue({ luminanceCdM2: midToneOf(16, 0) }), 10);
});

/** Stop, mid-tone luminance, brightest, darkest, spare, stops above its place (negative: under). */
const READINGS = [
  [8, 1152, 4.22, 1.61, -0.22, 1.44],
  [11, 2304, 3.22, 0.61, 0.78, 0.44],
  [16, 4608, 2.22, -0.39, 1.78, -0.56],
  [22, 9216, 1.22, -1.39, 1.61, -1.56],
] as const;

test("readings, spare and distance from its place at each stop", () => {
  const samples = [sampleOf([bodySpanLog2])];
  for (const [stop, midToneCdM2] of READINGS) expect(midToneOf(stop, 0)).toBeCloseTo(midToneCdM2, 6);
  compare(
    "worked view, readings",
    READINGS.flatMap(([stop, , brightest, darkest, spare, fromPlace]) => {
      const solved = spareOf(samples, stop, 0);
      const x = Math.log2(midToneOf(stop, 0));
      return [
        { name: `f/${stop} brightest`, found: bodySpanLog2.brightLog2 - x, expected: brightest },
        { name: `f/${stop} darkest`, found: bodySpanLog2.darkLog2 - x, expected: darkest },
        { name: `f/${stop} spare`, found: solved.spareStops, expected: spare },
        { name: `f/${stop} from its place`, found: solved.fromPlaceStops, expected: fromPlace },
      ];
    }),
  );
});

test("with a comfort of one stop the choice is f/16", () => {
  const solved = solveSetting([sampleOf([bodySpanLog2])], choicesWith([0]), RANGE, 1)!;
  expect(solved.choice.stop).toBe(16);
  expect(solved.holds).toBe(1);
});

test("body and solid plume: the best possible is 0.69 stop outside, at 45,550 cd/m2 (EV 18.48)", () => {
  expect(familyLuminance("solid").nominalCdM2).toBeCloseTo(1.18e6, -4);
  const best = bestPossible(envelopeOf([sampleOf([bodySpanLog2, plumeSpan])]), RANGE);
  const bestCdM2 = 2 ** best.midToneLog2;
  compare("worked view, two things", [
    { name: "span", found: plumeLog2 - bodySpanLog2.darkLog2, expected: 8.38 },
    { name: "best spare", found: best.spareStops, expected: -0.69 },
    { name: "its EV", found: exposureValue({ luminanceCdM2: bestCdM2 }), expected: 18.48 },
  ]);
  expect(Math.abs(bestCdM2 - 45_550)).toBeLessThan(5.1);
});

test("body and solid plume: f/22 with density 0.6, and what it clips at either end", () => {
  const samples = [sampleOf([bodySpanLog2, plumeSpan])];
  compare("worked view, filters", [
    { name: "f/22 + 0.6", found: spareOf(samples, 22, 0.6).spareStops, expected: -1.0 },
    { name: "f/16 + 0.9", found: spareOf(samples, 16, 0.9).spareStops, expected: -1.01 },
    { name: "f/22 + 0.9", found: spareOf(samples, 22, 0.9).spareStops, expected: -1.38 },
  ]);
  const solved = solveSetting(samples, choicesWith([0, 0.3, 0.6, 0.9]), RANGE, 1)!;
  expect([solved.choice.stop, solved.choice.filterDensity]).toEqual([22, 0.6]);
  expect(solved.worst.thing).toBe("plume");
  expect(solved.worst.end).toBe("over");
  expect(solved.worst.stops).toBeCloseTo(-1.0, 1);
  expect(bodySpanLog2.darkLog2 + RANGE.underStops - solved.choice.midToneLog2).toBeCloseTo(-0.4, 1);
});
