/** Lights, lenses and media at random for the choice of a setting. */

import fc from "fast-check";
import type { MediumRange, Sample, SettingChoice } from "../../src/exposure/solver.ts";
import { between } from "./seeded.ts";

export const anyRange: fc.Arbitrary<MediumRange> = fc.record({
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
export const anySamples: fc.Arbitrary<Sample[]> = fc
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
export const anyChoices: fc.Arbitrary<SettingChoice[]> = fc
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

            shutterAngleDeg: null,
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
export function smallestMargin(samples: readonly Sample[], range: MediumRange, x: number): number {
  return Math.min(
    ...samples.flatMap(({ spans }) =>
      spans.flatMap(({ darkLog2, brightLog2 }) => [
        x + range.overStops - brightLog2,
        darkLog2 - (x - range.underStops),
      ]),
    ),
  );
}

/** A sample whose body asks for a mid-tone between two values (log2), and has its place at a third. */
export function asking(lowLog2: number, highLog2: number, placeLog2: number, range: MediumRange): Sample {
  const span = {
    thing: "body" as const,
    brightLog2: lowLog2 + range.overStops,
    darkLog2: highLog2 - range.underStops,
  };
  return { atMs: 0, skyIndex: 0, spans: [span], placeLog2 };
}

export const choiceAt = (midToneLog2: number, changes: Partial<SettingChoice> = {}): SettingChoice => ({
  stop: 8,
  shutterName: "1/288",
  shutterAngleDeg: null,
  shutterS: 1 / 288,
  filterDensity: 0,
  midToneLog2,
  fromMiddle: 0,
  filters: 0,
  ...changes,
});
