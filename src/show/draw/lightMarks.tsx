/** How light and sun look in every drawing: a tone, a pattern and a letter for each class, hatching where the sun is. */

import { LIGHT_CLASSES, type LightClass } from "../../light/lightClass.ts";
import { LETTERS } from "../stripText.ts";
import type { Box } from "./boxes.ts";
import { LIGHT_TONES, onTone, type Palette } from "./palette.ts";
import { cut } from "./paths.ts";

/** Classes that share a tone with another, or come close to one, carry a pattern over it. */
const PATTERNED: readonly LightClass[] = ["shaded", "flat", "dusk"];

const toneClass = (light: LightClass): string => `tone-${light}`;

export const lightStyle = ({ alarm, warn, ink, paper }: Palette): string => `
${LIGHT_CLASSES.map((light) => `.${toneClass(light)}{fill:${LIGHT_TONES[light]}}.on-${light}{fill:${onTone(light)}}`).join("\n")}
.mark-shaded{stroke:#16191d;stroke-width:.8}.mark-flat{fill:#50565e}.mark-dusk{stroke:#ffffff;stroke-width:.6;opacity:.55}
.sun-in-ground{fill:${paper}}.sun-in-line{stroke:${alarm};stroke-width:2.4}
.sun-near-dot{fill:${warn};stroke:${ink};stroke-width:.5}
.cell-letter{font-size:8.5px;text-anchor:middle}
`;

/** Patterns by name, once in a page or a file of its own. */
export const LightPatterns = () => (
  <defs>
    <pattern id="pattern-shaded" width="5" height="5" patternUnits="userSpaceOnUse">
      <path class="mark-shaded" d="M-1 1L1 -1M0 5L5 0M4 6L6 4" />
    </pattern>
    <pattern id="pattern-flat" width="5" height="5" patternUnits="userSpaceOnUse">
      <circle class="mark-flat" cx="1.5" cy="1.5" r=".7" />
      <circle class="mark-flat" cx="4" cy="4" r=".7" />
    </pattern>
    <pattern id="pattern-dusk" width="6" height="4" patternUnits="userSpaceOnUse">
      <path class="mark-dusk" d="M0 2H6" />
    </pattern>
    <pattern id="pattern-sun-in" width="6" height="6" patternUnits="userSpaceOnUse">
      <rect class="sun-in-ground" width="6" height="6" />
      <path class="sun-in-line" d="M-1 1L1 -1M0 6L6 0M5 7L7 5" />
    </pattern>
    <pattern id="pattern-sun-near" width="6" height="6" patternUnits="userSpaceOnUse">
      <circle class="sun-near-dot" cx="3" cy="3" r="1.5" />
    </pattern>
  </defs>
);

/** Smaller than this a cell has no room for its letter, px. */
const LEAST_LETTERED_PX = 9;

/** Tone and pattern of a class of light. */
const LightTone = ({ light, box }: { readonly light: LightClass; readonly box: Box }) => (
  <>
    <rect class={toneClass(light)} {...box} />
    {PATTERNED.includes(light) && <rect fill={`url(#pattern-${light})`} {...box} />}
  </>
);

interface LightCellProps {
  readonly light: LightClass;
  readonly box: Box;
  /** Of its letter; null leaves it out. Default: the middle. */
  readonly letterX?: number | null | undefined;
}

/** A stretch of one class of light: tone, pattern, letter. */
export function LightCell({ light, box, letterX = box.x + box.width / 2 }: LightCellProps) {
  const { y, width, height } = box;
  return (
    <>
      <LightTone light={light} box={box} />
      {letterX !== null && Math.min(width, height) >= LEAST_LETTERED_PX && (
        <text class={`cell-letter on-${light}`} x={cut(letterX)} y={cut(y + height / 2 + 3)}>
          {LETTERS[light]}
        </text>
      )}
    </>
  );
}

/** The sun in the frame, or near it, over a stretch. */
export const SunCell = ({ sun, box }: { readonly sun: "in-frame" | "near-frame"; readonly box: Box }) => (
  <rect fill={`url(#pattern-sun-${sun === "in-frame" ? "in" : "near"})`} {...box} />
);
