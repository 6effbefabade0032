/** From when to when a window's share of well-lit views stays near its best. */

import { type Interval, intervalsOutside } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import type { Instant } from "../instants.ts";
import type { RankRoom, RoomView, SunSteps } from "./rankRoom.ts";
import { type Run, runsWhere, type SunColumns } from "./sunColumns.ts";
import { firstFrom, type SunSpans } from "./sunSpans.ts";
import { lossAt } from "./wellLit.ts";

/** Shares closer than this are one: sums of the same views in another order. */
export const SAME_SHARE = 1e-9;
/** Ends are refined to this, and told in whole seconds. */
const END_PRECISION_MS = MS_PER_SECOND;

/** What one view adds to the share at a T-0, by the bits of its skies. */
const worth = ({ skyWeights, weightSum }: RankRoom, { rankView }: RoomView, bits: number): number =>
  skyWeights.reduce(
    (sum, weight, i) => sum + ((bits >> i) & 1 ? (rankView.camera.weight * weight) / weightSum : 0),
    0,
  );

/** The longest stretch of T-0s whose share is the one asked for and, where `steps` are given, whose sun is the least among them: in the frame first. */
export function plateau(share: Float64Array, steps: SunSteps | null, count: number, wanted: number): Run {
  const isWanted = (i: number): boolean => Math.abs(share[i]! - wanted) <= SAME_SHARE;
  if (steps === null) return longestRun(count, isWanted);
  const frame = levelsOf(steps.frame, count);
  const flare = levelsOf(steps.flare, count);
  const leastFrame = leastWhere(frame, isWanted);
  const hasLeastFrame = (i: number): boolean => isWanted(i) && frame[i]! - leastFrame <= SAME_SHARE;
  const leastFlare = leastWhere(flare, hasLeastFrame);
  return longestRun(count, (i) => hasLeastFrame(i) && flare[i]! - leastFlare <= SAME_SHARE);
}

function levelsOf(steps: Float64Array, count: number): Float64Array {
  const levels = new Float64Array(count);
  let level = 0;
  for (let i = 0; i < count; i++) {
    level += steps[i]!;
    levels[i] = level;
  }
  return levels;
}

function leastWhere(levels: Float64Array, holds: (index: number) => boolean): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < levels.length; i++) if (holds(i)) least = Math.min(least, levels[i]!);
  return least;
}

function longestRun(count: number, holds: (index: number) => boolean): Run {
  return runsWhere(count, holds).reduce(
    (best, run) => (run.to - run.from > best.to - best.from ? run : best),
    {
      from: 0,
      to: 0,
    },
  );
}

export interface ShareSearch {
  readonly room: RankRoom;
  readonly sun: SunColumns;
  /** In the order of the room's views. */
  readonly spans: readonly SunSpans[];
  readonly instantAt: (ms: number) => Instant;
}

/** Times with a share of at least `least`, exact to a second, inside the T-0s that have it. */
export function spansWithShare(search: ShareSearch, least: number): Interval[] {
  const { room, sun } = search;
  const runs = runsWhere(sun.count, (i) => room.share[i]! >= least - SAME_SHARE);
  const dips = shortDips(search, least);
  return runs.flatMap(({ from, to }) => {
    const fromMs = from === 0 ? sun.timesMs[0]! : edgeMs(search, from, from - 1, least);
    const toMs = to === sun.count ? sun.timesMs[to - 1]! : edgeMs(search, to - 1, to, least);
    const inside = dips.filter((dip) => dip.fromMs < toMs && dip.toMs > fromMs);
    // A share met at a single T-0 and gone a moment later is told all the same.
    return fromMs < toMs ? intervalsOutside(inside, fromMs, toMs) : [{ fromMs, toMs: fromMs }];
  });
}

