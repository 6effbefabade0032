/**
 * An ascent made from a few parameters: a point mass on a held thrust, gravity that falls off with height, the turn of the
 * Earth. No drag, no staging: for where a camera has to look, not for navigation.
 */

import { EARTH_TURN_DEG_PER_DAY, MEAN_EARTH_RADIUS_M, STANDARD_GRAVITY_M_S2 } from "../base/constants.ts";
import { cosDeg, MS_PER_DAY, MS_PER_SECOND, mix, RAD_PER_DEG, sinDeg } from "../base/units.ts";
import type { AscentPoint, PitchPoint } from "../site/types.ts";

export interface PoweredFlight {
  /** Of the pad, -90..90. */
  readonly latitudeDeg: number;
  /** The vertical plane of the thrust, degrees from true north. */
  readonly headingDeg: number;
  /** At lift-off. */
  readonly thrustToWeight: number;
  /** Share of the lift-off mass burned per second, 0 or more; less than all of it in the whole burn. */
  readonly massFlowPerS: number;
  /** Above 0. */
  readonly burnS: number;
  /** Elevation of the thrust above the horizontal below the vehicle: one row or more, ascending, straight between them. */
  readonly pitch: readonly PitchPoint[];
}

/** What is reckoned with, and how finely. */
export interface PoweredModel {
  readonly gravity: boolean;
  readonly turn: boolean;
  readonly stepS: number;
}

const MODEL: PoweredModel = { gravity: true, turn: true, stepS: 0.1 };
/** The points of the path stand about this far apart. */
const POINT_STEP_S = 0.5;
const TURN_RAD_S = (EARTH_TURN_DEG_PER_DAY * RAD_PER_DEG * MS_PER_SECOND) / MS_PER_DAY;

/**
 * The path of the foot from T-0 to the end of the burn, or to where it comes back to the ground. The vehicle stands until
 * the upright part of the thrust carries it; one that never lifts stands through the whole burn.
 */
export function poweredAscent(flight: PoweredFlight, given: Partial<PoweredModel> = {}): AscentPoint[] {
  const model = { ...MODEL, ...given };
  const liftOffS = model.gravity ? liftOffOf(flight, model.stepS) : 0;
  const points = [pointAt(0, AT_REST)];
  if (liftOffS > 0) points.push(pointAt(liftOffS, AT_REST));
  if (liftOffS >= flight.burnS) return points;
  const steps = Math.ceil((flight.burnS - liftOffS) / model.stepS - 1e-9);
  const every = Math.max(1, Math.round(POINT_STEP_S / model.stepS));
  const advance = stepper(flight, model);
  const state = Float64Array.from(AT_REST);
  const before = new Float64Array(6);
  for (let i = 1, tPlusS = liftOffS; i <= steps; i++) {
    const nextS = Math.min(flight.burnS, liftOffS + i * model.stepS);
    before.set(state);
    advance(state, tPlusS, nextS - tPlusS);
    const heightM = heightOf(state);
    if (heightM < 0) {
      const landed = landing(before, state, tPlusS, nextS);
      // One that sinks at once has not left.
      if (landed.tPlusS > points.at(-1)!.tPlusS) points.push(landed);
      break;
    }
    tPlusS = nextS;
    if (i % every === 0 || i === steps) points.push(pointAt(tPlusS, state));
  }
  // A path has two points: one that never left stands to the end.
  return points.length > 1 ? points : [...points, pointAt(flight.burnS, AT_REST)];
}

/** East, north, up of the foot, then of its velocity. */
type State = ArrayLike<number>;
const AT_REST: State = [0, 0, 0, 0, 0, 0];

const pointAt = (tPlusS: number, state: State): AscentPoint => ({
  tPlusS,
  eastM: state[0]!,
  northM: state[1]!,
  upM: state[2]!,
});

/** Above the sphere that touches the pad. */
const heightOf = (state: State): number =>
  Math.sqrt(state[0]! ** 2 + state[1]! ** 2 + (state[2]! + MEAN_EARTH_RADIUS_M) ** 2) - MEAN_EARTH_RADIUS_M;

/** Where the last step goes through the ground. */
function landing(before: State, after: State, fromS: number, toS: number): AscentPoint {
  const [above, below] = [heightOf(before), heightOf(after)];
  const share = above / (above - below);
  const state = Array.from(before, (value, i) => mix(value, after[i]!, share));
  return pointAt(mix(fromS, toS, share), state);
}

