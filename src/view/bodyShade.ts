/**
 * What of an upright body stands in the shadow of other things at one sun.
 *
 * The sunlit half is cut into upright strips, at the sides of every shadow too; on each the shadows are exact heights (one
 * ray along the strip's middle). Edges are sharp here: the sun's disc blurs them by a hundredth of the distance to what
 * throws the shadow.
 */

import { RAD_PER_DEG } from "../base/units.ts";
import type { Vec3 } from "../base/vector.ts";
import type { Vehicle } from "../site/types.ts";
import { discShare } from "../sky/daylight.ts";
import { type Heights, heightsStopped, type Point2, type Prism, rayTangent } from "./prism.ts";
import { SKYLINE_NAME, type Skyline } from "./skyline.ts";

/** A shadow on the sunlit half, metres above the pad datum. */
export interface Shadow extends Heights {
  readonly by: string;
  /** Share of the beam that passes all the same. */
  readonly passes: number;
}

/** A stretch of one strip with the same light. */
interface Step extends Heights {
  readonly passes: number;
}

/** A border between strips by its angle clockwise from the sun's azimuth. */
export interface StripEdge {
  readonly rad: number;
  readonly sine: number;
  readonly cosine: number;
}

export interface BodyShade {
  /** From 90 degrees left of the sun to 90 right of it, seen from above; one more than strips. */
  readonly edges: readonly StripEdge[];
  /** Each from the body's foot to its top. */
  readonly strips: readonly (readonly Step[])[];
  readonly shadows: readonly Shadow[];
  /** Of the disc above the horizontal, the share above the skyline: it dims all strips alike. */
  readonly aboveShare: number;
}

/** Strips without a shadow's side among them. */
const STRIPS = 8;
const edgeAtRad = (rad: number): StripEdge => ({ rad, sine: Math.sin(rad), cosine: Math.cos(rad) });
const EVEN_EDGES = Array.from({ length: STRIPS + 1 }, (_, i) => edgeAtRad((i / STRIPS - 0.5) * Math.PI));

/** What can throw a shadow on the body of a site. */
export interface Shaders {
  readonly vehicle: Vehicle;
  readonly prisms: readonly Prism[];
  readonly skyline: Skyline | null;
}

/** The shade on a body by the apparent sun over the pad, (east, north, up); with its centre below the horizontal shadows lie level. Null when it all stands in the sun. */
export function bodyShadeAt({ vehicle, prisms, skyline }: Shaders, sun: Vec3): BodyShade | null {
  const level = Math.sqrt(sun[0] * sun[0] + sun[1] * sun[1]);
  const towards: Point2 = level === 0 ? [0, 1] : [sun[0] / level, sun[1] / level];
  const tangent = rayTangent(Math.max(0, sun[2]), level);
  const above = skyline === null ? 1 : skylineShare(skyline, sun);
  const near = prisms.filter((prism) => canShade(prism, vehicle, towards, tangent));
  if (near.length === 0 && above === 1) return null;
  const edges = stripEdges(vehicle, near, towards);
  const middlesRad = edges.slice(1).map(({ rad }, i) => (rad + edges[i]!.rad) / 2);
  const facets = middlesRad.map((rad) => facetAt(vehicle, towards, rad));
  const stopped = near.map((prism) =>
    facets.map((facet) => stoppedOn(prism, vehicle, facet, towards, tangent)),
  );
  const strips = facets.map((_, strip) => stripAt(vehicle, near, stopped, strip));
  if (above === 1 && strips.every((steps) => steps.every(({ passes }) => passes === 1))) return null;
  const shadows = shadowsOn(vehicle, near, stopped, above);
  return { edges, strips, shadows, aboveShare: above };
}

/** The even ones, and the sides of each shadow: where its footprint reaches farthest left and right of the way to the sun. */
function stripEdges({ diameterM }: Vehicle, prisms: readonly Prism[], [east, north]: Point2): StripEdge[] {
  // A skyline alone dims all of it alike.
  if (prisms.length === 0) return [EVEN_EDGES[0]!, EVEN_EDGES[STRIPS]!];
  const edges = [...EVEN_EDGES];
  const across = ([x, y]: Point2): number => x * north - y * east;
  for (const { footprint, roundM, middle } of prisms) {
    const sides =
      roundM === null
        ? [Math.min(...footprint.map(across)), Math.max(...footprint.map(across))]
        : [across(middle) - roundM, across(middle) + roundM];
    for (const side of sides) {
      const sine = (2 * side) / diameterM;
      if (Math.abs(sine) < 1) edges.push({ rad: Math.asin(sine), sine, cosine: Math.sqrt(1 - sine * sine) });
    }
  }
  return edges.sort((a, b) => a.rad - b.rad);
}

