/** Rules of the two drawings of a sweep: its map, and its path over the sky. */

import type { Palette } from "./palette.ts";
import { LABEL_PX } from "./sweepMapPlan.ts";
import { SKY_LABEL_PX } from "./sweepSkyLabels.ts";

export const sweepMapStyle = ({ alarm, ink, paper }: Palette): string => `
.sweepmap-in{fill:none;stroke:${alarm};stroke-width:1.6}
.sweepmap-near{fill:none;stroke:${ink};stroke-width:1}
.sweepmap-label{font-size:${LABEL_PX}px}.sweepmap-ground{fill:${paper}}
`;

export const sweepPathStyle = ({ shade, paper, tracker, sun, ink, mark }: Palette): string => `
.sweeppath-ground{fill:${shade}}.sweeppath-sky{fill:${paper}}
.sweeppath-way{fill:none;stroke:${tracker};stroke-width:1.8}
.sweeppath-frame{fill:none;stroke:${tracker};stroke-width:1}.sweeppath-frame-on{fill:${paper};fill-opacity:.8}
.sweeppath-sun-case{fill:none;stroke:${ink};stroke-width:4.4;stroke-linecap:round}
.sweeppath-sun{fill:none;stroke:${sun};stroke-width:3;stroke-linecap:round}
.sweeppath-pass{fill:none;stroke:${ink};stroke-width:.6}
.sweeppath-disc{fill:${sun};stroke:${ink};stroke-width:1}
.sweeppath-now-frame{fill:none;stroke:${mark};stroke-width:1.4}
.sweeppath-between{fill:none;stroke:${mark};stroke-width:1}
.sweeppath-tick{fill:${ink}}.sweeppath-label{font-size:${SKY_LABEL_PX}px}
`;
