/** How pictures look: lines over tones have a light halo, so that they read on black and on white. */

import type { Palette } from "./palette.ts";

export const FRAME_LABEL_PX = 9.5;

export const frameStyle = ({ paper, ink, alarm, mark }: Palette): string => `
.frame-tone{fill:currentColor;stroke:currentColor;stroke-width:.7;stroke-linejoin:round}
.frame-level{fill:none;stroke:#16191d;stroke-width:.8;stroke-opacity:.7}
.frame-land{fill:#6f757b;stroke:#6f757b;stroke-width:.7}
.frame-structure{stroke:#16191d;stroke-width:1;fill:#7d8287}
.frame-lattice{fill:url(#pattern-lattice);fill-opacity:.9}
.frame-body{fill:none;stroke:#16191d;stroke-width:1.2}
.frame-risen{fill:none;stroke:#16191d;stroke-width:1;stroke-dasharray:4 3}
.frame-veil{fill:${paper};fill-opacity:.62}
.frame-thin-veil{fill:${paper};fill-opacity:.35}
.frame-sky{shape-rendering:crispEdges}
.frame-gate{fill:none;stroke:${ink};stroke-width:2}
.frame-edge{fill:none;stroke:${ink};stroke-width:.6}
.frame-flare{fill:none;stroke:${alarm};stroke-width:1.1;stroke-dasharray:7 4}
.frame-track{fill:none;stroke:#e69f00;stroke-width:2.2;stroke-linecap:round}
.frame-tick{fill:#16191d;stroke:#ffffff;stroke-width:.8}
.frame-label{font-size:${FRAME_LABEL_PX}px;fill:#16191d;stroke:#ffffff}
.frame-disc{fill:#f0e442;stroke:#16191d;stroke-width:1}
.frame-ring{fill:none;stroke:${mark};stroke-width:1.4}
.frame-to-sun path{fill:#e69f00;stroke:#16191d;stroke-width:.8}
.clip-line{stroke:#b34e00;stroke-width:1.1}.clip-dot{fill:#e69f00}
.lattice-ground{fill:#c9ccd0;fill-opacity:.45}.lattice-line{stroke:#16191d;stroke-width:.7}
`;

/** Patterns of the pictures, once in a page or a file of its own. */
export const FramePatterns = () => (
  <defs>
    <pattern id="pattern-over" width="7" height="7" patternUnits="userSpaceOnUse">
      <rect fill="#ffffff" width="7" height="7" />
      <path class="clip-line" d="M-1 1L1 -1M0 7L7 0M6 8L8 6" />
    </pattern>
    <pattern id="pattern-under" width="6" height="6" patternUnits="userSpaceOnUse">
      <rect fill="#000000" width="6" height="6" />
      <circle class="clip-dot" cx="3" cy="3" r="1" />
    </pattern>
    <pattern id="pattern-lattice" width="6" height="6" patternUnits="userSpaceOnUse">
      <rect class="lattice-ground" width="6" height="6" />
      <path class="lattice-line" d="M0 0L6 6M6 0L0 6" />
    </pattern>
  </defs>
);
