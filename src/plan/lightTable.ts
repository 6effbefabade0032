/**
 * The light of one camera at every T-0 under every sky, kept as columns of numbers: a plan has tens of thousands of
 * them, and few are ever looked at. A sample is made when someone asks for it.
 */

import { LIGHT_CLASSES } from "../light/lightClass.ts";
import type { LightSample } from "./planTypes.ts";
import type { Instant } from "./scene.ts";
import type { SunSeries } from "./sunRisk.ts";
import type { Things } from "./things.ts";

const COLUMNS = [
  "lightIndex",
  "phaseDeg",
  "litShare",
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

export interface LightTable {
  readonly length: number;
  /** NaN where there is none. */
  readonly ev: Float64Array;
  readonly tableEv: Float64Array;
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
): LightTableBuilder {
  const length = instants.length * skyNames.length;
  const made = COLUMNS.map((name) => [name, new Float64Array(length)] as const);
  const columns = Object.fromEntries(made) as Columns;
  const sample = (index: number): LightSample => {
    const i = index % instants.length;
    return {
      at: instants[i]!.at,
      sky: skyNames[Math.floor(index / instants.length)]!,
      offAxisDeg: series.offAxisDeg[i]!,
      fromEdgeDeg: series.fromEdgeDeg[i]!,
      ...rowOf(columns, index),
    };
  };
  return {
    add: (index, things, tableEv) => addRow(columns, index, things, tableEv),
    done: () => tableOf(columns, length, sample),
  };
}

type Columns = Readonly<Record<Column, Float64Array>>;

function tableOf(columns: Columns, length: number, sample: (index: number) => LightSample): LightTable {
  let made: readonly LightSample[] | null = null;
  const all = (): readonly LightSample[] => {
    made ??= Array.from({ length }, (_, index) => sample(index));
    return made;
  };
  return { length, ev: columns.ev, tableEv: columns.tableEv, sample, all };
}

function rowOf(
  columns: Columns,
  index: number,
): Omit<LightSample, "at" | "sky" | "offAxisDeg" | "fromEdgeDeg"> {
  return {
    light: LIGHT_CLASSES[columns.lightIndex[index]!]!,
    phaseDeg: columns.phaseDeg[index]!,
    litShare: columns.litShare[index]!,
    ev: orNull(columns.ev[index]!),
    tableEv: orNull(columns.tableEv[index]!),
    bodyMeanCdM2: orNull(columns.bodyMeanCdM2[index]!),
    bodyBrightestCdM2: orNull(columns.bodyBrightestCdM2[index]!),
    bodyDarkestCdM2: orNull(columns.bodyDarkestCdM2[index]!),
    skyCdM2: columns.skyCdM2[index]!,
    deckCdM2: columns.deckCdM2[index]!,
    plumeCdM2: orNull(columns.plumeCdM2[index]!),
  };
}

function addRow(columns: Columns, index: number, things: Things, tableEv: number | null): void {
  columns.lightIndex[index] = LIGHT_CLASSES.indexOf(things.light);
  columns.phaseDeg[index] = things.phaseDeg;
  columns.litShare[index] = things.body.litShare;
  columns.ev[index] = things.ev ?? Number.NaN;
  columns.tableEv[index] = tableEv ?? Number.NaN;
  columns.bodyMeanCdM2[index] = things.hasVehicle ? things.body.meanCdM2 : Number.NaN;
  columns.bodyBrightestCdM2[index] = things.hasVehicle ? things.body.brightestCdM2 : Number.NaN;
  columns.bodyDarkestCdM2[index] = things.hasVehicle ? things.body.darkestCdM2 : Number.NaN;
  columns.skyCdM2[index] = things.skyCdM2;
  columns.deckCdM2[index] = things.deckCdM2;
  columns.plumeCdM2[index] = things.plume?.nominalCdM2 ?? Number.NaN;
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);
