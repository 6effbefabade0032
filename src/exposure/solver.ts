/**
 * One setting for a whole window: which stop, shutter and filter keeps everything inside the medium's range, and by
 * how much.
 *
 * With x = log2 of the luminance rendered as the mid-tone, each kept thing asks for x >= its highlight - over and
 * x <= its shadow + under. spare(x) is the smallest of these margins over all samples: two straight lines, so its
 * best x is known exactly, and no setting can beat the spare there.
 */

import type { Thing } from "../site/types.ts";

/** A kept thing at one T-0 under one sky: log2 of its darkest and brightest luminance (cd/m2). */
export interface ThingSpan {
  readonly thing: Thing;
  readonly darkLog2: number;
  readonly brightLog2: number;
  /** For a plume whose luminance is known to a range, and for what it lights: the same at the ends of the range. */
  readonly plumeRange?: {
    readonly lowDarkLog2: number;
    readonly lowBrightLog2: number;
    readonly highDarkLog2: number;
    readonly highBrightLog2: number;
  };
}

/** Everything kept at one T-0 under one sky. */
export interface Sample {
  readonly atMs: number;
  /** Along a sweep: seconds after that T-0. */
  readonly tPlusS?: number;
  readonly skyIndex: number;
  readonly spans: readonly ThingSpan[];
  /** log2 of the luminance that belongs at the mid-tone (the body's mean metered by incident light). */
  readonly placeLog2: number;
}

/** A setting this camera can be given. */
export interface SettingChoice {
  /** As engraved. */
  readonly stop: number;
  readonly shutterName: string;
  /** Opening in degrees where it is set so; null for a marked time. */
  readonly shutterAngleDeg: number | null;
  /** As engraved or by angle and rate, seconds. */
  readonly shutterS: number;
  readonly filterDensity: number;
  /** log2 of the luminance it renders as the mid-tone. */
  readonly midToneLog2: number;
  /** Steps from the middle of the lens's marks. */
  readonly fromMiddle: number;
  /** Filters in the light path, 0 or 1. */
  readonly filters: number;
}

export interface MediumRange {
  readonly underStops: number;
  readonly overStops: number;
}

export interface Worst {
  readonly atMs: number;
  /** Along a sweep. */
  readonly tPlusS: number | undefined;
  readonly skyIndex: number;
  readonly thing: Thing;
  /** Margin in stops; negative: clipped by that much. */
  readonly stops: number;
  readonly end: "over" | "under";
}

export interface SolvedSetting {
  readonly choice: SettingChoice;
  /** Smallest margin over all samples, stops. */
  readonly spareStops: number;
  /** Share of samples with everything kept inside the range, 0..1. */
  readonly holds: number;
  readonly worst: Worst;
  /** Mean distance of the body from its place, stops; positive: brighter. */
  readonly fromPlaceStops: number;
}

export interface Envelope {
  readonly darkestLog2: number;
  readonly brightestLog2: number;
  readonly placeLog2: number;
}

/** So little spare is given up for a filter less, stops: what a density of 1.8 lacks to six whole stops. */
const FILTER_WORTH_STOPS = 0.021;
/** Spares closer than this are the same, stops. */
const SAME_SPARE_STOPS = 0.001;
/** Settings this near in brightness are one to a person; then fewer filters count, stops. */
const SAME_PLACE_STOPS = 0.1;
/** Margin for rounding when a sample is called held. */
export const HELD_EPSILON = 1e-9;

/** Whether a margin is a clipped one. */
export const isClipped = (marginStops: number): boolean => marginStops < -HELD_EPSILON;

/** `plumeEnd` takes the plume at an end of its range instead of its nominal luminance. */
export function envelopeOf(samples: readonly Sample[], plumeEnd: "low" | "high" | null = null): Envelope {
  let darkestLog2 = Number.POSITIVE_INFINITY;
  let brightestLog2 = Number.NEGATIVE_INFINITY;
  let placeSum = 0;
  for (const sample of samples) {
    for (const span of sample.spans) {
      const range = plumeEnd === null ? undefined : span.plumeRange;
      const isLow = plumeEnd === "low";
      darkestLog2 = Math.min(
        darkestLog2,
        isLow ? (range?.lowDarkLog2 ?? span.darkLog2) : (range?.highDarkLog2 ?? span.darkLog2),
      );
      brightestLog2 = Math.max(
        brightestLog2,
        isLow ? (range?.lowBrightLog2 ?? span.brightLog2) : (range?.highBrightLog2 ?? span.brightLog2),
      );
    }
    placeSum += sample.placeLog2;
  }
  return { darkestLog2, brightestLog2, placeLog2: placeSum / samples.length };
}

/** Smallest margin over an envelope at x. */
export const spareAt = (envelope: Envelope, range: MediumRange, x: number): number =>
  Math.min(x + range.overStops - envelope.brightestLog2, envelope.darkestLog2 + range.underStops - x);

