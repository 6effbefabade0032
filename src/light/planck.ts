/** Luminance of a black body. */

import { BOLTZMANN_J_K, LIGHT_SPEED_M_S, LUMINOUS_EFFICACY_LM_W, PLANCK_J_S } from "../base/constants.ts";
import { requireNumber } from "../base/problem.ts";

/**
 * CIE 1924 spectral luminous efficiency V, 380 to 780 nm in steps of 10 nm (CIE 018:2019). The 10 nm sum gives the
 * 1 nm one to 1e-4 from 1200 K up, less well below.
 */
const V_380_TO_780_NM: readonly number[] = [
  3.9e-5, 0.00012, 0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098, 0.13902, 0.20802, 0.323,
  0.503, 0.71, 0.862, 0.954, 0.9949501, 0.995, 0.952, 0.87, 0.757, 0.631, 0.503, 0.381, 0.265, 0.175, 0.107,
  0.061, 0.032, 0.017, 0.00821, 0.004102, 0.002091, 0.001047, 0.00052, 0.0002492, 0.00012, 6e-5, 3e-5,
  1.499e-5,
];
const FIRST_NM = 380;
const STEP_NM = 10;

/** Luminance in cd/m2 of a black body at 300..20,000 K: 683 x the integral of V(lambda) B(lambda, T). Throws PadstopError out of range. */
export function planckLuminance(temperatureK: number): number {
  requireNumber("temperatureK", temperatureK, 300, 20_000, "K");
  let sum = 0;
  V_380_TO_780_NM.forEach((v, i) => {
    sum += v * spectralRadiance((FIRST_NM + i * STEP_NM) * 1e-9, temperatureK);
  });
  return LUMINOUS_EFFICACY_LM_W * sum * STEP_NM * 1e-9;
}

/** W m-3 sr-1 (Planck's law, radiance per wavelength). */
function spectralRadiance(wavelengthM: number, temperatureK: number): number {
  const first = 2 * PLANCK_J_S * LIGHT_SPEED_M_S ** 2;
  const exponent = (PLANCK_J_S * LIGHT_SPEED_M_S) / (wavelengthM * BOLTZMANN_J_K * temperatureK);
  return first / wavelengthM ** 5 / Math.expm1(exponent);
}
