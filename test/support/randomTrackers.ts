/** Random pads, cameras, climbs and lenses, put together so that the sun stands near the sweep at some T+. */

import type { Air, Place } from "../../src/base/place.ts";
import type { AscentPoint } from "../../src/site/types.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { placeFrom } from "../../src/view/sightLine.ts";
import type { Random } from "./random.ts";
import type { TriedTracker, Vector } from "./sweepBruteForce.ts";

export interface MetTracker {
  readonly tracker: TriedTracker;
  /** T-0 for which the sun stands near the axis at `metS`. */
  readonly t0Ms: number;
  readonly metS: number;
}

export type Climb = "vertical" | "curved" | "downrange" | "behind" | "overhead";

const CLIMBS: readonly Climb[] = ["vertical", "curved", "downrange", "behind", "overhead"];

const RAD = Math.PI / 180;

/** Nobody stands nearer to a vehicle in flight. */
const CLOSEST_M = 400;

interface Way {
  readonly way: (tPlusS: number) => Vector;
  readonly toS: number;
}

/** At rest until T+0, then up as t^2 and along the heading as t^3. */
function wayOf(random: Random, climb: Climb, heading: number): Way {
  const toS = random.between(60, 170);
  const upM = (random.between(2, 12) * toS * toS) / 2;
  const alongM =
    climb === "vertical"
      ? 0
      : climb === "curved"
        ? random.between(1000, 40_000)
        : random.between(80_000, 300_000);
  // One that turns over and flies on level: what is seen from behind comes down again.
  const topM = climb === "behind" || climb === "overhead" ? Math.min(upM, random.between(8000, 40_000)) : upM;
  return {
    toS,
    way: (tPlusS) => {
      const share = Math.max(0, tPlusS) / toS;
      const along = alongM * share ** 3;
      const up = topM * (topM === upM ? share ** 2 : (3 - 2 * share) * share ** 2);
      return [along * Math.sin(heading), along * Math.cos(heading), up];
    },
  };
}

/** A date and a pad with the sun between two elevations. */
function sunBetween(random: Random, lowDeg: number, highDeg: number): { pad: Place; ms: number } {
  for (;;) {
    const pad = {
      latitudeDeg: random.between(-66, 66),
      longitudeDeg: random.between(-180, 180),
      heightM: random.between(0, 300),
    };
    const ms = Math.round(random.between(Date.UTC(2005, 0, 1), Date.UTC(2050, 0, 1)));
    const { apparentElevationDeg } = sunAt(pad, new Date(ms));
    if (apparentElevationDeg > lowDeg && apparentElevationDeg < highDeg) return { pad, ms };
  }
}

const logBetween = (random: Random, low: number, high: number): number =>
  Math.exp(random.between(Math.log(low), Math.log(high)));

const anyAir = (random: Random): Air => ({
  pressureHPa: random.between(850, 1040),
  temperatureC: random.between(-10, 45),
});

export interface Wanted {
  readonly climb?: Climb;
  /** Elevation of the sun, degrees. */
  readonly sun?: readonly [number, number];
  /** How far off the axis the sun may be put, in half fields of the picture. */
  readonly missing?: number;
  readonly rollDeg?: number;
  readonly offsetShare?: number;
}

/** A camera that stands where the shadow of the vehicle falls at some T+, or a little beside it, 1 to 30 km from the pad. */
export function metTracker(random: Random, wanted: Wanted = {}): MetTracker {
  const climb = wanted.climb ?? CLIMBS[random.whole(0, CLIMBS.length - 1)]!;
  const [lowDeg, highDeg] = wanted.sun ?? [-0.5, climb === "overhead" ? 88 : 70];
  for (;;) {
    const { pad, ms } = sunBetween(random, lowDeg, highDeg);
    const sun = sunAt(pad, new Date(ms));
    const azimuth = sun.azimuthDeg * RAD;
    const heading =
      climb === "behind" ? azimuth + random.between(-0.01, 0.01) : random.between(0, 2 * Math.PI);
    const { way, toS } = wayOf(random, climb, heading);
    const focalMm = logBetween(random, 100, 3000);
    const fieldRad = 20 / focalMm;
    const metS = random.between(0.02, 0.95) * toS;
    const point = way(metS);
    const aside = (wanted.missing ?? 1.5) * fieldRad;
    const at = placeInShadow(point, azimuth, sun.apparentElevationDeg * RAD, aside, random);
    const awayM = Math.hypot(at[0], at[1]);
    const isPassed = Math.hypot(at[0] - point[0], at[1] - point[1]) < CLOSEST_M;
    if (awayM < 1000 || awayM > 30_000 || isPassed) continue;
    const bearing = (Math.atan2(at[0], at[1]) / RAD + 360) % 360;
    const camera = placeFrom(pad, bearing, awayM, at[2]);
    const tracker: TriedTracker = {
      name: `${climb} ${new Date(ms).toISOString()} sun ${sun.apparentElevationDeg.toFixed(2)}, ${focalMm.toFixed(0)} mm, ${(awayM / 1000).toFixed(1)} km off`,
      ...{ pad, camera, way, toS, focalMm },
      fromS: random.next() < 0.3 ? -3 : 0,
      gateWidthMm: random.between(8, 53),
      gateHeightMm: random.between(5, 24),
      rollDeg: wanted.rollDeg ?? 0,
      offsetShare: wanted.offsetShare ?? 0,
      ...(random.next() < 0.5 ? {} : { air: anyAir(random) }),
    };
    return { tracker, t0Ms: ms - Math.round(metS * 1000), metS };
  }
}

/** Where the line from a point away from the sun, turned aside a little, comes down to about the pad's height. */
function placeInShadow(
  point: Vector,
  azimuth: number,
  elevation: number,
  aside: number,
  random: Random,
): Vector {
  const az = azimuth + random.between(-aside, aside);
  const el = elevation + random.between(-aside, aside);
  const up = random.between(-200, 1500);
  const level = el > 0.003 ? (point[2] - up) / Math.tan(el) : random.between(1000, 30_000);
  return [point[0] - level * Math.sin(az), point[1] - level * Math.cos(az), up];
}

/** The way in rows, close enough for a curve through them to be the way itself to a centimetre. */
export function rowsOf({ way, fromS, toS }: TriedTracker, stepS = 0.1): AscentPoint[] {
  const count = Math.ceil((toS - fromS) / stepS);
  return Array.from({ length: count + 1 }, (_, i) => {
    const tPlusS = i === count ? toS : fromS + i * stepS;
    const [eastM, northM, upM] = way(tPlusS);
    return { tPlusS, eastM, northM, upM };
  });
}
