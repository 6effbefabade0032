/** What must hold of the choice of a setting, whatever the light: nothing beats the best possible, order does not matter. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { bestPossible, envelopeOf, solveSetting, spareAt } from "../../src/exposure/solver.ts";
import { between, FIXED } from "../support/seeded.ts";
import {
  anyChoices,
  anyRange,
  anySamples,
  asking,
  choiceAt,
  smallestMargin,
} from "../support/solverCases.ts";

test("spare over the envelope is the smallest margin of any thing in any sample", () => {
  fc.assert(
    fc.property(anySamples, anyRange, between(-10, 30), (samples, range, x) => {
      expect(spareAt(envelopeOf(samples), range, x)).toBeCloseTo(smallestMargin(samples, range, x), 9);
    }),
    FIXED,
  );
});

test("no mid-tone on a fine grid beats the best possible, and the best possible is reached", () => {
  fc.assert(
    fc.property(anySamples, anyRange, (samples, range) => {
      const best = bestPossible(envelopeOf(samples), range);
      expect(smallestMargin(samples, range, best.midToneLog2)).toBeCloseTo(best.spareStops, 9);
      for (let x = -20; x <= 40; x += 0.1) {
        expect(smallestMargin(samples, range, x)).toBeLessThanOrEqual(best.spareStops + 1e-9);
      }
    }),
    { ...FIXED, numRuns: 100 },
  );
});

test("no choice has more spare up to the comfort margin than the one chosen (to a fiftieth of a stop, the worth of a filter)", () => {
  fc.assert(
    fc.property(anySamples, anyChoices, anyRange, between(0, 2), (samples, choices, range, comfort) => {
      const solved = solveSetting(samples, choices, range, comfort)!;
      expect(solved.spareStops).toBeCloseTo(smallestMargin(samples, range, solved.choice.midToneLog2), 8);
      for (const choice of choices) {
        const spare = Math.min(comfort, smallestMargin(samples, range, choice.midToneLog2));
        expect(spare).toBeLessThanOrEqual(Math.min(comfort, solved.spareStops) + 0.022);
      }
    }),
    FIXED,
  );
});

test("a choice that holds everything is never passed over for one that does not", () => {
  fc.assert(
    fc.property(anySamples, anyChoices, anyRange, between(0.1, 2), (samples, choices, range, comfort) => {
      const reachable = choices.some((choice) => smallestMargin(samples, range, choice.midToneLog2) >= 0);
      const solved = solveSetting(samples, choices, range, comfort)!;
      if (reachable) expect(solved.holds).toBe(1);
    }),
    FIXED,
  );
});

test("half a hundredth of a stop outside does not count as holding when another setting holds", () => {
  const range = { underStops: 3, overStops: 4 };
  const clips = choiceAt(9.996);
  const holds = choiceAt(10.004, { stop: 8.01 });
  // Accepted from 10.000 up; its place lies below, nearer to the setting that clips by 0.004.
  const samples = [asking(10, 15, 5, range)];
  expect(solveSetting(samples, [clips, holds], range, 1)!.choice).toBe(holds);
});

test("two filters as far from its place on either side: the same one in whatever order they are offered", () => {
  const range = { underStops: 8, overStops: 8 };
  const thin = choiceAt(9.5, { filterDensity: 0.3, filters: 1 });
  const dense = choiceAt(10.5, { filterDensity: 0.6, filters: 1 });
  const samples = [asking(5, 15, 10, range)];
  const forth = solveSetting(samples, [thin, dense], range, 1)!.choice;
  const back = solveSetting(samples, [dense, thin], range, 1)!.choice;
  expect(forth.filterDensity).toBe(back.filterDensity);
});

test("the order of the choices does not change the choice", () => {
  const shuffled = anyChoices.chain((choices) =>
    fc.record({
      choices: fc.constant(choices),
      other: fc.shuffledSubarray(choices, { minLength: choices.length, maxLength: choices.length }),
    }),
  );
  fc.assert(
    fc.property(
      anySamples,
      shuffled,
      anyRange,
      between(0, 2),
      (samples, { choices, other }, range, comfort) => {
        const one = solveSetting(samples, choices, range, comfort)!;
        const two = solveSetting(samples, other, range, comfort)!;
        expect(two.choice).toEqual(one.choice);
      },
    ),
    FIXED,
  );
});

test("the order of the samples does not change the choice", () => {
  fc.assert(
    fc.property(anySamples, anyChoices, anyRange, (samples, choices, range) => {
      const forth = solveSetting(samples, choices, range, 1)!;
      const back = solveSetting([...samples].reverse(), choices, range, 1)!;
      expect(back.choice.midToneLog2).toBeCloseTo(forth.choice.midToneLog2, 9);
      expect(back.holds).toBe(forth.holds);
    }),
    FIXED,
  );
});

test("more light on everything never asks for more exposure", () => {
  fc.assert(
    fc.property(
      anySamples,
      anyChoices,
      anyRange,
      between(0, 5),
      between(0, 2),
      (samples, choices, range, more, comfort) => {
        const brighter = samples.map((sample) => ({
          ...sample,
          placeLog2: sample.placeLog2 + more,
          spans: sample.spans.map((span) => ({
            ...span,
            darkLog2: span.darkLog2 + more,
            brightLog2: span.brightLog2 + more,
          })),
        }));
        const before = solveSetting(samples, choices, range, comfort)!.choice.midToneLog2;
        const after = solveSetting(brighter, choices, range, comfort)!.choice.midToneLog2;
        // Settings within a hundredth of a stop of each other are one and the same to the solver.
        expect(after).toBeGreaterThanOrEqual(before - 0.0201);
      },
    ),
    FIXED,
  );
});
