/** Marks of the ranking's bars: the part of each sky, the share at the best T-0. */

import type { Palette } from "./palette.ts";
import { cut } from "./paths.ts";

/** Tones of the skies in their order, the same on light and dark paper; each part has its number too. */
const SKY_TONES = ["#3d6f94", "#a9c7dc", "#6f8fa6", "#d5dde2"] as const;
const skyTone = (index: number): number => index % SKY_TONES.length;

export const rankStyle = ({ ink }: Palette): string => `
${SKY_TONES.map((tone, i) => `.rank-sky-${i}{fill:${tone};stroke:${ink};stroke-width:.7}.rank-on-${i}{fill:${i === 0 ? "#ffffff" : "#16191d"}}`).join("\n")}
.rank-number{font-size:8.5px;font-weight:600;text-anchor:middle}
.rank-best-casing{stroke-width:4.5}.rank-best{fill:none;stroke:${ink};stroke-width:2}
.rank-best-foot{fill:${ink}}
`;

interface SkyPartProps {
  /** Of the sky. */
  readonly index: number;
  /** Whether it shows its number. */
  readonly number: boolean;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A sky's part of a share, with the sky's number where there is room. */
export function SkyPart({ index, number, ...box }: SkyPartProps) {
  const { x, y, width, height } = box;
  if (width <= 0) return null;
  const tone = skyTone(index);
  return (
    <>
      <rect class={`rank-sky-${tone}`} {...box} />
      {number && width >= 12 && (
        <text class={`rank-number rank-on-${tone}`} x={cut(x + width / 2)} y={cut(y + height / 2 + 3)}>
          {index + 1}
        </text>
      )}
    </>
  );
}

/** An upright with a foot and a head. */
export const BestMark = ({
  x,
  y,
  height,
}: {
  readonly x: number;
  readonly y: number;
  readonly height: number;
}) => (
  <>
    <path class="casing rank-best-casing" d={`M${x} ${y}v${height}`} />
    <path class="rank-best" d={`M${x} ${y}v${height}`} />
    <path class="rank-best-foot" d={`M${cut(x - 3.5)} ${y}h7l-3.5 4z`} />
  </>
);
