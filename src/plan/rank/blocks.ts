/**
 * T-0s in blocks of a few minutes, with bounds on what changes inside: most views are the same through most blocks,
 * so that one look at a block decides two dozen T-0s. A bound that does not decide sends the loop to the T-0s themselves:
 * blocks save time and change no answer.
 */

import type { LightColumns } from "./lightColumns.ts";
import type { Run, SunColumns } from "./sunColumns.ts";

const BLOCK_LENGTH = 24;
/** Without the sun less is asked of a block. */
const DARK_BLOCK_LENGTH = 48;

/** Made once for the longest window, as `SunColumns`. */
export interface SunBlocks {
  count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** 1 with the sun's centre up at all T-0s of the block, 0 at none: a block never holds both. */
  readonly isUp: Uint8Array;
  /** 1 with part of the body in shadow at any T-0 of the block. */
  readonly isShaded: Uint8Array;
  /** Azimuth of the direct light at the block's middle as a unit vector, and the longest way from it to that of another T-0. */
  readonly lampEast: Float64Array;
  readonly lampNorth: Float64Array;
  readonly lampSpread: Float64Array;
  /** The same for the sun held at the horizon when it is down, as the standard sky takes it; the spread is half an angle, in radians. */
  readonly heldEast: Float64Array;
  readonly heldNorth: Float64Array;
  readonly heldUp: Float64Array;
  readonly heldHalfSpreadRad: Float64Array;
  /** Least and most cosine of the phase in each block, of the view at hand. */
  readonly leastCosine: Float64Array;
  readonly mostCosine: Float64Array;
}

export const BEAM = { none: 0, all: 1, some: 2 } as const;

/** Bounds on one sky's light in each block, before corrections and floodlights. */
export interface LightBlocks {
  readonly beam: Uint8Array;
  readonly leastDirectLx: Float64Array;
  readonly mostDirectLx: Float64Array;
  readonly leastFillLx: Float64Array;
  readonly mostFillLx: Float64Array;
  /** Of both together: no facet gets more. */
  readonly mostFacetLx: Float64Array;
  readonly leastGroundLx: Float64Array;
  readonly mostGroundLx: Float64Array;
  readonly leastSkyCdM2: Float64Array;
  readonly mostSkyCdM2: Float64Array;
}

/** Room for the blocks of `most` T-0s; runs of day and night add some. */
const roomFor = (most: number): number => Math.ceil(most / BLOCK_LENGTH) * 2 + 64;

export function makeSunBlocks(most: number): SunBlocks {
  const length = roomFor(most);
  const column = (): Float64Array => new Float64Array(length);
  return {
    count: 0,
    from: new Int32Array(length),
    to: new Int32Array(length),
    isUp: new Uint8Array(length),
    isShaded: new Uint8Array(length),
    lampEast: column(),
    lampNorth: column(),
    lampSpread: column(),
    heldEast: column(),
    heldNorth: column(),
    heldUp: column(),
    heldHalfSpreadRad: column(),
    leastCosine: column(),
    mostCosine: column(),
  };
}

export function makeLightBlocks(most: number): LightBlocks {
  const length = roomFor(most);
  const column = (): Float64Array => new Float64Array(length);
  return {
    beam: new Uint8Array(length),
    leastDirectLx: column(),
    mostDirectLx: column(),
    leastFillLx: column(),
    mostFillLx: column(),
    mostFacetLx: column(),
    leastGroundLx: column(),
    mostGroundLx: column(),
    leastSkyCdM2: column(),
    mostSkyCdM2: column(),
  };
}

export function fillSunBlocks(blocks: SunBlocks, sun: SunColumns): void {
  blocks.count = 0;
  const cut = ({ from, to }: Run, isUp: 0 | 1): void => {
    const length = isUp === 1 ? BLOCK_LENGTH : DARK_BLOCK_LENGTH;
    for (let start = from; start < to; start += length) {
      blocks.isUp[blocks.count] = isUp;
      fillSunBlock(blocks, sun, blocks.count, start, Math.min(to, start + length));
      blocks.count++;
    }
  };
  let after = 0;
  for (const run of sun.upRuns) {
    cut({ from: after, to: run.from }, 0);
    cut(run, 1);
    after = run.to;
  }
  cut({ from: after, to: sun.count }, 0);
}

