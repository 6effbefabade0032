/** T-0 and T+ as they are told. */

import type { Interval } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import type { ClosestApproach, TPlusSpan } from "./sweepTypes.ts";
import type { Tracker } from "./tracker.ts";

const rounded = (ms: number, perS: number): number => Math.round((ms / MS_PER_SECOND) * perS) / perS;

/** A T+ is told to a tenth of a second. */
export const toTPlus = (ms: number): number => rounded(ms, 10);

/** The ends of a stretch are kept finer, so that a sheet can round them outward; none lies beyond the sweep's own end. */
export const toTPlusSpan = ({ fromMs, toMs }: Interval, endS: number): TPlusSpan => ({
  fromS: Math.min(endS, rounded(fromMs, 100)),
  toS: Math.min(endS, rounded(toMs, 100)),
});

/** How near the sun is at one T-0 and T+. */
export function approach({ edge, offAxis, frames }: Tracker, t0Ms: number, tPlusMs: number): ClosestApproach {
  return {
    at: new Date(Math.round(t0Ms / MS_PER_SECOND) * MS_PER_SECOND),
    tPlusS: Math.min(frames.atMs.at(-1)! / MS_PER_SECOND, toTPlus(tPlusMs)),
    fromEdgeDeg: edge.valueAt(t0Ms, tPlusMs),
    offAxisDeg: offAxis.valueAt(t0Ms, tPlusMs),
  };
}
