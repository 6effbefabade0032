/**
 * The views of one window as rows of numbers: a year of windows has tens of thousands of them, and few are ever looked
 * at. The objects that a ranking tells are made when someone asks for them.
 */

import { isClipped } from "../../exposure/solver.ts";
import { toTimeSpan } from "../sunRisk.ts";
import type { ViewScore } from "./rankTypes.ts";
import type { SunSpans } from "./sunSpans.ts";

/** Columns of a row. */
export const FIGURE = {
  well: 0,
  front: 1,
  unlit: 2,
  sun: 3,
  setting: 4,
  driftStops: 5,
  spareStops: 6,
} as const;
type Figure = (typeof FIGURE)[keyof typeof FIGURE];
const FIGURES = 7;

/** What does not change from window to window. */
export interface ViewName {
  readonly id: string;
  readonly weight: number;
}

export interface ViewFigures {
  /** In the order of the room's views; spare is NaN where no setting can be given. */
  readonly values: Float64Array;
  readonly names: readonly ViewName[];
  readonly spans: readonly SunSpans[];
  /** Share of T-0s with the sun down, the same for all. */
  readonly darkShare: number;
}

export const makeViewFigures = (
  names: readonly ViewName[],
  spans: readonly SunSpans[],
  darkShare: number,
): ViewFigures => ({ values: new Float64Array(names.length * FIGURES), names, spans, darkShare });

export const figureOf = ({ values }: ViewFigures, view: number, figure: Figure): number =>
  values[view * FIGURES + figure]!;

export function setFigure({ values }: ViewFigures, view: number, figure: Figure, value: number): void {
  values[view * FIGURES + figure] = value;
}

/** Sum of a figure over the views that count. */
export function sumOfFigure(figures: ViewFigures, figure: Figure): number {
  let sum = 0;
  for (let view = 0; view < figures.names.length; view++) {
    if (figures.names[view]!.weight > 0) sum += figureOf(figures, view, figure);
  }
  return sum;
}

/** One view in words and objects. */
export function viewScore(figures: ViewFigures, view: number): ViewScore {
  const { id, weight } = figures.names[view]!;
  const { inFrame, nearFrame } = figures.spans[view]!;
  const spareStops = figureOf(figures, view, FIGURE.spareStops);
  const hasSetting = !Number.isNaN(spareStops);
  return {
    id,
    weight,
    wellLitShare: figureOf(figures, view, FIGURE.well),
    frontShare: figureOf(figures, view, FIGURE.front),
    lostShare: {
      dark: figures.darkShare,
      unlit: figureOf(figures, view, FIGURE.unlit),
      sun: figureOf(figures, view, FIGURE.sun),
      setting: figureOf(figures, view, FIGURE.setting),
    },
    driftStops: figureOf(figures, view, FIGURE.driftStops),
    spareStops: hasSetting ? spareStops : null,
    holds: hasSetting ? !isClipped(spareStops) : null,
    inFrame: inFrame.map(toTimeSpan),
    nearFrame: nearFrame.map(toTimeSpan),
  };
}
