/** When what throws its shadow on the body, and over which heights: for the whole body, whatever a camera sees of it. */

import { type Interval, intervalsBelowZero } from "../base/crossings.ts";
import type { Vec3 } from "../base/vector.ts";
import type { Vehicle } from "../site/types.ts";
import { SUN_MAX_RATE_DEG_PER_MS } from "../sky/sunTrack.ts";
import { bodyShadeAt } from "../view/bodyShade.ts";
import { nearestOf, silhouetteOf, widened } from "../view/hull.ts";
import { fromOutlineDeg } from "../view/outline.ts";
import { type Heights, makePrism, type Prism, roundPrism } from "../view/prism.ts";
import { SKYLINE_NAME } from "../view/skyline.ts";
import { type CameraSun, cameraSunOf } from "../view/sunInFrame.ts";
import type { TimeSpan } from "./clock.ts";
import type { Scene } from "./scene.ts";
import { toTimeSpan } from "./sunRisk.ts";

/** Heights in shadow at one T-0, metres above the vehicle's foot. */
export interface ShadeAt extends Heights {
  readonly at: Date;
}

/** A stretch of time in which one thing keeps the sun, wholly or in part, from some of the body. */
export interface ShadeSpan extends TimeSpan {
  readonly by: string;
  /** Share of the light it stops. */
  readonly solidity: number;
  /** At the beginning, the middle and the end. */
  readonly heights: readonly ShadeAt[];
}

/**
 * In the order of the site file, the skyline last. Times are those of the sun's centre, found whatever the step: good to a few
 * seconds, from the first to the last touch of the body, its upper rim included.
 */
export function shadeSpans(scene: Scene): ShadeSpan[] {
  const { shaders } = scene.obstacles;
  if (shaders === null) return [];
  const { vehicle, prisms, skyline } = shaders;
  const spans = prisms
    .filter(({ solidity }) => solidity > 0)
    .flatMap((prism) =>
      upAndBelowZero(scene, shadeMeasure(prism, vehicle)).map((span) =>
        shadeSpan(scene, vehicle, prism, span),
      ),
    );
  if (skyline === null) return spans;
  const behind = upAndBelowZero(scene, (sun) => skyline.fromEdgeDeg(sun.direction) - sun.semidiameterDeg);
  const whole = { name: SKYLINE_NAME, solidity: 1 };
  return [...spans, ...behind.map((span) => shadeSpan(scene, vehicle, whole, span))];
}

/** Half the height of a step in place of an angle: changes closer than some twenty seconds are one. */
const STEP_DEG = 0.05;

const isShaded = (prism: Prism, vehicle: Vehicle, direction: Vec3): boolean =>
  bodyShadeAt({ vehicle, prisms: [prism], skyline: null }, direction) !== null;

/** What stands this near to the body's side stands beside it, metres. */
const TOUCH_M = 0.001;

/**
 * Below zero while the sun stands where its shadow meets some point of the body: behind the thing as seen from the foot of
 * the axis, made wider by the body's radius and carried down the body's length.
 */
function shadeMeasure(prism: Prism, vehicle: Vehicle): (sun: CameraSun) => number {
  const { diameterM, baseM, heightM } = vehicle;
  const topM = prism.topM - baseM;
  const footM = prism.footM - baseM - heightM;
  if (topM <= 0) return () => 1;
  const [nearestX, nearestY] = nearestOf(prism.footprint, 0, 0);
  const isTouching = Math.hypot(nearestX, nearestY) < diameterM / 2 - TOUCH_M;
  // It stands against the body, or around it: no outline then, but its shade itself, as a step.
  if (isTouching && footM < 0)
    return ({ direction }) => (isShaded(prism, vehicle, direction) ? -STEP_DEG : STEP_DEG);
  const wide = widenedPrism({ ...prism, footM, topM }, diameterM / 2);
  const outline = silhouetteOf(wide, [0, 0, 0], (enu) => enu);
  return outline === null ? () => -1 : ({ direction }) => fromOutlineDeg(outline.sides, direction);
}

const widenedPrism = (prism: Prism, byM: number): Prism =>
  prism.roundM === null
    ? makePrism({ ...prism, footprint: widened(prism.footprint, byM) })
    : roundPrism(prism, prism.middle, prism.roundM + byM);

const upAndBelowZero = (
  { track, site, air, window }: Scene,
  measure: (sun: CameraSun) => number,
): Interval[] => {
  const sunOf = cameraSunOf(track, site.place, air);
  const both = (ms: number): number => {
    const sun = sunOf(ms);
    return Math.max(measure(sun), -(sun.apparentElevationDeg + sun.semidiameterDeg));
  };
  return intervalsBelowZero(both, window.opens.getTime(), window.closes.getTime(), SUN_MAX_RATE_DEG_PER_MS);
};

function shadeSpan(
  scene: Scene,
  vehicle: Vehicle,
  { name, solidity }: Pick<Prism, "name" | "solidity">,
  span: Interval,
): ShadeSpan {
  const times = [span.fromMs, (span.fromMs + span.toMs) / 2, span.toMs];
  return {
    ...toTimeSpan(span),
    by: name,
    solidity,
    heights: times.flatMap((ms) => heightsAt(scene, vehicle, name, inside(span, ms))),
  };
}

/** At its very ends a shadow has no height. */
const INSIDE_MS = 20_000;

const inside = ({ fromMs, toMs }: Interval, ms: number): number => {
  const insideMs = Math.min(INSIDE_MS, (toMs - fromMs) / 4);
  return Math.min(toMs - insideMs, Math.max(fromMs + insideMs, ms));
};

function heightsAt(scene: Scene, { baseM }: Vehicle, name: string, ms: number): ShadeAt[] {
  const { at, shade } = scene.instantAt(ms);
  const shadow = shade?.shadows.find(({ by }) => by === name);
  return shadow === undefined ? [] : [{ at, fromM: shadow.fromM - baseM, toM: shadow.toM - baseM }];
}
