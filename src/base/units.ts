/**
 * Conventions and conversions used everywhere.
 *
 * Angles are degrees at every border; a radian variable ends in `Rad`. Azimuth is degrees clockwise from true
 * north, elevation degrees above the horizontal, longitude positive to the east. `airless` elevation leaves
 * refraction out, `apparent` elevation includes it. Light differences are stops (factors of two).
 */

/** Radians in one degree. */
export const RAD_PER_DEG = Math.PI / 180;
/** Degrees in one radian. */
export const DEG_PER_RAD = 180 / Math.PI;
export const MS_PER_SECOND = 1000;
export const MS_PER_MINUTE = 60_000;
export const MS_PER_HOUR = 3_600_000;
export const MS_PER_DAY = 86_400_000;

/** Sine of an angle in degrees. */
export const sinDeg = (angleDeg: number): number => Math.sin(angleDeg * RAD_PER_DEG);
/** Cosine of an angle in degrees. */
export const cosDeg = (angleDeg: number): number => Math.cos(angleDeg * RAD_PER_DEG);
/** Tangent of an angle in degrees. */
export const tanDeg = (angleDeg: number): number => Math.tan(angleDeg * RAD_PER_DEG);
/** Angle in degrees of a sine; values a rounding error outside -1..1 are pulled in. */
export const asinDeg = (sine: number): number => Math.asin(clamp(sine, -1, 1)) * DEG_PER_RAD;
/** Angle in degrees of a cosine, pulled in the same way. */
export const acosDeg = (cosine: number): number => Math.acos(clamp(cosine, -1, 1)) * DEG_PER_RAD;
/** Angle in degrees of the point (x, y). */
export const atan2Deg = (y: number, x: number): number => Math.atan2(y, x) * DEG_PER_RAD;

/** `value` held inside `low`..`high`. */
export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** An azimuth in 0 (included) to 360 (excluded). */
export function wrap360(angleDeg: number): number {
  // Most angles are in range already, and the remainder of a division is slow.
  if (angleDeg > 0 && angleDeg < 360) return angleDeg;
  const wrapped = angleDeg % 360;
  const positive = wrapped < 0 ? wrapped + 360 : wrapped;
  return positive >= 360 || Object.is(positive, -0) ? 0 : positive;
}

/** The signed difference of two azimuths, -180 (excluded) to 180 (included). */
export function wrap180(angleDeg: number): number {
  if (angleDeg > -180 && angleDeg <= 180) return angleDeg;
  const wrapped = wrap360(angleDeg);
  return wrapped > 180 ? wrapped - 360 : wrapped;
}

/** Value at share `t` (0..1) of the way from `a` to `b`. */
export const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

/** 0 at `t` <= 0, 1 at `t` >= 1, with level ends between (3t^2 - 2t^3). */
export function smoothStep(t: number): number {
  const x = clamp(t, 0, 1);
  return x * x * (3 - 2 * x);
}

/** Stops from `from` to `to` (log2 of the ratio); both above zero. */
export const stopsBetween = (from: number, to: number): number => Math.log2(to / from);
