/** Marks of lenses and shutters and their exact values: f-number series of ISO 517, shutter times as powers of two. */

import { expect, test } from "vitest";
import { exactShutterS, exactStop, F_NUMBERS, SHUTTER_TIMES } from "../../src/exposure/scales.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface MarkRow {
  readonly nominal: number;
  readonly exact: number;
}
interface Truth {
  readonly f_numbers: { readonly full: MarkRow[]; readonly half: MarkRow[]; readonly third: MarkRow[] };
  readonly shutter: { readonly rows: { nominal_s: string; exact_s: number; status: string }[] };
}
const truth = readTruth<Truth>("exposure");

/** "1/125" -> 0.008. */
function secondsOf(mark: string): number {
  const [above, below] = mark.split("/").map(Number);
  return above! / (below ?? 1);
}

test("every f-number of the full, half and third series has its exact value", () => {
  compare(
    "f-numbers",
    (["full", "half", "third"] as const).flatMap((step) =>
      truth.f_numbers[step].map(({ nominal, exact }) => ({
        name: `${step} f/${nominal}`,
        found: F_NUMBERS[step].find((mark) => mark.nominal === nominal)?.exact ?? Number.NaN,
        expected: exact,
      })),
    ),
  );
});

test("an engraved f-number is taken at its exact value: full and third series", () => {
  for (const { nominal, exact } of [...truth.f_numbers.full, ...truth.f_numbers.third]) {
    expect(exactStop(nominal), `f/${nominal}`).toBeCloseTo(exact, 3);
  }
});

test("f/1.2 and f/13 stand in two series: half stops when the lens has another half-stop mark", () => {
  const half = (nominal: number) => truth.f_numbers.half.find((row) => row.nominal === nominal)!.exact;
  const third = (nominal: number) => truth.f_numbers.third.find((row) => row.nominal === nominal)!.exact;
  for (const nominal of [1.2, 13]) {
    expect(exactStop(nominal, [nominal, 6.7, 9.5])).toBeCloseTo(half(nominal), 3);
    expect(exactStop(nominal, [nominal, 6.3, 9])).toBeCloseTo(third(nominal), 3);
  }
});

test("every shutter mark stands for its power of two (1/2000 and shorter are from memory)", () => {
  compare(
    "shutter times",
    truth.shutter.rows.map(({ nominal_s, exact_s }) => ({
      name: nominal_s,
      found: exactShutterS(secondsOf(nominal_s)),
      expected: exact_s,
    })),
  );
  expect(SHUTTER_TIMES.full.length).toBe(truth.shutter.rows.length);
});

test("no engraved mark lies farther from its exact value than a fifth of a stop", () => {
  // Common practice, no source: the engraver's rounding. It is worst at the half step 1/20 s (1/22.6, 0.18
  // stop); a mark that slipped a place would be a third of a stop off, or more.
  for (const marks of Object.values(F_NUMBERS)) {
    for (const { nominal, exact } of marks) {
      expect(Math.abs(2 * Math.log2(nominal / exact)), `f/${nominal}`).toBeLessThan(1 / 5);
    }
  }
  for (const marks of Object.values(SHUTTER_TIMES)) {
    for (const { nominal, exact } of marks) {
      expect(Math.abs(Math.log2(nominal / exact)), `${nominal} s`).toBeLessThan(1 / 5);
    }
  }
});
