/** The sun in a picture: its way through the window with clock times, and its disc at scale. */

import { ANCHOR_CLASS, overlap, textBox } from "./boxes.ts";
import { textWidthPx } from "./fitText.ts";
import { arrowToSun } from "./frameArrow.ts";
import type { PaperProps } from "./frameProps.ts";
import { FRAME_LABEL_PX } from "./frameStyle.tsx";
import { polygon } from "./frameTone.tsx";
import { cut, openPath, type Point } from "./paths.ts";

/** A disc smaller than this on paper gets a ring around it, px. */
const SMALL_PX = 5;
const RING_PX = 8;

export function FrameSun({ track, tones, paper }: PaperProps) {
  const disc = tones.sun.disc.map(paper.at);
  return (
    <g class="frame-sun">
      {track.lines.map((line, i) => (
        <path key={i} class="frame-track" d={openPath(line.map(paper.at))} />
      ))}
      {disc.length > 0 && <path class="frame-disc" d={polygon(tones.sun.disc, paper)} />}
      {disc.length > 0 && widthOf(disc) < SMALL_PX && <Ring disc={disc} />}
    </g>
  );
}

/** Ticks on the sun's way with clock times, where they leave room for the arrow's words. */
export function SunTimes(props: PaperProps) {
  const { track, clock, paper } = props;
  const arrow = arrowToSun(props);
  return (
    <g class="frame-times">
      {track.ticks.map(({ at, xMm, yMm }) => {
        const [x, y] = paper.at([xMm, yMm]).map(cut) as [number, number];
        const words = clock.at(at);
        const isRight = x > paper.width - textWidthPx(words, FRAME_LABEL_PX) - BESIDE_PX;
        const anchor = isRight ? "end" : "start";
        const place: Point = [x + (isRight ? -BESIDE_PX : BESIDE_PX), Math.max(LINE_PX, y - 3)];
        const isTaken = arrow !== null && overlap(textBox(words, place, FRAME_LABEL_PX, anchor), arrow.box);
        return (
          <g key={at.getTime()}>
            <circle class="frame-tick" cx={x} cy={y} r="2" />
            {!isTaken && (
              <text class={`frame-label halo${ANCHOR_CLASS[anchor]}`} x={cut(place[0])} y={cut(place[1])}>
                {words}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** Between a tick and its clock time, and from the picture's upper edge to its base line, px. */
const BESIDE_PX = 5;
const LINE_PX = 11;

function Ring({ disc }: { readonly disc: readonly Point[] }) {
  const middle = (axis: 0 | 1): number =>
    cut(disc.reduce((sum, point) => sum + point[axis], 0) / disc.length);
  return <circle class="frame-ring" cx={middle(0)} cy={middle(1)} r={RING_PX} />;
}

const widthOf = (points: readonly Point[]): number =>
  Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));
