/**
 * The sun over a span of time at the price of a few ephemeris calls.
 *
 * Hour angle and declination (the direction in the Earth-fixed frame) at hourly knots, linear in between. What
 * curves them is the daily parallax, below 0.0025 degree: with knots 1/24 day apart the chord misses the curve by
 * at most 0.0025 (2 pi)^2 / (8 x 24^2) = 2.2e-5 degree; the yearly motion adds 1e-6. Parallax is that of the site:
 * a camera 100 km away is wrong by another 4e-5 degree at most.
 */

import { EARTH_TURN_DEG_PER_DAY } from "../base/constants.ts";
import type { Place } from "../base/place.ts";
import { cosDeg, MS_PER_DAY, MS_PER_HOUR, mix, sinDeg, wrap180 } from "../base/units.ts";
import type { Vec3 } from "../base/vector.ts";
import { semidiameterDeg, sunEquatorial } from "./ephemeris.ts";

/** Stated error of a track's direction, degrees. */
export const SUN_TRACK_BOUND_DEG = 0.001;
/** No direction in any sky moves faster than this: one turn in a sidereal day, and what fading refraction adds below the horizon. */
export const SUN_MAX_RATE_DEG_PER_MS = (1.3 * EARTH_TURN_DEG_PER_DAY) / MS_PER_DAY;

const KNOT_STEP_MS = MS_PER_HOUR;

export interface SunSample {
  /** Unit vector to the sun, Earth-fixed frame, airless. */
  readonly fixed: Vec3;
  readonly semidiameterDeg: number;
  readonly distanceAu: number;
}

export interface SunTrack {
  readonly place: Place;
  readonly fromMs: number;
  readonly toMs: number;
  /** The sun at an instant inside the span. */
  at(ms: number): SunSample;
  /** The same into an object of the caller's, for the many. */
  into(ms: number, sample: SunScratch): void;
}

/** A sample to be written over. */
export interface SunScratch extends SunSample {
  readonly fixed: [number, number, number];
  semidiameterDeg: number;
  distanceAu: number;
}

export const sunScratch = (): SunScratch => ({ fixed: [0, 0, 0], semidiameterDeg: 0, distanceAu: 0 });

/** A track for `place` over `from`..`to` (at most what memory holds: three numbers per hour). */
export function makeSunTrack(place: Place, from: Date, to: Date): SunTrack {
  const fromMs = from.getTime();
  const toMs = to.getTime();
  const knotCount = Math.max(2, Math.ceil((toMs - fromMs) / KNOT_STEP_MS) + 1);
  const hourAngleDeg = new Float64Array(knotCount);
  const declinationDeg = new Float64Array(knotCount);
  const distanceAu = new Float64Array(knotCount);
  for (let i = 0; i < knotCount; i++) {
    const sun = sunEquatorial(place, new Date(fromMs + i * KNOT_STEP_MS));
    const before = i === 0 ? sun.greenwichHourAngleDeg : hourAngleDeg[i - 1]!;
    hourAngleDeg[i] = before + wrap180(sun.greenwichHourAngleDeg - before);
    declinationDeg[i] = sun.declinationDeg;
    distanceAu[i] = sun.distanceAu;
  }
  const into = (ms: number, sample: SunScratch): void => {
    const position = (ms - fromMs) / KNOT_STEP_MS;
    const i = Math.min(knotCount - 2, Math.max(0, Math.floor(position)));
    const t = position - i;
    const hourDeg = mix(hourAngleDeg[i]!, hourAngleDeg[i + 1]!, t);
    const decDeg = mix(declinationDeg[i]!, declinationDeg[i + 1]!, t);
    const au = mix(distanceAu[i]!, distanceAu[i + 1]!, t);
    const level = cosDeg(decDeg);
    sample.fixed[0] = level * cosDeg(hourDeg);
    sample.fixed[1] = -level * sinDeg(hourDeg);
    sample.fixed[2] = sinDeg(decDeg);
    sample.semidiameterDeg = semidiameterDeg(au);
    sample.distanceAu = au;
  };
  const at = (ms: number): SunSample => {
    const sample = sunScratch();
    into(ms, sample);
    return sample;
  };
  return { place, fromMs, toMs, at, into };
}
