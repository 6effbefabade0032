/** What stands between a camera and the sun: silhouettes of structures and of the vehicle, and the skyline. */

import { fromHorizon, horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import type { Place } from "../base/place.ts";
import { acosDeg, asinDeg, atan2Deg, cosDeg, DEG_PER_RAD, RAD_PER_DEG, sinDeg } from "../base/units.ts";
import { add, cross, dot, scale, subtract, toAzimuthElevation, unit, type Vec3 } from "../base/vector.ts";
import { type Silhouette, silhouetteOf } from "./hull.ts";
import { fromOutlineDeg } from "./outline.ts";
import { type Prism, VEHICLE_NAME } from "./prism.ts";
import { FARTHEST_DEG, SKYLINE_NAME, type Skyline } from "./skyline.ts";
import type { CameraSun } from "./sunInFrame.ts";

/** One thing that hides, as seen by one camera. */
export interface Hider {
  readonly name: string;
  readonly solidity: number;
  /** A sun behind it is safely hidden: it is opaque, stays, and is known well enough from here. */
  readonly canHide: boolean;
  /**
   * Degrees from a direction to its border, positive outside; told as the farthest asked for where it is farther. No two
   * directions differ by more than the angle between them.
   */
  readonly fromEdgeDeg: (direction: Vec3) => number;
  /** No direction lies deeper behind it than this. */
  readonly mostDepthDeg: number;
}

/** The hiders of a camera at `place`, in its horizon; without a given place only the skyline, and that hides nothing. */
export function hidersOf(
  pad: Place,
  place: Place,
  prisms: readonly Prism[],
  skyline: Skyline | null,
  farthestDeg: number = FARTHEST_DEG,
  isPlaceGiven: boolean = true,
): Hider[] {
  const padAxes = horizonAxes(pad);
  const axes = horizonAxes(place);
  const viewpointM = toHorizon(padAxes, subtract(toEarthFixed(place), toEarthFixed(pad)));
  const turned = (enu: Vec3): Vec3 => toHorizon(axes, fromHorizon(padAxes, enu));
  const canHide = isPlaceGiven && isSkylineOf(viewpointM);
  const solids = prisms
    .filter(({ solidity }) => isPlaceGiven && solidity > 0)
    .map((prism) => solidHider(prism, viewpointM, turned, farthestDeg));
  if (skyline === null) return solids;
  return [
    ...solids,
    {
      name: SKYLINE_NAME,
      solidity: 1,
      canHide,
      fromEdgeDeg: skyline.fromEdgeDeg,
      mostDepthDeg: FARTHEST_DEG,
    },
  ];
}

/** Farther than this from the pad a structure's own vertical leans too far from the pad's (0.09 degree) to hide a sun for certain, metres. */
const UPRIGHT_M = 10_000;
/** Farther than this from the pad, or from nobody knows where, the pad's skyline is not the camera's, metres. */
const SKYLINE_REACH_M = 1000;

/** Whether the pad's skyline is that of a camera at a place given in the pad's frame. */
export const isSkylineOf = ([east, north]: Vec3): boolean => Math.hypot(east, north) <= SKYLINE_REACH_M;

/** The outline is drawn when the sun first comes near it: most cameras never meet it. */
function solidHider(prism: Prism, viewpointM: Vec3, turned: (enu: Vec3) => Vec3, farthestDeg: number): Hider {
  let drawn: Drawn | null = null;
  const outline = (): Drawn => {
    drawn ??= drawnOutline(silhouetteOf(prism, viewpointM, turned), farthestDeg);
    return drawn;
  };
  const isFarFrom = farTest(prism, viewpointM, turned, farthestDeg);
  return {
    name: prism.name,
    solidity: prism.solidity,
    canHide: prism.solidity === 1 && prism.name !== VEHICLE_NAME && Math.hypot(...prism.middle) <= UPRIGHT_M,
    fromEdgeDeg: (direction) => (isFarFrom(direction) ? farthestDeg : outline().fromEdgeDeg(direction)),
    get mostDepthDeg() {
      return outline().mostDepthDeg;
    },
  };
}

/** Beyond this the pad's vertical leans too far from the camera's for the first look, metres. */
const FIRST_LOOK_M = 20_000;
/** What the vertical leans within that distance, and some more. */
const LEAN_DEG = 0.3;

/**
 * A first look that needs no outline: true only where a direction is `farthestDeg` or more from it. The solid lies between
 * two uprights, left and right of its footprint, and below the elevation of its top as seen from its nearest point.
 */
function farTest(
  prism: Prism,
  viewpointM: Vec3,
  turned: (enu: Vec3) => Vec3,
  farthestDeg: number,
): (direction: Vec3) => boolean {
  const [x, y] = [prism.middle[0] - viewpointM[0], prism.middle[1] - viewpointM[1]];
  const awayM = Math.hypot(x, y);
  if (awayM <= 1.01 * prism.reachM || awayM > FIRST_LOOK_M) return () => false;
  const { azimuthDeg } = toAzimuthElevation(turned([x, y, 0]));
  const halfDeg = asinDeg(prism.reachM / awayM) + LEAN_DEG;
  const upM = prism.topM - viewpointM[2];
  const topDeg = atan2Deg(upM, upM > 0 ? awayM - prism.reachM : awayM + prism.reachM) + LEAN_DEG;
  const [toEast, toNorth] = [sinDeg(azimuthDeg), cosDeg(azimuthDeg)];
  const sineFarthest = sinDeg(farthestDeg);
  return ([east, north, up]) => {
    if (asinDeg(up) > topDeg + farthestDeg) return true;
    const level = Math.sqrt(east * east + north * north);
    const apartDeg = acosDeg((east * toEast + north * toNorth) / level);
    // Beyond a right angle from the nearer upright the zenith would be nearer than its plane says.
    return apartDeg - halfDeg < 90 && apartDeg > halfDeg && level * sinDeg(apartDeg - halfDeg) > sineFarthest;
  };
}

type Drawn = Pick<Hider, "fromEdgeDeg" | "mostDepthDeg">;

/** No outline: the camera stands inside, which must be a slip; all of its sky is behind the thing, but nothing counts as hidden. */
function drawnOutline(outline: Silhouette | null, farthestDeg: number): Drawn {
  if (outline === null) return { fromEdgeDeg: () => -FARTHEST_DEG, mostDepthDeg: 0 };
  const { sides, centre, radiusRad, mostDepthDeg } = outline;
  // A cone wider than a half sky does not hold what lies between its corners.
  const farthestCosine =
    radiusRad < Math.PI / 2 ? Math.cos(radiusRad + farthestDeg * RAD_PER_DEG) : Number.NEGATIVE_INFINITY;
  const fromEdgeDeg = (direction: Vec3): number =>
    dot(direction, centre) < farthestCosine
      ? farthestDeg
      : Math.min(farthestDeg, fromOutlineDeg(sides, direction));
  return { fromEdgeDeg, mostDepthDeg };
}

/** The sun's disc is never smaller in radius: 959.63 arc seconds at 1.0168 au. */
const LEAST_DISC_DEG = 0.262;

/**
 * Below zero while the whole disc stands `marginDeg` or deeper behind one thing that can hide it: degrees still missing.
 * A lattice never hides, as the sun shines through it, nor does the vehicle, as it leaves. Null when nothing can.
 */
export function hiddenMeasure(
  hiders: readonly Hider[],
  marginDeg: number,
): ((sun: CameraSun) => number) | null {
  if (hiders.every(({ canHide }) => !canHide)) return null;
  let opaque: readonly Hider[] | null = null;
  return ({ direction, semidiameterDeg }) => {
    opaque ??= hiders.filter((one) => one.canHide && one.mostDepthDeg >= LEAST_DISC_DEG + marginDeg);
    let deepestDeg = FARTHEST_DEG;
    for (let i = 0; i < opaque.length; i++)
      deepestDeg = Math.min(deepestDeg, opaque[i]!.fromEdgeDeg(direction));
    return deepestDeg + semidiameterDeg + marginDeg;
  };
}

/** A share of the disc behind one thing. */
export interface HiddenShare {
  readonly by: string;
  /** Of the disc's area, 0..1, whatever the thing lets through. */
  readonly share: number;
}

/** How much of the disc stands behind what, 1 % of its area exact; things that cover none of it are left out. With the disc down nothing is. */
export function sunBehind(
  hiders: readonly Hider[],
  { direction, semidiameterDeg, apparentElevationDeg }: CameraSun,
): HiddenShare[] {
  if (apparentElevationDeg < -semidiameterDeg) return [];
  const near = hiders.filter((hider) => hider.fromEdgeDeg(direction) < semidiameterDeg);
  if (near.length === 0) return [];
  const points = discPoints(direction, semidiameterDeg);
  return near.map(({ name, fromEdgeDeg }) => ({
    by: name,
    share: points.filter((point) => fromEdgeDeg(point) < 0).length / points.length,
  }));
}

/** Points of the disc, each for the same area: turned on by the golden angle (Vogel 1979). */
const DISC_POINTS = 400;
const GOLDEN_ANGLE_RAD = Math.PI * (3 - Math.sqrt(5));
const UNIT_DISC = Array.from({ length: DISC_POINTS }, (_, i) => {
  const radius = Math.sqrt((i + 0.5) / DISC_POINTS);
  return [radius * Math.cos(i * GOLDEN_ANGLE_RAD), radius * Math.sin(i * GOLDEN_ANGLE_RAD)] as const;
});

function discPoints(direction: Vec3, semidiameterDeg: number): Vec3[] {
  const side = unit(cross(direction, Math.abs(direction[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const upper = cross(side, direction);
  const radius = Math.tan(semidiameterDeg / DEG_PER_RAD);
  return UNIT_DISC.map(([x, y]) =>
    unit(add(direction, add(scale(side, x * radius), scale(upper, y * radius)))),
  );
}