/** The x no setting can beat, and its spare. */
export function bestPossible(
  envelope: Envelope,
  range: MediumRange,
): { midToneLog2: number; spareStops: number } {
  const midToneLog2 =
    (envelope.brightestLog2 - range.overStops + envelope.darkestLog2 + range.underStops) / 2;
  return { midToneLog2, spareStops: spareAt(envelope, range, midToneLog2) };
}

/**
 * The best of the settings: most spare up to the comfort margin (reached a fiftieth of a stop short of it; below it so
 * much is given up for a filter less), then nearest to the body's place, then fewest
 * filters, then a stop in the lens's middle, then the shorter time, the wider stop, the thinner filter. Null without samples or choices.
 */
export function solveSetting(
  samples: readonly Sample[],
  choices: readonly SettingChoice[],
  range: MediumRange,
  comfortStops: number,
): SolvedSetting | null {
  if (samples.length === 0 || choices.length === 0) return null;
  const envelope = envelopeOf(samples);
  const [best] = bestChoices(envelope, choices, range, comfortStops, 1);
  return judgeChoice(best!, samples, envelope.placeLog2, range);
}

/** The `count` best of the choices, best first, by the rule of `solveSetting`. */
export function bestChoices(
  envelope: Envelope,
  choices: readonly SettingChoice[],
  range: MediumRange,
  comfortStops: number,
  count: number,
): SettingChoice[] {
  const left = choices.map((choice): Judged => {
    const spare = spareAt(envelope, range, choice.midToneLog2);
    return {
      choice,
      // Rounding must not let a setting that just clips pass for one that just holds.
      clips: isClipped(spare) ? 1 : 0,
      shortOfComfort: Math.max(0, comfortStops - FILTER_WORTH_STOPS - spare),
      fromPlace: Math.abs(envelope.placeLog2 - choice.midToneLog2),
    };
  });
  const best: SettingChoice[] = [];
  while (best.length < count && left.length > 0) {
    const [next] = left.splice(left.indexOf(bestOf(left)), 1);
    best.push(next!.choice);
  }
  return best;
}

interface Judged {
  readonly choice: SettingChoice;
  readonly clips: number;
  readonly shortOfComfort: number;
  readonly fromPlace: number;
}

/** Each measure in turn keeps those that are as good as the best by it; the last ones tell any two apart. */
const MEASURES: readonly { readonly of: (one: Judged) => number; readonly same: number }[] = [
  { of: ({ clips }) => clips, same: 0 },
  { of: ({ shortOfComfort }) => shortOfComfort, same: FILTER_WORTH_STOPS },
  // A density is no whole number of stops: without this a dense filter would be taken for a hundredth of a stop.
  { of: ({ shortOfComfort, choice }) => (shortOfComfort > 0 ? choice.filters : 0), same: 0 },
  { of: ({ shortOfComfort }) => shortOfComfort, same: SAME_SPARE_STOPS },
  { of: ({ fromPlace }) => fromPlace, same: SAME_PLACE_STOPS },
  { of: ({ choice }) => choice.filters, same: 0 },
  { of: ({ choice }) => choice.fromMiddle, same: 0 },
  { of: ({ choice }) => choice.shutterS, same: 0 },
  { of: ({ choice }) => choice.stop, same: 0 },
  { of: ({ choice }) => choice.filterDensity, same: 0 },
];

function bestOf(judged: readonly Judged[]): Judged {
  let left = judged;
  for (const { of, same } of MEASURES) {
    let least = Number.POSITIVE_INFINITY;
    for (const one of left) least = Math.min(least, of(one));
    left = left.filter((one) => of(one) <= least + same);
    if (left.length === 1) break;
  }
  return left[0]!;
}

/** How a given setting does over the samples, at least one; `placeLog2` is that of their envelope. */
export function judgeChoice(
  choice: SettingChoice,
  samples: readonly Sample[],
  placeLog2: number,
  range: MediumRange,
): SolvedSetting {
  let held = 0;
  let worst: Worst | null = null;
  for (const sample of samples) {
    const sampleWorst = worstOf(sample, choice.midToneLog2, range);
    if (!isClipped(sampleWorst.stops)) held++;
    if (worst === null || sampleWorst.stops < worst.stops - HELD_EPSILON) worst = sampleWorst;
  }
  return {
    choice,
    spareStops: worst!.stops,
    holds: held / samples.length,
    worst: worst!,
    fromPlaceStops: placeLog2 - choice.midToneLog2,
  };
}

/** The kept thing with the smallest margin in one sample. */
export function worstOf(sample: Sample, midToneLog2: number, range: MediumRange): Worst {
  let worst: Worst | null = null;
  for (const { thing, darkLog2, brightLog2 } of sample.spans) {
    const overMargin = midToneLog2 + range.overStops - brightLog2;
    const underMargin = darkLog2 + range.underStops - midToneLog2;
    const stops = Math.min(overMargin, underMargin);
    if (worst === null || stops < worst.stops) {
      const end = overMargin < underMargin ? "over" : "under";
      worst = { atMs: sample.atMs, tPlusS: sample.tPlusS, skyIndex: sample.skyIndex, thing, stops, end };
    }
  }
  return worst!;
}
