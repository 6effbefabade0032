/** What the loop reads: one view under one sky in numbers, one window under one sky in columns. */

import { type AxisSky, skyOfBlock } from "./axisSky.ts";
import type { LightBlocks, SunBlocks } from "./blocks.ts";
import type { Kit } from "./kit.ts";
import type { LightColumns } from "./lightColumns.ts";
import type { SunColumns } from "./sunColumns.ts";

/** One view under one sky, in numbers; directions in the horizon of the pad. */
export interface SkyView {
  /** From the body to the camera, a unit vector. */
  readonly observerEast: number;
  readonly observerNorth: number;
  /** Least cosine of the phase of a well-lit body, and of front light. */
  readonly litCosine: number;
  readonly frontCosine: number;
  readonly kit: Kit | null;
  /** Factor on sun and sky from readings; floodlight on the body, lx. */
  readonly factor: number;
  readonly floodlightLx: number;
  /** Luminance per lux of body and deck, cd/m2; null where it is not kept. */
  readonly bodyPerLx: number | null;
  readonly deckPerLx: number | null;
  /** Kept things that are seen against the sky or are the sky itself: own + through x sky. */
  readonly against: readonly AgainstSky[];
  /** The sky along the axis; null when nothing that is kept needs it. */
  readonly axisSky: AxisSky | null;
}

export interface AgainstSky {
  readonly ownCdM2: number;
  readonly through: number;
}

/** One window under one sky, as the loop reads it. */
export interface SkyWindow {
  readonly sun: SunColumns;
  readonly blocks: SunBlocks;
  readonly light: LightColumns;
  readonly bounds: LightBlocks;
  readonly scratch: KeptBounds;
}

/** Bounds on the darkest and the brightest that a view keeps in a block; scratch, so that the loop makes no object. */
export interface KeptBounds {
  leastDark: number;
  mostDark: number;
  leastBright: number;
  mostBright: number;
  readonly sky: { leastCdM2: number; mostCdM2: number };
}

export function boundKept(
  view: SkyView,
  { blocks, bounds }: SkyWindow,
  block: number,
  kept: KeptBounds,
): void {
  const { factor, floodlightLx, bodyPerLx, deckPerLx, against, axisSky } = view;
  kept.leastDark = Number.POSITIVE_INFINITY;
  kept.mostDark = Number.POSITIVE_INFINITY;
  kept.leastBright = 0;
  kept.mostBright = 0;
  if (bodyPerLx !== null) {
    const leastFill = bounds.leastFillLx[block]! * factor + floodlightLx;
    const mostFill = bounds.mostFillLx[block]! * factor + floodlightLx;
    const leastDirect = bounds.leastDirectLx[block]! * factor * peakOf(blocks.leastCosine[block]!);
    const mostDirect = bounds.mostDirectLx[block]! * factor * peakOf(blocks.mostCosine[block]!);
    kept.leastDark = bodyPerLx * leastFill;
    kept.mostDark = bodyPerLx * mostFill;
    kept.leastBright = bodyPerLx * (leastDirect + leastFill);
    kept.mostBright = bodyPerLx * (mostDirect + mostFill);
  }
  if (deckPerLx !== null) {
    const perLx = deckPerLx * factor;
    widenKept(kept, perLx * bounds.leastGroundLx[block]!, perLx * bounds.mostGroundLx[block]!);
  }
  const { sky } = kept;
  if (axisSky !== null) skyOfBlock(axisSky, blocks, bounds, block, sky);
  for (let i = 0; i < against.length; i++) {
    const { ownCdM2, through } = against[i]!;
    widenKept(kept, ownCdM2 + through * sky.leastCdM2, ownCdM2 + through * sky.mostCdM2);
  }
}

function widenKept(kept: KeptBounds, least: number, most: number): void {
  if (least < kept.leastDark) kept.leastDark = least;
  if (most < kept.mostDark) kept.mostDark = most;
  if (least > kept.leastBright) kept.leastBright = least;
  if (most > kept.mostBright) kept.mostBright = most;
}

/** Cosine of the brightest visible facet's angle to the sun, by the cosine of the phase: as `cylinderPeak`. */
export const peakOf = (cosine: number): number =>
  cosine >= 0 ? 1 : Math.sqrt(Math.max(0, 1 - cosine * cosine));
