/**
 * The tight loop: one view under one sky at every T-0 of a window. But for a body in shadow no object is made and no angle taken: phases
 * are cosines, luminances stay linear. A block of T-0s is decided at once where its bounds allow. Same answers as `lossAt`, but for
 * a kept sky that stands within a hundred-thousandth of a border (it comes from a table).
 */

import { skyAt } from "./axisSky.ts";
import { BEAM, type LightBlocks, type SunBlocks } from "./blocks.ts";
import { type Kit, leastThatKeeps, reaches } from "./kit.ts";
import { boundKept, peakAt, type SkyView, type SkyWindow, shadedAt } from "./skyView.ts";
import type { Run } from "./sunColumns.ts";

/** What the loop writes for one view. */
export interface ViewRow {
  /** T-0s with the sun in or near the frame, in the order of time. */
  readonly flareRuns: readonly Run[];
  /** A bit per sky: set where the view is well lit. */
  readonly well: Uint8Array;
  readonly bit: number;
  /** Steps of the window's share from one T-0 to the next, and what this view adds to it under this sky. */
  readonly shareSteps: Float64Array;
  readonly worth: number;
}

/** Well lit at the T-0s from `from` to before `to`. */
function addWell({ well, bit, shareSteps, worth }: ViewRow, from: number, to: number, counts: Counts): void {
  counts.well += to - from;
  shareSteps[from]! += worth;
  shareSteps[to]! -= worth;
  for (let i = from; i < to; i++) well[i]! |= bit;
}

/** T-0s with the sun up, by what became of the view. */
export interface Counts {
  front: number;
  unlit: number;
  sun: number;
  setting: number;
  well: number;
}

/** Judges every T-0 with the sun up; at the others no view is well lit. */
export function judgeView(view: SkyView, window: SkyWindow, row: ViewRow): Counts {
  const counts: Counts = { front: 0, unlit: 0, sun: 0, setting: 0, well: 0 };
  const { blocks, bounds } = window;
  const { flareRuns } = row;
  let flare = 0;
  for (let block = 0; block < blocks.count; block++) {
    if (blocks.isUp[block] === 0) continue;
    const from = blocks.from[block]!;
    const to = blocks.to[block]!;
    while (flare < flareRuns.length && flareRuns[flare]!.to <= from) flare++;
    const run = flareRuns[flare];
    const isTouched = run !== undefined && run.from < to;
    const isCovered = isTouched && run.from <= from && run.to >= to;
    const open = phaseOfBlock(view, blocks, bounds, block);
    const phase =
      blocks.isShaded[block] === 1 && bounds.beam[block] !== BEAM.none && open !== PHASE.unlit
        ? PHASE.mixed
        : open;
    if (phase === PHASE.mixed || (isTouched && !isCovered && phase !== PHASE.unlit)) {
      judgeEach(view, window, row, from, to, flare, counts);
      continue;
    }
    const length = to - from;
    if (phase === PHASE.front) counts.front += length;
    if (phase === PHASE.unlit) counts.unlit += length;
    else if (isCovered) counts.sun += length;
    else judgeKit(view, window, row, block, counts);
  }
  return counts;
}

/** A block that is lit and free of the sun: by its bounds where they decide, else T-0 by T-0. */
function judgeKit(view: SkyView, window: SkyWindow, row: ViewRow, block: number, counts: Counts): void {
  const from = window.blocks.from[block]!;
  const to = window.blocks.to[block]!;
  const reach = view.kit === null ? REACH.all : reachOfBlock(view, view.kit, window, block);
  if (reach === REACH.all) addWell(row, from, to, counts);
  else if (reach === REACH.none) counts.setting += to - from;
  else judgeClear(view, window, row, from, to, counts);
}

/** Lit and front, lit and not front, not lit, flat; or not the same at all T-0s of a block. */
const PHASE = { front: 0, lit: 1, unlit: 2, mixed: 3 } as const;

function phaseOfBlock(view: SkyView, blocks: SunBlocks, bounds: LightBlocks, block: number): number {
  const beam = bounds.beam[block]!;
  if (beam === BEAM.none) return PHASE.lit;
  if (beam === BEAM.some) return PHASE.mixed;
  const most = blocks.mostCosine[block]!;
  const least = blocks.leastCosine[block]!;
  const { litCosine, frontCosine } = view;
  if (most < litCosine && most <= frontCosine) return PHASE.unlit;
  if (least < litCosine) return PHASE.mixed;
  if (least > frontCosine) return PHASE.front;
  return most <= frontCosine ? PHASE.lit : PHASE.mixed;
}

