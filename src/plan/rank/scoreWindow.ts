/** One window of a ranking: every view at every T-0, then what the window is worth. */

import type { Interval } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import { isClipped } from "../../exposure/solver.ts";
import { NIGHT_ELEVATION_DEG } from "../../light/lightClass.ts";
import type { Window } from "../../site/types.ts";
import { skyName } from "../../sky/daylight.ts";
import { makeSunTrack, type SunTrack } from "../../sky/sunTrack.ts";
import type { TimeSpan } from "../clock.ts";
import { instantMaker } from "../instants.ts";
import { instantsOf } from "../scene.ts";
import { fillLightBlocks, fillSunBlocks } from "./blocks.ts";
import { sharedSpan } from "./exposureSpan.ts";
import { fillLightColumns } from "./lightColumns.ts";
import { plateau, SAME_SHARE, type ShareSearch, spansWithShare } from "./nearBest.ts";
import type { RankRoom, SunSteps } from "./rankRoom.ts";
import type { RankedWindow, ShareAt, TieBreakers, ViewScore } from "./rankTypes.ts";
import { scoreView } from "./scoreView.ts";
import { fillSunColumns, type SunColumns } from "./sunColumns.ts";
import { firstFrom, sunSpans } from "./sunSpans.ts";
import {
  FIGURE,
  figureOf,
  makeViewFigures,
  sumOfFigure,
  type ViewFigures,
  viewScore,
} from "./viewFigures.ts";

/** A window judged; its rank is still to come. */
export type WindowScore = Omit<RankedWindow, "rank"> & { rank: number };

/** `stepS` as in a plan; the T-0s must fit the room. */
export function scoreWindow(room: RankRoom, window: Window, stepS: number): WindowScore {
  const { site, air, sun } = room;
  // To the end of the last T-0's sweep: one track serves the window and all trackers.
  const track = makeSunTrack(site.place, window.opens, new Date(window.closes.getTime() + room.sweepMs));
  fillRoom(room, instantsOf(window, stepS, null), track);
  const spans = room.views.map(({ rankView, cone }) =>
    rankView.sweep === null ? sunSpans(rankView, cone, sun, track) : rankView.sweep.spansOf(window, track),
  );
  const figures = makeViewFigures(room.names, spans, 1 - sun.upCount / sun.count);
  for (let i = 0; i < room.views.length; i++) scoreView(room, i, figures);
  const skies = room.skies.map(({ ready }) => ready);
  const search: ShareSearch = {
    room,
    sun,
    spans,
    instantAt: instantMaker(site, skies, air, track, room.obstacles),
  };
  const views = viewsInFileOrder(figures, room.fileOrder);
  return {
    rank: 0,
    name: window.name,
    opens: window.opens,
    closes: window.closes,
    ...shares(search),
    ...tallies(figures),
    bySky: skies.map(({ sky }, i) => ({ sky: skyName(sky), share: Math.min(1, room.skyShares[i]!) })),
    ...darkShares(sun),
    ties: tieBreakers(room, figures, window),
    get views() {
      return views();
    },
  };
}

/** Sun, light and bounds of a window, and nothing left of the one before. */
function fillRoom(room: RankRoom, timesMs: readonly number[], track: SunTrack): void {
  const { site, air, axes, sun, blocks, obstacles } = room;
  fillSunColumns(sun, timesMs, track, axes, air, obstacles);
  fillSunBlocks(blocks, sun);
  for (const sky of room.skies) {
    fillLightColumns(sky.light, site, air.pressureHPa, sun, sky.ready);
    fillLightBlocks(sky.bounds, blocks, sky.light);
    sky.shared = sharedSpan(sky);
  }
  for (const steps of [room.shareSteps, room.sunSteps.frame, room.sunSteps.flare])
    steps.fill(0, 0, sun.count + 1);
  room.skyShares.fill(0);
}

/** Sums are taken in the order of the ids; a person looks for a view where the file has it. Made once, when asked for. */
function viewsInFileOrder(figures: ViewFigures, fileOrder: readonly number[]): () => readonly ViewScore[] {
  let made: readonly ViewScore[] | null = null;
  return () => {
    made ??= fileOrder.map((view) => viewScore(figures, view));
    return made;
  };
}

/** The share at each T-0, its mean and its ends. */
function shares(search: ShareSearch): Pick<WindowScore, "share" | "best" | "worst" | "nearBest"> {
  const { room, sun } = search;
  const { share, shareSteps } = room;
  let level = 0;
  let sum = 0;
  let most = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < sun.count; i++) {
    level += shareSteps[i]!;
    // What is left of sums that cancel is no share.
    const here = Math.abs(level) < SAME_SHARE ? 0 : Math.min(1, level);
    share[i] = here;
    sum += here;
    if (here > most) most = here;
    if (here < least) least = here;
  }
  const near = most === 0 ? [] : spansWithShare(search, most * room.site.settings.nearBestShare);
  return {
    share: sum / sun.count,
    best: shareAt(search, most, room.sunSteps),
    worst: shareAt(search, least, null),
    nearBest: near.map((span) => wholeSeconds(span, sun)),
  };
}

