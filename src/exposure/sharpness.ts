/** What blurs a point on the image: movement, depth, diffraction. Thin lens, no aberrations. */

import { AIRY_RADIUS_FACTOR, GREEN_LIGHT_M } from "../base/constants.ts";

/** Length in mm of the smear of something that crosses the line of sight: focal v t / range. */
export const motionBlurMm = (
  speedAcrossMS: number,
  exposureS: number,
  focalMm: number,
  rangeM: number,
): number => (focalMm * speedAcrossMS * exposureS) / rangeM;

/** Hyperfocal distance in metres: f^2 / (N c) + f. */
export const hyperfocalM = (focalMm: number, stop: number, blurMm: number): number =>
  (focalMm * focalMm) / (stop * blurMm * 1000) + focalMm / 1000;

/** Nearest and farthest sharp distance in metres when focused at `distanceM`; `farM` is null when sharp to infinity. */
export function depthOfField(
  focalMm: number,
  stop: number,
  blurMm: number,
  distanceM: number,
): { nearM: number; farM: number | null } {
  const focalM = focalMm / 1000;
  const hyperM = hyperfocalM(focalMm, stop, blurMm);
  const nearM = (distanceM * (hyperM - focalM)) / (hyperM + distanceM - 2 * focalM);
  const farM = distanceM >= hyperM ? null : (distanceM * (hyperM - focalM)) / (hyperM - distanceM);
  return { nearM, farM };
}

/** Diameter in mm of the Airy disc (first zero) in green light: 2 x 1.22 lambda N. */
export const airyDiameterMm = (stop: number): number => 2 * AIRY_RADIUS_FACTOR * GREEN_LIGHT_M * stop * 1000;

/** Diameter in mm of the sun's image: 2 f tan(semidiameter). */
export const sunImageMm = (focalMm: number, semidiameterDeg: number): number =>
  2 * focalMm * Math.tan((semidiameterDeg * Math.PI) / 180);

/**
 * Irradiance in W/cm2 of the sun's image behind a lens without filter: E_n pi / (4 N^2 Omega), Omega = pi sin^2 s
 * (lossless lens). Independent of the focal length.
 */
export function sunImageWCm2(normalWM2: number, stop: number, semidiameterDeg: number): number {
  const sine = Math.sin((semidiameterDeg * Math.PI) / 180);
  return normalWM2 / (4 * stop * stop * sine * sine) / 10_000;
}
