/** How far one view's light goes over a window: the brightest facet, and the drift of what an incident meter averages. */

import { DEG_PER_RAD } from "../../base/units.ts";
import { cylinderMean } from "../../light/body.ts";
import { BEAM, type LightBlocks } from "./blocks.ts";
import { peakOf, type SkyView, type SkyWindow, shadedAt } from "./skyView.ts";
import { tableAt, tableOf } from "./table.ts";

/** Extremes that no view turns: without direct sun every side has the same light. */
export interface SharedSpan {
  /** Over all T-0s. */
  readonly leastFillLx: number;
  readonly leastGroundLx: number;
  readonly mostGroundLx: number;
  /** Over the T-0s without direct sun; Infinity and 0 when there is none. */
  readonly leastBeamlessLx: number;
  readonly mostBeamlessLx: number;
  /** Blocks with direct sun, the most promising first: a search may stop where no later one can win. */
  readonly byMostMean: readonly number[];
  readonly byMostFacet: readonly number[];
  readonly byLeastFill: readonly number[];
}

export function sharedSpan({ sun, light, blocks, bounds }: SkyWindow): SharedSpan {
  let leastBeamlessLx = Number.POSITIVE_INFINITY;
  let mostBeamlessLx = 0;
  for (let i = 0; i < sun.count; i++) {
    if (light.directLx[i]! > 0) continue;
    leastBeamlessLx = Math.min(leastBeamlessLx, light.fillLx[i]!);
    mostBeamlessLx = Math.max(mostBeamlessLx, light.fillLx[i]!);
  }
  let leastFillLx = Number.POSITIVE_INFINITY;
  let leastGroundLx = Number.POSITIVE_INFINITY;
  let mostGroundLx = 0;
  for (let block = 0; block < blocks.count; block++) {
    leastFillLx = Math.min(leastFillLx, bounds.leastFillLx[block]!);
    leastGroundLx = Math.min(leastGroundLx, bounds.leastGroundLx[block]!);
    mostGroundLx = Math.max(mostGroundLx, bounds.mostGroundLx[block]!);
  }
  const sunlit = Array.from({ length: blocks.count }, (_, block) => block).filter(
    (block) => bounds.beam[block] !== BEAM.none,
  );
  return {
    leastFillLx,
    leastGroundLx,
    mostGroundLx,
    leastBeamlessLx,
    mostBeamlessLx,
    byMostMean: sunlit.toSorted((a, b) => mostMeanLx(bounds, b) - mostMeanLx(bounds, a)),
    byMostFacet: sunlit.toSorted((a, b) => bounds.mostFacetLx[b]! - bounds.mostFacetLx[a]!),
    byLeastFill: sunlit.toSorted((a, b) => bounds.leastFillLx[a]! - bounds.leastFillLx[b]!),
  };
}

/** `cylinderMean` is never more than this. */
const MOST_MEAN = Math.PI / 4;

/** No average over the visible half gets more in a block, whatever the phase. */
const mostMeanLx = (bounds: LightBlocks, block: number): number =>
  bounds.mostDirectLx[block]! * MOST_MEAN + bounds.mostFillLx[block]!;

/** Before corrections and floodlights, lx. */
interface BodySpanLx {
  /** What an incident meter averages over the visible half. */
  readonly leastMeanLx: number;
  readonly mostMeanLx: number;
  /** On the brightest visible facet. */
  readonly mostFacetLx: number;
}

/** `cylinderMean` by (1 + cos phase) / 2. */
export const cylinderMeanTable = (): Float64Array =>
  tableOf((share) => cylinderMean(Math.acos(2 * share - 1) * DEG_PER_RAD));

export function bodySpanLx(
  view: SkyView,
  window: SkyWindow,
  shared: SharedSpan,
  meanTable: Float64Array,
): BodySpanLx {
  const found: Extremes = {
    leastAt: -1,
    least: shared.leastBeamlessLx,
    mostAt: -1,
    most: shared.mostBeamlessLx,
    facet: shared.mostBeamlessLx,
  };
  seek(view, window, meanTable, shared.byMostMean, MOST_MEAN_SEARCH, found);
  seek(view, window, meanTable, shared.byMostFacet, MOST_FACET_SEARCH, found);
  seek(view, window, meanTable, shared.byLeastFill, LEAST_MEAN_SEARCH, found);
  return {
    leastMeanLx: found.leastAt < 0 ? found.least : meanLxAt(view, window, found.leastAt),
    mostMeanLx: found.mostAt < 0 ? found.most : meanLxAt(view, window, found.mostAt),
    mostFacetLx: found.facet,
  };
}

