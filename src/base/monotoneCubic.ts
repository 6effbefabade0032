/**
 * A smooth curve through a table: cubic between the rows, its slope without a step, and never above or below the rows it
 * runs between. Steffen 1990, A&A 239, 443-450. A parabola with even steps that has its top at a row comes out exact.
 */

export interface MonotoneCubic {
  /** Ascending. */
  readonly knots: Float64Array;
  readonly values: Float64Array;
  /** At the knots. */
  readonly slopes: Float64Array;
  /** Factors of the square and the cube of the way into an interval, by interval. */
  readonly squares: Float64Array;
  readonly cubes: Float64Array;
}

/** At least two knots, ascending, and as many values; all finite: the caller sees to that. */
export function makeMonotoneCubic(knots: Float64Array, values: Float64Array): MonotoneCubic {
  const last = knots.length - 1;
  const slopes = slopesOf(knots, values);
  const squares = new Float64Array(last);
  const cubes = new Float64Array(last);
  for (let i = 0; i < last; i++) {
    const step = knots[i + 1]! - knots[i]!;
    const secant = (values[i + 1]! - values[i]!) / step;
    // Steffen 1990, eqs. 2 to 5.
    squares[i] = (3 * secant - 2 * slopes[i]! - slopes[i + 1]!) / step;
    cubes[i] = (slopes[i]! + slopes[i + 1]! - 2 * secant) / (step * step);
  }
  return { knots, values, slopes, squares, cubes };
}

function slopesOf(knots: Float64Array, values: Float64Array): Float64Array {
  const last = knots.length - 1;
  const slopes = new Float64Array(last + 1);
  const stepAt = (i: number): number => knots[i + 1]! - knots[i]!;
  const secantAt = (i: number): number => (values[i + 1]! - values[i]!) / stepAt(i);
  for (let i = 1; i < last; i++) {
    const [before, after] = [secantAt(i - 1), secantAt(i)];
    const [stepBefore, stepAfter] = [stepAt(i - 1), stepAt(i)];
    const parabola = (before * stepAfter + after * stepBefore) / (stepBefore + stepAfter);
    // Steffen 1990, eq. 11.
    const least = Math.min(Math.abs(before), Math.abs(after), Math.abs(parabola) / 2);
    slopes[i] = (Math.sign(before) + Math.sign(after)) * least;
  }
  slopes[0] = last === 1 ? secantAt(0) : endSlope(secantAt(0), stepAt(0), secantAt(1), stepAt(1));
  slopes[last] =
    last === 1
      ? slopes[0]!
      : endSlope(secantAt(last - 1), stepAt(last - 1), secantAt(last - 2), stepAt(last - 2));
  return slopes;
}

/** At an end of the table, from the two intervals next to it, the nearer first. */
function endSlope(secant: number, step: number, nextSecant: number, nextStep: number): number {
  // Steffen 1990, eqs. 24 and 26.
  const share = step / (step + nextStep);
  const parabola = secant * (1 + share) - nextSecant * share;
  if (parabola * secant <= 0) return 0;
  return Math.abs(parabola) > 2 * Math.abs(secant) ? 2 * secant : parabola;
}

/**
 * The interval that `x` lies in, by the number of the knot it begins with: -1 before the first knot, that of the last
 * knot from there on. `hint` is where to look first: the interval found last.
 */
export function intervalOf(knots: Float64Array, x: number, hint: number): number {
  const last = knots.length - 1;
  if (x < knots[0]!) return -1;
  if (x >= knots[last]!) return last;
  if (hint >= 0 && hint < last && x >= knots[hint]!) {
    if (x < knots[hint + 1]!) return hint;
    // A walk along the curve goes from an interval to the next.
    if (hint + 1 < last && x < knots[hint + 2]!) return hint + 1;
  }
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x >= knots[middle]!) low = middle;
    else high = middle;
  }
  return low;
}

/** The value at `x` in its interval; level before the first knot and after the last. */
export function valueIn(curve: MonotoneCubic, interval: number, x: number): number {
  if (interval < 0) return curve.values[0]!;
  if (interval >= curve.squares.length) return curve.values[interval]!;
  const way = x - curve.knots[interval]!;
  const bend = curve.squares[interval]! + way * curve.cubes[interval]!;
  return curve.values[interval]! + way * (curve.slopes[interval]! + way * bend);
}

/** The slope at `x` in its interval; the curve's own at both end knots, zero beyond them. */
export function slopeIn(curve: MonotoneCubic, interval: number, x: number): number {
  if (interval < 0) return 0;
  const way = x - curve.knots[interval]!;
  if (interval >= curve.squares.length) return way === 0 ? curve.slopes[interval]! : 0;
  return curve.slopes[interval]! + way * (2 * curve.squares[interval]! + way * 3 * curve.cubes[interval]!);
}

/** The steepest the curve gets in an interval, without sign; no less than it is, and seldom more. */
export function steepestIn(curve: MonotoneCubic, interval: number): number {
  const { knots, values, slopes } = curve;
  const secant = (values[interval + 1]! - values[interval]!) / (knots[interval + 1]! - knots[interval]!);
  // Slopes at knots have the secant's sign and are at most twice it, so a steepest place between them stays under 1.5 secants.
  return Math.max(Math.abs(slopes[interval]!), Math.abs(slopes[interval + 1]!), 1.5 * Math.abs(secant));
}
