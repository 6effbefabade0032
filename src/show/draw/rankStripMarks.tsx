/** Marks of a ranked window's strip: the bar under a well-lit stretch, the share as steps. */

import { cut } from "./paths.ts";
import { type TimeFrame, xOf } from "./timeFrame.ts";

const BAR_PX = 2;
const GROUND_PX = 0.8;
/** So that the cell's own edge stays in sight. */
const INSET_PX = 1;

interface WellLitBarProps {
  readonly x: number;
  readonly width: number;
  /** Of the cell. */
  readonly bottom: number;
}

/** A bar along the bottom of a cell, parted from its tone. */
export function WellLitBar({ x, width, bottom }: WellLitBarProps) {
  const top = bottom - INSET_PX - BAR_PX;
  return (
    <>
      <rect class="strip-well-ground" x={x} y={cut(top - GROUND_PX)} width={width} height={GROUND_PX} />
      <rect class="strip-well" x={x} y={cut(top)} width={width} height={BAR_PX} />
    </>
  );
}

interface ShareStepsProps {
  /** Of each stretch, 0..1. */
  readonly share: readonly number[];
  /** One more than the shares, ms. */
  readonly edges: readonly number[];
  readonly frame: TimeFrame;
}

/** The share of well-lit views over the frame, 0 at its bottom and 100 % at its top. */
export function ShareSteps({ share, edges, frame }: ShareStepsProps) {
  const { left, top, width, height } = frame;
  const bottom = top + height;
  const yOf = (value: number): number => cut(bottom - value * height);
  const steps = share
    .map(
      (value, i) => `${i === 0 ? `M${left} ${yOf(value)}` : `V${yOf(value)}`}H${xOf(frame, edges[i + 1]!)}`,
    )
    .join("");
  return (
    <g>
      {[0, 0.5, 1].map((value) => (
        <path class="strip-grid" d={`M${left} ${yOf(value)}h${width}`} />
      ))}
      <path class="strip-area" d={`${steps}V${bottom}H${left}Z`} />
      <path class="strip-step" d={steps} />
      <path class="line" d={`M${left} ${top}v${height}M${left + width} ${top}v${height}`} />
      <text class="soft small end" x={left - 6} y={top + 6}>
        100 %
      </text>
      <text class="small end" x={left - 6} y={cut(top + height / 2 + 3)}>
        share
      </text>
      <text class="soft small end" x={left - 6} y={bottom}>
        0
      </text>
    </g>
  );
}
