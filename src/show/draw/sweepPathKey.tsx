/** What the marks of a sweep's path mean. */

import type { SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { fieldText } from "../sweepSunText.ts";
import { fittedText } from "./fitText.ts";

/** Left edge of all that stands beside the sky. */
export const KEY_X = 462;
const TOP = 30;
const ROW = 15;
const TEXT_X = KEY_X + 28;
const ZONE_ROOM_PX = 220;

interface PathKeyProps {
  readonly path: SweepPath;
  /** Some frame is drawn larger than it is. */
  readonly isSmall: boolean;
  readonly zone: string;
}

export function PathKey({ path, isSmall, zone }: PathKeyProps) {
  const field = `${fieldText(path.fieldDeg.horizontal)}° x ${fieldText(path.fieldDeg.vertical)}°`;
  const hasSun = path.sun.length > 0;
  const lines = [
    "axis, T+ in seconds",
    `frame ${field}${isSmall ? "" : ", true size"}`,
    ...(isSmall ? ["(4 px where it would be smaller)"] : []),
    ...(hasSun
      ? ["sun over the window, clock times of", fittedText(zone, ZONE_ROOM_PX, 10)]
      : ["sun down all along"]),
    "circles: elevation 0°, 30°, 60°, evenly",
    "spaced; north up and east right, as a plan",
  ];
  const sunY = rowY(isSmall ? 3 : 2) - 3;
  return (
    <g>
      <path class="sweeppath-way" d={`M${KEY_X} ${rowY(0) - 3}h20`} />
      <circle class="sweeppath-tick" cx={KEY_X + 10} cy={rowY(0) - 3} r={1.8} />
      <path class="sweeppath-frame" d={`M${KEY_X + 6} ${rowY(1) - 7}h8v6h-8Z`} />
      {hasSun && <path class="sweeppath-sun-case" d={`M${KEY_X} ${sunY}h20`} />}
      {hasSun && <path class="sweeppath-sun" d={`M${KEY_X} ${sunY}h20`} />}
      {hasSun && <circle class="sweeppath-disc" cx={KEY_X + 10} cy={sunY} r={2.2} />}
      {lines.map((text, row) => (
        <text class="soft" x={TEXT_X} y={rowY(row)}>
          {text}
        </text>
      ))}
    </g>
  );
}

const rowY = (row: number): number => TOP + ROW * row;
