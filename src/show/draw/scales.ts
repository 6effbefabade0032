/** Scales and round ticks of charts. */

import { scaleLinear } from "d3-scale";

/** From values to places on paper, and back. */
export interface Scale {
  (value: number): number;
  readonly ticks: (count: number) => readonly number[];
}

/** Straight from one range to another. */
export function linear(from: readonly [number, number], to: readonly [number, number]): Scale {
  const scale = scaleLinear(from, to);
  return Object.assign((value: number): number => scale(value), {
    ticks: (count: number): readonly number[] => scale.ticks(count),
  });
}
