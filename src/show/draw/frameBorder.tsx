/** What lies around a picture: the gate's edge, the flare margin, the way to a sun off the picture. */

import type { FrameLayout } from "../../plan/picture/frameLayout.ts";
import { rectangleBorder } from "../../plan/picture/polygons.ts";
import { ANCHOR_CLASS } from "./boxes.ts";
import { arrowToSun } from "./frameArrow.ts";
import type { FramePaper } from "./framePaper.ts";
import type { PaperProps } from "./frameProps.ts";
import { polygon } from "./frameTone.tsx";
import { closedPath, cut } from "./paths.ts";

function gatePath({ gate: { widthMm, heightMm } }: FrameLayout, paper: FramePaper): string {
  return closedPath(rectangleBorder(widthMm / 2, heightMm / 2).map(paper.at));
}

/** The picture without the gate, for an even-odd fill. */
export const outsideGate = (layout: FrameLayout, paper: FramePaper): string =>
  `M0 0H${cut(paper.width)}V${cut(paper.height)}H0Z${gatePath(layout, paper)}`;

export function FrameBorder(props: PaperProps) {
  const { layout, paper } = props;
  const arrow = arrowToSun(props);
  return (
    <>
      <path class="frame-flare" d={polygon(layout.flare, paper)} />
      <path class="frame-gate" d={gatePath(layout, paper)} />
      <rect class="frame-edge" width={cut(paper.width)} height={cut(paper.height)} />
      {arrow !== null && (
        <g class="frame-to-sun">
          <path d={arrow.path} />
          <text
            class={`frame-label halo${ANCHOR_CLASS[arrow.anchor]}`}
            x={cut(arrow.at[0])}
            y={cut(arrow.at[1])}
          >
            {arrow.words}
          </text>
        </g>
      )}
    </>
  );
}
