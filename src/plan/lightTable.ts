/**
 * The light of one camera at every T-0 under every sky, kept as columns of numbers: a plan has tens of thousands of
 * them, and few are ever looked at. A sample is made when someone asks for it.
 */

import { LIGHT_CLASSES, type LightClass } from "../light/lightClass.ts";
import type { Instant } from "./instants.ts";
import type { LightSample } from "./planTypes.ts";
import type { SunSeries } from "./sunRisk.ts";
import type { Things } from "./things.ts";

/** One after the other in a single block: many small ones would cost more than what they hold. */
const COLUMNS = [
  "lightIndex",
  "phaseDeg",
  "litShare",
  "keptShare",
  "ev",
  "tableEv",
  "bodyMeanCdM2",
  "bodyBrightestCdM2",
  "bodyDarkestCdM2",
  "skyCdM2",
  "deckCdM2",
  "plumeCdM2",
] as const;
type Column = (typeof COLUMNS)[number];

const OFFSETS = Object.fromEntries(COLUMNS.map((name, i) => [name, i])) as Readonly<Record<Column, number>>;

export interface LightTable {
  readonly length: number;
  /** Model EV minus guide EV, stops; NaN where there is no guide EV or no light. */
  routesApartStops(index: number): number;
  hasGuide(index: number): boolean;
  isLight(index: number, light: LightClass): boolean;
  /** Darkest facet of the body, or the deck, before ignition over all T-0s and skies, cd/m2; NaN without a vehicle. */
  leastCdM2(thing: "body" | "deck"): number;
  /** `index` counts T-0s under the first sky, then under the next. */
  sample(index: number): LightSample;
  /** All samples, made once. */
  all(): readonly LightSample[];
}

export interface LightTableBuilder {
  add(index: number, things: Things, tableEv: number | null): void;
  done(): LightTable;
}

export function lightTableFor(
  instants: readonly Instant[],
  skyNames: readonly string[],
  series: SunSeries,
  sunBehindAt: (ms: number) => LightSample["sunBehind"],
): LightTableBuilder {
  const length = instants.length * skyNames.length;
  const block: Block = { length, values: new Float64Array(length * COLUMNS.length) };
  const sample = (index: number): LightSample => {
    const i = index % instants.length;
    return {
      at: instants[i]!.at,
      sky: skyNames[Math.floor(index / instants.length)]!,
      offAxisDeg: series.offAxisDeg[i]!,
      fromEdgeDeg: series.fromEdgeDeg[i]!,
      sunBehind: sunBehindAt(instants[i]!.ms),
      ...rowOf(block, index),
    };
  };
  return {
    add: (index, things, tableEv) => addRow(block, index, things, tableEv),
    done: () => tableOf(block, sample),
  };
}

/** Column after column; NaN where there is no value. */
interface Block {
  readonly length: number;
  readonly values: Float64Array;
}

const valueAt = ({ length, values }: Block, column: Column, index: number): number =>
  values[OFFSETS[column] * length + index]!;

function tableOf(block: Block, sample: (index: number) => LightSample): LightTable {
  const { length } = block;
  let made: readonly LightSample[] | null = null;
  return {
    length,
    routesApartStops: (index) => valueAt(block, "ev", index) - valueAt(block, "tableEv", index),
    hasGuide: (index) => !Number.isNaN(valueAt(block, "tableEv", index)),
    isLight: (index, light) => LIGHT_CLASSES[valueAt(block, "lightIndex", index)] === light,
    leastCdM2: (thing) => leastOf(block, thing === "body" ? "bodyDarkestCdM2" : "deckCdM2"),
    sample,
    all: () => {
      made ??= Array.from({ length }, (_, index) => sample(index));
      return made;
    },
  };
}

function leastOf(block: Block, column: Column): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < block.length; i++) least = Math.min(least, valueAt(block, column, i));
  return least;
}

function rowOf(
  block: Block,
  index: number,
): Omit<LightSample, "at" | "sky" | "offAxisDeg" | "fromEdgeDeg" | "sunBehind"> {
  const value = (column: Column): number => valueAt(block, column, index);
  return {
    light: LIGHT_CLASSES[value("lightIndex")]!,
    phaseDeg: value("phaseDeg"),
    litShare: value("litShare"),
    keptShare: value("keptShare"),
    ev: orNull(value("ev")),
    tableEv: orNull(value("tableEv")),
    bodyMeanCdM2: orNull(value("bodyMeanCdM2")),
    bodyBrightestCdM2: orNull(value("bodyBrightestCdM2")),
    bodyDarkestCdM2: orNull(value("bodyDarkestCdM2")),
    skyCdM2: value("skyCdM2"),
    deckCdM2: value("deckCdM2"),
    plumeCdM2: orNull(value("plumeCdM2")),
  };
}

/** In the order of COLUMNS; written out, as this is done for every T-0 of every camera. */
function addRow({ length, values }: Block, index: number, things: Things, tableEv: number | null): void {
  const { body, hasVehicle } = things;
  values[index] = LIGHT_CLASSES.indexOf(things.light);
  values[index + length] = things.phaseDeg;
  values[index + 2 * length] = body.litShare;
  values[index + 3 * length] = things.kept;
  values[index + 4 * length] = things.ev ?? Number.NaN;
  values[index + 5 * length] = tableEv ?? Number.NaN;
  values[index + 6 * length] = hasVehicle ? body.meanCdM2 : Number.NaN;
  values[index + 7 * length] = hasVehicle ? body.brightestCdM2 : Number.NaN;
  values[index + 8 * length] = hasVehicle ? body.darkestCdM2 : Number.NaN;
  values[index + 9 * length] = things.skyCdM2;
  values[index + 10 * length] = things.deckCdM2;
  values[index + 11 * length] = things.plume?.nominalCdM2 ?? Number.NaN;
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);
