/** What the loop reads: one view under one sky in numbers, one window under one sky in columns. */

import { atan2Deg } from "../../base/units.ts";
import type { Facets } from "../../light/body.ts";
import { type Stretch, shadedFacets } from "../../light/shadedBody.ts";
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
  /** Floodlight and, after ignition, the plume's light on the darkest and the brightest of body and deck, lx. */
  readonly bodyDarkLx: number;
  readonly bodyBrightLx: number;
  readonly deckDarkLx: number;
  readonly deckBrightLx: number;
  /** The stretch of the body that is told, metres above the pad datum. */
  readonly told: Stretch;
  /** Least sunlit share of a well-lit body; least share of its sun that shade must leave. */
  readonly litShare: number;
  readonly shadedShare: number;
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
  const { factor, bodyPerLx, deckPerLx, against, axisSky } = view;
  kept.leastDark = Number.POSITIVE_INFINITY;
  kept.mostDark = Number.POSITIVE_INFINITY;
  kept.leastBright = 0;
  kept.mostBright = 0;
  if (bodyPerLx !== null) {
    const leastFill = bounds.leastFillLx[block]! * factor;
    const mostFill = bounds.mostFillLx[block]! * factor;
    const leastDirect = bounds.leastDirectLx[block]! * factor * peakOf(blocks.leastCosine[block]!);
    const mostDirect = bounds.mostDirectLx[block]! * factor * peakOf(blocks.mostCosine[block]!);
    kept.leastDark = bodyPerLx * (leastFill + view.bodyDarkLx);
    kept.mostDark = bodyPerLx * (mostFill + view.bodyDarkLx);
    kept.leastBright = bodyPerLx * (leastDirect + leastFill + view.bodyBrightLx);
    kept.mostBright = bodyPerLx * (mostDirect + mostFill + view.bodyBrightLx);
  }
  if (deckPerLx !== null) {
    const least = bounds.leastGroundLx[block]! * factor;
    const most = bounds.mostGroundLx[block]! * factor;
    widenDark(kept, deckPerLx * (least + view.deckDarkLx), deckPerLx * (most + view.deckDarkLx));
    widenBright(kept, deckPerLx * (least + view.deckBrightLx), deckPerLx * (most + view.deckBrightLx));
  }
  const { sky } = kept;
  if (axisSky !== null) skyOfBlock(axisSky, blocks, bounds, block, sky);
  for (let i = 0; i < against.length; i++) {
    const { ownCdM2, through } = against[i]!;
    const least = ownCdM2 + through * sky.leastCdM2;
    const most = ownCdM2 + through * sky.mostCdM2;
    widenDark(kept, least, most);
    widenBright(kept, least, most);
  }
}

function widenDark(kept: KeptBounds, least: number, most: number): void {
  if (least < kept.leastDark) kept.leastDark = least;
  if (most < kept.mostDark) kept.mostDark = most;
}

function widenBright(kept: KeptBounds, least: number, most: number): void {
  if (least > kept.leastBright) kept.leastBright = least;
  if (most > kept.mostBright) kept.mostBright = most;
}

/** What a view sees of a shaded body at one T-0; null with the body in the open. */
export function shadedAt(view: SkyView, sun: SunColumns, index: number): Facets | null {
  const shade = sun.shades[index]!;
  if (shade === null) return null;
  const east = sun.towardEast[index]!;
  const north = sun.towardNorth[index]!;
  const along = view.observerEast * east + view.observerNorth * north;
  const across = view.observerEast * north - view.observerNorth * east;
  return shadedFacets(shade, atan2Deg(across, along), view.told);
}

/** Cosine of the brightest visible facet's angle to the sun, by the cosine of the phase: as `cylinderPeak`. */
export const peakOf = (cosine: number): number =>
  cosine >= 0 ? 1 : Math.sqrt(Math.max(0, 1 - cosine * cosine));

/** The same at one T-0, shade counted. */
export function peakAt(view: SkyView, sun: SunColumns, index: number): number {
  const shaded = shadedAt(view, sun, index);
  if (shaded !== null) return shaded.brightest;
  return peakOf(view.observerEast * sun.lampEast[index]! + view.observerNorth * sun.lampNorth[index]!);
}