/** When the upright part of the thrust first exceeds the weight; the end of the burn when it never does. */
function liftOffOf({ thrustToWeight, massFlowPerS, burnS, pitch }: PoweredFlight, stepS: number): number {
  for (let i = 0; i * stepS < burnS; i++) {
    const tPlusS = i * stepS;
    if (thrustToWeight * sinDeg(pitchAt(pitch, tPlusS)) > 1 - massFlowPerS * tPlusS) return tPlusS;
  }
  return burnS;
}

function pitchAt(pitch: readonly PitchPoint[], tPlusS: number): number {
  let next = 0;
  while (next < pitch.length && pitch[next]!.tPlusS <= tPlusS) next++;
  const before = pitch[Math.max(0, next - 1)]!;
  const after = pitch[Math.min(next, pitch.length - 1)]!;
  if (before === after) return before.pitchDeg;
  const share = (tPlusS - before.tPlusS) / (after.tPlusS - before.tPlusS);
  return mix(before.pitchDeg, after.pitchDeg, share);
}

/** One step of the classical Runge-Kutta method of fourth order (Hairer, Nørsett & Wanner 1993, Solving ODEs I, II.1). */
function stepper(flight: PoweredFlight, model: PoweredModel) {
  const changeInto = changes(flight, model);
  const [k1, k2, k3, k4, at] = Array.from({ length: 5 }, () => new Float64Array(6)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const moved = (state: Float64Array, change: Float64Array, stepS: number): Float64Array => {
    for (let i = 0; i < 6; i++) at[i] = state[i]! + stepS * change[i]!;
    return at;
  };
  return (state: Float64Array, tPlusS: number, stepS: number): void => {
    const halfS = stepS / 2;
    changeInto(state, tPlusS, k1);
    changeInto(moved(state, k1, halfS), tPlusS + halfS, k2);
    changeInto(moved(state, k2, halfS), tPlusS + halfS, k3);
    changeInto(moved(state, k3, stepS), tPlusS + stepS, k4);
    for (let i = 0; i < 6; i++) state[i]! += (stepS / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
  };
}

/** How fast the state changes: the velocity, and what accelerates it in the frame of the turning Earth. */
function changes(flight: PoweredFlight, { gravity, turn }: PoweredModel) {
  const headEast = sinDeg(flight.headingDeg);
  const headNorth = cosDeg(flight.headingDeg);
  const turnRadS = turn ? TURN_RAD_S : 0;
  const turnNorth = turnRadS * cosDeg(flight.latitudeDeg);
  const turnUp = turnRadS * sinDeg(flight.latitudeDeg);
  const g0 = STANDARD_GRAVITY_M_S2;
  return (state: Float64Array, tPlusS: number, out: Float64Array): void => {
    const ve = state[3]!;
    const vn = state[4]!;
    const vu = state[5]!;
    // Up is away from the centre of the sphere that touches the pad, so that the thrust at rest is against the weight.
    const centreUp = state[2]! + MEAN_EARTH_RADIUS_M;
    const radiusM = Math.sqrt(state[0]! * state[0]! + state[1]! * state[1]! + centreUp * centreUp);
    const ue = state[0]! / radiusM;
    const un = state[1]! / radiusM;
    const uu = centreUp / radiusM;
    // The heading, level where the vehicle is: what of it does not point up there.
    const rise = headEast * ue + headNorth * un;
    const le = headEast - rise * ue;
    const ln = headNorth - rise * un;
    const lu = -rise * uu;
    const pitchDeg = pitchAt(flight.pitch, tPlusS);
    const thrust = (flight.thrustToWeight * g0) / (1 - flight.massFlowPerS * tPlusS);
    const level = (thrust * cosDeg(pitchDeg)) / Math.sqrt(le * le + ln * ln + lu * lu);
    // Newton's law of gravitation; the pull of the turn outward is part of standard gravity.
    const weight = gravity ? g0 * (MEAN_EARTH_RADIUS_M / radiusM) ** 2 : 0;
    const upright = thrust * sinDeg(pitchDeg) - weight;
    out[0] = ve;
    out[1] = vn;
    out[2] = vu;
    // Coriolis 1835: -2 turn x velocity, with the turn (0, cos, sin of the latitude).
    out[3] = upright * ue + level * le - 2 * (turnNorth * vu - turnUp * vn);
    out[4] = upright * un + level * ln - 2 * turnUp * ve;
    out[5] = upright * uu + level * lu + 2 * turnNorth * ve;
  };
}
