/**
 * The moon over a span of time at the price of a few ephemeris calls.
 *
 * Not the direction stands at the knots but the place of the moon about the Earth's centre, in a frame that does not
 * turn: that runs so smoothly that the cubic through four knots six hours apart misses it by less than 1e-5 degree. The turn
 * of the Earth and the parallax of the place are then taken exactly, so a pole is no worse than the equator. A knot
 * costs some 15 microseconds and is made when it is first asked for. Parallax is that of the place: from 100 km away
 * the moon stands up to 0.016 degree elsewhere.
 */

import { EARTH_TURN_DEG_PER_DAY } from "../base/constants.ts";
import { toEarthFixed } from "../base/earthFixed.ts";
import type { Place } from "../base/place.ts";
import { requireDate } from "../base/problem.ts";
import { clamp, cosDeg, DEG_PER_RAD, MS_PER_DAY, MS_PER_HOUR, sinDeg } from "../base/units.ts";
import type { Vec3 } from "../base/vector.ts";
import { moonGeocentric, moonParallaxDeg, moonSemidiameterDeg, requirePlace } from "./ephemeris.ts";

/** Stated error of a track's direction against the ephemeris, degrees; measured 8e-6. */
export const MOON_TRACK_BOUND_DEG = 1e-4;

const KNOT_STEP_MS = 6 * MS_PER_HOUR;
const TURN_DEG_PER_MS = EARTH_TURN_DEG_PER_DAY / MS_PER_DAY;

export interface MoonSample {
  /** Unit vector to the moon from the place, Earth-fixed frame, airless. */
  readonly fixed: Vec3;
  /** As seen from the place. */
  readonly semidiameterDeg: number;
  /** Equatorial horizontal. */
  readonly parallaxDeg: number;
  /** Sun, moon, Earth's centre: 0 full, 180 new. */
  readonly phaseAngleDeg: number;
  /** Of the disc, 0..1. */
  readonly litShare: number;
}

export interface MoonTrack {
  readonly place: Place;
  readonly fromMs: number;
  readonly toMs: number;
  /** The moon at an instant inside the span. */
  at(ms: number): MoonSample;
  /** The same into an object of the caller's, for the many. */
  into(ms: number, sample: MoonScratch): void;
}

/** A sample to be written over. */
export interface MoonScratch extends MoonSample {
  readonly fixed: [number, number, number];
  semidiameterDeg: number;
  parallaxDeg: number;
  phaseAngleDeg: number;
  litShare: number;
}

export const moonScratch = (): MoonScratch => ({
  fixed: [0, 0, 0],
  semidiameterDeg: 0,
  parallaxDeg: 0,
  phaseAngleDeg: 0,
  litShare: 0,
});

/** A track for `place` over `from`..`to` (four numbers for six hours). Throws PadstopError for a place or date out of range. */
export function makeMoonTrack(place: Place, from: Date, to: Date): MoonTrack {
  const [xM, yM, zM] = toEarthFixed(requirePlace(place));
  const fromMs = requireDate("from", from).getTime();
  const toMs = requireDate("to", to).getTime();
  const stillAt = stillMoon(fromMs, toMs);
  const still: StillMoon = { xKm: 0, yKm: 0, zKm: 0, cosPhase: 0 };
  const into = (ms: number, sample: MoonScratch): void => {
    stillAt(ms, still);
    const { xKm, yKm, zKm } = still;
    const turnDeg = TURN_DEG_PER_MS * (ms - fromMs);
    const [cosine, sine] = [cosDeg(turnDeg), sinDeg(turnDeg)];
    const x = xKm * cosine + yKm * sine - xM / 1000;
    const y = yKm * cosine - xKm * sine - yM / 1000;
    const z = zKm - zM / 1000;
    const distanceKm = Math.sqrt(x * x + y * y + z * z);
    sample.fixed[0] = x / distanceKm;
    sample.fixed[1] = y / distanceKm;
    sample.fixed[2] = z / distanceKm;
    sample.semidiameterDeg = moonSemidiameterDeg(distanceKm);
    sample.parallaxDeg = moonParallaxDeg(Math.sqrt(xKm * xKm + yKm * yKm + zKm * zKm));
    // The angle is bent sharply about the full moon, its cosine is not.
    const cosPhase = clamp(still.cosPhase, -1, 1);
    sample.phaseAngleDeg = Math.acos(cosPhase) * DEG_PER_RAD;
    sample.litShare = (1 + cosPhase) / 2;
  };
  const at = (ms: number): MoonSample => {
    const sample = moonScratch();
    into(ms, sample);
    return sample;
  };
  return { place, fromMs, toMs, at, into };
}

/** The moon about the Earth's centre, in the frame that is Earth-fixed at the start of the track and does not turn. */
interface StillMoon {
  xKm: number;
  yKm: number;
  zKm: number;
  /** Cosine of the phase angle. */
  cosPhase: number;
}

/** Four numbers a knot: those of `StillMoon`. */
const KNOT_WIDTH = 4;

/** The moon at an instant, from knots made when they are first needed. */
function stillMoon(fromMs: number, toMs: number): (ms: number, still: StillMoon) => void {
  const stretches = Math.max(1, Math.ceil((toMs - fromMs) / KNOT_STEP_MS));
  // Each stretch needs the knots at its ends and one more on either side; knot k stands at fromMs + (k - 1) steps.
  const knots = new Float64Array(KNOT_WIDTH * (stretches + 3));
  const isMade = new Uint8Array(stretches + 3);
  const make = (k: number): void => {
    const sinceMs = (k - 1) * KNOT_STEP_MS;
    const { fixedKm, phaseAngleDeg } = moonGeocentric(new Date(fromMs + sinceMs));
    const [x, y, z] = fixedKm;
    const turnDeg = TURN_DEG_PER_MS * sinceMs;
    const [cosine, sine] = [cosDeg(turnDeg), sinDeg(turnDeg)];
    knots.set([x * cosine - y * sine, x * sine + y * cosine, z, cosDeg(phaseAngleDeg)], KNOT_WIDTH * k);
    isMade[k] = 1;
  };
  return (ms, still) => {
    const position = (ms - fromMs) / KNOT_STEP_MS;
    const first = clamp(Math.floor(position), 0, stretches - 1);
    for (let k = first; k < first + 4; k++) if (isMade[k] === 0) make(k);
    // Through the four knots (Lagrange), at share t of the middle stretch.
    const t = position - first;
    const [before, after, later] = [t + 1, t - 1, t - 2];
    const [a, b, c, d] = [
      (-t * after * later) / 6,
      (before * after * later) / 2,
      (-before * t * later) / 2,
      (before * t * after) / 6,
    ];
    const i = KNOT_WIDTH * first;
    still.xKm = a * knots[i]! + b * knots[i + 4]! + c * knots[i + 8]! + d * knots[i + 12]!;
    still.yKm = a * knots[i + 1]! + b * knots[i + 5]! + c * knots[i + 9]! + d * knots[i + 13]!;
    still.zKm = a * knots[i + 2]! + b * knots[i + 6]! + c * knots[i + 10]! + d * knots[i + 14]!;
    still.cosPhase = a * knots[i + 3]! + b * knots[i + 7]! + c * knots[i + 11]! + d * knots[i + 15]!;
  };
}
