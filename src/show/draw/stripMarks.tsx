/** Marks of the strips over a window: the sun over a row's tone, steps of spare, a camera that follows the vehicle. */

import { LIGHT_CLASSES } from "../../light/lightClass.ts";
import type { Box } from "./boxes.ts";
import { SunCell } from "./lightMarks.tsx";
import { LIGHT_TONES, type Palette } from "./palette.ts";
import { cut } from "./paths.ts";

/** How good the spare of a setting is at a T-0, best first. */
export const SPARE_STEPS = ["ample", "tight", "clipped", "lost"] as const;
export type SpareStep = (typeof SPARE_STEPS)[number];

/** Stops of spare to a step: 1 and more, 0 to 1, clipped by less than 1, clipped by 1 and more. */
export const spareStep = (stops: number): SpareStep =>
  stops >= 1 ? "ample" : stops >= 0 ? "tight" : stops > -1 ? "clipped" : "lost";

const SPARE_SIGNS: Readonly<Record<SpareStep, string>> = {
  ample: "++",
  tight: "+",
  clipped: "\u2212",
  lost: "\u2212\u2212",
};

export const SPARE_WORDS: Readonly<Record<SpareStep, string>> = {
  ample: "1 stop and more to spare",
  tight: "0 to 1 stop to spare",
  clipped: "clipped by less than 1 stop",
  lost: "clipped by 1 stop and more",
};

/** The same on light and dark paper, as the tones of light are. */
const SPARE_TONES: Readonly<Record<SpareStep, string>> = {
  ample: "#ffffff",
  tight: "#dcdcd8",
  clipped: "#dd9f6a",
  lost: "#7d3600",
};

export const stripStyle = ({ alarm, warn, ink, paper, soft, faint, tracker }: Palette): string => `
${SPARE_STEPS.map((step) => `.spare-${step}{fill:${SPARE_TONES[step]}}.spare-on-${step}{fill:${step === "lost" ? "#ffffff" : "#16191d"};stroke:${SPARE_TONES[step]}}`).join("\n")}
.spare-mark-tight{stroke:#50565e;stroke-width:.7}.spare-mark-clipped{stroke:#7d3600;stroke-width:1}
.spare-mark-lost{stroke:#ffffff;stroke-width:.6;opacity:.8;fill:none}
.spare-none{fill:none;stroke:${soft};stroke-width:.7;stroke-dasharray:3 3}
.spare-none-text{stroke-width:8}
.strip-frame{fill:none;stroke:${ink};stroke-width:1}.strip-cell{fill:none;stroke:${soft};stroke-width:.5}
.strip-in{fill:none;stroke:${alarm};stroke-width:1}.strip-in-solid{fill:${alarm}}
.strip-near{fill:none;stroke:${ink};stroke-width:.5}.strip-near-solid{fill:${warn};stroke:${ink};stroke-width:.4}
.strip-sliver{fill:${paper}}
.strip-hidden{fill:none;stroke:${ink};stroke-width:1.1}
.strip-event{fill:none;stroke:${ink};stroke-width:1.2;stroke-dasharray:7 3 1.5 3}
.strip-follow{fill:none;stroke:${tracker};stroke-width:1.5}
.strip-grid{fill:none;stroke:${faint};stroke-width:.5}
.strip-well{fill:${ink}}.strip-well-ground{fill:${paper}}
.strip-step{fill:none;stroke:${ink};stroke-width:1.4}.strip-area{fill:${faint};opacity:.45}
.strip-letter{font-weight:600}
${LIGHT_CLASSES.map((light) => `.strip-on-${light}{stroke:${LIGHT_TONES[light]}}`).join("")}
.spare-sign{font-size:9px;font-weight:600;text-anchor:middle;letter-spacing:1px}
`;

/** Patterns by name, once in a page or a file of its own. */
export const SparePatterns = () => (
  <defs>
    <pattern id="pattern-spare-tight" width="6" height="5" patternUnits="userSpaceOnUse">
      <path class="spare-mark-tight" d="M1 2.5h2" />
    </pattern>
    <pattern id="pattern-spare-clipped" width="5" height="5" patternUnits="userSpaceOnUse">
      <path class="spare-mark-clipped" d="M-1 4L1 6M0 0L5 5M4 -1L6 1" />
    </pattern>
    <pattern id="pattern-spare-lost" width="7" height="7" patternUnits="userSpaceOnUse">
      <path class="spare-mark-lost" d="M0 0L7 7M7 0L0 7" />
    </pattern>
  </defs>
);

/** A crossing of the sun is never thinner than this. */
export const LEAST_SUN_PX = 1.5;
/** Thinner than this there is no room for hatching. */
export const SLIVER_PX = 6;

export type SunMark = "in-frame" | "near-frame" | "hidden";

/** The sun in, near or hidden in the frame, over part of a row's height. */
export function SunBand({ sun, box }: { readonly sun: SunMark; readonly box: Box }) {
  const { x, y, width, height } = box;
  if (sun === "hidden") {
    const inner = {
      x: cut(x + 0.5),
      y: cut(y + 0.5),
      width: cut(Math.max(0.5, width - 1)),
      height: cut(height - 1),
    };
    return (
      <>
        <rect class="casing" {...inner} />
        <rect class="strip-hidden dashed" {...inner} />
      </>
    );
  }
  if (width < SLIVER_PX) return <SunSliver sun={sun} box={box} />;
  return (
    <>
      <SunCell sun={sun} box={box} />
      <rect class={sun === "in-frame" ? "strip-in" : "strip-near"} {...box} />
    </>
  );
}

/** A solid bar for the sun in the frame, a broken one for the sun near it, each on a ground that parts it from the tone. */
function SunSliver({ sun, box }: { readonly sun: "in-frame" | "near-frame"; readonly box: Box }) {
  const { x, y, width, height } = box;
  const ground = (
    <rect class="strip-sliver" x={cut(x - 0.7)} y={y} width={cut(width + 1.4)} height={height} />
  );
  if (sun === "in-frame") {
    return (
      <>
        {ground}
        <rect class="strip-in-solid" {...box} />
      </>
    );
  }
  const part = cut(height / 4);
  return (
    <>
      {ground}
      {[0, 1, 2].map((i) => (
        <rect
          class="strip-near-solid"
          x={x}
          y={cut(y + i * 1.5 * part)}
          width={width}
          height={cut(Math.max(1, part))}
        />
      ))}
    </>
  );
}

/** Room for two signs. */
const SIGNED_PX = 14;

/** From its beginning, as letters of light: clear of the chosen T-0 in the middle. */
const SIGN_IN_PX = 14;

/** A stretch of one step of spare: tone, pattern, sign. */
export function SpareCell({ step, box }: { readonly step: SpareStep; readonly box: Box }) {
  const { x, y, width, height } = box;
  return (
    <>
      <rect class={`spare-${step}`} {...box} />
      {step !== "ample" && <rect fill={`url(#pattern-spare-${step})`} {...box} />}
      {width >= SIGNED_PX && (
        <text
          class={`spare-sign halo spare-on-${step}`}
          x={cut(x + Math.min(width / 2, SIGN_IN_PX))}
          y={cut(y + height / 2 + 3)}
        >
          {SPARE_SIGNS[step]}
        </text>
      )}
    </>
  );
}

/** Gives a camera that follows the vehicle a chevron, its point at (x, y). */
export const FollowMark = ({ x, y }: { readonly x: number; readonly y: number }) => (
  <path class="strip-follow" d={`M${cut(x - 4)} ${cut(y - 3.5)}l4 3.5l-4 3.5`} />
);
