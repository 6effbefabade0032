/** Figures of readings against the model, outliers, and the correction that follows, by sky and by camera. */

import { spanText } from "../stopsText.ts";
import type { ReadingFigures } from "./readingTypes.ts";
import { median, medianError, scaledMad } from "./robust.ts";

/** An outlier stands off by more than three scaled MADs (Leys et al. 2013, J. Exp. Soc. Psychol. 49, 764-766) ... */
const OUTLIER_SPREADS = 3;
/** ... and by at least half a stop: less is how people meter, however well the others agree. */
const OUTLIER_STOPS = 0.5;
/** With fewer a single reading makes up too much of the scatter it is judged by. */
export const LEAST_FOR_OUTLIERS = 5;
export const LEAST_FOR_CORRECTION = 3;
/** More of them than this, and nobody can say which were the ones under another sky. */
const MOST_OUTLIERS_SHARE = 1 / 3;
/** An instant may be half or twice the mean (IES CPC 1984): readings that scatter more tell of more than one sky. */
const MOST_SPREAD_STOPS = 1;
/** No sky of its kind is so far off; a foot-candle taken for a lux is 3.4 stops, a wrong speed often more. */
const MOST_CORRECTION_STOPS = 3;
/** Scatter is never taken for less than what rounding to a tenth of a stop makes: 0.1 / sqrt(12). */
const LEAST_SIGMA_STOPS = 0.029;

/** Whether each deviation is an outlier; none is with fewer than five. */
export function outliersOf(stops: readonly number[]): boolean[] {
  if (stops.length < LEAST_FOR_OUTLIERS) return stops.map(() => false);
  const middle = median(stops);
  const limit = OUTLIER_SPREADS * scaledMad(stops, middle);
  return stops.map((value) => {
    const off = Math.abs(value - middle);
    return off > limit && off >= OUTLIER_STOPS;
  });
}

/** Median, spread and standard error of the deviations that are used. */
export function figuresOf(stops: readonly number[]): ReadingFigures {
  const used = stops.length;
  if (used === 0) return { used, medianStops: null, spreadStops: null, errorStops: null };
  const medianStops = median(stops);
  const spreadStops = scaledMad(stops, medianStops);
  const errorStops =
    used < LEAST_FOR_CORRECTION ? null : medianError(Math.max(LEAST_SIGMA_STOPS, spreadStops), used);
  return { used, medianStops, spreadStops, errorStops };
}

/** Why the used readings give no correction; null when they do. */
export function whyNoCorrection(stops: readonly number[], outliers: number): string | null {
  const { used, medianStops, spreadStops } = figuresOf(stops);
  if (used < LEAST_FOR_CORRECTION) {
    return `${used === 0 ? "no" : `only ${used}`} usable reading${used === 1 ? "" : "s"}, at least ${LEAST_FOR_CORRECTION} are needed`;
  }
  if (outliers > MOST_OUTLIERS_SHARE * (used + outliers)) {
    return `${outliers} of ${used + outliers} stand apart: more than one sky`;
  }
  // The median deviation of so few says nothing of one that stands apart.
  const scatter = used < LEAST_FOR_OUTLIERS ? Math.max(...stops) - Math.min(...stops) : spreadStops!;
  if (scatter > MOST_SPREAD_STOPS) {
    return `they part by ${spanText(scatter)} stops (accepted ${MOST_SPREAD_STOPS}): more than one sky`;
  }
  if (Math.abs(medianStops!) > MOST_CORRECTION_STOPS) {
    return `more than ${MOST_CORRECTION_STOPS} stops is no sky: check unit, ISO, time and direction`;
  }
  return null;
}

/** Corrections are told, and written, to a tenth: nothing finer is metered or set. */
export const toTenth = (stops: number): number => Math.round(stops * 10) / 10 + 0;
