/**
 * The magnetic field of a spherical harmonic model, the slow way: the potential from its definition (Winch et al. 2005, Schmidt's
 * quasi-normalisation), and its slope by differences in the Earth-fixed frame. Shares nothing with a recursion over degrees.
 */

import { horizonAxes, toEarthFixed, toHorizon } from "../../src/base/earthFixed.ts";
import type { Place } from "../../src/base/place.ts";
import type { Vec3 } from "../../src/base/vector.ts";

export interface Coefficient {
  readonly n: number;
  readonly m: number;
  readonly g: number;
  readonly h: number;
  readonly gdot: number;
  readonly hdot: number;
}

const RADIUS_M = 6_371_200;
const EPOCH_YEAR = 2025;
const STEP_M = 200;

/** Field to the east, north and up of a place, nT. */
export function fieldFromPotential(rows: readonly Coefficient[], year: number, place: Place): Vec3 {
  const at = toEarthFixed(place);
  const slope = [0, 1, 2].map((axis) => {
    const moved = (by: number): Vec3 => at.map((value, i) => (i === axis ? value + by : value)) as never;
    // Differences over one and two steps: what is left is of the fourth order.
    const over = (by: number): number =>
      (potential(rows, year, moved(by)) - potential(rows, year, moved(-by))) / (2 * by);
    return (4 * over(STEP_M) - over(2 * STEP_M)) / 3;
  });
  const [x, y, z] = slope as [number, number, number];
  return toHorizon(horizonAxes(place), [-x, -y, -z]);
}

/** nT m. */
function potential(rows: readonly Coefficient[], year: number, [x, y, z]: Vec3): number {
  const r = Math.hypot(x, y, z);
  const longitude = Math.atan2(y, x);
  let sum = 0;
  for (const { n, m, g, h, gdot, hdot } of rows) {
    const years = year - EPOCH_YEAR;
    const wave = (g + years * gdot) * Math.cos(m * longitude) + (h + years * hdot) * Math.sin(m * longitude);
    sum += (RADIUS_M / r) ** (n + 1) * wave * schmidt(n, m, z / r);
  }
  return RADIUS_M * sum;
}

/** Schmidt's function from the closed form of the m-th derivative of a Legendre polynomial. */
function schmidt(n: number, m: number, cosine: number): number {
  let derivative = 0;
  for (let k = 0; 2 * k <= n - m; k++) {
    const sign = k % 2 === 0 ? 1 : -1;
    const up = factorial(2 * n - 2 * k) / (factorial(k) * factorial(n - k) * factorial(n - m - 2 * k));
    derivative += sign * up * cosine ** (n - m - 2 * k);
  }
  const associated = ((1 - cosine * cosine) ** (m / 2) * derivative) / 2 ** n;
  return m === 0 ? associated : associated * Math.sqrt((2 * factorial(n - m)) / factorial(n + m));
}

function factorial(n: number): number {
  let product = 1;
  for (let k = 2; k <= n; k++) product *= k;
  return product;
}
