/** How a tracker's picture comes through the air between, line by line. */

import { type ExplainPart, line, num } from "./explainLine.ts";
import type { PreparedSweep } from "./sweep/prepareSweep.ts";
import type { PadThings } from "./sweep/sweepLight.ts";

/** At T+0, under the first sky; `seen` are the things as they arrive. */
export function explainAir({ light, room }: PreparedSweep, seen: PadThings): ExplainPart {
  const { between, rangeM } = light.pointAt(room.fromS);
  const { transmittance, skyShare } = between[0]!;
  return {
    title: "the air between, at T+0",
    lines: [
      line(
        `over ${rangeM.toFixed(0)} m it lets ${num(transmittance)} of the light through and puts ${num(skyShare)} of the sky's luminance on the axis before it`,
        "extinction of the clear practice and of haze along the line, scattered once",
      ),
      line(
        `the body's mean arrives as ${num(seen.body.meanCdM2)} cd/m², ${num(seen.body.darkestCdM2)} to ${num(seen.body.brightestCdM2)}`,
      ),
    ],
  };
}
