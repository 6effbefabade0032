/** What must hold of the choice of a setting, whatever the light: nothing beats the best possible, order does not matter. */

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  bestPossible,
  envelopeOf,
  type MediumRange,
  type Sample,
  type SettingChoice,
  solveSetting,
  spareAt,
} from "../../src/exposure/solver.ts";
import { twoSettings } from "../../src/exposure/twoSettings.ts";
import { between, FIXED } from "../support/seeded.ts";

const anyRange: fc.Arbitrary<MediumRange> = fc.record({
  underStops: between(1, 5),
  overStops: between(1, 6),
});
const anySpan = fc
  .record({
    thing: fc.constantFrom("body" as const, "plume" as const, "sky" as const),
    low: between(-3, 14),
    span: between(0, 7),
  })
  .map(({ thing, low, span }) => ({ thing, darkLog2: low, brightLog2: low + span }));

/** One to eight T-0s under one to three skies. */
const anySamples: fc.Arbitrary<Sample[]> = fc
  .record({ times: fc.integer({ min: 1, max: 8 }), skies: fc.integer({ min: 1, max: 3 }) })
  .chain(({ times, skies }) =>
    fc
      .array(
        fc.record({ spans: fc.array(anySpan, { minLength: 1, maxLength: 3 }), placeLog2: between(-3, 16) }),
        {
          minLength: times * skies,
          maxLength: times * skies,
        },
      )
      .map((parts) =>
        parts.map((part, i) => ({ ...part, atMs: 60_000 * Math.floor(i / skies), skyIndex: i % skies })),
      ),
  );

/** Every setting of a lens, some shutter times and some filters, at one speed. */
const anyChoices: fc.Arbitrary<SettingChoice[]> = fc
  .record({
    firstStop: fc.integer({ min: 0, max: 6 }),
    stopCount: fc.integer({ min: 1, max: 7 }),
    shutters: fc.uniqueArray(fc.constantFrom(1 / 64, 1 / 128, 1 / 288, 1 / 512, 1 / 1024), {
      minLength: 1,
      maxLength: 3,
    }),
    densities: fc.uniqueArray(fc.constantFrom(0, 0.3, 0.6, 0.9, 1.2), { minLength: 1, maxLength: 4 }),
    speedIso: fc.constantFrom(50, 100, 200, 500),
  })
  .map(({ firstStop, stopCount, shutters, densities, speedIso }) =>
    Array.from({ length: stopCount }, (_, i) => i).flatMap((i) =>
      shutters.flatMap((shutterS) =>
        densities.map((filterDensity) => {
          const stop = 2 ** ((firstStop + i) / 2);
          return {
            stop,
            shutterName: `1/${Math.round(1 / shutterS)}`,
            shutterS,
            filterDensity,
            midToneLog2:
              Math.log2((12.5 * stop * stop) / (shutterS * speedIso)) + filterDensity / Math.log10(2),
            fromMiddle: Math.abs(i - (stopCount - 1) / 2),
            filters: filterDensity > 0 ? 1 : 0,
          };
        }),
      ),
    ),
  );

/** Smallest margin of all samples at x, straight from the definition. */
function smallestMargin(samples: readonly Sample[], range: MediumRange, x: number): number {
  return Math.min(
    ...samples.flatMap(({ spans }) =>
      spans.flatMap(({ darkLog2, brightLog2 }) => [
        x + range.overStops - brightLog2,
        darkLog2 - (x - range.underStops),
      ]),
    ),
  );
}

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

test("no choice has more spare up to the comfort margin than the one chosen (to a hundredth of a stop)", () => {
  fc.assert(
    fc.property(anySamples, anyChoices, anyRange, between(0, 2), (samples, choices, range, comfort) => {
      const solved = solveSetting(samples, choices, range, comfort)!;
      expect(solved.spareStops).toBeCloseTo(smallestMargin(samples, range, solved.choice.midToneLog2), 8);
      for (const choice of choices) {
        const spare = Math.min(comfort, smallestMargin(samples, range, choice.midToneLog2));
        expect(spare).toBeLessThanOrEqual(Math.min(comfort, solved.spareStops) + 0.0101);
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

/** A sample whose body asks for a mid-tone between two values (log2), and has its place at a third. */
function asking(lowLog2: number, highLog2: number, placeLog2: number, range: MediumRange): Sample {
  const span = {
    thing: "body" as const,
    brightLog2: lowLog2 + range.overStops,
    darkLog2: highLog2 - range.underStops,
  };
  return { atMs: 0, skyIndex: 0, spans: [span], placeLog2 };
}

const choiceAt = (midToneLog2: number, changes: Partial<SettingChoice> = {}): SettingChoice => ({
  stop: 8,
  shutterName: "1/288",
  shutterS: 1 / 288,
  filterDensity: 0,
  midToneLog2,
  fromMiddle: 0,
  filters: 0,
  ...changes,
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