/** Index -1: met where there is no direct sun. */
interface Extremes {
  leastAt: number;
  least: number;
  mostAt: number;
  most: number;
  facet: number;
}

/** How one extreme is sought through the blocks in the order of their promise. */
interface Search {
  /** Neither this block nor any later one can widen what is found. */
  readonly isOver: (bounds: LightBlocks, block: number, found: Extremes) => boolean;
  /** By its phase this block may. */
  readonly canWiden: (window: SkyWindow, block: number, meanTable: Float64Array, found: Extremes) => boolean;
}

const MOST_MEAN_SEARCH: Search = {
  isOver: (bounds, block, { most }) => mostMeanLx(bounds, block) <= most,
  canWiden: ({ blocks, bounds }, block, meanTable, { most }) => {
    const share = tableAt(meanTable, (1 + blocks.mostCosine[block]!) / 2);
    return bounds.mostDirectLx[block]! * share + bounds.mostFillLx[block]! > most;
  },
};

const MOST_FACET_SEARCH: Search = {
  isOver: (bounds, block, { facet }) => bounds.mostFacetLx[block]! <= facet,
  canWiden: ({ blocks, bounds }, block, _, { facet }) =>
    bounds.mostDirectLx[block]! * peakOf(blocks.mostCosine[block]!) + bounds.mostFillLx[block]! > facet,
};

const LEAST_MEAN_SEARCH: Search = {
  isOver: (bounds, block, { least }) => bounds.leastFillLx[block]! >= least,
  canWiden: ({ blocks, bounds }, block, meanTable, { least }) => {
    const share = tableAt(meanTable, Math.max(0, (1 + blocks.leastCosine[block]!) / 2));
    return bounds.leastDirectLx[block]! * share + bounds.leastFillLx[block]! < least;
  },
};

function seek(
  view: SkyView,
  window: SkyWindow,
  meanTable: Float64Array,
  order: readonly number[],
  search: Search,
  found: Extremes,
): void {
  const { blocks, bounds } = window;
  for (let k = 0; k < order.length; k++) {
    const block = order[k]!;
    if (search.isOver(bounds, block, found)) return;
    if (search.canWiden(window, block, meanTable, found)) {
      widen(view, window, meanTable, blocks.from[block]!, blocks.to[block]!, found);
    }
  }
}

function widen(
  view: SkyView,
  { sun, light }: SkyWindow,
  meanTable: Float64Array,
  from: number,
  to: number,
  found: Extremes,
): void {
  const { observerEast, observerNorth } = view;
  const { lampEast, lampNorth, shades } = sun;
  const { directLx, fillLx } = light;
  for (let i = from; i < to; i++) {
    const direct = directLx[i]!;
    if (direct <= 0) continue;
    const fill = fillLx[i]!;
    const cosine = observerEast * lampEast[i]! + observerNorth * lampNorth[i]!;
    const shaded = shades[i] === null ? null : shadedAt(view, sun, i);
    const mean = direct * (shaded?.mean ?? tableAt(meanTable, (1 + cosine) / 2)) + fill;
    if (mean < found.least) {
      found.least = mean;
      found.leastAt = i;
    }
    if (mean > found.most) {
      found.most = mean;
      found.mostAt = i;
    }
    const facet = direct * (shaded?.brightest ?? peakOf(cosine)) + fill;
    if (facet > found.facet) found.facet = facet;
  }
}

/** The table found the T-0; its value is computed. */
function meanLxAt(view: SkyView, { sun, light }: SkyWindow, index: number): number {
  const cosine = view.observerEast * sun.lampEast[index]! + view.observerNorth * sun.lampNorth[index]!;
  const phaseDeg = Math.acos(Math.min(1, Math.max(-1, cosine))) * DEG_PER_RAD;
  const mean = shadedAt(view, sun, index)?.mean ?? cylinderMean(phaseDeg);
  return light.directLx[index]! * mean + light.fillLx[index]!;
}
