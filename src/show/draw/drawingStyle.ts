/** The rules of every drawing in one palette: a page has them once per palette, a file of its own brings them along. */

import { driftStyle } from "./driftMarks.tsx";
import { scaleStyle } from "./exposureScale.tsx";
import { frameStyle } from "./frameStyle.tsx";
import { lightStyle } from "./lightMarks.tsx";
import { padStyle } from "./padKey.tsx";
import type { Palette } from "./palette.ts";
import { rankStyle } from "./rankMarks.tsx";
import { stripStyle } from "./stripMarks.tsx";
import { sweepMapStyle, sweepPathStyle } from "./sweepStyle.ts";

export const FONT = "system-ui,-apple-system,Segoe UI,Roboto,Noto Sans,Helvetica,Arial,sans-serif";

export const drawingStyle = (palette: Palette): string =>
  [
    common,
    lightStyle,
    frameStyle,
    scaleStyle,
    padStyle,
    sweepMapStyle,
    sweepPathStyle,
    stripStyle,
    driftStyle,
    rankStyle,
  ]
    .map((style) => style(palette))
    .join("");

/** Lines, text and marks that several drawings use; a halo keeps text, a casing a line, apart from what lies under it. */
const common = ({ paper, ink, soft, faint, mark, alarm, tracker }: Palette): string => `
.drawing{font-family:${FONT};font-size:10px;fill:${ink};font-variant-numeric:tabular-nums}
.paper{fill:${paper}}
.line{fill:none;stroke:${ink};stroke-width:1}
.thin{fill:none;stroke:${ink};stroke-width:.5}
.faint{fill:none;stroke:${faint};stroke-width:.5}
.text{fill:${ink}}.soft{fill:${soft}}.small{font-size:8.5px}.strong{font-weight:600}
.mid{text-anchor:middle}.end{text-anchor:end}
.now{fill:none;stroke:${mark};stroke-width:1.4}.now-text{fill:${mark}}
.alarm-text{fill:${alarm}}
.follow{fill:none;stroke:${tracker}}
.halo{paint-order:stroke;stroke:${paper};stroke-width:2.8;stroke-linejoin:round}
.casing{fill:none;stroke:${paper};stroke-width:3.2}
.dashed{stroke-dasharray:3 2}
`;
