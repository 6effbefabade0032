/** The sky's luminance along one axis through a window: a standard sky as a table, and bounds on it. */

import type { Vec3 } from "../../base/vector.ts";
import { atOrAboveHorizon, type GeneralSky, gradation, indicatrix } from "../../sky/generalSky.ts";
import type { LightBlocks, SunBlocks } from "./blocks.ts";
import type { LightColumns } from "./lightColumns.ts";
import type { SunColumns } from "./sunColumns.ts";
import { tableAt, tableOf } from "./table.ts";

/**
 * Indicatrix as two tables: up to 90 degrees from the sun by the sine of half the angle, beyond by its cosine. In either
 * alone, or in the cosine of the angle, it would have a cusp at the sun or opposite it. Within 1e-5 of the function.
 */
export interface IndicatrixTable {
  readonly near: Float64Array;
  readonly far: Float64Array;
  /** Least and most of it in each of some wide steps of the sine. */
  readonly least: Float64Array;
  readonly most: Float64Array;
}

const WIDE_STEPS = 64;
/** Looks at the function within a wide step. */
const LOOKS = 64;
/** What tables and looks may miss of it. */
const SLACK = 2e-5;

export function indicatrixTable(sky: GeneralSky): IndicatrixTable {
  const bySine = (sine: number): number => indicatrix(sky, 1 - 2 * sine * sine);
  const inStep = (step: number): number[] =>
    Array.from({ length: LOOKS + 1 }, (_, look) => bySine(Math.min(1, (step + look / LOOKS) / WIDE_STEPS)));
  const steps = Array.from({ length: WIDE_STEPS }, (_, step) => inStep(step));
  return {
    near: tableOf(bySine),
    far: tableOf((cosine) => indicatrix(sky, 2 * cosine * cosine - 1)),
    least: Float64Array.from(steps, (values) => Math.min(...values) * (1 - SLACK)),
    most: Float64Array.from(steps, (values) => Math.max(...values) * (1 + SLACK)),
  };
}

/** Where an axis meets the sky, at or above the horizon, (east, north, up) of the pad. */
export interface AxisSky {
  readonly east: number;
  readonly north: number;
  readonly up: number;
  /** Gradation there, times the correction from readings. */
  readonly scale: number;
  readonly indicatrix: IndicatrixTable;
  /** A difference less than this shows in nothing that is kept, as it stands behind something far brighter; 0 where the sky itself is kept. */
  readonly negligibleCdM2: number;
}

/** As the plan takes it: the axis of the camera's own horizon, which near the pad is the pad's. */
export function axisSkyOf(
  axis: Vec3,
  sky: GeneralSky,
  table: IndicatrixTable,
  factor: number,
  negligibleCdM2: number,
): AxisSky {
  const [east, north, up] = atOrAboveHorizon(axis);
  return { east, north, up, scale: gradation(sky, up) * factor, indicatrix: table, negligibleCdM2 };
}

/** Luminance of the sky along the axis at one T-0, cd/m2. */
export function skyAt(axis: AxisSky, sun: SunColumns, light: LightColumns, index: number): number {
  // As in `scaledSky`: a sun below the horizon is held at it.
  const cosine =
    sun.up[index]! >= 0
      ? axis.east * sun.east[index]! + axis.north * sun.north[index]! + axis.up * sun.up[index]!
      : axis.east * sun.towardEast[index]! + axis.north * sun.towardNorth[index]!;
  const { near, far } = axis.indicatrix;
  const seen =
    cosine >= 0
      ? tableAt(near, Math.sqrt(Math.max(0, (1 - cosine) / 2)))
      : tableAt(far, Math.sqrt(Math.max(0, (1 + cosine) / 2)));
  return light.skyCdM2[index]! * axis.scale * seen;
}

export interface SkySpan {
  readonly leastCdM2: number;
  readonly mostCdM2: number;
}

/** Blocks from one first look to the next. */
const FIRST_LOOK = 4;

/** Least and most of it over all T-0s. */
export function skySpan(
  axis: AxisSky,
  sun: SunColumns,
  blocks: SunBlocks,
  light: LightColumns,
  bounds: LightBlocks,
): SkySpan {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  // A first look at a T-0 of some blocks narrows down where the ends can be.
  for (let block = 0; block < blocks.count; block += FIRST_LOOK) {
    const sky = skyAt(axis, sun, light, blocks.from[block]!);
    if (sky < least) least = sky;
    if (sky > most) most = sky;
  }
  const bound = { leastCdM2: 0, mostCdM2: 0 };
  for (let block = 0; block < blocks.count; block++) {
    skyOfBlock(axis, blocks, bounds, block, bound);
    const isLeastKnown = bound.leastCdM2 >= least - axis.negligibleCdM2;
    if (isLeastKnown && bound.mostCdM2 <= most + axis.negligibleCdM2) continue;
    for (let i = blocks.from[block]!; i < blocks.to[block]!; i++) {
      const sky = skyAt(axis, sun, light, i);
      if (sky < least) least = sky;
      if (sky > most) most = sky;
    }
  }
  return { leastCdM2: least, mostCdM2: most };
}

/** Bounds on the sky along the axis over the T-0s of a block. */
export function skyOfBlock(
  axis: AxisSky,
  blocks: SunBlocks,
  bounds: LightBlocks,
  block: number,
  found: { leastCdM2: number; mostCdM2: number },
): void {
  const cosine =
    axis.east * blocks.heldEast[block]! +
    axis.north * blocks.heldNorth[block]! +
    axis.up * blocks.heldUp[block]!;
  const middle = Math.sqrt(Math.max(0, (1 - cosine) / 2));
  // The sine of half the angle changes by no more than half the angle does.
  const spread = blocks.heldHalfSpreadRad[block]!;
  const first = Math.max(0, Math.trunc((middle - spread) * WIDE_STEPS));
  const last = Math.min(WIDE_STEPS - 1, Math.trunc((middle + spread) * WIDE_STEPS));
  const { least, most } = axis.indicatrix;
  let lowest = least[first]!;
  let highest = most[first]!;
  for (let step = first + 1; step <= last; step++) {
    if (least[step]! < lowest) lowest = least[step]!;
    if (most[step]! > highest) highest = most[step]!;
  }
  found.leastCdM2 = bounds.leastSkyCdM2[block]! * axis.scale * lowest;
  found.mostCdM2 = bounds.mostSkyCdM2[block]! * axis.scale * highest;
}
