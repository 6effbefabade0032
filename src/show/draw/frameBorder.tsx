/** What lies around a picture: the gate's edge, the flare margin. */

import type { FrameLayout } from "../../plan/picture/frameLayout.ts";
import { rectangleBorder } from "../../plan/picture/polygons.ts";
import type { Point2 } from "../../view/prism.ts";
import type { FramePaper } from "./framePaper.ts";
import type { PaperProps } from "./frameProps.ts";
import { polyline } from "./frameTone.tsx";
import { closedPath, cut } from "./paths.ts";

function gatePath({ gate: { widthMm, heightMm } }: FrameLayout, paper: FramePaper): string {
  return closedPath(rectangleBorder(widthMm / 2, heightMm / 2).map(paper.at));
}

/** The picture without the gate, for an even-odd fill. */
export const outsideGate = (layout: FrameLayout, paper: FramePaper): string =>
  `M0 0H${cut(paper.width)}V${cut(paper.height)}H0Z${gatePath(layout, paper)}`;

/** The border of the flare margin, without the stretches where the picture ends before it. */
function flarePath({ flare, reach }: FrameLayout, paper: FramePaper): string {
  const isOnEdge = ([x, y]: Point2, [toX, toY]: Point2): boolean =>
    (Math.abs(x) > reach.xMm * ON_EDGE && x * toX > 0 && Math.abs(toX) > reach.xMm * ON_EDGE) ||
    (Math.abs(y) > reach.yMm * ON_EDGE && y * toY > 0 && Math.abs(toY) > reach.yMm * ON_EDGE);
  const lines: Point2[][] = [];
  flare.forEach((corner, i) => {
    const next = flare[(i + 1) % flare.length]!;
    if (isOnEdge(corner, next)) return;
    const line = lines.at(-1);
    if (line?.at(-1) === corner) line.push(next);
    else lines.push([corner, next]);
  });
  return lines.map((line) => polyline(line, paper)).join("");
}

const ON_EDGE = 0.9999;

export function FrameBorder({ layout, paper }: PaperProps) {
  return (
    <>
      <path class="frame-flare" d={flarePath(layout, paper)} />
      <path class="frame-gate" d={gatePath(layout, paper)} />
      <rect class="frame-edge" width={cut(paper.width)} height={cut(paper.height)} />
    </>
  );
}
