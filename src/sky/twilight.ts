/**
 * Illuminance on the horizontal from full day to night under a clear sky, without the moon.
 *
 * Explanatory Supplement to the Astronomical Almanac (1992), as Table 5-1 in Vallado. Stated error 0.02 in log10
 * (0.01 below -5 degrees), that is under 0.07 stop.
 *
 * The published rows do not quite meet. Going up they step by 0.003 stop at 20 degrees, 0.012 at 5 and 0.005 at -5, and
 * down, so that a rising sun would darken, by 0.004 at -0.8 and 0.014 at -12. Each step is spread over the last 0.03
 * degree below it: at most 0.0043 in log10, within the stated error; the rest is as published, -0.8333 and the joins too.
 */

/** The polynomial of one stretch of elevations, down to `fromDeg`. */
export interface IlluminanceRow {
  readonly fromDeg: number;
  /** log10 lux = l0 + l1 x + l2 x^2 + l3 x^3, x = airless elevation / 90. */
  readonly coefficients: readonly [number, number, number, number];
}

const SUN_ROWS: readonly IlluminanceRow[] = [
  { fromDeg: 20, coefficients: [3.74, 3.97, -4.07, 1.47] },
  { fromDeg: 5, coefficients: [3.05, 13.28, -45.98, 64.33] },
  { fromDeg: -0.8, coefficients: [2.88, 22.26, -207.64, 1034.3] },
  { fromDeg: -5, coefficients: [2.88, 21.81, -258.11, -858.36] },
  { fromDeg: -12, coefficients: [2.7, 12.17, -431.69, -1899.83] },
  { fromDeg: -18, coefficients: [13.84, 262.72, 1447.42, 2797.93] },
];

/** Light of the sun alone on the horizontal, lx, for an airless elevation; below -18 degrees it goes on falling at the last slope. */
export const sunIlluminanceLx = (airlessElevationDeg: number): number =>
  tenTo(log10Lx(SUN, airlessElevationDeg));

/** Three times as fast as `10 **`, and asked for every minute of a year. */
export const tenTo = (exponent: number): number => Math.exp(exponent * Math.LN10);

/** Shorter than the way from the join at -0.8 to rise and set. */
const SUN_JOIN_DEG = 0.03;

interface JoinedRow extends IlluminanceRow {
  /** Where the row above begins. */
  readonly endDeg: number;
  /** From this row to the one above at `endDeg`, log10. */
  readonly step: number;
}

/** Rows that meet, highest first, and how they go on below the lowest. */
export interface JoinedRows {
  readonly rows: readonly JoinedRow[];
  /** Below each join the row is led to its neighbour over this. */
  readonly joinDeg: number;
  readonly lowestDeg: number;
  readonly lowestLog10: number;
  /** Per degree: that of the lowest degree. */
  readonly lowestSlope: number;
}

/**
 * Rows, highest first, led to each other over `joinDeg` where they join. Where a step goes down, that has to be long enough
 * for the row's own slope to stay ahead of it.
 */
export function joinRows(published: readonly IlluminanceRow[], joinDeg: number): JoinedRows {
  const rows = published.map((row, i) => {
    const above = published[i - 1];
    if (above === undefined) return { ...row, endDeg: Number.MAX_VALUE, step: 0 };
    const endDeg = above.fromDeg;
    return { ...row, endDeg, step: polynomial(above, endDeg) - polynomial(row, endDeg) };
  });
  const lowest = rows[rows.length - 1]!;
  const lowestDeg = lowest.fromDeg;
  const lowestLog10 = polynomial(lowest, lowestDeg);
  const lowestSlope = polynomial(lowest, lowestDeg + 1) - lowestLog10;
  return { rows, joinDeg, lowestDeg, lowestLog10, lowestSlope };
}

function polynomial({ coefficients: [l0, l1, l2, l3] }: IlluminanceRow, elevationDeg: number): number {
  const x = elevationDeg / 90;
  return l0 + x * (l1 + x * (l2 + x * l3));
}

/** log10 of the illuminance by joined rows; below the lowest it goes on falling at the last slope. */
export function log10Lx(joined: JoinedRows, elevationDeg: number): number {
  const { rows, joinDeg, lowestDeg } = joined;
  if (elevationDeg < lowestDeg) {
    return joined.lowestLog10 + joined.lowestSlope * (elevationDeg - lowestDeg);
  }
  let index = 0;
  while (index < rows.length - 1 && elevationDeg < rows[index]!.fromDeg) index++;
  const row = rows[index]!;
  const belowDeg = row.endDeg - elevationDeg;
  const share = belowDeg < joinDeg ? 1 - belowDeg / joinDeg : 0;
  return polynomial(row, elevationDeg) + row.step * share;
}

const SUN = joinRows(SUN_ROWS, SUN_JOIN_DEG);
