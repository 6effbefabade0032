/** What all cameras of a window share: the T-0s, the sun over the pad, the light of each sky. Computed once per T-0. */

import { horizonAxes } from "../base/earthFixed.ts";
import type { Air } from "../base/place.ts";
import { PadstopError, problem, refuse, requireDate, requireNumber } from "../base/problem.ts";
import { standardAir } from "../base/standardAir.ts";
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_SECOND } from "../base/units.ts";
import type { Vec3 } from "../base/vector.ts";
import { type UprightLight, uprightLight } from "../light/body.ts";
import type { Site, Window } from "../site/types.ts";
import { MAX_WINDOW_DAYS } from "../site/zoneTime.ts";
import { daylightInputFor, daylightThrough, requireSky, type Sky, skyState } from "../sky/daylight.ts";
import { generalSkyOf, skyLuminanceOf, zenithShares } from "../sky/generalSky.ts";
import { apparentEnu, type SeenDirection, seenFrom } from "../sky/sun.ts";
import { makeSunTrack, type SunSample, type SunTrack } from "../sky/sunTrack.ts";
import type { Illuminances } from "../sky/turbidSky.ts";

export interface PlanOptions {
  /** Sky state or states to plan for; the first is the one the light columns show. Default: clear. */
  readonly sky?: Sky | readonly Sky[];
  /** Spacing of the T-0s in seconds, 1..3600. Default 60. */
  readonly stepS?: number;
  /** One more T-0 inside the window. */
  readonly alsoAt?: Date;
}

const DEFAULT_SKY: readonly Sky[] = ["clear"];
const DEFAULT_STEP_S = 60;
/** More T-0s than this are refused: the step is too fine for the window. */
const MOST_INSTANTS = 100_000;

/** The light of one sky at one T-0. */
export interface SkyLight extends Illuminances {
  readonly sky: Sky;
  readonly hasBeam: boolean;
  /** On the body, before floodlights and corrections. */
  readonly upright: UprightLight;
  /** Sky luminance in cd/m2 towards a unit vector (east, north, up of the pad). */
  readonly luminanceOf: (direction: Vec3) => number;
}

/** One T-0. */
export interface Instant {
  readonly ms: number;
  readonly at: Date;
  readonly sample: SunSample;
  /** The sun over the pad. */
  readonly sun: SeenDirection;
  /** In the order of the skies asked for. */
  readonly skies: readonly SkyLight[];
}

export interface Scene {
  readonly site: Site;
  readonly window: Window;
  readonly skies: readonly Sky[];
  readonly stepS: number;
  readonly air: Air;
  readonly track: SunTrack;
  readonly instants: readonly Instant[];
  /** Index of the T-0 nearest the middle of the window. */
  readonly middleIndex: number;
}

/** Throws PadstopError for an unknown sky or a step that does not fit. */
export function makeScene(site: Site, window: Window, options: PlanOptions = {}): Scene {
  requireWindow(window, options.alsoAt ?? null);
  const skies = asList(options.sky ?? DEFAULT_SKY).map(requireSky);
  if (skies.length === 0)
    throw new PadstopError([problem("E_EMPTY", "sky", { accepted: "at least one sky state" })]);
  const stepS = requireNumber("step", options.stepS ?? DEFAULT_STEP_S, 1, 3600, "s");
  const air = site.air ?? standardAir(site.place.heightM);
  const track = makeSunTrack(site.place, window.opens, window.closes);
  const times = instantsOf(window, stepS, options.alsoAt ?? null);
  const middleMs = (window.opens.getTime() + window.closes.getTime()) / 2;
  const axes = horizonAxes(site.place);
  const ready = skies.map(
    (sky): ReadySky => ({ sky, zenithShareAt: zenithShares(generalSkyOf(skyState(sky))) }),
  );
  const instants = times.map((ms): Instant => {
    const sample = track.at(ms);
    const sun = seenFrom(axes, sample.fixed, air);
    const input = daylightInputFor(sun, sample.distanceAu, site.place.heightM, air.pressureHPa);
    const enu = apparentEnu(sun);
    return {
      ms,
      at: new Date(ms),
      sample,
      sun,
      skies: ready.map((one) => skyLight(site, one, daylightThrough(input, one.sky), enu, sun)),
    };
  });
  const middleIndex = times.findIndex((ms) => ms >= middleMs);
  return { site, window, skies, stepS, air, track, instants, middleIndex };
}

const asList = (sky: Sky | readonly Sky[]): readonly Sky[] =>
  Array.isArray(sky) ? (sky as readonly Sky[]) : [sky as Sky];

/** A window from one instant to a later one, and an extra T-0 inside it. */
function requireWindow({ opens, closes }: Window, alsoAt: Date | null): void {
  requireDate("opens", opens);
  requireDate("closes", closes);
  const lengthMs = closes.getTime() - opens.getTime();
  if (lengthMs <= 0) refuse("E_ORDER", "closes", closes.toISOString(), `a time after ${opens.toISOString()}`);
  if (lengthMs > MAX_WINDOW_DAYS * MS_PER_DAY) {
    refuse("E_RANGE", "window", `${Math.ceil(lengthMs / MS_PER_DAY)} days`, `up to ${MAX_WINDOW_DAYS} days`);
  }
  if (alsoAt !== null && !(alsoAt >= opens && alsoAt <= closes)) {
    refuse("E_RANGE", "alsoAt", String(alsoAt), "a T-0 in the window");
  }
}

/** One sky, ready to be asked for its light at many suns. */
interface ReadySky {
  readonly sky: Sky;
  readonly zenithShareAt: (sunElevationDeg: number) => number;
}

function skyLight(
  site: Site,
  ready: ReadySky,
  light: Illuminances,
  sunEnu: Vec3,
  sun: SeenDirection,
): SkyLight {
  const { sky, zenithShareAt } = ready;
  const sunElevationDeg = sun.apparentElevationDeg;
  const falling = { ...light, sunElevationDeg, groundReflectance: site.groundReflectance, floodlightLx: 0 };
  return {
    ...light,
    sky,
    hasBeam: light.directNormalLx > 0,
    upright: uprightLight(falling),
    luminanceOf: skyLuminanceOf(
      skyState(sky),
      zenithShareAt,
      sunEnu,
      sunElevationDeg,
      light.diffuseHorizontalLx,
    ),
  };
}

/** The window's T-0s: every step from its opening, and its middle and close whatever the step. */
function instantsOf(window: Window, stepS: number, alsoAt: Date | null): number[] {
  const opensMs = window.opens.getTime();
  const closesMs = window.closes.getTime();
  const stepMs = stepS * MS_PER_SECOND;
  if ((closesMs - opensMs) / stepMs > MOST_INSTANTS) {
    throw new PadstopError([
      problem("E_RANGE", "--step", {
        found: `${stepS} s in a window of ${Math.round((closesMs - opensMs) / MS_PER_HOUR)} h`,
        accepted: `at most ${MOST_INSTANTS} T-0s`,
        next: "use a longer step",
      }),
    ]);
  }
  const times = new Set<number>([Math.round((opensMs + closesMs) / 2), closesMs]);
  for (let ms = opensMs; ms <= closesMs; ms += stepMs) times.add(ms);
  if (alsoAt !== null) times.add(alsoAt.getTime());
  return [...times].sort((a, b) => a - b);
}
