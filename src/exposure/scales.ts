/**
 * The marks on lenses and shutters and what they stand for.
 *
 * f-numbers: ISO 517 series, exact 2^(k/2), 2^(k/4), 2^(k/6). Shutter times: exact 2^(-k), thirds and halves alike;
 * marks shorter than 1/1000 s and the in-between ones are common practice, no source. Marks are for people; every
 * computation uses the exact value.
 */

export type ScaleStep = "full" | "half" | "third";

export interface Mark {
  /** As engraved. */
  readonly nominal: number;
  readonly exact: number;
}

/** f-numbers by step, widest first. */
export const F_NUMBERS: Readonly<Record<ScaleStep, readonly Mark[]>> = {
  full: series([0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64], (k) => 2 ** (k / 2 - 1)),
  half: series(
    [1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.3, 4, 4.8, 5.6, 6.7, 8, 9.5, 11, 13, 16, 19, 22, 27, 32],
    (k) => 2 ** (k / 4),
  ),
  third: series(
    [
      1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14,
      16, 18, 20, 22, 25, 29, 32,
    ],
    (k) => 2 ** (k / 6),
  ),
};

/** Shutter marks as one over seconds, by step, from 1/1 s on. */
const SHUTTER_DENOMINATORS: Readonly<Record<ScaleStep, readonly number[]>> = {
  full: [1, 2, 4, 8, 15, 30, 60, 125, 250, 500, 1000, 2000, 4000, 8000],
  half: [
    1, 1.5, 2, 3, 4, 6, 8, 11, 15, 20, 30, 45, 60, 90, 125, 180, 250, 350, 500, 750, 1000, 1500, 2000, 3000,
    4000, 6000, 8000,
  ],
  third: [
    1, 1.3, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320,
    400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000,
  ],
};

/** Shutter times in seconds by step, longest first (1 s to 1/8000 s). */
export const SHUTTER_TIMES: Readonly<Record<ScaleStep, readonly Mark[]>> = {
  full: series(SHUTTER_DENOMINATORS.full.map(invert), (k) => 2 ** -k),
  half: series(SHUTTER_DENOMINATORS.half.map(invert), (k) => 2 ** (-k / 2)),
  third: series(SHUTTER_DENOMINATORS.third.map(invert), (k) => 2 ** (-k / 3)),
};

function series(nominals: readonly number[], exactAt: (index: number) => number): Mark[] {
  return nominals.map((nominal, index) => ({ nominal, exact: exactAt(index) }));
}

function invert(denominator: number): number {
  return 1 / denominator;
}

/** Steps in the order in which a mark is looked for. */
const STEPS: readonly ScaleStep[] = ["full", "third", "half"];

/**
 * The exact f-number of an engraved one. f/1.2 and f/13 stand in two series; the half-stop reading is taken when
 * another mark of the same lens is a half stop. A mark in no series (a T-stop, say) is taken as it is.
 */
export const exactStop = (marked: number, lensMarks: readonly number[] = []): number =>
  exactIn(F_NUMBERS, stepsOf(lensMarks), marked);

/** `exactStop` for all marks of a lens. */
export function exactStops(lensMarks: readonly number[]): number[] {
  const steps = stepsOf(lensMarks);
  return lensMarks.map((marked) => exactIn(F_NUMBERS, steps, marked));
}

function stepsOf(lensMarks: readonly number[]): readonly ScaleStep[] {
  const onlyHalf = lensMarks.some((mark) => find(F_NUMBERS.half, mark) && !find(F_NUMBERS.third, mark));
  return onlyHalf ? ["full", "half", "third"] : STEPS;
}

/** The exact time in seconds of an engraved one (1/500 is 1/512); a time in no series is taken as it is. */
export const exactShutterS = (markedS: number): number => exactIn(SHUTTER_TIMES, STEPS, markedS);

function exactIn(
  scales: Readonly<Record<ScaleStep, readonly Mark[]>>,
  steps: readonly ScaleStep[],
  marked: number,
): number {
  for (const step of steps) {
    const mark = find(scales[step], marked);
    if (mark) return mark.exact;
  }
  return marked;
}

function find(marks: readonly Mark[], nominal: number): Mark | undefined {
  return marks.find((mark) => Math.abs(mark.nominal - nominal) <= 1e-6 * nominal);
}

/** "f/5.6". */
export const stopName = (marked: number): string => `f/${Number(marked.toPrecision(3))}`;

/** "1/500", "1/288", "0.5 s": seconds as people say them. */
export function timeName(timeS: number): string {
  if (timeS >= 0.3) return `${Number(timeS.toPrecision(2))} s`;
  const denominator = 1 / timeS;
  const shown = denominator < 20 ? Number(denominator.toPrecision(2)) : Math.round(denominator);
  return `1/${shown}`;
}

/** Time in seconds that a shutter opening of 0..360 degrees gives at a rate in frames/s: angle / (360 rate). */
export const shutterAngleTimeS = (angleDeg: number, rateHz: number): number => angleDeg / (360 * rateHz);

/** Stops that a filter of optical density D takes: D / log10 2 (a density of 0.3 is 0.997 stop). */
export const densityStops = (density: number): number => density / Math.log10(2);

/** Slowing of the picture when shot at one rate and shown at another. */
export const slowing = (shotHz: number, shownHz: number): number => shotHz / shownHz;
