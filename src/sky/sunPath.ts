/**
 * The apparent sun in one camera's sky over a span of time, for very many instants: knots two seconds apart, made when first
 * asked for, straight between them. In two seconds the sun turns 0.0084 degree; the chord misses its way by 0.0084^2 / 8 in
 * radians, under 1e-6 degree. Where the formula of refraction has its bend, 1 degree under the horizontal, it is off by up to
 * 0.0008: no disc is up there but in very cold air.
 */

import { horizonAxes } from "../base/earthFixed.ts";
import type { Air, Place } from "../base/place.ts";
import { mix } from "../base/units.ts";
import { liftedScratch, liftInto } from "./sun.ts";
import { type SunTrack, sunScratch } from "./sunTrack.ts";

const KNOT_STEP_MS = 2000;
/** East, north, up, apparent elevation, semidiameter. */
const WIDTH = 5;

/** The apparent sun, to be written over. */
export interface PathSun {
  /** Unit vector (east, north, up). */
  readonly direction: [number, number, number];
  apparentElevationDeg: number;
  semidiameterDeg: number;
}

export const pathSun = (): PathSun => ({
  direction: [0, 0, 0],
  apparentElevationDeg: 0,
  semidiameterDeg: 0,
});

export interface SunPath {
  readonly fromMs: number;
  readonly toMs: number;
  /** The largest of the span. */
  readonly semidiameterDeg: number;
  /** The sun at an instant of the span (held at its ends). */
  into(ms: number, sun: PathSun): void;
}

/** The path over the whole span of a track. */
export function makeSunPath(track: SunTrack, place: Place, air: Air): SunPath {
  const { fromMs, toMs } = track;
  const count = Math.max(2, Math.ceil((toMs - fromMs) / KNOT_STEP_MS) + 1);
  const knots = new Float64Array(count * WIDTH).fill(Number.NaN);
  const axes = horizonAxes(place);
  const sample = sunScratch();
  const lifted = liftedScratch();
  const make = (i: number): void => {
    track.into(fromMs + i * KNOT_STEP_MS, sample);
    liftInto(axes, sample.fixed, air, lifted);
    const at = i * WIDTH;
    knots[at] = lifted.direction[0];
    knots[at + 1] = lifted.direction[1];
    knots[at + 2] = lifted.direction[2];
    knots[at + 3] = lifted.apparentElevationDeg;
    knots[at + 4] = sample.semidiameterDeg;
  };
  const into = (ms: number, sun: PathSun): void => {
    const position = (Math.min(toMs, Math.max(fromMs, ms)) - fromMs) / KNOT_STEP_MS;
    const i = Math.min(count - 2, Math.floor(position));
    const t = position - i;
    const a = i * WIDTH;
    const b = a + WIDTH;
    if (Number.isNaN(knots[a]!)) make(i);
    if (Number.isNaN(knots[b]!)) make(i + 1);
    const { direction } = sun;
    direction[0] = mix(knots[a]!, knots[b]!, t);
    direction[1] = mix(knots[a + 1]!, knots[b + 1]!, t);
    direction[2] = mix(knots[a + 2]!, knots[b + 2]!, t);
    sun.apparentElevationDeg = mix(knots[a + 3]!, knots[b + 3]!, t);
    sun.semidiameterDeg = mix(knots[a + 4]!, knots[b + 4]!, t);
  };
  const widest = Math.max(track.at(fromMs).semidiameterDeg, track.at(toMs).semidiameterDeg);
  return { fromMs, toMs, semidiameterDeg: widest, into };
}
