/** Median, MAD, standard error, outliers and the rules of a correction, by hand. */

import { describe, expect, it } from "vitest";
import { figuresOf, outliersOf, toTenth, whyNoCorrection } from "../../src/plan/readings/judgeReadings.ts";
import { median, medianError, scaledMad } from "../../src/plan/readings/robust.ts";

describe("by hand", () => {
  it("median: the middle one, or the mean of the two in the middle", () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(median([7])).toBe(7);
    // Not as text: "10" stands before "9".
    expect(median([10, 9, -11])).toBe(9);
  });

  it("scaled MAD: distances of 1 1 2 2 4 6 9 from 2 are 1 1 0 0 2 4 7, their median 1, times 1.4826", () => {
    expect(scaledMad([1, 1, 2, 2, 4, 6, 9], 2)).toBeCloseTo(1.4826, 10);
  });

  it("standard error of the median: sigma 0.4 of 16 is 1.2533 x 0.4 / 4 = 0.12533", () => {
    expect(medianError(0.4, 16)).toBeCloseTo(0.12533, 10);
  });

  it("figures of -0.2 0 0 0.1 0.3: median 0, MAD 0.1, spread 0.148, error 1.2533 x 0.14826 / sqrt 5 = 0.0831", () => {
    const figures = figuresOf([0.3, -0.2, 0, 0.1, 0]);
    expect(figures.medianStops).toBe(0);
    expect(figures.spreadStops).toBeCloseTo(0.14826, 10);
    expect(figures.errorStops).toBeCloseTo(0.0831, 4);
  });

  it("readings that agree to the last digit still have the error of rounding to a tenth: 1.2533 x 0.029 / sqrt 3", () => {
    expect(figuresOf([0.4, 0.4, 0.4]).errorStops).toBeCloseTo(0.021, 3);
  });
});

describe("outliers", () => {
  it("stand off by more than three scaled MADs and by half a stop", () => {
    // Median 0, MAD 0.1, three spreads 0.445: 0.48 is over that, but no half stop.
    expect(outliersOf([-0.1, 0, 0, 0.1, 0.1, -0.1, 0.48])).toEqual(Array(7).fill(false));
    expect(outliersOf([-0.1, 0, 0, 0.1, 0.1, -0.1, 0.52])).toEqual([...Array(6).fill(false), true]);
    // Median 0.1, MAD 0.4, three spreads 1.78.
    expect(outliersOf([-0.4, -0.3, 0.1, 0.5, 1.8])).toEqual(Array(5).fill(false));
  });

  it("cannot be told among fewer than five", () => {
    expect(outliersOf([0, 0, 0, 9])).toEqual(Array(4).fill(false));
  });
});

describe("no correction", () => {
  it.each([
    ["of fewer than three", [0.2, 0.3], 0, "only 2 usable readings, at least 3 are needed"],
    ["of none", [], 4, "no usable readings, at least 3 are needed"],
    ["with more than a third apart", [0, 0, 0, 0], 3, "3 of 7 stand apart: more than one sky"],
    [
      "of four that part by more than a stop, whatever their MAD",
      [0, 0, 0, 1.2],
      0,
      "they part by 1.2 stops (accepted 1): more than one sky",
    ],
    [
      "of many with a spread above a stop",
      [0, 1, 2, 3, -1],
      0,
      "they part by 1.5 stops (accepted 1): more than one sky",
    ],
    [
      "beyond three stops",
      [3.4, 3.4, 3.5],
      0,
      "more than 3 stops is no sky: check unit, ISO, time and direction",
    ],
  ] as const)("%s", (_, stops, outliers, why) => {
    expect(whyNoCorrection(stops, outliers)).toBe(why);
  });

  it("is said of three that agree", () => {
    expect(whyNoCorrection([0.4, 0.5, 0.6], 1)).toBeNull();
  });
});

it("corrections are told to a tenth, and never as -0", () => {
  expect([0.349, -0.349, 0.04].map(toTenth)).toEqual([0.3, -0.3, 0]);
  expect(Object.is(toTenth(-0.04), 0)).toBe(true);
});