function shareAt({ room, sun }: ShareSearch, share: number, sunSteps: SunSteps | null): ShareAt {
  const { from, to } = plateau(room.share, sunSteps, sun.count, share);
  const timeOf = (index: number): Date => new Date(sun.timesMs[index]!);
  return { at: timeOf((from + to - 1) >> 1), share, from: timeOf(from), to: timeOf(to - 1) };
}

/** Ends found between T-0s are rounded inward, so that all of it can be counted on; a T-0 stays what it is. */
function wholeSeconds({ fromMs, toMs }: Interval, sun: SunColumns): TimeSpan {
  const isInstant = (ms: number): boolean => sun.timesMs[firstFrom(sun.timesMs, sun.count, ms)] === ms;
  const from = isInstant(fromMs) ? fromMs : Math.ceil(fromMs / MS_PER_SECOND) * MS_PER_SECOND;
  const to = isInstant(toMs) ? toMs : Math.floor(toMs / MS_PER_SECOND) * MS_PER_SECOND;
  return { from: new Date(from), to: new Date(Math.max(from, to)) };
}

function tallies(figures: ViewFigures) {
  const { names, spans, darkShare } = figures;
  let holdingViews = 0;
  let settableViews = 0;
  let driftStops = 0;
  for (let view = 0; view < names.length; view++) {
    const spareStops = figureOf(figures, view, FIGURE.spareStops);
    if (!Number.isNaN(spareStops)) settableViews++;
    if (!isClipped(spareStops) && !Number.isNaN(spareStops)) holdingViews++;
    driftStops = Math.max(driftStops, figureOf(figures, view, FIGURE.driftStops));
  }
  return {
    wellLitViews: sumOfFigure(figures, FIGURE.well),
    frontViews: sumOfFigure(figures, FIGURE.front),
    lostViews: {
      dark: names.filter(({ weight }) => weight > 0).length * darkShare,
      unlit: sumOfFigure(figures, FIGURE.unlit),
      sun: sumOfFigure(figures, FIGURE.sun),
      setting: sumOfFigure(figures, FIGURE.setting),
    },
    holdingViews,
    settableViews,
    driftStops,
    inFrameViews: spans.filter(({ inFrame }) => inFrame.length > 0).length,
    nearFrameViews: spans.filter(({ inFrame, nearFrame }) => inFrame.length === 0 && nearFrame.length > 0)
      .length,
  };
}

/** With the sun lower than this the turbidity model of haze is likely too dark (see the plan's note). */
export const LOW_HAZE_DEG = 7;

function darkShares(sun: SunColumns): Pick<WindowScore, "duskShare" | "nightShare" | "lowSunShare"> {
  let night = 0;
  let low = 0;
  for (let i = 0; i < sun.count; i++) {
    const apparentDeg = sun.apparentElevationDeg[i]!;
    if (apparentDeg <= 0 && sun.airlessElevationDeg[i]! <= NIGHT_ELEVATION_DEG) night++;
    if (apparentDeg > 0 && apparentDeg < LOW_HAZE_DEG) low++;
  }
  return {
    duskShare: (sun.count - sun.upCount - night) / sun.count,
    nightShare: night / sun.count,
    lowSunShare: low / sun.count,
  };
}

function tieBreakers(room: RankRoom, figures: ViewFigures, { opens, closes }: Window): TieBreakers {
  const lengthMs = closes.getTime() - opens.getTime();
  const { comfortStops } = room.site.settings;
  let inFrameMs = 0;
  let nearFrameMs = 0;
  let spareSum = 0;
  let spareWeight = 0;
  for (let view = 0; view < figures.names.length; view++) {
    const { weight } = figures.names[view]!;
    const { inFrame, nearFrame } = figures.spans[view]!;
    inFrameMs += weight * totalMs(inFrame);
    nearFrameMs += weight * totalMs(nearFrame);
    const spareStops = figureOf(figures, view, FIGURE.spareStops);
    if (Number.isNaN(spareStops)) continue;
    spareSum += weight * Math.min(spareStops, comfortStops);
    spareWeight += weight;
  }
  return {
    inFrameShare: inFrameMs / (room.weightSum * lengthMs),
    nearFrameShare: nearFrameMs / (room.weightSum * lengthMs),
    spareStops: spareWeight === 0 ? null : spareSum / spareWeight,
  };
}

function totalMs(spans: readonly Interval[]): number {
  let sum = 0;
  for (const { fromMs, toMs } of spans) sum += toMs - fromMs;
  return sum;
}
