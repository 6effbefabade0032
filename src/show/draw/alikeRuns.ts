/** Neighbours that are alike as one. */

/** First and last index of each run among `count` things; `isAlike` compares one with the first of its run. */
export function alikeRuns(
  count: number,
  isAlike: (first: number, index: number) => boolean,
): (readonly [first: number, last: number])[] {
  const runs: (readonly [number, number])[] = [];
  for (let first = 0, end = 1; end <= count; end++) {
    if (end < count && isAlike(first, end)) continue;
    runs.push([first, end - 1]);
    first = end;
  }
  return runs;
}