function fillSunBlock(room: SunBlocks, sun: SunColumns, block: number, from: number, to: number): void {
  const { lampEast, lampNorth, towardEast, towardNorth, east, north, up } = sun;
  const middle = (from + to - 1) >> 1;
  const isHeld = up[middle]! < 0;
  const [heldEast, heldNorth, heldUp] = isHeld
    ? [towardEast[middle]!, towardNorth[middle]!, 0]
    : [east[middle]!, north[middle]!, up[middle]!];
  let lampSquared = 0;
  let isShaded: 0 | 1 = 0;
  let heldSquared = 0;
  for (let i = from; i < to; i++) {
    const lamp = (lampEast[i]! - lampEast[middle]!) ** 2 + (lampNorth[i]! - lampNorth[middle]!) ** 2;
    const held =
      up[i]! < 0
        ? (towardEast[i]! - heldEast) ** 2 + (towardNorth[i]! - heldNorth) ** 2 + heldUp ** 2
        : (east[i]! - heldEast) ** 2 + (north[i]! - heldNorth) ** 2 + (up[i]! - heldUp) ** 2;
    if (sun.shades[i] !== null) isShaded = 1;
    if (lamp > lampSquared) lampSquared = lamp;
    if (held > heldSquared) heldSquared = held;
  }
  room.from[block] = from;
  room.to[block] = to;
  room.isShaded[block] = isShaded;
  room.lampEast[block] = lampEast[middle]!;
  room.lampNorth[block] = lampNorth[middle]!;
  room.lampSpread[block] = Math.sqrt(lampSquared);
  room.heldEast[block] = heldEast;
  room.heldNorth[block] = heldNorth;
  room.heldUp[block] = heldUp;
  room.heldHalfSpreadRad[block] = Math.asin(Math.min(1, Math.sqrt(heldSquared) / 2));
}

export function fillLightBlocks(room: LightBlocks, blocks: SunBlocks, light: LightColumns): void {
  for (let block = 0; block < blocks.count; block++) {
    boundBlock(room, light, block, blocks.from[block]!, blocks.to[block]!);
    // In shadow a facet may get none of it.
    if (blocks.isShaded[block] === 1) room.leastDirectLx[block] = 0;
  }
}

function boundBlock(room: LightBlocks, light: LightColumns, block: number, from: number, to: number): void {
  const { directLx } = light;
  let withBeam = 0;
  let mostFacet = 0;
  for (let i = from; i < to; i++) {
    if (directLx[i]! > 0) withBeam++;
    const facet = directLx[i]! + light.fillLx[i]!;
    if (facet > mostFacet) mostFacet = facet;
  }
  room.mostFacetLx[block] = mostFacet;
  room.beam[block] = withBeam === 0 ? BEAM.none : withBeam === to - from ? BEAM.all : BEAM.some;
  bound(directLx, from, to, room.leastDirectLx, room.mostDirectLx, block);
  bound(light.fillLx, from, to, room.leastFillLx, room.mostFillLx, block);
  bound(light.groundLx, from, to, room.leastGroundLx, room.mostGroundLx, block);
  if (light.skyCdM2.length > 0) bound(light.skyCdM2, from, to, room.leastSkyCdM2, room.mostSkyCdM2, block);
}

function bound(
  column: Float64Array,
  from: number,
  to: number,
  leasts: Float64Array,
  mosts: Float64Array,
  block: number,
): void {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let i = from; i < to; i++) {
    const value = column[i]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  leasts[block] = least;
  mosts[block] = most;
}

/** A bound must hold to the last bit. */
const ROUNDING = 1e-12;

/** Bounds on the cosine of the phase for a view, by the unit vector to its camera: unit vectors so far apart have products no farther apart. */
export function boundPhase(blocks: SunBlocks, observerEast: number, observerNorth: number): void {
  const { count, lampEast, lampNorth, lampSpread, leastCosine, mostCosine } = blocks;
  for (let block = 0; block < count; block++) {
    const cosine = observerEast * lampEast[block]! + observerNorth * lampNorth[block]!;
    const spread = lampSpread[block]! + ROUNDING;
    leastCosine[block] = cosine - spread;
    mostCosine[block] = Math.min(1, cosine + spread);
  }
}