/** Between two neighbouring T-0s, the first with the share and the second without: the last instant that has it. */
function edgeMs(
  { room, sun, instantAt }: ShareSearch,
  inside: number,
  outside: number,
  least: number,
): number {
  const insideMs = sun.timesMs[inside]!;
  // Views that change in the same step are asked at the same instants.
  const known = new Map<number, Instant>();
  const knownAt = (ms: number): Instant => {
    const instant = known.get(ms) ?? instantAt(ms);
    known.set(ms, instant);
    return instant;
  };
  const changes = room.views.flatMap((view) => changesOf(room, sun, view, knownAt, inside, outside));
  changes.sort((one, other) => Math.abs(one.atMs - insideMs) - Math.abs(other.atMs - insideMs));
  let level = room.share[inside]!;
  for (const { atMs, loss } of changes) {
    level -= loss;
    if (level < least - SAME_SHARE) return atMs;
  }
  return insideMs;
}

/** A view's changes from one T-0 to its neighbour, sky by sky: each comes at its own time. */
function changesOf(
  room: RankRoom,
  sun: SunColumns,
  view: RoomView,
  instantAt: (ms: number) => Instant,
  inside: number,
  outside: number,
): { atMs: number; loss: number }[] {
  const differing = view.well[inside]! ^ view.well[outside]!;
  if (differing === 0) return [];
  return room.skyWeights.flatMap((_, sky) => {
    const bit = 1 << sky;
    if ((differing & bit) === 0) return [];
    const isWell = (view.well[inside]! & bit) !== 0;
    const atMs = lastAlike(room, view, sky, isWell, instantAt, sun.timesMs[inside]!, sun.timesMs[outside]!);
    return [{ atMs, loss: isWell ? worth(room, view, bit) : -worth(room, view, bit) }];
  });
}

/** The last instant on the way from one T-0 to its neighbour at which a view is as well lit under a sky as at the first. */
function lastAlike(
  { site, plume }: RankRoom,
  { rankView }: RoomView,
  sky: number,
  isWell: boolean,
  instantAt: (ms: number) => Instant,
  fromMs: number,
  toMs: number,
): number {
  let same = fromMs;
  let other = toMs;
  while (Math.abs(other - same) > END_PRECISION_MS) {
    const middle = (same + other) / 2;
    if ((lossAt(site, rankView, instantAt(middle), sky, plume) === null) === isWell) same = middle;
    else other = middle;
  }
  return same;
}

/** Passages of the sun between two T-0s, seen by neither, that take the share below `least`: of one view or several together. */
function shortDips({ room, sun, spans }: ShareSearch, least: number): Interval[] {
  const byStep = new Map<number, Passage[]>();
  room.views.forEach((view, i) => {
    for (const { fromMs, toMs } of spans[i]!.flare) {
      const next = firstFrom(sun.timesMs, sun.count, fromMs);
      if (next === 0 || next === sun.count || sun.timesMs[next]! <= toMs) continue;
      const loss = worth(room, view, view.well[next]!);
      if (loss > 0) byStep.set(next, [...(byStep.get(next) ?? []), { fromMs, toMs, loss }]);
    }
  });
  return [...byStep]
    .sort(([a], [b]) => a - b)
    .flatMap(([next, passages]) => lowStretches(passages, room.share[next]!, least));
}

interface Passage extends Interval {
  readonly loss: number;
}

/** Stretches in which the passages together take the share below `least`. */
function lowStretches(passages: readonly Passage[], share: number, least: number): Interval[] {
  const edges = [...new Set(passages.flatMap(({ fromMs, toMs }) => [fromMs, toMs]))].sort((a, b) => a - b);
  return edges.slice(0, -1).flatMap((fromMs, i) => {
    const toMs = edges[i + 1]!;
    const lost = passages
      .filter((one) => one.fromMs <= fromMs && one.toMs >= toMs)
      .reduce((sum, { loss }) => sum + loss, 0);
    return share - lost < least - SAME_SHARE ? [{ fromMs, toMs }] : [];
  });
}