/** Share of the part of the disc above the horizontal that stands above the skyline too; the skyline is taken as straight across the disc. */
function skylineShare(skyline: Skyline, sun: Vec3): number {
  const elevationDeg = Math.asin(Math.min(1, sun[2])) / RAD_PER_DEG;
  if (elevationDeg > skyline.highestDeg + 1) return 1;
  const aboveHorizon = discShare(elevationDeg);
  return aboveHorizon === 0 ? 1 : Math.min(1, discShare(skyline.fromEdgeDeg(sun)) / aboveHorizon);
}

/** A first look, on the safe side: by the circle around the footprint. */
function canShade(prism: Prism, vehicle: Vehicle, towards: Point2, tangent: number): boolean {
  const wideM = prism.reachM + vehicle.diameterM / 2;
  const [x, y] = prism.middle;
  if (prism.solidity === 0 || Math.abs(x * towards[1] - y * towards[0]) > wideM) return false;
  const alongM = x * towards[0] + y * towards[1];
  if (alongM < -wideM || prism.topM - Math.max(0, alongM - wideM) * tangent < vehicle.baseM) return false;
  return prism.footM - (alongM + wideM) * tangent < vehicle.baseM + vehicle.heightM;
}

/** The facet `rad` clockwise of the sun's azimuth. */
const facetAt = ({ diameterM }: Vehicle, [east, north]: Point2, rad: number): Point2 => {
  const [c, s] = [(Math.cos(rad) * diameterM) / 2, (Math.sin(rad) * diameterM) / 2];
  return [east * c + north * s, north * c - east * s];
};

function stoppedOn(
  prism: Prism,
  { baseM, heightM }: Vehicle,
  [x, y]: Point2,
  towards: Point2,
  tangent: number,
): Heights | null {
  const heights = heightsStopped(prism, x, y, towards, tangent);
  if (heights === null) return null;
  const fromM = Math.max(baseM, heights.fromM);
  const toM = Math.min(baseM + heightM, heights.toM);
  return fromM < toM ? { fromM, toM } : null;
}

/** In the order of the prisms, then of the strips. */
type Stopped = readonly (readonly (Heights | null)[])[];

function stripAt(
  { baseM, heightM }: Vehicle,
  prisms: readonly Prism[],
  stopped: Stopped,
  strip: number,
): Step[] {
  const topM = baseM + heightM;
  const cuts = [baseM, topM];
  for (const heights of stopped) {
    const own = heights[strip]!;
    if (own !== null) cuts.push(own.fromM, own.toM);
  }
  if (cuts.length > 2) cuts.sort((a, b) => a - b);
  const steps: Step[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const [fromM, toM] = [cuts[i - 1]!, cuts[i]!];
    if (fromM === toM) continue;
    let passes = 1;
    for (let p = 0; p < prisms.length; p++) {
      const own = stopped[p]![strip]!;
      if (own !== null && own.fromM <= fromM && own.toM >= toM) passes *= 1 - prisms[p]!.solidity;
    }
    steps.push({ fromM, toM, passes });
  }
  return steps;
}

/** Shadows by name, over all the heights they reach on any strip. */
function shadowsOn(
  { baseM, heightM }: Vehicle,
  prisms: readonly Prism[],
  stopped: Stopped,
  above: number,
): Shadow[] {
  const shadows = prisms.flatMap(({ name, solidity }, p): Shadow[] => {
    const own = stopped[p]!.filter((heights) => heights !== null);
    if (own.length === 0) return [];
    const fromM = Math.min(...own.map((heights) => heights.fromM));
    const toM = Math.max(...own.map((heights) => heights.toM));
    return [{ by: name, passes: 1 - solidity, fromM, toM }];
  });
  if (above === 1) return shadows;
  return [...shadows, { by: SKYLINE_NAME, passes: above, fromM: baseM, toM: baseM + heightM }];
}
