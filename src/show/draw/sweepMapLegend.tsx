/** The key of a sweep's map: what occurs in it. */

import type { SweepMap } from "../../plan/sweep/sweepTypes.ts";
import type { LegendItem } from "./legend.tsx";
import { lightItems, SAMPLE_BOX, SUN_WORDS } from "./lightKey.tsx";
import { SunCell } from "./lightMarks.tsx";
import type { MapCrossing } from "./sweepMapPlan.ts";

const ZONES = ["in-frame", "near-frame"] as const;
type Zone = (typeof ZONES)[number];

const CELL_WORDS: Readonly<Record<Zone, string>> = {
  "in-frame": SUN_WORDS["in-frame"],
  "near-frame": `${SUN_WORDS["near-frame"]}, at any T-0 and T+ of a cell`,
};
const OUTLINE_WORDS: Readonly<Record<Zone, string>> = {
  "in-frame": "exact T-0s and T+ of a crossing, with its closest approach",
  "near-frame": "the same near the frame",
};
/** Of the outline of a crossing. */
export const OUTLINE_CLASS: Readonly<Record<Zone, string>> = {
  "in-frame": "sweepmap-in",
  "near-frame": "sweepmap-near dashed",
};

export function mapLegend(map: SweepMap, crossings: readonly MapCrossing[]): LegendItem[] {
  const cells = map.rows.flatMap(({ cells: row }) => row);
  return [
    ...lightItems(new Set(cells.map(({ light }) => light))),
    ...ZONES.filter((zone) => cells.some(({ sun }) => sun === zone)).map((zone) => ({
      text: CELL_WORDS[zone],
      sample: (
        <>
          <SunCell sun={zone} box={SAMPLE_BOX} />
          <rect class="thin" {...SAMPLE_BOX} />
        </>
      ),
    })),
    ...ZONES.filter((zone) => crossings.some((one) => one.zone === zone)).map((zone) => ({
      text: OUTLINE_WORDS[zone],
      sample: <rect class={OUTLINE_CLASS[zone]} {...SAMPLE_BOX} />,
    })),
  ];
}
