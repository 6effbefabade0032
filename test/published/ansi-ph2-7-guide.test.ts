/**
 * The photographic exposure guide, ANSI PH2.7-1973 and 1986: its daylight rows in the table route, and the light model
 * against them. The model's figure is what an incident meter on the body's visible half would read: pi x mean / reflectance.
 */

import { expect, test } from "vitest";
import { exposureValue } from "../../src/exposure/exposureValue.ts";
import { guideEv } from "../../src/exposure/guide.ts";
import { bodySpan } from "../../src/light/body.ts";
import type { SkyState } from "../../src/site/types.ts";
import { daylight } from "../../src/sky/daylight.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly subject: string;
  readonly EV100_min: number;
  readonly EV100_max: number;
}
const { rows } = readTruth<{ ansi_ph2_7: { rows: Row[] } }>("exposure").ansi_ph2_7;

const guideRow = (subject: string): number => {
  const row = rows.find((candidate) => candidate.subject === subject)!;
  expect(row.EV100_min).toBe(row.EV100_max);
  return row.EV100_min;
};
const CLEAR_EV = guideRow("typical scene, full or slightly hazy sun (distinct shadows)");
const HAZY_EV = guideRow("typical scene, hazy sun (soft shadows)");
const CLOUDY_BRIGHT_EV = guideRow("typical scene, cloudy bright (no shadows)");
const OVERCAST_EV = guideRow("typical scene, heavy overcast");
const OPEN_SHADE_EV = guideRow("open shade under clear sky");

/** The guide's direct-sun rows hold from two hours after sunrise to two before sunset: sun 30 to 60 degrees up here. */
const ELEVATIONS_DEG = [30, 35, 40, 45, 50, 55, 60];

function modelEv(state: SkyState, elevationDeg: number, phaseDeg: number, reflectance = 0.8): number {
  const light = {
    ...daylight(elevationDeg, state),
    sunElevationDeg: elevationDeg,
    groundReflectance: 0.2,
    floodlightLx: 0,
  };
  const { meanCdM2 } = bodySpan(light, reflectance, phaseDeg);
  return exposureValue({ illuminanceLx: (Math.PI * meanCdM2) / reflectance });
}

const against = (state: SkyState, phasesDeg: readonly number[], expected: number) =>
  phasesDeg.flatMap((phaseDeg) =>
    ELEVATIONS_DEG.map((h) => ({
      name: `${state}, sun ${h}, phase ${phaseDeg}`,
      found: modelEv(state, h, phaseDeg),
      expected,
    })),
  );

test("the guide's daylight rows, front light", () => {
  expect(guideEv("clear", "front")).toBe(CLEAR_EV);
  expect(guideEv("haze", "front")).toBe(HAZY_EV);
  expect(guideEv("bright-cloud", "flat")).toBe(CLOUDY_BRIGHT_EV);
  expect(guideEv("overcast", "flat")).toBe(OVERCAST_EV);
  expect(guideEv("clear", "shaded")).toBe(OPEN_SHADE_EV);
});

test("one stop less for side light and two for back light", () => {
  for (const state of ["clear", "haze"] as const) {
    expect(guideEv(state, "side")).toBe(guideEv(state, "front")! - 1);
    expect(guideEv(state, "back")).toBe(guideEv(state, "front")! - 2);
  }
});

test("the guide has no row for bodies lit by dusk or night", () => {
  expect(guideEv("clear", "dusk")).toBeNull();
  expect(guideEv("clear", "night")).toBeNull();
});

test("clear sky: an upright body in front light reads the guide's 15 within half a stop (0.52 at 60 degrees)", () => {
  compare("guide, clear front", against("clear", [0], CLEAR_EV));
});

test("clear sky: side light reads 14 within half a stop", () => {
  compare("guide, clear side", against("clear", [90], CLEAR_EV - 1));
});

test("clear sky: back light, at phases of 135 and 180 degrees, reads 13 within a stop", () => {
  compare("guide, clear back", against("clear", [135, 180], CLEAR_EV - 2));
});

test("haze: front light reads within half a stop of 14 to 14 1/2", () => {
  const found = against("haze", [0], HAZY_EV);
  compare(
    "guide, haze front",
    found.map((sample) => ({
      ...sample,
      expected: Math.min(HAZY_EV + 0.5, Math.max(HAZY_EV, sample.found)),
    })),
  );
});

test("bright cloud and overcast read 13 and 12 within a stop, whatever the phase", () => {
  compare("guide, clouds", [
    ...against("bright-cloud", [0], CLOUDY_BRIGHT_EV),
    ...against("overcast", [0], OVERCAST_EV),
  ]);
  expect(modelEv("overcast", 40, 0)).toBe(modelEv("overcast", 40, 180));
});

test("the body's reflectance is not in what the meter reads", () => {
  expect(modelEv("clear", 40, 0, 0.3)).toBeCloseTo(modelEv("clear", 40, 0, 0.9), 10);
});