const REACH = { all: 0, none: 1, some: 2 } as const;

/** Whether the kit keeps even the widest span that a block's bounds allow, or not even the narrowest. */
function reachOfBlock(view: SkyView, kit: Kit, window: SkyWindow, block: number): number {
  const { scratch } = window;
  boundKept(view, window, block, scratch);
  if (reaches(kit, scratch.leastDark, scratch.mostBright)) return REACH.all;
  return reaches(kit, scratch.mostDark, scratch.leastBright) ? REACH.some : REACH.none;
}

/** The T-0s of a block one by one: phase, then sun; stretches that are left go on to the settings. */
function judgeEach(
  view: SkyView,
  window: SkyWindow,
  row: ViewRow,
  from: number,
  to: number,
  firstFlare: number,
  counts: Counts,
): void {
  const { observerEast, observerNorth, litCosine, frontCosine } = view;
  const { towardEast, towardNorth, shades } = window.sun;
  const { directLx } = window.light;
  const { flareRuns } = row;
  let flare = firstFlare;
  let clearFrom = -1;
  for (let i = from; i < to; i++) {
    let isUnlit = false;
    if (directLx[i]! > 0) {
      const cosine = observerEast * towardEast[i]! + observerNorth * towardNorth[i]!;
      const shaded = shades[i] === null ? null : shadedAt(view, window.sun, i);
      if (cosine > frontCosine && (shaded === null || shaded.kept >= view.shadedShare)) counts.front++;
      isUnlit = shaded === null ? cosine < litCosine : shaded.lit < view.litShare;
    }
    while (flare < flareRuns.length && flareRuns[flare]!.to <= i) flare++;
    const isInSun = flare < flareRuns.length && flareRuns[flare]!.from <= i;
    if (isUnlit) counts.unlit++;
    else if (isInSun) counts.sun++;
    else {
      if (clearFrom < 0) clearFrom = i;
      continue;
    }
    if (clearFrom >= 0) judgeClear(view, window, row, clearFrom, i, counts);
    clearFrom = -1;
  }
  if (clearFrom >= 0) judgeClear(view, window, row, clearFrom, to, counts);
}

function judgeClear(
  view: SkyView,
  window: SkyWindow,
  row: ViewRow,
  from: number,
  to: number,
  counts: Counts,
): void {
  if (view.kit === null) addWell(row, from, to, counts);
  else judgeSettings(view, view.kit, window, row, from, to, counts);
}

/** T-0s that are lit and free of the sun: well lit where some setting keeps everything. */
function judgeSettings(
  view: SkyView,
  kit: Kit,
  { sun, light }: SkyWindow,
  row: ViewRow,
  from: number,
  to: number,
  counts: Counts,
): void {
  const { factor, bodyPerLx, deckPerLx, against, axisSky } = view;
  let index = 0;
  for (let i = from; i < to; i++) {
    let darkest = Number.POSITIVE_INFINITY;
    let brightest = 0;
    if (bodyPerLx !== null) {
      const fill = light.fillLx[i]! * factor;
      darkest = bodyPerLx * (fill + view.bodyDarkLx);
      brightest = bodyPerLx * (light.directLx[i]! * factor * peakAt(view, sun, i) + fill + view.bodyBrightLx);
    }
    if (deckPerLx !== null) {
      const ground = light.groundLx[i]! * factor;
      darkest = Math.min(darkest, deckPerLx * (ground + view.deckDarkLx));
      brightest = Math.max(brightest, deckPerLx * (ground + view.deckBrightLx));
    }
    const skyCdM2 = axisSky === null ? 0 : skyAt(axisSky, sun, light, i);
    for (const { ownCdM2, through } of against) {
      const seen = ownCdM2 + through * skyCdM2;
      darkest = Math.min(darkest, seen);
      brightest = Math.max(brightest, seen);
    }
    index = leastThatKeeps(kit.brightestCdM2, brightest, index);
    if (index < kit.brightestCdM2.length && kit.darkestCdM2[index]! <= darkest)
      addWell(row, i, i + 1, counts);
    else counts.setting++;
  }
}
