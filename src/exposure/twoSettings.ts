/** When no single setting holds a window: which two would, and from when to when. */

import { HELD_EPSILON, type MediumRange, type Sample, type SettingChoice, solveSetting } from "./solver.ts";

/** A stretch of T-0s that one setting holds entirely. */
export interface HeldStretch {
  readonly choice: SettingChoice;
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * When no setting holds all: the one that holds longest from the opening, and the one that holds longest up to the
 * close (over all skies at each T-0). Null for an end that nothing holds.
 */
export function twoSettings(
  samples: readonly Sample[],
  choices: readonly SettingChoice[],
  range: MediumRange,
  comfortStops: number,
): { first: HeldStretch | null; second: HeldStretch | null } {
  const accepted = acceptedByTime(samples, range);
  const stretch = (ordered: readonly Accepted[]): HeldStretch | null => {
    const longest = Math.max(0, ...choices.map((choice) => heldFromStart(ordered, choice.midToneLog2)));
    if (longest === 0) return null;
    const held = ordered.slice(0, longest).map(({ atMs }) => atMs);
    const covered = new Set(held);
    const solved = solveSetting(
      samples.filter((s) => covered.has(s.atMs)),
      choices,
      range,
      comfortStops,
    );
    return solved && { choice: solved.choice, fromMs: Math.min(...held), toMs: Math.max(...held) };
  };
  return { first: stretch(accepted), second: stretch([...accepted].reverse()) };
}

/** The mid-tones that keep everything inside the range at one T-0, over all skies; empty when low > high. */
interface Accepted {
  readonly atMs: number;
  readonly lowLog2: number;
  readonly highLog2: number;
}

/** In the order of T-0. */
function acceptedByTime(samples: readonly Sample[], range: MediumRange): Accepted[] {
  const byTime = new Map<number, Accepted>();
  for (const { atMs, spans } of samples) {
    let { lowLog2, highLog2 } = byTime.get(atMs) ?? {
      lowLog2: Number.NEGATIVE_INFINITY,
      highLog2: Number.POSITIVE_INFINITY,
    };
    for (const span of spans) {
      lowLog2 = Math.max(lowLog2, span.brightLog2 - range.overStops);
      highLog2 = Math.min(highLog2, span.darkLog2 + range.underStops);
    }
    byTime.set(atMs, { atMs, lowLog2, highLog2 });
  }
  return [...byTime.values()].sort((a, b) => a.atMs - b.atMs);
}

/** How many T-0s from the start of the order a mid-tone holds. */
function heldFromStart(ordered: readonly Accepted[], midToneLog2: number): number {
  const first = ordered.findIndex(
    ({ lowLog2, highLog2 }) => midToneLog2 < lowLog2 - HELD_EPSILON || midToneLog2 > highLog2 + HELD_EPSILON,
  );
  return first === -1 ? ordered.length : first;
}
