/**
 * What a lens hood keeps out: a plain tube in front of the glass.
 *
 * Direct sun reaches some part of the glass while it stands nearer to the axis than atan(diameter / length): the ray
 * from one lip to the far rim of a glass as wide as the tube. A narrower glass is safer than said here.
 */

import { atan2Deg, tanDeg } from "../base/units.ts";
import type { Hood } from "../site/types.ts";

/** Off-axis angle beyond which no direct sun touches the glass, degrees. */
export const hoodCutoffDeg = (hood: Hood): number => atan2Deg(hood.diameterMm, hood.lengthMm);

/** Length in diameters of a tube that keeps out everything farther off the axis than `offAxisDeg` (above 0, below 90). */
export const hoodLengthInDiameters = (offAxisDeg: number): number => 1 / tanDeg(offAxisDeg);

/**
 * Longest tube in diameters that leaves the corners of the frame clear, for light that enters through a pupil of
 * `pupilMm`: tan(half diagonal field) x length <= (diameter - pupil) / 2. Null when the tube is no wider than the
 * pupil; with a diameter of null (not known) the pupil is left out of account.
 */
export function longestHoodInDiameters(
  diameterMm: number | null,
  pupilMm: number,
  halfDiagonalDeg: number,
): number | null {
  const freeShare = diameterMm === null ? 1 : 1 - pupilMm / diameterMm;
  return freeShare > 0 ? freeShare / (2 * tanDeg(halfDiagonalDeg)) : null;
}
