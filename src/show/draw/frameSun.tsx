/** The sun in a picture: its way through the window with clock times, its disc at scale, the arrow to it while it is off the picture. */

import { ANCHOR_CLASS, textBox } from "./boxes.ts";
import { arrowToSun, type SunArrow } from "./frameArrow.ts";
import type { PaperProps } from "./frameProps.ts";
import { FRAME_LABEL_PX } from "./frameStyle.tsx";
import { polygon } from "./frameTone.tsx";
import { type LabelRoom, takePlace } from "./labelRoom.ts";
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

/** The way to a sun off the picture, and ticks on its way, with clock times where there is room beside them. */
export function SunTimes(props: PaperProps) {
  const { track, paper } = props;
  const arrow = arrowToSun(props);
  const labels = tickLabels(props, arrow);
  return (
    <>
      {arrow !== null && (
        <g class="frame-to-sun">
          <path d={arrow.path} />
          <FrameLabel label={arrow} />
        </g>
      )}
      <g class="frame-times">
        {track.ticks.map(({ at, xMm, yMm }, i) => {
          const [x, y] = paper.at([xMm, yMm]);
          const label = labels[i];
          return (
            <g key={at.getTime()}>
              <circle class="frame-tick" cx={cut(x)} cy={cut(y)} r="2" />
              {label && <FrameLabel label={label} />}
            </g>
          );
        })}
      </g>
    </>
  );
}

const FrameLabel = ({
  label: { words, anchor, at },
}: {
  readonly label: Pick<SunArrow, "words" | "anchor" | "at">;
}) => (
  <text class={`frame-label halo${ANCHOR_CLASS[anchor]}`} x={cut(at[0])} y={cut(at[1])}>
    {words}
  </text>
);

/** Between a tick and its clock time, and from the picture's upper edge to its base line, px. */
const BESIDE_PX = 5;
const LINE_PX = 11;

/** Of each tick, to its right or its left; null where that would stand on another or on the arrow's words. */
function tickLabels({ track, clock, paper }: PaperProps, arrow: SunArrow | null) {
  const room: LabelRoom = {
    isInside: ({ x, width }) => x >= 0 && x + width <= paper.width,
    marks: arrow === null ? [] : [arrow.box],
    labels: [],
    leaders: [],
  };
  return track.ticks.map(({ at, xMm, yMm }) => {
    const [x, y] = paper.at([xMm, yMm]);
    const words = clock.at(at);
    const places = SIDES.map(([anchor, beside]) => {
      const place: Point = [x + beside, Math.max(LINE_PX, y - 3)];
      return { words, anchor, at: place, box: textBox(words, place, FRAME_LABEL_PX, anchor), leader: null };
    });
    return takePlace(places, room);
  });
}

const SIDES = [
  ["start", BESIDE_PX],
  ["end", -BESIDE_PX],
] as const;

function Ring({ disc }: { readonly disc: readonly Point[] }) {
  const middle = (axis: 0 | 1): number =>
    cut(disc.reduce((sum, point) => sum + point[axis], 0) / disc.length);
  return <circle class="frame-ring" cx={middle(0)} cy={middle(1)} r={RING_PX} />;
}

const widthOf = (points: readonly Point[]): number =>
  Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));
