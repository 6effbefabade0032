/** A partly shaded cylinder as a camera sees it: the closed forms of `body.ts`, strip by strip. */

import { RAD_PER_DEG, wrap180 } from "../base/units.ts";
import type { BodyShade, StripEdge } from "../view/bodyShade.ts";
import type { Facets } from "./body.ts";

/** The stretch of the body that is looked at, metres above the pad datum. */
export interface Stretch {
  readonly fromM: number;
  readonly toM: number;
}

/** Share of the beam that reaches a strip between two heights, and the most that reaches any part of it. */
interface Passed {
  mean: number;
  most: number;
}

/**
 * What a camera sees of a shaded body; it stands `turnDeg` clockwise of the sun's azimuth, seen from the body. A lattice
 * lets its share pass, so the width counts as lit by as much; the brightest facet is one in a gap.
 */
export function shadedFacets(
  { edges, strips, aboveShare }: BodyShade,
  turnDeg: number,
  stretch: Stretch,
): Facets {
  const cameraRad = wrap180(turnDeg) * RAD_PER_DEG;
  const fromRad = Math.max(-Math.PI / 2, cameraRad - Math.PI / 2);
  const toRad = Math.min(Math.PI / 2, cameraRad + Math.PI / 2);
  const cosine = Math.cos(cameraRad);
  const sine = Math.sin(cameraRad);
  const passed: Passed = { mean: 0, most: 0 };
  const sums = { mean: 0, open: 0, lit: 0, brightest: 0, all: 0 };
  for (let i = 0; i < strips.length; i++) {
    const left = edges[i]!;
    const right = edges[i + 1]!;
    passBetween(strips[i]!, stretch, passed);
    // By the width turned to the sun: what of its light the whole half takes.
    sums.all += (passed.mean * (right.sine - left.sine)) / 2;
    const a = Math.max(fromRad, left.rad);
    const b = Math.min(toRad, right.rad);
    if (a >= b) continue;
    const from = edgeAt(left, a);
    const to = edgeAt(right, b);
    const direct = directUpTo(to, cosine, sine) - directUpTo(from, cosine, sine);
    sums.open += direct;
    sums.mean += direct * passed.mean;
    sums.lit += (widthUpTo(to, cosine, sine) - widthUpTo(from, cosine, sine)) * passed.mean;
    if (passed.most > 0) sums.brightest = Math.max(sums.brightest, mostCosine(a, b));
  }
  return facetsOf(sums, aboveShare);
}

/** Share of the beam that reaches the facet `turnDeg` clockwise of the sun's azimuth, averaged over a stretch; of one turned away, 0. */
export function facetShare(
  { edges, strips, aboveShare }: BodyShade,
  turnDeg: number,
  stretch: Stretch,
): number {
  const rad = wrap180(turnDeg) * RAD_PER_DEG;
  const strip = edges.findIndex((edge, i) => i > 0 && rad <= edge.rad && rad >= edges[i - 1]!.rad) - 1;
  if (strip < 0) return 0;
  const passed: Passed = { mean: 0, most: 0 };
  passBetween(strips[strip]!, stretch, passed);
  return passed.mean * aboveShare;
}

/** What a camera sees of the strips, summed. */
interface Sums {
  readonly mean: number;
  /** The mean with nothing in the sun. */
  readonly open: number;
  readonly lit: number;
  readonly brightest: number;
  /** Of the whole sunlit half. */
  readonly all: number;
}

const facetsOf = ({ mean, open, lit, brightest, all }: Sums, aboveShare: number): Facets => ({
  mean: mean * aboveShare,
  brightest: brightest * aboveShare,
  lit: aboveShare > 0 ? lit : 0,
  kept: (open > LEAST_OPEN ? mean / open : all) * aboveShare,
});

/** A strip's own edge, or where the camera's view ends inside it. */
const edgeAt = (edge: StripEdge, rad: number): StripEdge =>
  edge.rad === rad ? edge : { rad, sine: Math.sin(rad), cosine: Math.cos(rad) };

/** Half the integral of cos(psi) cos(psi - camera) up to a facet; the camera by cosine and sine. From end to end it is `cylinderMean`. */
const directUpTo = ({ rad, sine, cosine }: StripEdge, cameraCosine: number, cameraSine: number): number =>
  (rad * cameraCosine + sine * (cosine * cameraCosine + sine * cameraSine)) / 4;

/** Half the integral of cos(psi - camera), the visible width, up to a facet. */
const widthUpTo = ({ sine, cosine }: StripEdge, cameraCosine: number, cameraSine: number): number =>
  (sine * cameraCosine - cosine * cameraSine) / 2;

/** Less of the sunlit half in view than this is none. */
const LEAST_OPEN = 1e-6;

/** Largest cosine between two angles from the sun. */
const mostCosine = (a: number, b: number): number =>
  a <= 0 && b >= 0 ? 1 : Math.cos(Math.min(Math.abs(a), Math.abs(b)));

function passBetween(steps: BodyShade["strips"][number], { fromM, toM }: Stretch, passed: Passed): void {
  passed.mean = 0;
  passed.most = 0;
  const lengthM = toM - fromM;
  for (const step of steps) {
    const overlapM = Math.min(step.toM, toM) - Math.max(step.fromM, fromM);
    if (overlapM <= 0) continue;
    passed.mean += (step.passes * overlapM) / lengthM;
    passed.most = Math.max(passed.most, step.passes);
  }
}
