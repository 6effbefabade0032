/** What tones of light and marks of the sun mean, for the key of a chart. */

import { LIGHT_CLASSES, type LightClass } from "../../light/lightClass.ts";
import type { LegendItem } from "./legend.tsx";
import { LightCell } from "./lightMarks.tsx";
import { FollowMark, SunBand, type SunMark } from "./stripMarks.tsx";

/** In the order of keys. */
const SUN_MARKS = ["in-frame", "near-frame", "hidden"] as const;

export const SUN_WORDS: Readonly<Record<SunMark, string>> = {
  "in-frame": "sun in the frame",
  "near-frame": "sun near the frame",
  hidden: "sun hidden",
};

/** The box of a sample in a key. */
export const SAMPLE_BOX = { x: 0, y: 0, width: 20, height: 12 } as const;

/** The classes that occur. */
export const lightItems = (lights: ReadonlySet<LightClass>): LegendItem[] =>
  LIGHT_CLASSES.filter((light) => lights.has(light)).map((light) => ({
    text: light,
    sample: (
      <>
        <LightCell light={light} box={SAMPLE_BOX} />
        <rect class="strip-cell" {...SAMPLE_BOX} />
      </>
    ),
  }));

/** Of a strip: what occurs, and nothing else. */
export function lightLegend(
  lights: ReadonlySet<LightClass>,
  suns: ReadonlySet<SunMark>,
  follows: boolean,
): LegendItem[] {
  return [
    ...lightItems(lights),
    ...SUN_MARKS.filter((sun) => suns.has(sun)).map((sun) => ({
      text: SUN_WORDS[sun],
      sample: (
        <>
          <SunBand sun={sun} box={{ x: 0, y: 0, width: 12, height: 12 }} />
          <SunBand sun={sun} box={{ x: 16, y: 0, width: 2, height: 12 }} />
        </>
      ),
    })),
    ...(follows
      ? [
          {
            text: "follows the vehicle: T-0s with the sun somewhere along its sweep",
            sample: <FollowMark x={12} y={6} />,
          },
        ]
      : []),
  ];
}
