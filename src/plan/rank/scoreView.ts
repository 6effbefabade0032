/** One view over one window: how often it is well lit, what it loses, how far its light goes, when it meets the sun. */

import { type SkySpan, skySpan } from "./axisSky.ts";
import { boundPhase } from "./blocks.ts";
import { bodySpanLx } from "./exposureSpan.ts";
import { type Counts, judgeView, type ViewRow } from "./judgeView.ts";
import { mostSpareStops } from "./kit.ts";
import type { RankRoom, RoomSky, RoomView } from "./rankRoom.ts";
import type { SkyView } from "./skyView.ts";
import type { Run } from "./sunColumns.ts";
import { indexRuns } from "./sunSpans.ts";
import { FIGURE, setFigure, type ViewFigures } from "./viewFigures.ts";

/** Fills the row of well-lit T-0s of the view with this index, and its figures. */
export function scoreView(room: RankRoom, index: number, figures: ViewFigures): void {
  const view = room.views[index]!;
  const { camera, kit } = view.rankView;
  const { sun, blocks } = room;
  const spans = figures.spans[index]!;
  view.well.fill(0, 0, sun.count);
  const flareRuns = indexRuns(spans.flare, sun);
  const share = camera.weight / room.weightSum;
  addSteps(room.sunSteps.flare, flareRuns, share);
  addSteps(room.sunSteps.frame, indexRuns(spans.inFrame, sun), share);
  boundPhase(blocks, view.bySky[0]!.observerEast, view.bySky[0]!.observerNorth);
  const { shares, driftStops, kept } = scoreSkies(room, view, flareRuns);
  const spareStops = kit === null ? Number.NaN : mostSpareStops(kit, kept.darkest, kept.brightest);
  setFigure(figures, index, FIGURE.well, shares.well);
  setFigure(figures, index, FIGURE.front, shares.front);
  setFigure(figures, index, FIGURE.unlit, shares.unlit);
  setFigure(figures, index, FIGURE.sun, shares.sun);
  setFigure(figures, index, FIGURE.setting, shares.setting);
  setFigure(figures, index, FIGURE.driftStops, driftStops);
  setFigure(figures, index, FIGURE.spareStops, spareStops);
}

function addSteps(steps: Float64Array, runs: readonly Run[], height: number): void {
  for (const { from, to } of runs) {
    steps[from]! += height;
    steps[to]! -= height;
  }
}

/** Luminances of everything kept, cd/m2. */
interface KeptSpan {
  darkest: number;
  brightest: number;
}

/** One view under all skies: shares of the T-0s weighted over them, the widest drift, all that is kept. */
function scoreSkies(
  room: RankRoom,
  view: RoomView,
  flareRuns: readonly Run[],
): { shares: Counts; driftStops: number; kept: KeptSpan } {
  const shares: Counts = { front: 0, unlit: 0, sun: 0, setting: 0, well: 0 };
  const kept: KeptSpan = { darkest: Number.POSITIVE_INFINITY, brightest: 0 };
  const { camera } = view.rankView;
  let driftStops = 0;
  for (let i = 0; i < room.skies.length; i++) {
    const weight = room.skyWeights[i]!;
    const row: ViewRow = {
      flareRuns,
      well: view.well,
      bit: 1 << i,
      shareSteps: room.shareSteps,
      worth: (camera.weight * weight) / room.weightSum,
    };
    const counts = judgeView(view.bySky[i]!, room.skies[i]!, row);
    addShares(shares, counts, weight / room.sun.count);
    room.skyShares[i]! += (camera.weight * counts.well) / room.sun.count / room.weightSum;
    driftStops = Math.max(driftStops, widenKept(room, view.bySky[i]!, room.skies[i]!, kept));
  }
  return { shares, driftStops, kept };
}

function addShares(shares: Counts, counts: Counts, perCount: number): void {
  shares.front += counts.front * perCount;
  shares.unlit += counts.unlit * perCount;
  shares.sun += counts.sun * perCount;
  shares.setting += counts.setting * perCount;
  shares.well += counts.well * perCount;
}

const NO_SKY: SkySpan = { leastCdM2: 0, mostCdM2: 0 };

/** Adds what a view keeps under one sky over all T-0s; returns the drift of the body's exposure, stops. */
function widenKept(room: RankRoom, view: SkyView, window: RoomSky, kept: KeptSpan): number {
  const { factor, floodlightLx, bodyPerLx, deckPerLx, against, axisSky } = view;
  const { sun, blocks, light, bounds, shared } = window;
  const body = bodySpanLx(view, window, shared, room.meanTable);
  if (bodyPerLx !== null) {
    const leastLx = shared.leastFillLx * factor + view.bodyDarkLx;
    const mostLx = body.mostFacetLx * factor + view.bodyBrightLx;
    keepSpan(kept, bodyPerLx * leastLx, bodyPerLx * mostLx);
  }
  if (deckPerLx !== null) {
    const leastLx = shared.leastGroundLx * factor + view.deckDarkLx;
    const mostLx = shared.mostGroundLx * factor + view.deckBrightLx;
    keepSpan(kept, deckPerLx * leastLx, deckPerLx * mostLx);
  }
  const sky = axisSky === null ? NO_SKY : skySpan(axisSky, sun, blocks, light, bounds);
  for (const { ownCdM2, through } of against) {
    keepSpan(kept, ownCdM2 + through * sky.leastCdM2, ownCdM2 + through * sky.mostCdM2);
  }
  const mostMeanLx = body.mostMeanLx * factor + floodlightLx;
  return Math.log2(mostMeanLx / (body.leastMeanLx * factor + floodlightLx));
}

function keepSpan(kept: KeptSpan, dark: number, bright: number): void {
  kept.darkest = Math.min(kept.darkest, dark);
  kept.brightest = Math.max(kept.brightest, bright);
}
