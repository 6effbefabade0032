/** From when to when a window's share of well-lit views stays near its best. */

import { type Interval, intervalsOutside } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import type { Instant } from "../scene.ts";
import type { RankRoom, RoomView } from "./rankRoom.ts";
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

/** The longest stretch of T-0s whose share is the one asked for and whose sun is the least among them; `sunSteps` null: any sun. */
export function plateau(
  share: Float64Array,
  sunSteps: Float64Array | null,
  count: number,
  wanted: number,
): Run {
  const isWanted = (i: number): boolean => Math.abs(share[i]! - wanted) <= SAME_SHARE;
  let least = Number.POSITIVE_INFINITY;
  let level = 0;
  for (let i = 0; i < count; i++) {
    level += sunSteps?.[i] ?? 0;
    if (isWanted(i)) least = Math.min(least, level);
  }
  let best: Run = { from: 0, to: 0 };
  let from = 0;
  level = 0;
  for (let i = 0; i <= count; i++) {
    level += sunSteps?.[i] ?? 0;
    if (i < count && isWanted(i) && level - least <= SAME_SHARE) continue;
    if (i - from > best.to - best.from) best = { from, to: i };
    from = i + 1;
  }
  return best;
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
  const changes = room.views
    .filter(({ well }) => well[inside] !== well[outside])
    .map((view) => ({
      atMs: lastWithBits(room, view, instantAt, insideMs, sun.timesMs[outside]!, view.well[inside]!),
      loss: worth(room, view, view.well[inside]!) - worth(room, view, view.well[outside]!),
    }))
    .sort((a, b) => Math.abs(a.atMs - insideMs) - Math.abs(b.atMs - insideMs));
  let level = room.share[inside]!;
  for (const { atMs, loss } of changes) {
    level -= loss;
    if (level < least - SAME_SHARE) return atMs;
  }
  return insideMs;
}

/** The last instant on the way from one T-0 to its neighbour at which a view has the bits it has at the first. */
function lastWithBits(
  room: RankRoom,
  view: RoomView,
  instantAt: (ms: number) => Instant,
  fromMs: number,
  toMs: number,
  bits: number,
): number {
  let same = fromMs;
  let other = toMs;
  while (Math.abs(other - same) > END_PRECISION_MS) {
    const middle = (same + other) / 2;
    if (bitsAt(room, view, instantAt(middle)) === bits) same = middle;
    else other = middle;
  }
  return same;
}

/** A bit per sky under which the view is well lit. */
export function bitsAt({ site, plume, skies }: RankRoom, { rankView }: RoomView, instant: Instant): number {
  return skies.reduce(
    (bits, _, i) => (lossAt(site, rankView, instant, i, plume) === null ? bits | (1 << i) : bits),
    0,
  );
}

/** Passages of the sun between two T-0s, seen by neither, that take the share below `least`. */
function shortDips({ room, sun, spans }: ShareSearch, least: number): Interval[] {
  return room.views
    .flatMap((view, i) =>
      spans[i]!.flare.filter(({ fromMs, toMs }) => {
        const next = firstFrom(sun.timesMs, sun.count, fromMs);
        if (next === 0 || next === sun.count || sun.timesMs[next]! <= toMs) return false;
        return room.share[next]! - worth(room, view, view.well[next]!) < least - SAME_SHARE;
      }),
    )
    .sort((a, b) => a.fromMs - b.fromMs);
}
