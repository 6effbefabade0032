/** Compares found with expected values against the one table of tolerances and says how large the errors were. */

import { expect } from "vitest";
import { type Quantity, TOLERANCES, type Tolerance } from "../tolerances.ts";

export interface Sample {
  /** Which case this is, for the message when it fails. */
  readonly name: string;
  readonly found: number;
  readonly expected: number;
}

/**
 * Asserts mean and maximum of the absolute errors of `quantity` and prints them. Refuses another number of samples than
 * the table states, and any value that is not finite: no sample is dropped.
 */
export function compare(quantity: Quantity, samples: readonly Sample[]): void {
  const tolerance: Tolerance = TOLERANCES[quantity];
  expect(samples.length, `samples of "${quantity}"`).toBe(tolerance.count);
  const errors = samples.map((sample) => errorOf(sample, tolerance));
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const max = Math.max(...errors);
  const worst = samples[errors.indexOf(max)]!;
  const said = `${quantity}: n ${errors.length}, mean ${mean.toPrecision(3)}, max ${max.toPrecision(3)} ${tolerance.unit}`;
  const detail = `${said}; worst ${worst.name}: found ${worst.found}, expected ${worst.expected}`;
  expect(max, `${detail}; accepted max ${tolerance.max}`).toBeLessThanOrEqual(tolerance.max);
  expect(mean, `${detail}; accepted mean ${tolerance.mean}`).toBeLessThanOrEqual(tolerance.mean);
  process.stdout.write(`  ${said} (accepted ${tolerance.mean} / ${tolerance.max})\n`);
}

function errorOf({ name, found, expected }: Sample, tolerance: Tolerance): number {
  expect(Number.isFinite(found), `${name}: found ${found}`).toBe(true);
  expect(Number.isFinite(expected), `${name}: expected ${expected}`).toBe(true);
  const difference = Math.abs(found - expected);
  if (tolerance.unit === "of the value") {
    expect(expected, `${name}: nothing to compare with`).not.toBe(0);
    return difference / Math.abs(expected);
  }
  return tolerance.unit === "deg around" ? Math.min(difference % 360, 360 - (difference % 360)) : difference;
}
