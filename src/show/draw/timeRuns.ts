/** Stretches of T-0s that are alike, for one mark each. */

import { alikeRuns } from "./alikeRuns.ts";
import type { MsSpan } from "./timeFrame.ts";

/** A stretch of samples that are the same, and the first of them. */
export interface Run extends MsSpan {
  readonly first: number;
}

/** Edges between samples: half way from one to the next, the window's ends at the outside. */
export const midEdges = (timesMs: readonly number[], { fromMs, toMs }: MsSpan): number[] => [
  fromMs,
  ...timesMs.slice(1).map((ms, i) => (timesMs[i]! + ms) / 2),
  toMs,
];

/** `edges` are one more than the samples; `valueAt` gives what must be the same within a run. */
export const runsOf = (edges: readonly number[], valueAt: (index: number) => unknown): Run[] =>
  alikeRuns(edges.length - 1, (first, index) => valueAt(index) === valueAt(first)).map(([first, last]) => ({
    first,
    fromMs: edges[first]!,
    toMs: edges[last + 1]!,
  }));

/** The middle of the widest part of `from`..`to` that no box covers, if it is at least `least` wide; else null. */
export function clearMiddle(
  from: number,
  to: number,
  covered: readonly { readonly x: number; readonly width: number }[],
  least: number,
): number | null {
  let best: number | null = null;
  let widest = least;
  let open = from;
  const take = (end: number): void => {
    if (end - open >= widest) [widest, best] = [end - open, (open + end) / 2];
  };
  for (const { x, width } of [...covered].sort((a, b) => a.x - b.x)) {
    take(Math.min(x, to));
    open = Math.max(open, x + width);
  }
  take(to);
  return best;
}
