/** One window of a ranking: every view at every T-0, then what the window is worth. */

import type { Interval } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import { NIGHT_ELEVATION_DEG } from "../../light/lightClass.ts";
import type { Site, Window } from "../../site/types.ts";
import { skyName } from "../../sky/daylight.ts";
import { makeSunTrack } from "../../sky/sunTrack.ts";
import type { TimeSpan } from "../clock.ts";
import { instantMaker, instantsOf } from "../scene.ts";
import { fillLightBlocks, fillSunBlocks } from "./blocks.ts";
import { sharedSpan } from "./exposureSpan.ts";
import { fillLightColumns } from "./lightColumns.ts";
import { plateau, SAME_SHARE, type ShareSearch, spansWithShare } from "./nearBest.ts";
import type { RankRoom } from "./rankRoom.ts";
import type { RankedWindow, ShareAt, TieBreakers, ViewScore } from "./rankTypes.ts";
import { scoreView } from "./scoreView.ts";
import { fillSunColumns, type SunColumns } from "./sunColumns.ts";
import { type SunSpans, sunSpans } from "./sunSpans.ts";

/** A window judged, before it has its rank. */
export type WindowScore = Omit<RankedWindow, "rank">;

/** `stepS` as in a plan; the T-0s must fit the room. */
export function scoreWindow(room: RankRoom, window: Window, stepS: number): WindowScore {
  const { site, air, axes } = room;
  const track = makeSunTrack(site.place, window.opens, window.closes);
  const { sun, blocks } = room;
  fillSunColumns(sun, instantsOf(window, stepS, null), track, axes, air);
  fillSunBlocks(blocks, sun);
  for (const sky of room.skies) {
    fillLightColumns(sky.light, site, air.pressureHPa, sun, sky.ready);
    fillLightBlocks(sky.bounds, blocks, sky.light);
    sky.shared = sharedSpan(sky);
  }
  const spans = room.views.map(({ rankView, cone }) => sunSpans(rankView, cone, sun, track));
  room.shareSteps.fill(0, 0, sun.count + 1);
  room.sunSteps.fill(0, 0, sun.count + 1);
  room.skyShares.fill(0);
  const views = room.views.map((view, i) => scoreView(room, view, spans[i]!));
  const search: ShareSearch = {
    room,
    sun,
    spans,
    instantAt: instantMaker(
      site,
      room.skies.map(({ ready }) => ready),
      air,
      track,
    ),
  };
  return {
    name: window.name,
    opens: window.opens,
    closes: window.closes,
    ...shares(search),
    ...tallies(views),
    bySky: room.skies.map(({ ready }, i) => ({ sky: skyName(ready.sky), share: room.skyShares[i]! })),
    ...darkShares(sun),
    ties: tieBreakers(room, views, spans, window),
    views: inFileOrder(site, views),
  };
}

/** Sums are taken in the order of the ids; a person looks for a view where the file has it. */
function inFileOrder({ cameras }: Site, views: readonly ViewScore[]): ViewScore[] {
  const byId = new Map(views.map((view) => [view.id, view]));
  return cameras.map(({ id }) => byId.get(id)!);
}

const sumOf = <One>(ones: readonly One[], value: (one: One) => number): number =>
  ones.reduce((sum, one) => sum + value(one), 0);

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
    const here = Math.abs(level) < SAME_SHARE ? 0 : level;
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
    nearBest: near.map(wholeSeconds),
  };
}

function shareAt({ room, sun }: ShareSearch, share: number, sunSteps: Float64Array | null): ShareAt {
  const { from, to } = plateau(room.share, sunSteps, sun.count, share);
  const timeOf = (index: number): Date => new Date(sun.timesMs[index]!);
  return { at: timeOf((from + to - 1) >> 1), share, from: timeOf(from), to: timeOf(to - 1) };
}

/** Rounded inward, so that all of it can be counted on; a span too short for that stays as it is. */
function wholeSeconds({ fromMs, toMs }: Interval): TimeSpan {
  const from = Math.ceil(fromMs / MS_PER_SECOND) * MS_PER_SECOND;
  const to = Math.floor(toMs / MS_PER_SECOND) * MS_PER_SECOND;
  return to >= from
    ? { from: new Date(from), to: new Date(to) }
    : { from: new Date(fromMs), to: new Date(toMs) };
}

const tallies = (views: readonly ViewScore[]) => ({
  wellLitViews: sumOf(views, ({ wellLitShare }) => wellLitShare),
  frontViews: sumOf(views, ({ frontShare }) => frontShare),
  lostViews: {
    dark: sumOf(views, ({ lostShare }) => lostShare.dark),
    unlit: sumOf(views, ({ lostShare }) => lostShare.unlit),
    sun: sumOf(views, ({ lostShare }) => lostShare.sun),
    setting: sumOf(views, ({ lostShare }) => lostShare.setting),
  },
  holdingViews: views.filter(({ holds }) => holds === true).length,
  settableViews: views.filter(({ holds }) => holds !== null).length,
  driftStops: Math.max(...views.map(({ driftStops }) => driftStops)),
  inFrameViews: views.filter(({ inFrame }) => inFrame.length > 0).length,
  nearFrameViews: views.filter(({ inFrame, nearFrame }) => inFrame.length === 0 && nearFrame.length > 0)
    .length,
});

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

function tieBreakers(
  room: RankRoom,
  views: readonly ViewScore[],
  spans: readonly SunSpans[],
  { opens, closes }: Window,
): TieBreakers {
  const lengthMs = closes.getTime() - opens.getTime();
  let inFrameMs = 0;
  let nearFrameMs = 0;
  for (let i = 0; i < views.length; i++) {
    inFrameMs += views[i]!.weight * totalMs(spans[i]!.inFrame);
    nearFrameMs += views[i]!.weight * totalMs(spans[i]!.nearFrame);
  }
  const set = views.filter(({ spareStops, weight }) => spareStops !== null && weight > 0);
  const spare = sumOf(
    set,
    ({ spareStops, weight }) => weight * Math.min(spareStops!, room.site.settings.comfortStops),
  );
  return {
    inFrameShare: inFrameMs / (room.weightSum * lengthMs),
    nearFrameShare: nearFrameMs / (room.weightSum * lengthMs),
    spareStops: set.length === 0 ? null : spare / sumOf(set, ({ weight }) => weight),
  };
}

const totalMs = (spans: readonly Interval[]): number =>
  spans.length === 0 ? 0 : sumOf(spans, ({ fromMs, toMs }) => toMs - fromMs);
