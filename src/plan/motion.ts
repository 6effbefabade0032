/** How fast the vehicle's foot crosses the picture of a fixed camera while it is in the gate. */

import { type Interval, intervalsBetween, signChanges } from "../base/crossings.ts";
import { MS_PER_SECOND, mix } from "../base/units.ts";
import { dot, subtract, type Vec3 } from "../base/vector.ts";
import { motionBlurMm } from "../exposure/sharpness.ts";
import type { Site } from "../site/types.ts";
import type { AscentPath, Triple } from "../view/ascentPath.ts";
import { carryTo } from "../view/sightLine.ts";
import type { SiteAscent } from "../view/siteAscent.ts";
import type { CameraView } from "./cameraView.ts";

export interface ImageMotion {
  /** Fastest movement on the image, mm/s, while the vehicle's foot is in the gate. */
  readonly imageMmS: number;
  /** Of the vehicle over the ground, and its part across the line of sight, at that moment. */
  readonly speedMS: number;
  readonly acrossMS: number;
  readonly rangeM: number;
}

/** The climb is followed this far, metres. */
const HIGHEST_CLIMB_M = 5000;
/** Moments tried in a stretch in the gate; the movement grows or has one broad top there, which is then narrowed down. */
const STRETCH_STEPS = 16;
const NARROWINGS = 6;

/**
 * The fastest the vehicle's foot moves on the image while it is in the gate, or null when the ascent, the place or the
 * foot in the gate is not known. `ascent` is `siteAscentOf(site)`, made once for all cameras.
 */
export function imageMotion(ascent: SiteAscent | null, site: Site, view: CameraView): ImageMotion | null {
  if (ascent === null || site.vehicle === null || !view.placeGiven) return null;
  const { path } = ascent;
  const sight = sightOf(site, site.vehicle.baseM, view);
  let fastest: ImageMotion | null = null;
  for (const { fromMs, toMs } of stretchesInGate(path, sight)) {
    const found = fastestIn(
      path,
      sight,
      view.camera.lens.focalMm,
      fromMs / MS_PER_SECOND,
      toMs / MS_PER_SECOND,
    );
    if (fastest === null || found.imageMmS > fastest.imageMmS) fastest = found;
  }
  return fastest;
}

/** A camera in the pad's frame: all that has to be asked there, so that no point need be carried over. */
interface Sight {
  /** From the camera to where the foot stands on the pad. */
  readonly toPad: Vec3;
  /** The planes through the camera and the gate's sides, normals inward. */
  readonly inward: readonly Vec3[];
}

function sightOf(site: Site, baseM: number, view: CameraView): Sight {
  const carry = carryTo(site.place, view.place);
  const foot = carry([0, 0, baseM]);
  const axes = (
    [
      [1, 0, baseM],
      [0, 1, baseM],
      [0, 0, baseM + 1],
    ] as const
  ).map((end) => subtract(carry(end), foot)) as [Vec3, Vec3, Vec3];
  const inPadFrame = (direction: Vec3): Vec3 => [
    dot(axes[0], direction),
    dot(axes[1], direction),
    dot(axes[2], direction),
  ];
  return { toPad: inPadFrame(foot), inward: view.frame.sides.map(({ inward }) => inPadFrame(inward)) };
}

/** The times after T-0, in ms, in which the foot moves in the gate. */
function stretchesInGate(path: AscentPath, { toPad, inward }: Sight): Interval[] {
  const at: Triple = [0, 0, 0];
  // Metres to the nearest plane, below zero inside; the end of the climb is one of them. It changes no faster than the foot moves.
  const outsideM = (ms: number): number => {
    path.positionInto(ms / MS_PER_SECOND, at);
    let leastM = HIGHEST_CLIMB_M - at[2];
    for (let i = 0; i < 3; i++) at[i]! += toPad[i]!;
    for (const normal of inward) leastM = Math.min(leastM, dot(normal, at));
    return -leastM;
  };
  const fromMs = path.fromS * MS_PER_SECOND;
  const edges: number[] = [];
  let startMs = fromMs;
  // A bound on the speed is close in short pieces only, and it is the first seconds that are slow.
  for (let lengthMs = MS_PER_SECOND; startMs < path.toS * MS_PER_SECOND; lengthMs *= 2) {
    const endMs = Math.min(path.toS * MS_PER_SECOND, startMs + lengthMs);
    const boundMMs = path.boundMS(startMs / MS_PER_SECOND, endMs / MS_PER_SECOND) / MS_PER_SECOND;
    if (boundMMs > 0) edges.push(...signChanges(outsideM, startMs, endMs, boundMMs));
    startMs = endMs;
    path.positionInto(startMs / MS_PER_SECOND, at);
    if (at[2] > HIGHEST_CLIMB_M) break;
  }
  return intervalsBetween(edges, outsideM(fromMs) < 0, fromMs, startMs);
}

function fastestIn(
  path: AscentPath,
  { toPad }: Sight,
  focalMm: number,
  fromS: number,
  toS: number,
): ImageMotion {
  const at: Triple = [0, 0, 0];
  const velocity: Triple = [0, 0, 0];
  const motionAt = (tPlusS: number): ImageMotion => {
    path.positionInto(tPlusS, at);
    path.velocityInto(tPlusS, velocity);
    for (let i = 0; i < 3; i++) at[i]! += toPad[i]!;
    const rangeM = Math.sqrt(dot(at, at));
    const speedMS = Math.sqrt(dot(velocity, velocity));
    const along = dot(at, velocity) / rangeM;
    const acrossMS = Math.sqrt(Math.max(0, speedMS * speedMS - along * along));
    return { imageMmS: motionBlurMm(acrossMS, 1, focalMm, rangeM), speedMS, acrossMS, rangeM };
  };
  let best = motionAt(fromS);
  let bestS = fromS;
  const tryAt = (tPlusS: number): void => {
    const motion = motionAt(tPlusS);
    if (motion.imageMmS > best.imageMmS) [best, bestS] = [motion, tPlusS];
  };
  for (let i = 1; i <= STRETCH_STEPS; i++) tryAt(mix(fromS, toS, i / STRETCH_STEPS));
  let aroundS = (toS - fromS) / STRETCH_STEPS;
  for (let i = 0; i < NARROWINGS && bestS > fromS && bestS < toS; i++) {
    aroundS /= 2;
    const middleS = bestS;
    tryAt(middleS - aroundS);
    tryAt(middleS + aroundS);
  }
  return best;
}
