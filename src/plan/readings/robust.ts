/** Middle and scatter of readings that a few wrong ones do not move. */

/** The middle value; of an even number the mean of the two in the middle. At least one value. */
export function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** 1 / (the 75 % point of the standard normal): makes the MAD of a normal scatter its standard deviation (Hampel 1974, JASA 69, 383-393). */
const NORMAL_MAD = 1.4826;

/** Median of the distances from `middle`, times 1.4826. At least one value. */
export const scaledMad = (values: readonly number[], middle: number): number =>
  NORMAL_MAD * median(values.map((value) => Math.abs(value - middle)));

/** Square root of pi / 2. */
const MEDIAN_ERROR = 1.2533;

/**
 * Standard error of the median of `count` values of a normal scatter: 1.2533 sigma / sqrt(n) (Kendall & Stuart, The Advanced
 * Theory of Statistics, vol. 1, standard errors of quantiles, large n). Of few values it is rough itself.
 */
export const medianError = (sigma: number, count: number): number =>
  (MEDIAN_ERROR * sigma) / Math.sqrt(count);
