/** Into how many drawings, and how far out each, the cameras around a pad are split: they stand from ten metres to tens of kilometres off. */

/** A camera nearer to the middle than this share of the radius has no room there. */
const NEAREST_SHARE = 1 / 10;
const MOST_DRAWINGS = 3;
/** Nearer cameras count as standing so far off, metres: a logarithm needs a floor. */
const LEAST_RANGE_M = 5;
/** What stands this much farther out than the farthest camera still widens the drawing. */
const STILL_SHOWN = 1.3;
/** From the farthest thing shown to the border. */
const MARGIN = 1.08;
/** Without cameras. */
const LEAST_RADIUS_M = 15;

/**
 * Radii in metres, ascending, one to three. As few drawings as let every camera stand a tenth of the radius or more from
 * the middle (three at most), cut where the least room is unused: the sum over cameras of log(farthest / own range).
 * `otherReachesM` are the farthest points of structures: those not far beyond a drawing's cameras widen it.
 */
export function zoomRadiiM(cameraRangesM: readonly number[], otherReachesM: readonly number[]): number[] {
  const ranges = cameraRangesM.map((rangeM) => Math.max(LEAST_RANGE_M, rangeM)).sort((a, b) => a - b);
  if (ranges.length === 0) return [roundedUp(MARGIN * Math.max(LEAST_RADIUS_M, ...otherReachesM))];
  const farthest = endsOf(ranges).map((end) => ranges[end - 1]!);
  const widened = farthest.map((farM) =>
    Math.max(farM, ...otherReachesM.filter((reachM) => reachM <= farM * STILL_SHOWN)),
  );
  const radii = widened.map((reachM) => roundedUp(Math.max(LEAST_RADIUS_M, reachM * MARGIN)));
  // A drawing that was widened so far that it takes in the cameras of the next makes that one empty.
  return radii.filter((radiusM, i) => {
    const innerM = radii[i - 1] ?? 0;
    return ranges.some((rangeM) => isWithin(rangeM, radiusM) && !isWithin(rangeM, innerM));
  });
}

/** Whether a camera at a range is drawn inside a radius. */
export const isWithin = (rangeM: number, radiusM: number): boolean => rangeM <= radiusM / 1.03;

/** Ends (excluded) of the parts of ascending ranges. */
function endsOf(ranges: readonly number[]): readonly number[] {
  const splits = bestSplits(ranges);
  const fits = splits.find((ends) =>
    ends.every((end, i) => ranges[ends[i - 1] ?? 0]! >= ranges[end - 1]! * NEAREST_SHARE),
  );
  return fits ?? splits.at(-1)!;
}

/** The best split into one part, two, three: each end tried in turn over the best of the parts before it. */
function bestSplits(ranges: readonly number[]): readonly (readonly number[])[] {
  const logs = ranges.map((rangeM) => Math.log(rangeM));
  const sums = [0];
  for (const log of logs) sums.push(sums.at(-1)! + log);
  const unused = (from: number, to: number): number =>
    (to - from) * logs[to - 1]! - (sums[to]! - sums[from]!);
  const best: Split[][] = [[{ cost: 0, ends: [] }]];
  for (let parts = 1; parts <= Math.min(MOST_DRAWINGS, ranges.length); parts++) {
    const before = best[parts - 1]!;
    const row: Split[] = [];
    for (let end = parts; end <= ranges.length; end++) row[end] = bestSplit(before, end, unused);
    best.push(row);
  }
  return best.slice(1).map((row) => row[ranges.length]!.ends);
}

/** Its last part ends at `end`; where it starts is the end of a split with one part less. */
function bestSplit(
  before: readonly (Split | undefined)[],
  end: number,
  unused: (from: number, to: number) => number,
): Split {
  let best: Split = { cost: Number.POSITIVE_INFINITY, ends: [] };
  for (let start = 0; start < end; start++) {
    const split = before[start];
    const cost = split === undefined ? Number.POSITIVE_INFINITY : split.cost + unused(start, end);
    if (cost < best.cost) best = { cost, ends: [...split!.ends, end] };
  }
  return best;
}

interface Split {
  readonly cost: number;
  readonly ends: readonly number[];
}

/** Two figures, upwards. */
function roundedUp(value: number): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.ceil(value / unit - 1e-9) * unit;
}
