/** When no setting holds a window, the two that are named must hold the stretches they are named for. */

import fc from "fast-check";
import { expect, test } from "vitest";
import type { MediumRange, Sample } from "../../src/exposure/solver.ts";
import { twoSettings } from "../../src/exposure/twoSettings.ts";
import { FIXED } from "../support/seeded.ts";
import {
  anyChoices,
  anyRange,
  anySamples,
  asking,
  choiceAt,
  smallestMargin,
} from "../support/solverCases.ts";

test("the stretches of two settings really hold, and no setting holds longer from either end", () => {
  const holdsAll = (part: readonly Sample[], range: MediumRange, x: number): boolean =>
    part.every((sample) => smallestMargin([sample], range, x) >= -1e-8);
  fc.assert(
    fc.property(anySamples, anyChoices, anyRange, (samples, choices, range) => {
      const { first, second } = twoSettings(samples, choices, range, 1);
      const times = [...new Set(samples.map(({ atMs }) => atMs))].sort((a, b) => a - b);
      const upTo = (ms: number) => samples.filter(({ atMs }) => atMs <= ms);
      const from = (ms: number) => samples.filter(({ atMs }) => atMs >= ms);
      const longest = times
        .filter((ms) => choices.some((one) => holdsAll(upTo(ms), range, one.midToneLog2)))
        .at(-1);
      const earliest = times.find((ms) => choices.some((one) => holdsAll(from(ms), range, one.midToneLog2)));
      expect(first?.toMs).toBe(longest);
      expect(second?.fromMs).toBe(earliest);
      if (first) expect(holdsAll(upTo(first.toMs), range, first.choice.midToneLog2)).toBe(true);
      if (second) expect(holdsAll(from(second.fromMs), range, second.choice.midToneLog2)).toBe(true);
    }),
    { ...FIXED, numRuns: 1000 },
  );
});

test("a stretch is not given to a setting that clips in it by half a hundredth of a stop", () => {
  const range = { underStops: 3, overStops: 4 };
  const clips = choiceAt(9.996);
  const holds = choiceAt(10.004, { stop: 8.01 });
  const { first, second } = twoSettings([asking(10, 15, 5, range)], [clips, holds], range, 1);
  expect(first?.choice).toBe(holds);
  expect(second?.choice).toBe(holds);
});
